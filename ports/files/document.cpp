#include "ports/files/document.h"

#include <optional>
#include <utility>

#include <fmt/format.h>

namespace offplumb::ports {
namespace {

using answers::JsonValue;
using Kind = TomlValue::Kind;

/// Goes through a document with the key it is at; keeps the first problem.
class Reader {
 public:
  std::optional<TomlValue> Read(const JsonValue& json, const std::string& path, std::size_t depth) {
    TomlValue value;
    switch (json.kind) {
      case JsonValue::Kind::kNull:
        return Refuse(path, "A list holds null.", "Leave it out of the list.");
      case JsonValue::Kind::kFlag:
        value.kind = Kind::kFlag;
        value.flag = json.flag;
        return value;
      case JsonValue::Kind::kNumber:
        value.kind = Kind::kNumber;
        value.number = json.number;
        return value;
      case JsonValue::Kind::kText:
        value.kind = Kind::kText;
        value.text = json.text;
        return value;
      case JsonValue::Kind::kList:
      case JsonValue::Kind::kObject:
        break;
    }
    return ReadAll(json, path, depth);
  }

  [[nodiscard]] DocumentProblem problem() && { return std::move(problem_); }

 private:
  static bool LeftOut(const JsonValue& json) {
    return json.kind == JsonValue::Kind::kNull ||
           (json.kind == JsonValue::Kind::kText && json.text.empty());
  }

  /// Each item of a list, each key of a table.
  std::optional<TomlValue> ReadAll(const JsonValue& json, const std::string& path,
                                   std::size_t depth) {
    if (depth > kDeepestDocument) {
      return Refuse(path, fmt::format("This is nested more than {} deep.", kDeepestDocument),
                    "A rig needs six levels.");
    }
    if (json.items.size() > kMostDocumentItems) {
      return Refuse(path, fmt::format("This has more than {} items.", kMostDocumentItems),
                    "Leave some out.");
    }
    const bool table = json.kind == JsonValue::Kind::kObject;
    TomlValue value;
    value.kind = table ? Kind::kTable : Kind::kList;
    for (std::size_t i = 0; i < json.items.size(); ++i) {
      if (table && LeftOut(json.items[i])) continue;
      auto item = Read(json.items[i], table ? Joined(path, json.keys[i]) : At(path, i), depth + 1);
      if (!item) return std::nullopt;
      if (table) value.keys.push_back(json.keys[i]);
      value.items.push_back(std::move(*item));
    }
    return value;
  }

  static std::string Joined(const std::string& path, const std::string& key) {
    return path.empty() ? key : path + "." + key;
  }
  static std::string At(const std::string& path, std::size_t index) {
    return fmt::format("{}[{}]", path, index);
  }

  std::nullopt_t Refuse(const std::string& path, std::string message, std::string remedy) {
    const std::string subject = path.empty() ? "document" : path;
    problem_.problem = BadInput(subject, std::move(message), std::move(remedy)).value();
    problem_.path = path;
    return std::nullopt;
  }

  DocumentProblem problem_;
};

}  // namespace

tl::expected<TomlValue, DocumentProblem> DocumentOf(const JsonValue& object) {
  Reader reader;
  auto document = reader.Read(object, {}, 1);
  if (!document) return tl::unexpected(std::move(reader).problem());
  return std::move(*document);
}

JsonValue JsonOf(const TomlValue& value) {
  JsonValue json;
  json.keys = value.keys;
  for (const TomlValue& item : value.items) json.items.push_back(JsonOf(item));
  switch (value.kind) {
    case Kind::kNumber:
      json.kind = JsonValue::Kind::kNumber;
      json.number = value.number;
      break;
    case Kind::kFlag:
      json.kind = JsonValue::Kind::kFlag;
      json.flag = value.flag;
      break;
    case Kind::kList:
      json.kind = JsonValue::Kind::kList;
      break;
    case Kind::kTable:
      json.kind = JsonValue::Kind::kObject;
      break;
    case Kind::kText:
    case Kind::kDate:
      json.kind = JsonValue::Kind::kText;
      json.text = value.text;
      break;
  }
  return json;
}

}  // namespace offplumb::ports
