#include "answers/questions/json_writer.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

#include <nlohmann/detail/conversions/to_chars.hpp>

namespace offplumb::answers {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD.

/// \return how many bytes the letter has that starts here; 0 if none does (RFC 3629, section 4).
std::size_t LetterLength(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) -> unsigned {
    return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
  };
  const auto between = [&](std::size_t i, unsigned low, unsigned high) {
    return byte(i) >= low && byte(i) <= high;
  };
  const unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return between(1, 0x80, 0xBF) ? 2 : 0;
  if (lead >= 0xE0 && lead <= 0xEF) {
    // Neither longer than need be nor half of a pair of UTF-16.
    const unsigned low = lead == 0xE0 ? 0xA0 : 0x80;
    const unsigned high = lead == 0xED ? 0x9F : 0xBF;
    return between(1, low, high) && between(2, 0x80, 0xBF) ? 3 : 0;
  }
  if (lead >= 0xF0 && lead <= 0xF4) {
    const unsigned low = lead == 0xF0 ? 0x90 : 0x80;
    const unsigned high = lead == 0xF4 ? 0x8F : 0xBF;
    return between(1, low, high) && between(2, 0x80, 0xBF) && between(3, 0x80, 0xBF) ? 4 : 0;
  }
  return 0;
}

/// The short escape of a character; 0: it has none.
char ShortEscape(char c) {
  switch (c) {
    case '"':
    case '\\':
      return c;
    case '\b':
      return 'b';
    case '\f':
      return 'f';
    case '\n':
      return 'n';
    case '\r':
      return 'r';
    case '\t':
      return 't';
    default:
      return 0;
  }
}

void AppendEscaped(char c, std::string& out) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  if (const char escape = ShortEscape(c)) {
    out += '\\';
    out += escape;
  } else {
    const auto code = static_cast<unsigned char>(c);
    out += "\\u00";
    out += kDigits[code >> 4U];
    out += kDigits[code & 15U];
  }
}

}  // namespace

JsonWriter::JsonWriter(int indent) : indent_(indent) { Open('{', '}'); }

void JsonWriter::NewLine() {
  if (indent_ == 0) return;
  text_ += '\n';
  text_.append(static_cast<std::size_t>(indent_) * closings_.size(), ' ');
}

void JsonWriter::Begin() {
  if (!first_) text_ += ',';
  first_ = false;
  NewLine();
}

void JsonWriter::Key(std::string_view key) {
  Begin();
  PutText(key);
  text_ += indent_ == 0 ? ":" : ": ";
}

void JsonWriter::Open(char bracket, char closing) {
  text_ += bracket;
  closings_ += closing;
  first_ = true;
}

void JsonWriter::End() {
  const char closing = closings_.back();
  closings_.pop_back();
  if (!first_) NewLine();
  text_ += closing;
  first_ = false;
}

std::string JsonWriter::Take() {
  while (!closings_.empty()) End();
  return std::move(text_);
}

void JsonWriter::PutNumber(double value) {
  if (!std::isfinite(value)) {
    text_ += "null";
    return;
  }
  // The shortest digits that read back as the same number.
  std::array<char, 64> digits{};
  const char* const end =
      nlohmann::detail::to_chars(digits.data(), digits.data() + digits.size(), value);
  text_.append(digits.data(), static_cast<std::size_t>(end - digits.data()));
}

void JsonWriter::PutText(std::string_view text) {
  text_ += '"';
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    const std::size_t length = LetterLength(text, at);
    if (length == 0) {
      text_ += kReplacement;
    } else if (static_cast<unsigned char>(c) < 0x20 || c == '"' || c == '\\') {
      AppendEscaped(c, text_);
    } else {
      text_ += text.substr(at, length);
    }
    at += length == 0 ? 1 : length;
  }
  text_ += '"';
}

void JsonWriter::Number(std::string_view key, double value) {
  Key(key);
  PutNumber(value);
}

void JsonWriter::Whole(std::string_view key, long long value) {
  Key(key);
  text_ += std::to_string(value);
}

void JsonWriter::Flag(std::string_view key, bool value) {
  Key(key);
  text_ += value ? "true" : "false";
}

void JsonWriter::Text(std::string_view key, std::string_view value) {
  Key(key);
  PutText(value);
}

void JsonWriter::Null(std::string_view key) {
  Key(key);
  text_ += "null";
}

void JsonWriter::NumberOrNull(std::string_view key, const std::optional<double>& value) {
  if (value) return Number(key, *value);
  Null(key);
}

void JsonWriter::TextOrNull(std::string_view key, std::string_view value) {
  if (!value.empty()) return Text(key, value);
  Null(key);
}

void JsonWriter::Numbers(std::string_view key, const std::vector<double>& values) {
  List(key);
  for (const double value : values) NumberItem(value);
  End();
}

void JsonWriter::Texts(std::string_view key, const std::vector<std::string>& values) {
  List(key);
  for (const std::string& value : values) TextItem(value);
  End();
}

void JsonWriter::Object(std::string_view key) {
  Key(key);
  Open('{', '}');
}

void JsonWriter::List(std::string_view key) {
  Key(key);
  Open('[', ']');
}

void JsonWriter::NumberItem(double value) {
  Begin();
  PutNumber(value);
}

void JsonWriter::TextItem(std::string_view value) {
  Begin();
  PutText(value);
}

void JsonWriter::FlagItem(bool value) {
  Begin();
  text_ += value ? "true" : "false";
}

void JsonWriter::NullItem() {
  Begin();
  text_ += "null";
}

void JsonWriter::ObjectItem() {
  Begin();
  Open('{', '}');
}

void JsonWriter::ListItem() {
  Begin();
  Open('[', ']');
}

}  // namespace offplumb::answers
