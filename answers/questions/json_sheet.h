/// \file
/// Drawings as JSON, for a painter that is not here: the page.
#pragma once

#include <string_view>

#include "answers/drawing/drawing.h"
#include "answers/questions/json_writer.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// A drawing with all its lines and texts; millimetres, to a thousandth. Keys: docs/json.md.
void WriteDrawing(std::string_view key, const Drawing& drawing, JsonWriter& json);

/// "sheet": the drawing, or null and then "sheet_problem" with the reason.
void WriteSheet(const Expected<Drawing>& drawing, JsonWriter& json);

}  // namespace offplumb::answers
