/// \file
/// The walk along the counts of one rigger for one draw of the inputs: used by count.cpp,
/// alterations and compare.
#pragma once

#include <optional>

#include "engine/plan/count.h"
#include "engine/tow/steady_solver.h"

namespace offplumb::plan {

/// \return what the counter reads with all the line out, m, or kLargestCount_m if that is less.
[[nodiscard]] double LargestReading_m(const tackle::Rigger& rigger);

/// What the walk found.
struct Walk {
  bool usable = false;  ///< Some count has a steady shape.
  tow::SteadyStatus status =
      tow::SteadyStatus::kNotConverged;  ///< Of the deepest count tried without a shape.
  bool leans_everywhere = false;  ///< Every count leans more at the boom than the rig allows.
  double shallowest_m = 0;        ///< Least depth of what is wished, when usable.
  Reach reach;                    ///< Of what is wished.
  std::optional<double> count_m;  ///< First count at which the wish is met.
  double angle_boom_rad = 0;      ///< There.
};

/// Walks from the shallowest count to the reach's end and, where the wish is passed, solves for its
/// count. \param wish depth of ball or lure; a depth of infinity only finds the reach. Error of the
/// count: 1e-6 m of depth.
[[nodiscard]] Walk WalkCounts(const tackle::Rigger& rigger, const Conditions& conditions,
                              const DepthWish& wish, const learn::Draw& draw);

}  // namespace offplumb::plan
