#include "apps/server/rules/target.h"

#include "apps/server/rules/letters.h"

namespace offplumb::server {
namespace {

constexpr std::string_view kScheme = "http://";

int HexDigit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  const char lower = LowerLetter(c);
  return lower >= 'a' && lower <= 'f' ? lower - 'a' + 10 : -1;
}

bool IsControl(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte < 0x20 || byte == 0x7f;
}

/// No letter that means something to a file system or hides a second escape.
bool IsHarmless(char c) { return !IsControl(c) && c != '\\' && c != '%'; }

std::optional<std::string> UndoEscapes(std::string_view text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char c = text[i];
    if (c == '%') {
      const int high = i + 2 < text.size() ? HexDigit(text[i + 1]) : -1;
      const int low = i + 2 < text.size() ? HexDigit(text[i + 2]) : -1;
      if (high < 0 || low < 0) return std::nullopt;
      c = static_cast<char>(16 * high + low);
      if (c == '/') return std::nullopt;
      i += 2;
    }
    if (!IsHarmless(c)) return std::nullopt;
    plain += c;
  }
  return plain;
}

/// Every step between slashes is a name; the last one may be empty.
bool StepsAreNames(std::string_view path) {
  for (std::string_view rest = path.substr(1);;) {
    const std::size_t end = rest.find('/');
    const std::string_view step = rest.substr(0, end);
    if (step == "." || step == "..") return false;
    if (end == std::string_view::npos) return true;
    if (step.empty()) return false;
    rest.remove_prefix(end + 1);
  }
}

}  // namespace

std::optional<Target> ReadTarget(std::string_view text) {
  Target target;
  text = text.substr(0, text.find('?'));
  if (StartsWithIgnoringCase(text, kScheme)) {
    text.remove_prefix(kScheme.size());
    const std::size_t end = text.find('/');
    target.authority = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end);
    if (target.authority.empty()) return std::nullopt;
    if (text.empty()) text = "/";
  }
  if (text.empty() || text[0] != '/' || text.find('#') != std::string_view::npos) {
    return std::nullopt;
  }
  auto path = UndoEscapes(text);
  if (!path || !StepsAreNames(*path)) return std::nullopt;
  target.path = std::move(*path);
  return target;
}

}  // namespace offplumb::server
