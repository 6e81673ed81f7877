#include "ports/files/toml_slip.h"

#include <algorithm>
#include <cctype>
#include <cstddef>
#include <cstdlib>
#include <iterator>

#include <fmt/format.h>

#include "answers/units/words.h"

namespace offplumb::ports {
namespace {

using answers::Trim;

constexpr auto kNone = std::string_view::npos;
constexpr std::string_view kBlanks = " \t\r";

/// What a person wrote, without quotes around it, fit for a message.
std::string Printable(std::string_view text) {
  const std::string quoted = answers::Quoted(Trim(text));
  return quoted.substr(1, quoted.size() - 2);
}

bool IsKeyLetter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '-' || c == '.';
}

bool IsQuote(char c) { return c == '"' || c == '\''; }

std::size_t SkipBlanks(std::string_view line, std::size_t at) {
  return std::min(line.find_first_not_of(kBlanks, at), line.size());
}

std::size_t KeyEnd(std::string_view line, std::size_t at) {
  while (at < line.size() && IsKeyLetter(line[at])) ++at;
  return at;
}

/// Index of the quote that closes the string opened at `start`; kNone if there is none.
std::size_t ClosingQuote(std::string_view line, std::size_t start) {
  for (std::size_t i = start + 1; i < line.size(); ++i) {
    if (line[i] == '\\' && line[start] == '"') {
      ++i;
    } else if (line[i] == line[start]) {
      return i;
    }
  }
  return kNone;
}

std::string WithoutQuotes(std::string_view text) {
  std::string bare;
  std::copy_if(text.begin(), text.end(), std::back_inserter(bare),
               [](char c) { return !IsQuote(c); });
  return std::string(Trim(bare));
}

bool IsNumberOrDate(const std::string& value) {
  char* end = nullptr;
  std::strtod(value.c_str(), &end);
  if (end == value.c_str() + value.size()) return true;
  return value.find_first_not_of("0123456789+-_:.TZ ") == std::string::npos;
}

/// The flag a person means by "yes" or "False"; empty for any other word.
std::string_view FlagMeant(std::string_view word) {
  for (const std::string_view yes : {"true", "yes", "on"}) {
    if (answers::SameWord(word, yes)) return "true";
  }
  for (const std::string_view no : {"false", "no", "off"}) {
    if (answers::SameWord(word, no)) return "false";
  }
  return {};
}

/// A value as it stands in its line: from `start` to the comma, brace, bracket or remark behind it.
struct Value {
  std::string_view key;
  std::string_view text;
  bool in_braces = false;
};

TomlSlip Say(const Value& value, std::string_view what, std::string_view right) {
  return {0, fmt::format("{} = {}", value.key, Printable(value.text)),
          fmt::format("{}: {} = {}.", what, value.key, right)};
}

/// A value that is no string, list, table, number, date or flag.
std::optional<TomlSlip> SlipOfBareValue(const Value& value) {
  const std::string bare = WithoutQuotes(value.text);
  if (bare.empty() || bare.find('\\') != std::string::npos) return std::nullopt;
  if (!value.in_braces && value.text.back() == '}') {
    return Say(value, "The opening { is missing", "{ " + Printable(value.text));
  }
  if (bare.find_first_of("={}") != std::string::npos) return std::nullopt;
  const std::string_view flag = FlagMeant(value.text);
  if (!flag.empty()) {
    return Say(value, "Write true or false, in small letters and without quotes", flag);
  }
  const bool opened = IsQuote(value.text.front());
  const bool closed = opened && ClosingQuote(value.text, 0) != kNone;
  return Say(value, opened && !closed ? "The closing quote is missing" : "Put the value in quotes",
             answers::Quoted(bare));
}

/// Walks one line, key by key.
class LineWalk {
 public:
  explicit LineWalk(std::string_view line) : line_(line) {}

  std::optional<TomlSlip> Find() {
    while (at_ < line_.size() && line_[at_] != '#') {
      if (auto slip = Step()) return slip;
    }
    if (braces_ <= 0) return std::nullopt;
    return TomlSlip{0, Printable(line_.substr(0, at_)),
                    "The closing } is missing at the end of the line."};
  }

 private:
  std::optional<TomlSlip> Step() {
    const char c = line_[at_];
    if (IsKeyLetter(c)) return StepOverKey();
    if (IsQuote(c)) {
      const std::size_t close = ClosingQuote(line_, at_);
      at_ = close == kNone ? line_.size() : close + 1;
      return std::nullopt;
    }
    if (c == '{') ++braces_;
    if (c == '}') --braces_;
    ++at_;
    return std::nullopt;
  }

  std::optional<TomlSlip> StepOverKey() {
    const std::size_t key_end = KeyEnd(line_, at_);
    const std::string_view key = line_.substr(at_, key_end - at_);
    at_ = SkipBlanks(line_, key_end);
    if (at_ == line_.size() || line_[at_] != '=') return std::nullopt;
    at_ = SkipBlanks(line_, at_ + 1);
    if (at_ == line_.size()) return std::nullopt;
    return CheckValue(key);
  }

