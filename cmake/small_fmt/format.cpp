#include "fmt/format.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <stdexcept>

namespace fmt {
namespace {

/// The values, taken one after the other.
class Taker {
 public:
  Taker(const Value* values, std::size_t count) : values_(values), end_(values + count) {}
  const Value& Next() {
    if (values_ == end_) throw std::invalid_argument("a format has too few values");
    return *values_++;
  }

 private:
  const Value* values_;
  const Value* end_;
};

template <typename T>
std::string Print(const std::string& format, T value) {
  const int length = std::snprintf(nullptr, 0, format.c_str(), value);
  std::string text(static_cast<std::size_t>(length) + 1, '\0');
  std::snprintf(text.data(), text.size(), format.c_str(), value);
  text.pop_back();
  return text;
}

/// The shortest digits that read back as the same number.
std::string Shortest(double value) {
  // All numbers keep 15 digits, and zeros at the end are not written; only the smallest of all, which
  // are short of bits, have fewer to begin with. 17 are enough for any.
  constexpr int kMostDigits = 17;
  std::string text;
  for (int digits = std::isnormal(value) ? 15 : 1; digits <= kMostDigits; ++digits) {
    text = Print("%." + std::to_string(digits) + "g", value);
    if (std::strtod(text.c_str(), nullptr) == value) break;
  }
  return text;
}

std::string Plain(const Value& value) {
  switch (value.kind) {
    case Value::Kind::kText:
      return std::string(value.text);
    case Value::Kind::kWhole:
      return std::to_string(value.whole);
    case Value::Kind::kNumber:
      return Shortest(value.number);
    case Value::Kind::kLetter:
      return std::string(1, static_cast<char>(value.whole));
  }
  return {};
}

/// \param spec what stands after the colon, a "{}" in it filled in.
std::string WithSpec(const std::string& spec, const Value& value) {
  const char type = spec.empty() ? '\0' : spec.back();
  const bool whole = type == 'X' || type == 'x' || type == 'd';
  const bool number = type == 'f' || type == 'g' || type == 'e' || type == 'a';
  if (whole && value.kind == Value::Kind::kWhole) {
    return Print("%" + spec.substr(0, spec.size() - 1) + "ll" + type, value.whole);
  }
  if (number && value.kind == Value::Kind::kNumber) return Print("%" + spec, value.number);
  throw std::invalid_argument("a format is not known here: " + spec);
}

/// Writes the field that starts at the first letter of `rest`, and takes it off.
std::string Field(std::string_view& rest, Taker& values) {
  const Value& value = values.Next();
  std::string spec;
  std::size_t at = 1;
  for (; at < rest.size() && rest[at] != '}'; ++at) {
    if (rest[at] == '{') {
      spec += Plain(values.Next());
      ++at;
    } else {
      spec += rest[at];
    }
  }
  if (at >= rest.size()) throw std::invalid_argument("a format does not end");
  rest.remove_prefix(at + 1);
  return spec.empty() ? Plain(value) : WithSpec(spec.substr(1), value);
}

}  // namespace

std::string FormatAll(std::string_view text, const Value* values, std::size_t count) {
  Taker taker(values, count);
  std::string all;
  for (std::string_view rest = text; !rest.empty();) {
    const char c = rest.front();
    const bool doubled = rest.size() > 1 && rest[1] == c;
    if ((c == '{' || c == '}') && doubled) {
      all += c;
      rest.remove_prefix(2);
    } else if (c == '{') {
      all += Field(rest, taker);
    } else {
      all += c;
      rest.remove_prefix(1);
    }
  }
  return all;
}

}  // namespace fmt
