#include "answers/units/words.h"

#include <cstddef>

namespace offplumb::answers {
namespace {

constexpr std::size_t kLongestQuote = 60;
constexpr std::string_view kBlanks = " \t\r\n";

char Lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool IsControl(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }

/// Shortens at a whole UTF-8 character: bytes 10xxxxxx continue one.
std::string_view Shortened(std::string_view text) {
  if (text.size() <= kLongestQuote) return text;
  std::size_t size = kLongestQuote;
  while (size > 0 && (static_cast<unsigned char>(text[size]) & 0xC0) == 0x80) --size;
  return text.substr(0, size);
}

}  // namespace

bool SameWord(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (Lower(a[i]) != Lower(b[i])) return false;
  }
  return true;
}

std::string_view Trim(std::string_view text) {
  const std::size_t first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::string JoinWords(const std::vector<std::string_view>& words, std::string_view conjunction) {
  std::string joined;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0 && i + 1 == words.size()) {
      joined.append(" ").append(conjunction).append(" ");
    } else if (i > 0) {
      joined += ", ";
    }
    joined += words[i];
  }
  return joined;
}

std::string Quoted(std::string_view text) {
  const std::string_view shown = Shortened(text);
  std::string quoted = "\"";
  for (const char c : shown) quoted += IsControl(c) ? '?' : c;
  if (shown.size() < text.size()) quoted += "...";
  return quoted + "\"";
}

}  // namespace offplumb::answers
