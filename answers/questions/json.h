/// \file
/// Answers as JSON. Keys, meanings and units: docs/json.md.
#pragma once

#include <string>

#include "answers/questions/card.h"
#include "answers/questions/compare.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"
#include "answers/questions/two_way.h"

namespace offplumb::answers {

/// How JSON text is laid out.
enum class JsonLayout {
  kLines,    ///< Each value on its own line, with a line end: for people.
  kOneLine,  ///< On one line without a line end: for programs.
};

/// \return an answer as JSON text (RFC 8259), keys always in the same order, numbers with all their
/// digits, the same text for the same answer. Every number is finite; what has no value is null.
[[nodiscard]] std::string ToJson(const DepthAnswer& answer, JsonLayout layout = JsonLayout::kLines);
[[nodiscard]] std::string ToJson(const CountAnswer& answer, JsonLayout layout = JsonLayout::kLines);
[[nodiscard]] std::string ToJson(const CardAnswer& answer, JsonLayout layout = JsonLayout::kLines);
[[nodiscard]] std::string ToJson(const CompareAnswer& answer,
                                 JsonLayout layout = JsonLayout::kLines);
[[nodiscard]] std::string ToJson(const TwoWayAnswer& answer,
                                 JsonLayout layout = JsonLayout::kLines);

}  // namespace offplumb::answers
