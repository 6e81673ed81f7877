/// \file
/// What a page shows of a rig, as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "ports/files/rig_file.h"
#include "ports/files/rig_text.h"

namespace offplumb::ports {

/// \return the facts of docs/json.md "rig_read". \param file read from the text of `written`, whose
/// lines say where in the document each clip stands.
[[nodiscard]] nlohmann::ordered_json RigFacts(const RigFile& file, const WrittenRig& written);

}  // namespace offplumb::ports
