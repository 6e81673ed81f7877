/// \file
/// Small readings of header text, in ASCII whatever the locale.
#pragma once

#include <algorithm>
#include <string_view>

namespace offplumb::server {

[[nodiscard]] constexpr char LowerLetter(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

[[nodiscard]] inline bool EqualIgnoringCase(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return LowerLetter(x) == LowerLetter(y); });
}

[[nodiscard]] inline bool StartsWithIgnoringCase(std::string_view text, std::string_view start) {
  return EqualIgnoringCase(text.substr(0, start.size()), start);
}

/// \return the text without blanks and tabs around it.
[[nodiscard]] inline std::string_view Trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Takes the part before a mark off the front of a text, and the mark with it.
/// \return that part, trimmed; the whole text when the mark is not in it.
[[nodiscard]] inline std::string_view TakeUntil(char mark, std::string_view& text) {
  const std::size_t end = text.find(mark);
  const std::string_view part = text.substr(0, end);
  text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  return Trimmed(part);
}

}  // namespace offplumb::server