  /// `at_` is where a value starts; it is left there, or behind a string that is whole.
  std::optional<TomlSlip> CheckValue(std::string_view key) {
    const char first = line_[at_];
    if (first == '{' || first == '[') return std::nullopt;
    const std::size_t end = line_.find_first_of(braces_ > 0 ? ",}]#" : "#", at_);
    const Value value{key, Trim(line_.substr(at_, std::min(end, line_.size()) - at_)), braces_ > 0};
    if (value.text.empty()) return std::nullopt;
    if (IsQuote(first)) {
      if (const std::size_t behind = BehindWholeString(); behind != kNone) {
        at_ = behind;
        return std::nullopt;
      }
      return SlipOfBareValue(value);
    }
    at_ = std::min(end, line_.size());
    const std::string text(value.text);
    if (IsNumberOrDate(text) || text == "true" || text == "false") return std::nullopt;
    return SlipOfBareValue(value);
  }

  /// Index behind the string at `at_` if it is closed and nothing odd follows; else kNone.
  std::size_t BehindWholeString() const {
    const std::size_t close = ClosingQuote(line_, at_);
    if (close == kNone) return kNone;
    const std::size_t next = SkipBlanks(line_, close + 1);
    if (next == line_.size()) return close + 1;
    const std::string_view allowed = braces_ > 0 ? ",}]#" : "#";
    return allowed.find(line_[next]) == kNone ? kNone : close + 1;
  }

  std::string_view line_;
  std::size_t at_ = 0;
  int braces_ = 0;
};

/// A heading of riggers or clips with a bracket too few.
std::optional<TomlSlip> SlipOfHeading(std::string_view line) {
  const std::string_view heading = Trim(line.substr(0, line.find('#')));
  if (heading.empty() || (heading.front() != '[' && heading.back() != ']')) return std::nullopt;
  const std::size_t start =
      SkipBlanks(heading, std::min(heading.find_first_not_of("[ \t"), heading.size()));
  const std::string_view name = heading.substr(start, KeyEnd(heading, start) - start);
  if (name != "riggers" && name != "riggers.clips") return std::nullopt;
  const std::string right = fmt::format("[[{}]]", name);
  if (heading == right) return std::nullopt;
  return TomlSlip{0, Printable(heading),
                  fmt::format("Write two brackets on each side: {}.", right)};
}

/// `setback "20 ft"`.
std::optional<TomlSlip> SlipOfEquals(std::string_view line) {
  const std::string_view text = Trim(line);
  const std::size_t key_end = KeyEnd(text, 0);
  const std::size_t value = SkipBlanks(text, key_end);
  if (key_end == 0 || value == text.size() || value == key_end) return std::nullopt;
  if (!IsQuote(text[value]) || ClosingQuote(text, value) == kNone) return std::nullopt;
  const std::string_view written = text.substr(value, ClosingQuote(text, value) + 1 - value);
  return TomlSlip{0, Printable(text),
                  fmt::format("The equals sign is missing: {} = {}.", text.substr(0, key_end),
                              answers::Quoted(WithoutQuotes(written)))};
}

std::optional<TomlSlip> FindInLine(std::string_view line) {
  if (auto slip = SlipOfHeading(line)) return slip;
  if (auto slip = SlipOfEquals(line)) return slip;
  return LineWalk(line).Find();
}

/// Line `number` of a text, 1-based, without its end; empty beyond the last.
std::string_view LineAt(std::string_view text, int number) {
  for (int i = 1; i < number; ++i) {
    const std::size_t end = text.find('\n');
    if (end == kNone) return {};
    text.remove_prefix(end + 1);
  }
  const std::string_view line = text.substr(0, text.find('\n'));
  return line.substr(0, line.find_last_not_of(kBlanks) + 1);
}

/// How many more square brackets a line opens than it closes, outside strings and remarks.
int OpenedBrackets(std::string_view line) {
  int opened = 0;
  for (std::size_t i = 0; i < line.size() && line[i] != '#'; ++i) {
    if (IsQuote(line[i])) i = std::min(ClosingQuote(line, i), line.size() - 1);
    if (line[i] == '[') ++opened;
    if (line[i] == ']') --opened;
  }
  return opened;
}

bool StartsAnew(std::string_view line) {
  const std::string_view text = Trim(line);
  if (text.empty() || text.substr(0, 2) == "[[") return true;
  const std::size_t equals = SkipBlanks(text, KeyEnd(text, 0));
  return equals > 0 && equals < text.size() && text[equals] == '=';
}

/// A list that was opened above `line` and runs into the next key or heading.
std::optional<TomlSlip> FindOpenList(std::string_view text, int line) {
  if (!StartsAnew(LineAt(text, line))) return std::nullopt;
  int open = 0;
  int opened_at = 0;
  std::string_view rest = text;
  for (int number = 1; number < line && !rest.empty(); ++number) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    if (open <= 0) opened_at = number;
    open = std::max(0, open) + OpenedBrackets(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  if (open <= 0) return std::nullopt;
  return TomlSlip{opened_at, Printable(LineAt(text, opened_at)),
                  "The closing ] of this list is missing."};
}

}  // namespace

std::optional<TomlSlip> FindSlip(std::string_view text, int line) {
  if (auto slip = FindOpenList(text, line)) return slip;
  for (const int number : {line, line - 1}) {
    if (number < 1) continue;
    auto slip = FindInLine(LineAt(text, number));
    if (!slip) continue;
    slip->line = number;
    return slip;
  }
  return std::nullopt;
}

}  // namespace offplumb::ports
