#include "answers/asking/request_fields.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::answers {
namespace {

using Kind = JsonValue::Kind;

/// "0 to 4.47 m/s".
std::string RangeWords(const NumberRule& rule) {
  const std::string range = fmt::format("{:.6g} to {:.6g}", rule.range.low, rule.range.high);
  return rule.unit.empty() ? range : fmt::format("{} {}", range, rule.unit);
}

/// A value as it was written, short enough for a message.
std::string Written(const JsonValue& value) {
  switch (value.kind) {
    case Kind::kNull:
      return "null";
    case Kind::kFlag:
      return value.flag ? "true" : "false";
    case Kind::kNumber:
      return fmt::format("{:.10g}", value.number);
    case Kind::kText:
      return Quoted(value.text);
    case Kind::kList:
      return "a list";
    case Kind::kObject:
      break;
  }
  return "an object";
}

std::string Item(std::string_view key, std::size_t i) { return fmt::format("{}[{}]", key, i); }

}  // namespace

const JsonValue* RequestFields::Find(std::string_view key) const {
  const JsonValue* found = object_.Find(key);
  return found == nullptr || found->kind == Kind::kNull ? nullptr : found;
}

bool RequestFields::Given(std::string_view key) const { return object_.Find(key) != nullptr; }

std::string RequestFields::PathOf(std::string_view key) const {
  if (key.empty()) return path_;
  return path_.empty() ? std::string(key) : fmt::format("{}.{}", path_, key);
}

void RequestFields::Fail(std::string_view key, std::string message, std::string remedy) const {
  if (first_) return;
  first_ =
      Problem{ProblemKind::kBadInput, PathOf(key), std::move(message), std::move(remedy), {}, 0};
}

void RequestFields::Fail(const Problem& problem) const {
  if (!first_) first_ = problem;
}

void RequestFields::Fail(std::string_view key, const Problem& problem) const {
  if (first_) return;
  first_ = problem;
  first_->subject = PathOf(key);
}

void RequestFields::Require(std::string_view key, std::string_view what,
                            std::string_view example) const {
  if (Has(key)) return;
  Fail(key, fmt::format("{} is missing.", what), fmt::format("Give it: \"{}\": {}.", key, example));
}

void RequestFields::CheckKeys(std::span<const std::string_view> keys,
                              std::string_view where) const {
  for (const std::string& key : object_.keys) {
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
    const std::string nearest = tackle::NearestWord(key, {keys.begin(), keys.end()});
    const std::string meant =
        nearest.empty() ? std::string() : fmt::format(" Did you mean {}?", Quoted(nearest));
    const std::vector<std::string_view> known(keys.begin(), keys.end());
    Fail(Quoted(key), fmt::format("There is no such key in {}.{}", where, meant),
         fmt::format("The keys are {}.", JoinWords(known, "and")));
  }
}

void RequestFields::WrongKind(std::string_view key, const JsonValue& value,
                              std::string_view wanted) const {
  Fail(key, fmt::format("{} is not {}.", Written(value), wanted), fmt::format("Give {}.", wanted));
}

std::optional<double> RequestFields::NumberOf(std::string_view key, const JsonValue& value,
                                              const NumberRule& rule) const {
  const std::string wanted = fmt::format("a number, {}", RangeWords(rule));
  if (value.kind != Kind::kNumber) {
    WrongKind(key, value, wanted);
    return std::nullopt;
  }
  const double number = value.number;
  if (!(number >= rule.range.low && number <= rule.range.high)) {
    Fail(key, fmt::format("{} lies outside {}.", Written(value), RangeWords(rule)),
         fmt::format("Give {}.", wanted));
    return std::nullopt;
  }
  return number;
}

std::optional<double> RequestFields::Number(std::string_view key, const NumberRule& rule) const {
  const JsonValue* value = Find(key);
  return value == nullptr ? std::nullopt : NumberOf(key, *value, rule);
}

