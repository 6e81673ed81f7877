/// \file
/// What trails aft of a clip: lure, leader, flasher, setback, solved from the free end forward.
#pragma once

#include <vector>

#include "engine/tow/tree.h"

namespace offplumb::tow {

/// A trail marched from a lure to its fore end.
struct TrailMarch {
  bool holds = false;     ///< False when the tension vanishes on the way.
  double fore_end_m = 0;  ///< Depth of the fore end, which should be the clip's.
  Vector3d force_on_clip_N = Vector3d::Zero();      ///< Aft and (usually) down.
  Vector3d flasher_from_clip_m = Vector3d::Zero();  ///< The lure's where there is no flasher.
  Vector3d lure_from_clip_m = Vector3d::Zero();
};

/// Marches from the lure forward in arc length with the force vector as state.
/// \param lure_m depth of the lure. \param refine multiplies the step counts.
/// \return the fore end; in a uniform stream everything but `fore_end_m` is independent of
/// `lure_m`.
[[nodiscard]] TrailMarch MarchTrail(const water::Flow& flow, const TrailLoads& trail, double lure_m,
                                    int refine);

/// Points of a solved trail, clip first, appended: setback to `setback`, leader to `leader`.
void TraceTrail(const water::Flow& flow, const TrailLoads& trail, const Vector3d& clip_m,
                double lure_m, std::vector<Vector3d>& setback, std::vector<Vector3d>& leader);

}  // namespace offplumb::tow
