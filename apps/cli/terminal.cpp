#include "apps/cli/terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

#include <fmt/format.h>

namespace offplumb::cli {
namespace {

/// Width of a text that goes to a file or another program.
constexpr std::size_t kFileWidth = 100;
constexpr std::size_t kNarrowest = 40;
constexpr std::size_t kWidest = 120;

std::size_t TerminalWidth() {
  winsize size{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return 80;
  return std::clamp<std::size_t>(size.ws_col, kNarrowest, kWidest);
}

std::string_view Escape(char mark) {
  if (mark == kStrong[0]) return "\033[1m";
  if (mark == kFaint[0]) return "\033[2m";
  return "\033[0m";
}

bool IsMark(char c) { return c == kStrong[0] || c == kFaint[0] || c == kPlain[0]; }

bool IsControl(unsigned char c) { return (c < 0x20 && c != '\n') || c == 0x7f; }

/// U+0080 to U+009F, which some terminals obey.
bool IsHighControl(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]) == 0xC2 && at + 1 < text.size() &&
         static_cast<unsigned char>(text[at + 1]) < 0xA0;
}

}  // namespace

Screen StandardOutput() {
  if (isatty(STDOUT_FILENO) == 0) return {false, kFileWidth};
  const char* no_colour = std::getenv("NO_COLOR");
  return {no_colour == nullptr || *no_colour == '\0', TerminalWidth()};
}

std::string Render(std::string_view text, bool colour) {
  std::string shown;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (IsMark(text[i])) {
      if (colour) shown += Escape(text[i]);
    } else if (IsHighControl(text, i)) {
      shown += '?';
      ++i;
    } else {
      shown += IsControl(static_cast<unsigned char>(text[i])) ? '?' : text[i];
    }
  }
  return shown;
}

std::size_t LettersIn(std::string_view text) {
  // Bytes 10xxxxxx continue a letter.
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80 && !IsMark(c);
  }));
}

std::string Wrap(std::string_view text, std::size_t width, std::size_t hang) {
  std::string wrapped;
  std::size_t column = 0;
  while (!text.empty()) {
    const std::size_t end = text.find(' ');
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    if (column > 0 && column + 1 + LettersIn(word) > width) {
      wrapped += "\n" + std::string(hang, ' ');
      column = hang;
    } else if (column > 0) {
      wrapped += ' ';
      ++column;
    }
    wrapped += word;
    column += LettersIn(word);
  }
  return wrapped;
}

ProgressBar::ProgressBar()
    : start_(std::chrono::steady_clock::now()), terminal_(isatty(STDERR_FILENO) != 0) {}

ProgressBar::~ProgressBar() {
  if (shown_) std::fputs("\r\033[K", stderr);
}

void ProgressBar::Show(double done) {
  constexpr int kCells = 40;
  constexpr std::chrono::seconds kPatience{1};
  if (!terminal_ || std::chrono::steady_clock::now() - start_ < kPatience) return;
  const int full = static_cast<int>(std::lround(std::clamp(done, 0.0, 1.0) * kCells));
  std::fputs(
      fmt::format("\r[{:=<{}}{: <{}}] {:3.0f} %", "", full, "", kCells - full, 100 * done).c_str(),
      stderr);
  shown_ = true;
}

}  // namespace offplumb::cli
