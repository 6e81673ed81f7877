#include "ports/files/json_document.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "answers/units/words.h"

namespace offplumb::ports {
namespace {

using Json = nlohmann::ordered_json;
using Kind = TomlValue::Kind;

/// Takes the parser's events and builds the values. The names of the functions are the library's.
class Builder {
 public:
  explicit Builder(std::string_view subject) : subject_(subject) {}

  bool null() {
    if (open_.empty() || open_.back().value.kind == Kind::kTable) return Skip();
    return Refuse("A list holds null.", "Leave it out of the list.");
  }
  bool boolean(bool flag) {
    TomlValue value;
    value.kind = Kind::kFlag;
    value.flag = flag;
    return Add(std::move(value));
  }
  bool number_integer(std::int64_t number) { return AddNumber(static_cast<double>(number)); }
  bool number_unsigned(std::uint64_t number) { return AddNumber(static_cast<double>(number)); }
  bool number_float(double number, const std::string&) { return AddNumber(number); }
  bool string(std::string& text) {
    const bool in_table = !open_.empty() && open_.back().value.kind == Kind::kTable;
    if (text.empty() && in_table) return Skip();
    TomlValue value;
    value.kind = Kind::kText;
    value.text = text;
    return Add(std::move(value));
  }
  bool binary(Json::binary_t&) { return false; }  // JSON has none.

  bool start_object(std::size_t) { return Open(Kind::kTable); }
  bool key(std::string& key) {
    const std::vector<std::string>& seen = open_.back().seen;
    const bool twice = std::find(seen.begin(), seen.end(), key) != seen.end();
    open_.back().seen.push_back(key);
    if (twice)
      return Refuse(fmt::format("The key {} is there twice.", answers::Quoted(key)),
                    "Leave one of them out.");
    if (seen.size() <= kMostJsonItems) return true;
    return RefuseCrowd();
  }
  bool end_object() { return Close(); }
  bool start_array(std::size_t) { return Open(Kind::kList); }
  bool end_array() { return Close(); }

  bool parse_error(std::size_t position, const std::string&, const Json::exception& error) {
    constexpr int kOutOfRange = 406;
    if (error.id == kOutOfRange) {
      return Refuse("A number is too large.", "Correct the number.");
    }
    path_at_fault_.clear();
    return Say(fmt::format("This is not JSON: it breaks off or goes wrong at byte {}.", position),
               "Send a JSON object.");
  }

  std::optional<JsonProblem> problem() && {
    if (!problem_) return std::nullopt;
    return JsonProblem{std::move(*problem_), std::move(path_at_fault_)};
  }
  TomlValue& root() { return root_; }

 private:
  /// A table or list that is not closed yet.
  struct Container {
    TomlValue value;
    std::vector<std::string> seen;  ///< Keys of a table so far; the last is the value's to come.
  };

  bool Skip() { return true; }

  bool AddNumber(double number) {
    TomlValue value;
    value.kind = Kind::kNumber;
    value.number = number;
    return Add(std::move(value));
  }

  bool Add(TomlValue value) {
    if (open_.empty()) {
      root_ = std::move(value);
      return true;
    }
    Container& parent = open_.back();
    if (parent.value.items.size() >= kMostJsonItems) return RefuseCrowd();
    if (parent.value.kind == Kind::kTable) parent.value.keys.push_back(parent.seen.back());
    parent.value.items.push_back(std::move(value));
    return true;
  }

  bool Open(Kind kind) {
    if (open_.size() >= kDeepestJson) {
      return Refuse(fmt::format("This is nested more than {} deep.", kDeepestJson),
                    "A rig needs six levels.");
    }
    open_.emplace_back();
    open_.back().value.kind = kind;
    return true;
  }

  bool Close() {
    TomlValue value = std::move(open_.back().value);
    open_.pop_back();
    return Add(std::move(value));
  }

  /// The key of the value that is being read.
  std::string Path() const {
    std::string path;
    for (const Container& container : open_) {
      if (container.value.kind == Kind::kList) {
        path += fmt::format("[{}]", container.value.items.size());
      } else if (!container.seen.empty()) {
        path += path.empty() ? container.seen.back() : "." + container.seen.back();
      }
    }
    return path;
  }

  bool RefuseCrowd() {
    return Refuse(fmt::format("This has more than {} items.", kMostJsonItems), "Leave some out.");
  }

  bool Refuse(std::string message, std::string remedy) {
    path_at_fault_ = Path();
    return Say(std::move(message), std::move(remedy));
  }

  bool Say(std::string message, std::string remedy) {
    std::string subject = path_at_fault_.empty() ? subject_ : path_at_fault_;
    problem_ = Problem{
        ProblemKind::kBadInput, std::move(subject), std::move(message), std::move(remedy), {}, 0};
    return false;
  }

  std::string subject_;
  std::vector<Container> open_;
  TomlValue root_;
  std::optional<Problem> problem_;
  std::string path_at_fault_;
};

tl::unexpected<JsonProblem> Refuse(std::string_view subject, std::string message,
                                   std::string remedy) {
  return tl::unexpected(JsonProblem{Problem{ProblemKind::kBadInput,
                                            std::string(subject),
                                            std::move(message),
                                            std::move(remedy),
                                            {},
                                            0},
                                    {}});
}

}  // namespace

tl::expected<TomlValue, JsonProblem> ParseJson(std::string_view text, std::string_view subject) {
  if (text.size() > kMostJsonBytes) {
    return Refuse(
        subject,
        fmt::format("The text has {} bytes; at most {} are read.", text.size(), kMostJsonBytes),
        "A rig needs far fewer.");
  }
  Builder builder(subject);
  builder.root().kind = Kind::kText;  // Until a table takes its place.
  (void)Json::sax_parse(text, &builder);
  TomlValue root = std::move(builder.root());
  if (auto problem = std::move(builder).problem()) return tl::unexpected(std::move(*problem));
  if (root.kind == Kind::kTable) return root;
  return Refuse(subject, "This is no JSON object.", "Send an object: { \"riggers\": [ ... ] }.");
}

}  // namespace offplumb::ports
