/// \file
/// A whole rig: riggers on a boat, each with boom, line, ball and clips, each clip with its rod and
/// its tackle.
///
/// Boat frame: x ahead, y to starboard, z down; origin on the waterline at the centre of the stern.
/// Points above the water have negative z.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <Eigen/Core>

#include "engine/tackle/body.h"
#include "engine/tackle/line.h"
#include "engine/water/water.h"

namespace offplumb::tackle {

using Eigen::Vector3d;

/// What trails aft of a clip. Setback runs from the clip to the flasher, or to the lure where there
/// is none; leader from flasher to lure.
struct Trail {
  double setback_m = 0;  ///< > 0.
  Line setback_line;
  std::optional<Body> flasher;
  double leader_m = 0;  ///< > 0 with a flasher, else 0.
  Line leader_line;
  Body lure;
};

/// A clip on the main line, with the rod whose line it holds.
struct Clip {
  std::string name;         ///< "low", "stacked"; may be empty.
  double above_ball_m = 0;  ///< Along the unstretched line. >= 0.
  Trail trail;
  Line fishing_line;  ///< From the clip up to the rod tip.
  Vector3d rod_tip_m = Vector3d::Zero();
  double rod_tip_tension_N = 0;  ///< Tension of the loaded rod's line at its tip. > 0.
};

/// Tension of a loaded rod where the rig does not say. Judgement.
inline constexpr double kRodTipTension_N = 15.0;

/// One measured mark on the line: what the counter reads and what a tape says.
struct CounterMark {
  double reads_m = 0;
  double measured_m = 0;
};

/// One rigger.
struct Rigger {
  std::string name;
  Vector3d boom_tip_m = Vector3d::Zero();
  Line line;
  Body ball;
  std::vector<Clip> clips;            ///< From the lowest up.
  std::vector<CounterMark> marks;     ///< Increasing; empty: the counter is taken as right.
  double line_on_reel_m = 0;          ///< > 0.
  double largest_boom_angle_rad = 0;  ///< From the vertical, in (0, pi/2).
};

/// Defaults of reach, contract of the trade: 400 ft of line, 65 degrees. Common practice, no
/// source.
inline constexpr double kLineOnReel_m = 121.92;
inline constexpr double kLargestBoomAngle_rad = 1.1344640137963142;

/// A rig. Plain value.
struct Rig {
  std::string name;
  std::vector<Rigger> riggers;
  std::optional<water::Water> water;  ///< Stated constants of the water; else the question's.
};

/// Length of line let out when the counter reads `count_m`: marks interpolated, the last two
/// carried on beyond the last, the origin joined below the first. \param count_m >= 0.
[[nodiscard]] double MeasuredCount_m(const std::vector<CounterMark>& marks, double count_m);

/// The inverse: what the counter reads when `measured_m` of line is out.
[[nodiscard]] double CounterReading_m(const std::vector<CounterMark>& marks, double measured_m);

}  // namespace offplumb::tackle
