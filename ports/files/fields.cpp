#include "ports/files/fields.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::ports {
namespace {

using answers::Quoted;

/// A text stands for the table { from = text }.
TomlValue AsTable(const TomlValue& value) {
  if (value.kind != TomlValue::Kind::kText) return value;
  TomlValue table;
  table.kind = TomlValue::Kind::kTable;
  table.line = value.line;
  table.keys.push_back("from");
  table.items.push_back(value);
  return table;
}

std::string_view FirstUnitName(answers::Dimension dimension) {
  for (const answers::Unit& unit : answers::Units()) {
    if (unit.dimension == dimension) return unit.name;
  }
  return "";
}

bool Contains(Keys keys, std::string_view key) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

std::string List(Keys keys) {
  return answers::JoinWords(std::vector<std::string_view>(keys.begin(), keys.end()), "or");
}

/// The value of a length that orders a list; a wrong or missing one goes last and is refused when
/// it is read.
double OrderOf(const TomlValue& item, std::string_view key) {
  const TomlValue* value = item.Find(key);
  if (value == nullptr) return std::numeric_limits<double>::infinity();
  return answers::ParseQuantity(value->text, answers::Dimension::kLength, key)
      .value_or(std::numeric_limits<double>::infinity());
}

}  // namespace

void Report::Fail(std::string subject, int line, std::string message, std::string remedy) {
  if (first_) return;
  first_ = Problem{ProblemKind::kBadInput,
                   std::move(subject),
                   std::move(message),
                   std::move(remedy),
                   file_,
                   line};
}

void Report::Fail(const Problem& problem, std::string subject, int line) {
  Fail(std::move(subject), line, problem.message, problem.remedy);
}

Fields::Fields(Report& report, const TomlValue& value, std::string path, Keys keys)
    : report_(&report), table_(AsTable(value)), path_(std::move(path)) {
  for (const std::string& key : table_.keys) report_->Place(PathOf(key), LineOf(key));
  CheckKeys(keys);
}

void Fields::CheckKeys(Keys keys) const {
  for (const std::string& key : table_.keys) {
    if (Contains(keys, key)) continue;
    const std::string near =
        tackle::NearestWord(key, std::vector<std::string>(keys.begin(), keys.end()));
    const std::string meant = near.empty() ? "" : fmt::format("Did you mean \"{}\"? ", near);
    Fail(key, fmt::format("There is no key {} here.", Quoted(key)),
         fmt::format("{}Allowed here: {}.", meant, List(keys)));
  }
}

std::string Fields::PathOf(std::string_view key) const {
  return path_.empty() ? std::string(key) : fmt::format("{}.{}", path_, key);
}

int Fields::LineOf(std::string_view key) const {
  const TomlValue* value = table_.Find(key);
  return value != nullptr ? value->line : table_.line;
}

void Fields::Fail(std::string_view key, std::string message, std::string remedy) const {
  report_->Fail(PathOf(key), LineOf(key), std::move(message), std::move(remedy));
}

void Fields::Fail(std::string_view key, const Problem& problem) const {
  report_->Fail(problem, PathOf(key), LineOf(key));
}

void Fields::FailMissing(std::string_view key, std::string_view example) const {
  Fail(key, fmt::format("\"{}\" is missing.", key), fmt::format("Write, for example: {}", example));
}

const TomlValue* Fields::Get(std::string_view key, TomlValue::Kind kind,
                             std::string_view wanted) const {
  const TomlValue* value = table_.Find(key);
  if (value == nullptr || value->kind == kind) return value;
  Fail(key, fmt::format("\"{}\" is {}; it must be {}.", key, KindName(value->kind), KindName(kind)),
       fmt::format("Write {}.", wanted));
  return nullptr;
}

bool Fields::IsWord(std::string_view key, std::string_view word) const {
  const TomlValue* value = table_.Find(key);
  return value != nullptr && value->kind == TomlValue::Kind::kText &&
         answers::SameWord(answers::Trim(value->text), word);
}

