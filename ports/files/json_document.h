/// \file
/// A JSON text as the values that a TOML text gives. The JSON library's parser stays behind this
/// door.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "engine/problem.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {

/// What a JSON text may hold at most: far more than any rig, little enough to be read at once.
inline constexpr std::size_t kMostJsonBytes = 1'000'000;
inline constexpr std::size_t kDeepestJson = 16;       ///< Tables and lists in one another.
inline constexpr std::size_t kMostJsonItems = 1'000;  ///< Of one table or list.

/// A problem of a JSON text and the key at fault.
struct JsonProblem {
  Problem problem;
  std::string path;  ///< "riggers[0].name"; empty where the text as a whole is at fault.
};

/// Reads a JSON text (RFC 8259, UTF-8) whose top is a table. A key of value null or "" is left out.
/// \param subject what the text is called in messages.
/// \return the table, its lines 0; a problem when it is too large, too deep, broken, holds a key
/// twice in a table, null in a list or a number too large for a double.
[[nodiscard]] tl::expected<TomlValue, JsonProblem> ParseJson(std::string_view text,
                                                             std::string_view subject);

}  // namespace offplumb::ports
