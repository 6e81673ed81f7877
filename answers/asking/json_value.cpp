#include "answers/asking/json_value.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "answers/units/words.h"

namespace offplumb::answers {
namespace {

using Kind = JsonValue::Kind;
using Library = nlohmann::ordered_json;

constexpr const char* kRemedy = "Write one JSON object (RFC 8259), in UTF-8.";

/// "line 2, column 17". \param byte counted from 1.
std::string PlaceOf(std::string_view text, std::size_t byte) {
  const std::string_view before = text.substr(0, byte > 0 ? byte - 1 : 0);
  const auto lines = std::count(before.begin(), before.end(), '\n');
  const std::size_t start = lines == 0 ? 0 : before.rfind('\n') + 1;
  return fmt::format("line {}, column {}", lines + 1, before.size() - start + 1);
}

/// Takes the parser's events and builds the values. The names of the functions are the library's.
class Builder {
 public:
  explicit Builder(std::string_view text) : text_(text) {}

  bool null() { return Add({}); }
  bool boolean(bool flag) {
    JsonValue value;
    value.kind = Kind::kFlag;
    value.flag = flag;
    return Add(std::move(value));
  }
  bool number_integer(std::int64_t number) { return AddNumber(static_cast<double>(number)); }
  bool number_unsigned(std::uint64_t number) { return AddNumber(static_cast<double>(number)); }
  bool number_float(double number, const std::string&) { return AddNumber(number); }
  bool string(std::string& text) {
    JsonValue value;
    value.kind = Kind::kText;
    value.text = std::move(text);
    return Add(std::move(value));
  }
  bool binary(Library::binary_t&) { return false; }  // JSON has none.

  bool start_object(std::size_t) { return Open(Kind::kObject); }
  bool key(std::string& key) {
    std::vector<std::string>& keys = open_.back().keys;
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) {
      return Refuse(fmt::format("The key {} is there twice.", Quoted(key)),
                    "Leave one of them out.");
    }
    keys.push_back(std::move(key));
    return true;
  }
  bool end_object() { return Close(); }
  bool start_array(std::size_t) { return Open(Kind::kList); }
  bool end_array() { return Close(); }

  bool parse_error(std::size_t byte, const std::string&, const Library::exception& error) {
    constexpr int kOutOfRange = 406;
    if (error.id == kOutOfRange) return Refuse("A number in it is too large to be one.", kRemedy);
    return Refuse(fmt::format("It is no JSON: see {}.", PlaceOf(text_, byte)), kRemedy);
  }

  [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }
  JsonValue& root() { return root_; }
  bool Refuse(std::string message, std::string remedy) {
    if (!problem_) {
      problem_ =
          Problem{ProblemKind::kBadInput, "request", std::move(message), std::move(remedy), {}, 0};
    }
    return false;
  }

 private:
  bool AddNumber(double number) {
    JsonValue value;
    value.kind = Kind::kNumber;
    value.number = number;
    return Add(std::move(value));
  }

  bool Add(JsonValue value) {
    if (++values_ > kMostJsonValues) {
      return Refuse(fmt::format("It holds more than {} values.", kMostJsonValues), {});
    }
    if (open_.empty()) {
      root_ = std::move(value);
    } else {
      open_.back().items.push_back(std::move(value));
    }
    return true;
  }

  bool Open(Kind kind) {
    if (open_.size() >= kDeepestJson) {
      return Refuse(fmt::format("It is nested more than {} deep.", kDeepestJson), kRemedy);
    }
    open_.emplace_back().kind = kind;
    return true;
  }

  bool Close() {
    JsonValue value = std::move(open_.back());
    open_.pop_back();
    return Add(std::move(value));
  }

  std::string_view text_;
  JsonValue root_;
  std::vector<JsonValue> open_;  ///< Objects and lists that are not closed yet.
  std::size_t values_ = 0;
  std::optional<Problem> problem_;
};

/// Writes a value into an object, or, with no key, into a list.
void WriteValue(const std::string_view* key, const JsonValue& value, JsonWriter& json) {
  switch (value.kind) {
    case Kind::kNull:
      return key != nullptr ? json.Null(*key) : json.NullItem();
    case Kind::kFlag:
      return key != nullptr ? json.Flag(*key, value.flag) : json.FlagItem(value.flag);
    case Kind::kNumber:
      return key != nullptr ? json.Number(*key, value.number) : json.NumberItem(value.number);
    case Kind::kText:
      return key != nullptr ? json.Text(*key, value.text) : json.TextItem(value.text);
    case Kind::kList:
      key != nullptr ? json.List(*key) : json.ListItem();
      for (const JsonValue& item : value.items) WriteValue(nullptr, item, json);
      return json.End();
    case Kind::kObject:
      key != nullptr ? json.Object(*key) : json.ObjectItem();
      for (std::size_t i = 0; i < value.items.size(); ++i) {
        const std::string_view inner = value.keys[i];
        WriteValue(&inner, value.items[i], json);
      }
      return json.End();
  }
}

}  // namespace

const JsonValue* JsonValue::Find(std::string_view key) const {
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (keys[i] == key) return &items[i];
  }
  return nullptr;
}

Expected<JsonValue> ParseJsonObject(std::string_view text) {
  Builder builder(text);
  if (text.size() > kLongestJson) {
    builder.Refuse(fmt::format("It has {} bytes; at most {} are read.", text.size(), kLongestJson),
                   {});
  } else if (Library::sax_parse(text, &builder) && builder.root().kind != Kind::kObject) {
    builder.Refuse("It is JSON, but no object.", kRemedy);
  }
  if (builder.problem()) return tl::unexpected<Problem>(*builder.problem());
  return std::move(builder.root());
}

void WriteJson(std::string_view key, const JsonValue& object, JsonWriter& json) {
  WriteValue(&key, object, json);
}

}  // namespace offplumb::answers
