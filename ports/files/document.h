/// \file
/// A rig's document, as a form sends it in JSON, as the values that a TOML text gives.
#pragma once

#include <cstddef>
#include <string>

#include "answers/asking/json_value.h"
#include "engine/problem.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {

/// What a document may hold at most: far more than any rig, little enough to be read at once.
inline constexpr std::size_t kDeepestDocument = 16;       ///< Tables and lists in one another.
inline constexpr std::size_t kMostDocumentItems = 1'000;  ///< Of one table or list.

/// A problem of a document and the key at fault.
struct DocumentProblem {
  Problem problem;
  std::string path;  ///< "riggers[0].name"; empty where the document as a whole is at fault.
};

/// \param object of kind kObject. A key of value null or "" is left out.
/// \return the table, its lines 0; a problem when it is too deep, has too many items, or holds null
/// in a list.
[[nodiscard]] tl::expected<TomlValue, DocumentProblem> DocumentOf(const answers::JsonValue& object);

/// \return the same the other way, for a page. Dates come as their text.
[[nodiscard]] answers::JsonValue JsonOf(const TomlValue& value);

}  // namespace offplumb::ports
