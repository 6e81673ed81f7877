#include "ports/files/toml_guard.h"

#include <algorithm>
#include <cstddef>
#include <string>

#include <fmt/format.h>

namespace offplumb::ports {
namespace {

/// More dots in a line than any key has. The library builds and clears tables by recursion, one
/// level a dot; this and its own limit on brackets (256) keep the stack within 2 MB.
constexpr int kMostDotsInALine = 12;

constexpr std::string_view kRemedy = "Give a text file as docs/rig-file.md describes.";
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

/// What stands in a line outside quotes and remarks.
struct LineScan {
  int dots = 0;
  bool beyond_ascii = false;
  bool triple_quote = false;
};

/// Index behind the string that opens at `start`; the line's end if it is not closed. In double
/// quotes a backslash takes the next character with it.
std::size_t EndOfString(std::string_view line, std::size_t start) {
  const char quote = line[start];
  for (std::size_t i = start + 1; i < line.size(); ++i) {
    if (line[i] == '\\' && quote == '"') {
      ++i;
    } else if (line[i] == quote) {
      return i + 1;
    }
  }
  return line.size();
}

bool IsTripleQuote(std::string_view line, std::size_t at) {
  const std::string_view three = line.substr(at, 3);
  return three == "\"\"\"" || three == "'''";
}

LineScan Scan(std::string_view line) {
  LineScan scan;
  for (std::size_t i = 0; i < line.size() && line[i] != '#';) {
    if (line[i] == '"' || line[i] == '\'') {
      scan.triple_quote = scan.triple_quote || IsTripleQuote(line, i);
      i = EndOfString(line, i);
      continue;
    }
    if (line[i] == '.') ++scan.dots;
    if (static_cast<unsigned char>(line[i]) >= 0x80) scan.beyond_ascii = true;
    ++i;
  }
  return scan;
}

Problem At(std::string_view file, int line, std::string message, std::string_view remedy) {
  return {ProblemKind::kBadInput, "file", std::move(message), std::string(remedy),
          std::string(file),      line};
}

std::optional<Problem> FindInLine(std::string_view line, std::string_view file, int number) {
  if (line.find('\0') != std::string_view::npos) {
    return At(file, number, "This is not a text file: it holds a zero byte.", kRemedy);
  }
  const LineScan scan = Scan(line);
  if (scan.triple_quote) {
    return At(file, number, "A text in triple quotes may run over lines; no key here takes one.",
              "Use single pairs of quotes.");
  }
  if (scan.beyond_ascii) {
    return At(file, number,
              "There is a letter outside quotes that is not plain ASCII, or the quotes are curly.",
              "Put texts in straight quotes: \"...\".");
  }
  if (scan.dots > kMostDotsInALine) {
    return At(file, number, fmt::format("The line has more than {} dots.", kMostDotsInALine),
              "Write it as several lines.");
  }
  return std::nullopt;
}

}  // namespace

std::optional<Problem> FindUnreadable(std::string_view text, std::string_view file_name) {
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) {
    text.remove_prefix(kByteOrderMark.size());
  }
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    return At(file_name, 0, "The file is empty.", kRemedy);
  }
  int number = 1;
  for (std::size_t start = 0; start < text.size(); ++number) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    if (auto problem = FindInLine(text.substr(start, end - start), file_name, number))
      return problem;
    start = end + 1;
  }
  return std::nullopt;
}

}  // namespace offplumb::ports
