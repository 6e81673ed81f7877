/// \file
/// Problems as JSON.
#pragma once

#include <string_view>

#include "answers/questions/json_writer.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// Writes {"kind", "subject", "message", "remedy", "line", "path"}. Keys: docs/json.md.
/// \param path the key at fault in a rig's document, "riggers[0].ball"; empty: null.
void WriteProblem(std::string_view key, const Problem& problem, std::string_view path,
                  JsonWriter& json);

}  // namespace offplumb::answers