std::optional<std::string> Fields::Text(std::string_view key) const {
  const TomlValue* value = Get(key, TomlValue::Kind::kText, "it in quotes");
  if (value == nullptr) return std::nullopt;
  if (answers::Trim(value->text).empty()) {
    Fail(key, fmt::format("\"{}\" is empty.", key),
         "Write something in the quotes or leave the key out.");
    return std::nullopt;
  }
  return value->text;
}

std::optional<bool> Fields::Flag(std::string_view key) const {
  const TomlValue* value = Get(key, TomlValue::Kind::kFlag, "true or false, without quotes");
  return value == nullptr ? std::nullopt : std::optional(value->flag);
}

std::optional<double> Fields::Number(std::string_view key, answers::Range range) const {
  const TomlValue* value =
      Get(key, TomlValue::Kind::kNumber, "a plain number without quotes, such as 1.2");
  if (value == nullptr) return std::nullopt;
  if (value->number >= range.low && value->number <= range.high) return value->number;
  Fail(key,
       fmt::format("{} is out of range: it must be from {} to {}.", value->number, range.low,
                   range.high),
       "Correct the number; it has no unit.");
  return std::nullopt;
}

std::optional<double> Fields::Quantity(std::string_view key, const QuantityRule& rule) const {
  const TomlValue* written = table_.Find(key);
  if (written != nullptr && written->kind == TomlValue::Kind::kNumber) {
    Fail(key, fmt::format("{} has no unit.", written->number),
         fmt::format("Write number and unit in quotes, such as \"{} {}\". Units: {}.",
                     written->number, FirstUnitName(rule.dimension),
                     answers::UnitNames(rule.dimension)));
    return std::nullopt;
  }
  const TomlValue* value = Get(key, TomlValue::Kind::kText, "number and unit in quotes");
  if (value == nullptr) return std::nullopt;
  const auto quantity = answers::ParseQuantityWithin(value->text, rule.dimension, rule.range, key);
  if (quantity) return *quantity;
  Fail(key, quantity.error());
  return std::nullopt;
}

double Fields::Required(std::string_view key, const QuantityRule& rule,
                        std::string_view example) const {
  if (!Has(key)) FailMissing(key, example);
  return Quantity(key, rule).value_or(0.0);
}

std::optional<Fields> Fields::Part(std::string_view key, Keys keys) const {
  const TomlValue* value = table_.Find(key);
  if (value == nullptr) return std::nullopt;
  const bool shorthand = value->kind == TomlValue::Kind::kText && Contains(keys, "from");
  if (!shorthand && Get(key, TomlValue::Kind::kTable, "its keys in braces: { ... }") == nullptr) {
    return std::nullopt;
  }
  return Fields(*report_, *value, PathOf(key), keys);
}

std::vector<Fields> Fields::Parts(std::string_view key, Keys keys,
                                  std::string_view order_by) const {
  const TomlValue* list =
      Get(key, TomlValue::Kind::kList, "each one under a heading of its own, in double brackets");
  if (list == nullptr) return {};
  std::vector<TomlValue> items = list->items;
  if (!order_by.empty()) {
    std::stable_sort(items.begin(), items.end(),
                     [order_by](const TomlValue& a, const TomlValue& b) {
                       return OrderOf(a, order_by) < OrderOf(b, order_by);
                     });
  }
  std::vector<Fields> parts;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string path = fmt::format("{}[{}]", PathOf(key), i);
    report_->Place(path, items[i].line);
    if (items[i].kind != TomlValue::Kind::kTable) {
      report_->Fail(path, items[i].line,
                    fmt::format("This is {}; it must be a table.", KindName(items[i].kind)),
                    "Write its keys in braces: { ... }.");
      continue;
    }
    parts.emplace_back(*report_, items[i], path, keys);
  }
  return parts;
}

}  // namespace offplumb::ports