std::optional<int> RequestFields::Whole(std::string_view key, const NumberRule& rule) const {
  const auto number = Number(key, rule);
  if (!number) return std::nullopt;
  if (*number != std::floor(*number)) {
    WrongKind(key, *Find(key), fmt::format("a whole number, {}", RangeWords(rule)));
    return std::nullopt;
  }
  return static_cast<int>(*number);
}

const JsonValue* RequestFields::List(std::string_view key, std::string_view of,
                                     std::size_t most) const {
  const JsonValue* value = Find(key);
  if (value == nullptr) return nullptr;
  if (value->kind != Kind::kList) {
    WrongKind(key, *value, fmt::format("a list of {}", of));
    return nullptr;
  }
  if (value->items.size() > most) {
    Fail(key,
         fmt::format("The list has {} {}; it may have at most {}.", value->items.size(), of, most),
         "Leave some out.");
    return nullptr;
  }
  return value;
}

std::vector<double> RequestFields::Numbers(std::string_view key, const NumberRule& rule,
                                           std::size_t most) const {
  std::vector<double> numbers;
  const JsonValue* list = List(key, "numbers", most);
  if (list == nullptr) return numbers;
  for (std::size_t i = 0; i < list->items.size(); ++i) {
    const auto number = NumberOf(Item(key, i), list->items[i], rule);
    if (number) numbers.push_back(*number);
  }
  return numbers;
}

std::optional<bool> RequestFields::Flag(std::string_view key) const {
  const JsonValue* value = Find(key);
  if (value == nullptr) return std::nullopt;
  if (value->kind == Kind::kFlag) return value->flag;
  WrongKind(key, *value, "true or false");
  return std::nullopt;
}

std::optional<std::string> RequestFields::Text(std::string_view key) const {
  const JsonValue* value = Find(key);
  if (value == nullptr) return std::nullopt;
  if (value->kind == Kind::kText) return value->text;
  WrongKind(key, *value, "a text");
  return std::nullopt;
}

std::vector<std::string> RequestFields::Texts(std::string_view key, std::size_t most) const {
  std::vector<std::string> texts;
  const JsonValue* list = List(key, "texts", most);
  if (list == nullptr) return texts;
  for (std::size_t i = 0; i < list->items.size(); ++i) {
    const JsonValue& item = list->items[i];
    if (item.kind == Kind::kText) {
      texts.push_back(item.text);
    } else {
      WrongKind(Item(key, i), item, "a text");
    }
  }
  return texts;
}

std::optional<std::size_t> RequestFields::Word(std::string_view key,
                                               std::span<const std::string_view> words) const {
  const auto text = Text(key);
  if (!text) return std::nullopt;
  const auto found = std::find(words.begin(), words.end(), *text);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  Fail(key, fmt::format("{} is not a choice.", Quoted(*text)),
       fmt::format("Write {}.", JoinWords({words.begin(), words.end()}, "or")));
  return std::nullopt;
}

std::optional<RequestFields> RequestFields::Object(std::string_view key) const {
  const JsonValue* value = Find(key);
  if (value == nullptr) return std::nullopt;
  if (value->kind == Kind::kObject) return RequestFields(*value, PathOf(key), first_);
  WrongKind(key, *value, "an object");
  return std::nullopt;
}

std::vector<RequestFields> RequestFields::Objects(std::string_view key, std::size_t most) const {
  std::vector<RequestFields> objects;
  const JsonValue* list = List(key, "objects", most);
  if (list == nullptr) return objects;
  for (std::size_t i = 0; i < list->items.size(); ++i) {
    const JsonValue& item = list->items[i];
    if (item.kind == Kind::kObject) {
      objects.emplace_back(item, PathOf(Item(key, i)), first_);
    } else {
      WrongKind(Item(key, i), item, "an object");
    }
  }
  return objects;
}

}  // namespace offplumb::answers
