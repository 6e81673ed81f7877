/// \file
/// A TOML text as plain values that know their line. The TOML library stays behind this door.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "engine/problem.h"

namespace offplumb::ports {

/// One value of a TOML text, with all it holds.
struct TomlValue {
  enum class Kind { kText, kNumber, kFlag, kList, kTable, kDate };

  Kind kind = Kind::kTable;
  int line = 0;                   ///< 1-based: of the value, or of a table's key.
  std::string text;               ///< kText.
  double number = 0;              ///< kNumber; may be NaN or infinite, as TOML allows.
  bool flag = false;              ///< kFlag.
  std::vector<TomlValue> items;   ///< kList; kTable: its fields, in the order of their lines.
  std::vector<std::string> keys;  ///< kTable: the key of each item.

  /// \return the field of this key; nullptr if there is none.
  [[nodiscard]] const TomlValue* Find(std::string_view key) const;
};

/// \return what a value is, for messages: "a text", "a number", "a list", ...
[[nodiscard]] std::string_view KindName(TomlValue::Kind kind);

/// Reads a TOML text (version 1.0).
/// \param file_name for messages.
/// \return the top table; a problem with its line when the text is empty, binary, nested beyond all
/// use or broken.
[[nodiscard]] Expected<TomlValue> ParseToml(std::string_view text, std::string_view file_name);

}  // namespace offplumb::ports
