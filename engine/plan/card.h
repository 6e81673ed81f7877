/// \file
/// The card: depths over counts and speeds, with bands.
#pragma once

#include <string>
#include <vector>

#include "engine/plan/band.h"
#include "engine/plan/conditions.h"

namespace offplumb::plan {

/// One cell of a card. A cell with no steady shape is empty.
struct CardCell {
  bool solved = false;
  bool beyond_angle = false;  ///< The line leans more than the rig allows at the boom.
  Band ball_depth_m;
  std::vector<Band> lure_depth_m;  ///< From the lowest clip up.
};

/// The card of one rigger. `cells[i][j]` is speed i, count j.
struct Card {
  std::string rigger;
  std::vector<double> speeds_mps;
  std::vector<double> counts_m;
  std::vector<std::vector<CardCell>> cells;
};

/// A cell without a steady shape is left empty; nothing else fails.
/// \param speeds_mps, counts_m checked by the caller: each in range (CheckConditions, CheckCount),
/// increasing. \param ensemble null: no bands.
[[nodiscard]] Card MakeCard(const tackle::Rigger& rigger, Conditions conditions,
                            const std::vector<double>& speeds_mps,
                            const std::vector<double>& counts_m, const learn::Ensemble* ensemble);

}  // namespace offplumb::plan
