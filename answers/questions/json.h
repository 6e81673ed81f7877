/// \file
/// Answers as JSON. Keys, meanings and units: docs/json.md.
#pragma once

#include <string>

#include "answers/questions/card.h"
#include "answers/questions/compare.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"

namespace offplumb::answers {

/// \return an answer as JSON text (RFC 8259), keys always in the same order, numbers with all their
/// digits, the same text for the same answer. Every number is finite; what has no value is null.
[[nodiscard]] std::string ToJson(const DepthAnswer& answer);
[[nodiscard]] std::string ToJson(const CountAnswer& answer);
[[nodiscard]] std::string ToJson(const CardAnswer& answer);
[[nodiscard]] std::string ToJson(const CompareAnswer& answer);

}  // namespace offplumb::answers
