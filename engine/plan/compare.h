/// \file
/// Rigs side by side, and what each pound or tenth of a millimetre buys.
#pragma once

#include <string>
#include <vector>

#include "engine/plan/band.h"
#include "engine/plan/conditions.h"

namespace offplumb::plan {

/// What a small change of the rig gains in ball depth at one count, the rest left as it is.
struct Gain {
  std::string
      id;  ///< "ball_1_lb_heavier", "line_0.1_mm_thinner", "no_flasher", "speed_0.1_mph_slower".
  double depth_m = 0;  ///< Deeper is positive.
};

/// One rig's row.
struct ComparedRig {
  std::string name;
  Band reach_depth_m;
  double reach_count_m = 0;
  bool line_limits = false;
  std::vector<double> counts_m;
  std::vector<Band> depth_m;  ///< Of the ball at each count; solved[i] says whether.
  std::vector<Band> tension_boom_N;
  std::vector<char> solved;
  double gains_count_m = 0;  ///< The count at which the gains are told.
  std::vector<Gain> gains;
};

/// \param name what the row is called. \param ensemble null: no bands.
/// \return a problem when the rigger has no steady shape at any count.
[[nodiscard]] Expected<ComparedRig> CompareRig(
    const std::string& name, const tackle::Rigger& rigger, const Conditions& conditions,
    const std::vector<double>& counts_m, double gains_count_m, const learn::Ensemble* ensemble);

}  // namespace offplumb::plan
