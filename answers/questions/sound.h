/// \file
/// The last look at figures before they leave: none may be "not a number" or infinite.
#pragma once

#include <cmath>

#include "engine/plan/band.h"
#include "engine/problem.h"

namespace offplumb::answers {

[[nodiscard]] inline bool Sound(const plan::Band& band) {
  return std::isfinite(band.median) && std::isfinite(band.low) && std::isfinite(band.high);
}

/// \return the problem of an answer that holds such a figure: a fault of ours.
[[nodiscard]] inline tl::unexpected<Problem> UnsoundFigure(std::string rigger) {
  return tl::unexpected<Problem>(Problem{ProblemKind::kFault,
                                         "rigger \"" + std::move(rigger) + "\"",
                                         "A figure of the answer is not a finite number.",
                                         "Please report the rig and the question.",
                                         {},
                                         0});
}

}  // namespace offplumb::answers
