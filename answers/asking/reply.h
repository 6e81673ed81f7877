/// \file
/// What is said to a request in JSON.
#pragma once

#include <optional>
#include <string>

#include "engine/problem.h"

namespace offplumb::answers {

/// What is said to a request.
struct Reply {
  std::string json;  ///< One line, without a line end: the answer, or {"question", "problem"}.
  /// The kind of its problem; also kCannotBeDone for a `count` that is out of reach, which is an
  /// answer. Nothing: answered.
  std::optional<ProblemKind> problem;
};

}  // namespace offplumb::answers
