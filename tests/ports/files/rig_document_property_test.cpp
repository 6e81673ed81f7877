// Documents made from the examples by chance: each gives a rig that comes back the same, or a
// problem with the field at fault.
#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <nlohmann/json.hpp>

#include "ports/files/rig_document.h"
#include "ports/files/rig_file.h"
#include "ports/files/text_file.h"
#include "tests/ports/files/ask_rig.h"
#include "tests/ports/files/same_rig.h"

namespace offplumb::ports {
namespace {

using Json = nlohmann::ordered_json;
using Pointer = Json::json_pointer;

std::vector<Json> Examples() {
  std::vector<Json> documents;
  for (const std::string_view name :
       {"one-rigger", "two-riggers", "engineer", "engineer-tree-1", "engineer-tree-2"}) {
    const auto text =
        ReadTextFile(fmt::format("{}/examples/rigs/{}.toml", OFFPLUMB_SOURCE_DIR, name));
    documents.push_back(Json::parse(ReplyToRigRead(text.value()).json)["document"]);
  }
  return documents;
}

/// Every value of a document below its top.
void Collect(const Json& value, const Pointer& at, std::vector<Pointer>& found) {
  if (!at.empty()) found.push_back(at);
  if (value.is_object()) {
    for (const auto& [key, item] : value.items()) Collect(item, at / key, found);
  } else if (value.is_array()) {
    for (std::size_t i = 0; i < value.size(); ++i) Collect(value[i], at / i, found);
  }
}

Pointer AnyPlace(const Json& document) {
  std::vector<Pointer> places;
  Collect(document, Pointer(), places);
  return *rc::gen::elementOf(places);
}

Json AnyQuantity() {
  const double number = 0.01 * *rc::gen::inRange(-200, 20000);
  return fmt::format("{} {}", number,
                     *rc::gen::elementOf(std::vector<std::string>{
                         "ft", "in", "m", "mm", "lb", "N", "kg", "deg", "m2", "N/m", "kg/m3", ""}));
}

std::string AnyText() {
  static const std::vector<std::string> pieces{"a",  "Z",  "7",    ".",        " ",           "#",
                                               "}",  "]",  "=",    "\"",       "'",           "\\",
                                               "\n", "\t", "\x01", "\xC3\xA9", "\xE2\x80\x9C"};
  std::string text;
  for (int i = *rc::gen::inRange(0, 8); i > 0; --i) text += *rc::gen::elementOf(pieces);
  return text;
}

Json AnyValue() {
  switch (*rc::gen::inRange(0, 8)) {
    case 0:
      return nullptr;
    case 1:
      return *rc::gen::arbitrary<bool>();
    case 2:
      return 0.01 * *rc::gen::inRange(-100, 400);
    case 3:
      return AnyText();
    case 4:
      return *rc::gen::elementOf(std::vector<Json>{"",
                                                   " ",
                                                   Json::array(),
                                                   Json::object(),
                                                   {1, "x"},
                                                   {{"from", "hoochie"}},
                                                   {{"up", "1 m"}}});
    case 5:
      return *rc::gen::elementOf(std::vector<Json>{"hoochie", "no-lure", "nylon-0.6mm", "none",
                                                   "ball-flat-10lb", "wire-7x7-0.9mm",
                                                   "flasher-rotating-8in", "1 lb at 2 mph"});
    default:
      return AnyQuantity();
  }
}

/// A key that some table has, or none.
std::string AnyKey() {
  return *rc::gen::elementOf(std::vector<std::string>{
      "name", "weight", "from", "flasher", "leader", "clips", "drag_area", "density", "qqq",
      "viscosity", "temperature", "kind", "counter_marks", "strumming", "setback_line"});
}

void Mutate(Json& document) {
  const Pointer place = AnyPlace(document);
  Json& value = document[place];
  Json& parent = document[place.parent_pointer()];
  switch (*rc::gen::inRange(0, 5)) {
    case 0:
      if (parent.is_object()) {
        parent.erase(place.back());
      } else {
        parent.erase(std::stoul(place.back()));
      }
      return;
    case 1:
      if (value.is_object()) value[AnyKey()] = AnyValue();
      return;
    case 2:
      if (value.is_array() && !value.empty()) value.push_back(Json(value[0]));
      return;
    default:
      value = AnyValue();
  }
}

Json AnyDocument() {
  static const std::vector<Json> examples = Examples();
  Json document = *rc::gen::elementOf(examples);
  const int mutations = *rc::gen::inRange(0, 5);
  for (int i = 0; i < mutations && !document.empty(); ++i) Mutate(document);
  return document;
}

/// Whether a problem's path leads to a field of the document, be it one that is not filled in.
bool LeadsSomewhere(const Json& document, std::string path) {
  std::replace(path.begin(), path.end(), '.', '/');
  std::string pointer = "/";
  for (const char c : path) {
    if (c == '[') pointer += '/';
    if (c != '[' && c != ']') pointer += c;
  }
  // The last step may be missing; a text stands for a table with "from".
  return document.contains(Pointer(pointer)) ||
         document.contains(Pointer(pointer).parent_pointer());
}

/// The document as a TOML text that is not canonical: keys in another order, no headings.
std::string OddToml(const Json& value) {
  if (value.is_array()) {
    std::string text = "[\n";
    for (const Json& item : value) text += OddToml(item) + ",\n";
    return text + "]";
  }
  if (!value.is_object()) return value.dump();
  std::string text = "{";
  std::vector<std::string> keys;
  for (const auto& [key, item] : value.items()) {
    const bool left_out = item.is_null() || item == "";
    if (!left_out) keys.push_back(key);
  }
  std::reverse(keys.begin(), keys.end());
  for (const std::string& key : keys) {
    text += fmt::format("{}{} = {}", text.size() > 1 ? ", " : "", Json(key).dump(),
                        OddToml(value[key]));
  }
  return text + "}";
}

std::string OddTomlFile(const Json& document) {
  std::string text;
  for (const auto& [key, item] : document.items()) {
    if (item.is_null() || item == "") continue;
    text.insert(0, fmt::format("{} = {}\n", Json(key).dump(), OddToml(item)));
  }
  return text;
}

RC_GTEST_PROP(RigDocumentProperty, EveryDocumentGivesARigOrAFieldAtFault, ()) {
  const Json document = AnyDocument();
  const Json answer = Json::parse(testing::WriteRigJson(document.dump()));
  RC_ASSERT(answer.contains("problem") != answer.contains("toml"));
  if (answer.contains("problem")) {
    RC_TAG("problem");
    const Json& problem = answer["problem"];
    RC_ASSERT(problem["kind"] == "bad_input");
    RC_ASSERT(!problem["message"].get<std::string>().empty());
    RC_ASSERT(problem["path"].is_string());
    RC_ASSERT(LeadsSomewhere(document, problem["path"]));
    return;
  }
  RC_TAG("rig");
  const std::string toml = answer["toml"];
  const auto file = ReadRigText(toml, kUnnamedRig);
  RC_ASSERT(file.has_value());
  const Json again = Json::parse(testing::WriteRigJson(answer["document"].dump()));
  RC_ASSERT(again == answer);
  const Json read = Json::parse(ReplyToRigRead(toml).json);
  RC_ASSERT(read["toml"] == toml && read["document"] == answer["document"]);
}

RC_GTEST_PROP(RigDocumentProperty, AnotherTextOfTheSameRigIsReadTheSame, ()) {
  const Json document = AnyDocument();
  const auto odd = ReadRigText(OddTomlFile(document), kUnnamedRig);
  const Json answer = Json::parse(testing::WriteRigJson(document.dump()));
  if (!odd) {
    RC_TAG("refused");
    RC_ASSERT(answer.contains("problem"));
    return;
  }
  RC_TAG("read");
  RC_ASSERT(answer.contains("toml"));
  const auto file = ReadRigText(answer["toml"].get<std::string>(), kUnnamedRig);
  RC_ASSERT(file.has_value());
  RC_ASSERT(testing::Same(odd->rig, file->rig));
}

}  // namespace
}  // namespace offplumb::ports
