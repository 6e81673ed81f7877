/// \file
/// The slips people make in TOML, told in words of the file instead of a parser's.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace offplumb::ports {

/// A slip of the pen: where, what was written, and a sentence that says what to write.
struct TomlSlip {
  int line = 0;  ///< 1-based.
  std::string written;
  std::string advice;
};

/// Looks for a missing quote, bracket or equals sign in a text that is not TOML.
/// \param line 1-based, where the parser gave up: the slip is there, on the line above, or where
/// the list about it was opened. \return the slip; nothing when it is none of these.
[[nodiscard]] std::optional<TomlSlip> FindSlip(std::string_view text, int line);

}  // namespace offplumb::ports
