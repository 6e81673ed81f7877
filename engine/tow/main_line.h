/// \file
/// The main line from the ball up to the boom tip, followed in arc length with the slope as state.
///
/// The slope (horizontal run per metre of rise) of a weightless line in a uniform stream is linear
/// in arc length (docs/method.md section 3.1), so few steps are exact for the part that matters and
/// small for the rest.
#pragma once

#include <array>
#include <vector>

#include "engine/tow/loads.h"
#include "engine/water/current.h"

namespace offplumb::tow {

/// A point of the main line on the way up. Plain value.
struct MainLinePoint {
  double px = 0;  ///< Slope: run ahead per metre of rise.
  double py = 0;  ///< To starboard.
  double tension_N = 0;
  Vector3d place_m = Vector3d::Zero();
  double stretched_m = 0;  ///< Path so far.

  /// Pull of the line above on the line below, N (z up is negative).
  [[nodiscard]] Vector3d PullFromAbove_N() const;
  /// Sets slope and tension from that pull. \return false when it does not point up.
  bool SetPullFromAbove(const Vector3d& pull_N);
};

/// A stretch of main line between two loads. Holds no memory.
struct MainLineSpan {
  const water::Flow* flow = nullptr;
  const LineLoads* line = nullptr;
  double length_m = 0;  ///< Unstretched.
  int steps = 1;        ///< At least 1.
};

/// Steps for a span so that the slope changes by no more than a set amount in one, from inputs
/// only. \param largest_speed_mps of the stream along the line. \param smallest_tension_N expected
/// in the span.
[[nodiscard]] int StepsForSpan(const LineLoads& line, double length_m, double largest_speed_mps,
                               double smallest_tension_N);

/// Climbs one span. Layer edges and the surface are met exactly: the step that would cross one is
/// redone with depth as the running variable (M. Henon, Physica 5D (1982) 412). \param trace if not
/// null gets the points passed. \return false when the tension vanishes on the way.
bool Climb(const MainLineSpan& span, MainLinePoint& point, std::vector<Vector3d>* trace = nullptr);

}  // namespace offplumb::tow
