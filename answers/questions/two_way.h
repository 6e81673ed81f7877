/// \file
/// The question `two_way`: out on one heading and back on the reverse at one throttle. What is the
/// current, how fast does the boat go through the water, and how far is its log off?
#pragma once

#include "answers/questions/setting.h"
#include "engine/plan/two_way.h"

namespace offplumb::answers {

/// Needs no rig.
struct TwoWayRequest {
  plan::TwoLegs legs;  ///< In the order in which they were run.
  Wanted wanted;
};

struct TwoWayAnswer {
  TwoWayRequest request;
  plan::TwoWay found;  ///< Without bands low and high are the median.
  Remarks remarks;
};

/// Works out a two-way run.
/// \param progress may be empty; told once, at the end.
/// \return a problem when a reading is at fault or the legs are no two-way run (kBadInput), or the
/// readings scatter too much (kCannotBeDone).
[[nodiscard]] Expected<TwoWayAnswer> Answer(const TwoWayRequest& request,
                                            const Progress& progress = {});

/// \return the units in which a current is told: knots, or metres a second.
[[nodiscard]] DisplayUnits CurrentUnits(DisplayUnits units);

/// \return a direction as whole degrees from 0 to 359: "8".
[[nodiscard]] std::string WholeBearing(double angle_rad);

}  // namespace offplumb::answers
