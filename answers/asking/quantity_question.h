/// \file
/// The question "quantity": a quantity as a person writes it, read.
#pragma once

#include <string>

#include "answers/asking/json_value.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// \param request "text", "dimension", "subject", and "low" and "high" or neither.
/// \return the answer as one line of JSON, with "value" in SI; a problem that names the units and
/// the range.
[[nodiscard]] Expected<std::string> QuantityJson(const JsonValue& request);

}  // namespace offplumb::answers
