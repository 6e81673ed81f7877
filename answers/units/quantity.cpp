#include "answers/units/quantity.h"

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <string>

#include <fmt/format.h>

#include "answers/units/words.h"

namespace offplumb::answers {
namespace {

bool IsDigit(char c) { return c >= '0' && c <= '9'; }

std::size_t SkipDigits(std::string_view text, std::size_t at) {
  while (at < text.size() && IsDigit(text[at])) ++at;
  return at;
}

std::size_t SkipSign(std::string_view text, std::size_t at) {
  return at < text.size() && (text[at] == '+' || text[at] == '-') ? at + 1 : at;
}

/// Length of "e5", "E-3" at a place; 0 if what stands there is no exponent (the e of a unit, say).
std::size_t ExponentLength(std::string_view text, std::size_t at) {
  if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) return 0;
  const std::size_t digits = SkipSign(text, at + 1);
  const std::size_t end = SkipDigits(text, digits);
  return end > digits ? end - at : 0;
}

/// Length of the plain decimal number a text starts with; 0 if none. Stricter than strtod, which
/// also takes "0x10", "nan" and "inf".
std::size_t NumberLength(std::string_view text) {
  const std::size_t whole = SkipSign(text, 0);
  std::size_t end = SkipDigits(text, whole);
  std::size_t digits = end - whole;
  if (end < text.size() && text[end] == '.') {
    const std::size_t fraction_end = SkipDigits(text, end + 1);
    digits += fraction_end - (end + 1);
    end = fraction_end;
  }
  return digits == 0 ? 0 : end + ExponentLength(text, end);
}

/// A text cut after its number.
struct Split {
  double value = 0;
  std::string_view rest;
};

/// What to do about a text that is no quantity of this dimension.
std::string UnitRemedy(Dimension dimension) {
  return fmt::format("Write a number and its unit: {}.", UnitNames(dimension));
}

tl::unexpected<Problem> NotANumber(std::string_view text, std::string_view subject,
                                   std::string remedy) {
  return BadInput(std::string(subject),
                  fmt::format("{} does not start with a number.", Quoted(text)), std::move(remedy));
}

Expected<Split> SplitNumber(std::string_view text, std::string_view subject,
                            const std::string& remedy) {
  const std::size_t length = NumberLength(text);
  if (length == 0) return NotANumber(text, subject, remedy);
  if (length < text.size() && text[length] == ',') {
    return BadInput(std::string(subject),
                    fmt::format("{} has a comma in its number.", Quoted(text)),
                    "Write a point, not a comma: 1.5.");
  }
  // The program never leaves the C locale, so strtod reads a point. It wants a terminated text.
  const std::string number(text.substr(0, length));
  const double value = std::strtod(number.c_str(), nullptr);
  if (!std::isfinite(value)) {
    return BadInput(std::string(subject), fmt::format("{} is too large a number.", Quoted(text)),
                    remedy);
  }
  return Split{value, Trim(text.substr(length))};
}

tl::unexpected<Problem> NoUnit(std::string_view text, Dimension dimension,
                               std::string_view subject) {
  return BadInput(std::string(subject), fmt::format("{} has no unit.", Quoted(text)),
                  fmt::format("Write one after the number: {}.", UnitNames(dimension)));
}

tl::unexpected<Problem> WrongUnit(std::string_view text, std::string_view unit, Dimension dimension,
                                  std::string_view subject) {
  return BadInput(std::string(subject),
                  fmt::format("{}: {} is not a unit of {}.", Quoted(text), Quoted(unit),
                              DimensionName(dimension)),
                  UnitRemedy(dimension));
}

const Unit& WrittenUnit(std::string_view written, Dimension dimension) {
  const std::string_view text = Trim(written);
  const Unit* unit = FindUnit(dimension, Trim(text.substr(NumberLength(text))));
  if (unit != nullptr) return *unit;
  for (const Unit& first : Units()) {
    if (first.dimension == dimension) return first;
  }
  return Units().front();
}

std::string In(const Unit& unit, double si) {
  return fmt::format("{:.4g} {}", (si - unit.offset) / unit.factor, unit.name);
}

}  // namespace

Expected<double> ParseQuantity(std::string_view written, Dimension dimension,
                               std::string_view subject) {
  const std::string_view text = Trim(written);
  const Expected<Split> split = SplitNumber(text, subject, UnitRemedy(dimension));
  if (!split) return tl::unexpected(split.error());
  if (split->rest.empty()) return NoUnit(text, dimension, subject);
  const Unit* unit = FindUnit(dimension, split->rest);
  if (unit == nullptr) return WrongUnit(text, split->rest, dimension, subject);
  const double si = split->value * unit->factor + unit->offset;
  if (!std::isfinite(si)) {
    return BadInput(std::string(subject), fmt::format("{} is too large a number.", Quoted(text)),
                    UnitRemedy(dimension));
  }
  return si;
}

Expected<double> ParseNumber(std::string_view written, std::string_view subject) {
  const std::string_view text = Trim(written);
  const Expected<Split> split = SplitNumber(text, subject, "Write a plain number, such as 1.2.");
  if (!split) return tl::unexpected(split.error());
  if (!split->rest.empty()) {
    return BadInput(std::string(subject),
                    fmt::format("{}: there must be nothing after the number.", Quoted(text)),
                    "Write a plain number, such as 1.2; it has no unit.");
  }
  return split->value;
}

Expected<tackle::SpringScalePull> ParsePull(std::string_view text, std::string_view subject) {
  constexpr std::string_view kRemedy = "Write force and speed: \"2.1 lb at 2.5 mph\".";
  const std::size_t at = text.find(" at ");
  if (at == std::string_view::npos) {
    return BadInput(std::string(subject), fmt::format("{} is not a pull at a speed.", Quoted(text)),
                    std::string(kRemedy));
  }
  const auto force =
      ParseQuantityWithin(text.substr(0, at), Dimension::kForce, {0.01, 1000}, subject);
  if (!force) return tl::unexpected(force.error());
  const auto speed =
      ParseQuantityWithin(text.substr(at + 4), Dimension::kSpeed, {0.1, 10}, subject);
  if (!speed) return tl::unexpected(speed.error());
  return tackle::SpringScalePull{*force, *speed};
}

Expected<double> CheckRange(double value, Range range, std::string_view written,
                            Dimension dimension, std::string_view subject) {
  if (value >= range.low && value <= range.high) return value;
  const Unit& unit = WrittenUnit(written, dimension);
  return BadInput(std::string(subject),
                  fmt::format("{} is out of range: it must be from {} to {}.",
                              Quoted(Trim(written)), In(unit, range.low), In(unit, range.high)),
                  "Correct the value or its unit.");
}

Expected<double> ParseQuantityWithin(std::string_view text, Dimension dimension, Range range,
                                     std::string_view subject) {
  const Expected<double> value = ParseQuantity(text, dimension, subject);
  if (!value) return value;
  return CheckRange(*value, range, text, dimension, subject);
}

}  // namespace offplumb::answers
