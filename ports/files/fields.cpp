#include "ports/files/fields.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <numeric>
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

/// The items of a list in the order of a length; as written when there is none to order by.
std::vector<std::size_t> OrderOfItems(const std::vector<TomlValue>& items, std::string_view key) {
  std::vector<std::size_t> order(items.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  if (key.empty()) return order;
  std::stable_sort(order.begin(), order.end(), [&items, key](std::size_t a, std::size_t b) {
    return OrderOf(items[a], key) < OrderOf(items[b], key);
  });
  return order;
}

/// What one item of a list is called.
std::string_view ItemWord(std::string_view key) {
  if (key == "riggers") return "rigger";
  if (key == "clips") return "clip";
  if (key == "counter_marks") return "counter mark";
  return key == "points" ? "point" : key;
}

}  // namespace

void Report::Fail(Culprit culprit, std::string message, std::string remedy) {
  if (first_) return;
  first_ = Problem{ProblemKind::kBadInput,
                   std::move(culprit.subject),
                   std::move(message),
                   std::move(remedy),
                   file_,
                   culprit.line};
  first_path_ = std::move(culprit.path);
}

void Report::Fail(Culprit culprit, const Problem& problem) {
  Fail(std::move(culprit), problem.message, problem.remedy);
}

Fields::Fields(Report& report, const TomlValue& value, TablePath path, Keys keys, std::string owner)
    : report_(&report), table_(AsTable(value)), path_(std::move(path)), owner_(std::move(owner)) {
  for (std::size_t i = 0; i < table_.keys.size(); ++i) {
    report_->Place(PathOf(table_.keys[i]).sorted, table_.items[i].line);
  }
  CheckKeys(keys);
}

/// The first unknown key is told; more of them would not be.
void Fields::CheckKeys(Keys keys) const {
  const auto unknown =
      std::find_if_not(table_.keys.begin(), table_.keys.end(),
                       [keys](const std::string& key) { return Contains(keys, key); });
  if (unknown == table_.keys.end()) return;
  const std::string near =
      tackle::NearestWord(*unknown, std::vector<std::string>(keys.begin(), keys.end()));
  const std::string meant = near.empty() ? "" : fmt::format("Did you mean \"{}\"? ", near);
  Fail(*unknown, fmt::format("There is no key {} here.", Quoted(*unknown)),
       fmt::format("{}Allowed here: {}.", meant, List(keys)));
}

TablePath Fields::PathOf(std::string_view key) const {
  if (path_.sorted.empty()) return {std::string(key), std::string(key)};
  return {fmt::format("{}.{}", path_.sorted, key), fmt::format("{}.{}", path_.written, key)};
}

int Fields::LineOf(std::string_view key) const {
  const TomlValue* value = table_.Find(key);
  return value != nullptr ? value->line : table_.line;
}

std::string Fields::SubjectOf(std::string_view key) const {
  if (owner_.empty()) return PathOf(key).written;
  // What stands behind the last item of a list: the owner says the rest in words.
  const std::size_t behind = std::min(path_.written.rfind(']') + 2, path_.written.size());
  const std::string_view within = std::string_view(path_.written).substr(behind);
  return fmt::format("{}: {}{}{}", owner_, within, within.empty() ? "" : ".", key);
}

Report::Culprit Fields::CulpritAt(std::string_view key) const {
  return {SubjectOf(key), PathOf(key).written, LineOf(key)};
}

void Fields::Fail(std::string_view key, std::string message, std::string remedy) const {
  report_->Fail(CulpritAt(key), std::move(message), std::move(remedy));
}

void Fields::Fail(std::string_view key, const Problem& problem) const {
  report_->Fail(CulpritAt(key), problem);
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

std::string Fields::Written(std::string_view key) const {
  const TomlValue* value = table_.Find(key);
  if (value == nullptr || value->kind != TomlValue::Kind::kText) return {};
  return std::string(answers::Trim(value->text));
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
  return Fields(*report_, *value, PathOf(key), keys, owner_);
}

const TomlValue* Fields::GetList(std::string_view key) const {
  const TomlValue* value = table_.Find(key);
  const bool has_heading = key == "riggers" || key == "clips";
  if (value != nullptr && value->kind == TomlValue::Kind::kTable && has_heading) {
    const std::string_view heading = key == "clips" ? "riggers.clips" : "riggers";
    Fail(key, fmt::format("[{}] has one bracket on each side.", heading),
         fmt::format("Write two brackets on each side: [[{}]].", heading));
    return nullptr;
  }
  return Get(key, TomlValue::Kind::kList, "a list in brackets: [ { ... }, { ... } ]");
}

std::string Fields::OwnerOf(std::string_view key, const TomlValue& item, std::size_t number) const {
  const std::string above = owner_.empty() ? "" : owner_ + ", ";
  const TomlValue* name = item.Find("name");
  if (name == nullptr || answers::Trim(name->text).empty()) {
    return fmt::format("{}{} {}", above, ItemWord(key), number);
  }
  return fmt::format("{}{} {}", above, ItemWord(key), Quoted(answers::Trim(name->text)));
}

std::vector<Fields> Fields::Parts(std::string_view key, Keys keys,
                                  std::string_view order_by) const {
  const TomlValue* list = GetList(key);
  if (list == nullptr) return {};
  const std::vector<std::size_t> order = OrderOfItems(list->items, order_by);
  const TablePath path = PathOf(key);
  std::vector<Fields> parts;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const TomlValue& item = list->items[order[i]];
    const TablePath at{fmt::format("{}[{}]", path.sorted, i),
                       fmt::format("{}[{}]", path.written, order[i])};
    const std::string owner = OwnerOf(key, item, order[i] + 1);
    report_->Place(at.sorted, item.line);
    if (item.kind != TomlValue::Kind::kTable) {
      report_->Fail({owner, at.written, item.line},
                    fmt::format("This is {}; it must be a table.", KindName(item.kind)),
                    "Write its keys in braces: { ... }.");
      continue;
    }
    parts.emplace_back(*report_, item, at, keys, owner);
  }
  return parts;
}

}  // namespace offplumb::ports
