/// \file
/// Wanted depth to count: how much to let out, how deep the rig can go at all, and what would get
/// deeper.
#pragma once

#include <string>
#include <vector>

#include "engine/plan/band.h"
#include "engine/plan/conditions.h"

namespace offplumb::plan {

/// Whose depth is wanted.
enum class DepthOf { kBall, kLure };

/// What is wanted of a rigger.
struct DepthWish {
  double depth_m = 0;  ///< Positive down, > 0.
  DepthOf of = DepthOf::kBall;
  std::size_t clip = 0;  ///< Whose lure, from the lowest up.
};

/// What would reach a depth that the rig does not.
enum class RemedyKind { kHeavierBall, kSlower, kThinnerLine, kNoFlasher, kMoreLine };

/// One remedy that was found to reach the depth, everything else left as it is.
struct Remedy {
  RemedyKind kind;
  double value =
      0;  ///< kg of ball, m/s, m of line diameter, m of line on the reel; 0 for kNoFlasher.
};

/// The answer for one rigger.
struct RiggerCount {
  std::string name;
  DepthWish wish;
  bool reachable = false;
  Band count_m;               ///< As the counter reads it; only when reachable.
  Band reach_depth_m;         ///< Of the ball or the lure, as wished.
  double reach_count_m = 0;   ///< Count at which the reach ends.
  bool line_limits = false;   ///< The line on the reel ends the reach, not the angle at the boom.
  double angle_boom_rad = 0;  ///< At the count found, median.
  std::vector<Remedy> remedies;  ///< Only when not reachable; empty: nothing usual gets there.
  int members = 0;
  int unreached = 0;       ///< Draws in which the depth is out of reach.
  bool high_open = false;  ///< More than 5 % of the draws never get there: the band has no upper
                           ///< end, and count_m.high is the counter's reading with all line out.
};

/// The count that puts ball or lure at a depth.
///
/// Reach is the deepest point of the counts from the shallowest usable one up to the line on the
/// reel or the largest angle at the boom, whichever comes first. \param ensemble null: no bands.
/// \return a problem when the wish is out of range or no count has a steady shape. A depth below
/// the reach is not a problem but an answer.
[[nodiscard]] Expected<RiggerCount> FindCount(const tackle::Rigger& rigger,
                                              const Conditions& conditions, const DepthWish& wish,
                                              const learn::Ensemble* ensemble);

/// How deep, and where that is.
struct Reach {
  double depth_m = 0;
  double count_m = 0;
  bool line_limits = false;
};
/// The ball's reach at the medians; see FindCount for what it means.
/// \return a problem when no count has a steady shape within the rig's largest angle.
[[nodiscard]] Expected<Reach> FindReach(const tackle::Rigger& rigger, const Conditions& conditions);

}  // namespace offplumb::plan
