/// \file
/// A JSON text as plain values. The JSON library stays behind this door.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "answers/questions/json_writer.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// One value of a JSON text, with all it holds.
struct JsonValue {
  enum class Kind { kNull, kFlag, kNumber, kText, kList, kObject };

  Kind kind = Kind::kNull;
  bool flag = false;              ///< kFlag.
  double number = 0;              ///< kNumber; finite.
  std::string text;               ///< kText.
  std::vector<JsonValue> items;   ///< kList; kObject: its values, in the order written.
  std::vector<std::string> keys;  ///< kObject: the key of each item. None is there twice.

  /// \return the value of a key; nullptr if there is none.
  [[nodiscard]] const JsonValue* Find(std::string_view key) const;
};

/// Longest JSON text that is read, in bytes. Judgement: a rig file may have 1 MB, a comparison
/// several.
inline constexpr std::size_t kLongestJson = 8'000'000;
/// Deepest nesting, and most values in all. Judgement: a rig's document has six levels.
inline constexpr std::size_t kDeepestJson = 32;
inline constexpr std::size_t kMostJsonValues = 200'000;

/// \param text any bytes. \return the object that it holds; a problem that says where it goes
/// wrong.
[[nodiscard]] Expected<JsonValue> ParseJsonObject(std::string_view text);

/// Writes an object under a key.
void WriteJson(std::string_view key, const JsonValue& object, JsonWriter& json);

}  // namespace offplumb::answers
