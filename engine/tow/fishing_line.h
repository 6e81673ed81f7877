/// \file
/// The fishing line from rod tip to clip: both ends given, the tension at the rod tip given, its
/// length an outcome.
///
/// Followed in depth, not along its length, so that both ends are exact and layer edges are mesh
/// points. The slope (horizontal run per metre of rise) p of a line that bows in a uniform stream
/// is sinh(u) with u linear in depth (docs/method.md section 3.3); so the state holds u, the
/// log-slope: p = sinh(|u|) u/|u|.
#pragma once

#include <vector>

#include <Eigen/Core>

#include "engine/tow/loads.h"
#include "engine/water/current.h"

namespace offplumb::tow {

using Eigen::Vector2d;

/// What is given. Plain value, built per evaluation; holds no memory.
struct FishingLineProblem {
  const water::Flow* flow = nullptr;
  const LineLoads* line = nullptr;
  Vector3d rod_tip_m = Vector3d::Zero();  ///< z < 0.
  double rod_tip_tension_N = 0;           ///< > 0.
  double deepest_m =
      0;           ///< A depth no clip can pass: fixes the mesh independently of the clip's depth.
  int refine = 1;  ///< Multiplies the step counts.
};

/// Where a followed line ends.
struct FishingLineFoot {
  bool holds = false;                   ///< False when the line goes slack on the way.
  Vector2d place_m = Vector2d::Zero();  ///< (x, y) at the depth asked for.
  Vector3d force_on_clip_N = Vector3d::Zero();
  double path_m = 0;  ///< Stretched length.
  double unstretched_m = 0;
};

/// Longest path that is still called a line; beyond it the rod's tension is said not to hold the
/// line.
inline constexpr double kLongestFishingLine_m = 5000;

/// How much further a line runs for bowing: sinh(turn/2)/(turn/2), turn the change of log-slope
/// from end to end in the stream at mid-depth. >= 1. \param clip_m the clip, about where it will
/// be.
[[nodiscard]] double Bow(const FishingLineProblem& problem, const Vector3d& clip_m);

/// The mean log-slope of a line that makes a run: the inverse of run = rise bow sinh(mean), as a
/// vector. A foot's miss told in it is linear in the rod's log-slope, however far the line bellies
/// out. \param run_m from the foot to the rod tip, (x, y). \param rise_bow_m rise times Bow.
[[nodiscard]] Vector2d MeanLogSlope(const Vector2d& run_m, double rise_bow_m);
/// \return its derivatives with the run, 1/m.
[[nodiscard]] Eigen::Matrix2d MeanLogSlopeByRun(const Vector2d& run_m, double rise_bow_m);

/// How the pull of a line on its clip changes with its log-slope there, N. \param pull_N upward (z
/// < 0).
[[nodiscard]] Eigen::Matrix<double, 3, 2> PullByLogSlope(const Vector3d& pull_N);

/// How fast its log-slope changes on the way down at a clip, 1/m, the line's own weight left out.
/// \param tension_N there.
[[nodiscard]] Vector2d TurnPerMetre(const FishingLineProblem& problem, double clip_depth_m,
                                    double tension_N);

/// A start for the rod's log-slope: the sideways catenary through both ends in the stream at
/// mid-depth.
[[nodiscard]] Vector2d GuessRodLogSlope(const FishingLineProblem& problem, const Vector3d& clip_m);

/// Follows the line from the rod tip down to a depth.
/// \param rod_log_slope log-slope at the rod tip. \param depth_m below the rod tip.
/// \param trace if not null gets the points passed.
/// \return the foot; whether it meets the clip is for the caller to see to.
[[nodiscard]] FishingLineFoot FollowFishingLine(const FishingLineProblem& problem,
                                                const Vector2d& rod_log_slope, double depth_m,
                                                std::vector<Vector3d>* trace = nullptr);

}  // namespace offplumb::tow
