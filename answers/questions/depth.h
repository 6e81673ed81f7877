/// \file
/// The question `depth`: at this count and speed, where are the ball and the lures?
#pragma once

#include <optional>
#include <vector>

#include "answers/questions/setting.h"
#include "engine/plan/depth.h"

namespace offplumb::answers {

struct DepthRequest {
  RigChoice rig;
  Sea sea;
  Wanted wanted;
  double count_m = 0;  ///< As the counter reads it, of every rigger meant. In [0, kLargestCount_m].
};

struct DepthAnswer {
  DepthRequest request;
  plan::Conditions conditions;             ///< What was solved for, defaults filled in.
  std::vector<tackle::Rigger> rigged;      ///< The riggers meant, in the rig's order.
  std::vector<plan::RiggerDepth> riggers;  ///< One for each of them.
  std::optional<learn::Input> dominant;    ///< What matters most to the first ball's band.
  Remarks remarks;
};

/// Where everything is at a count.
/// \param progress may be empty.
/// \return a problem when the request is at fault (kBadInput) or a rigger has no steady shape at
/// this count (kCannotBeDone).
[[nodiscard]] Expected<DepthAnswer> Answer(const DepthRequest& request,
                                           const Progress& progress = {});

}  // namespace offplumb::answers
