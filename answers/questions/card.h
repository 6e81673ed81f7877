/// \file
/// The question `card`: depths over counts and speeds, for a sheet to tape by the rigger.
#pragma once

#include <vector>

#include "answers/questions/setting.h"
#include "engine/plan/card.h"

namespace offplumb::answers {

struct CardRequest {
  RigChoice rig;
  Sea sea;  ///< Its speed is not looked at.
  Wanted wanted;
  std::vector<double> speeds_mps;  ///< Increasing; empty: see UsualSpeeds_mps.
  std::vector<double> counts_m;    ///< Increasing; empty: see UsualCounts_m.
};

/// The most speeds and counts of one card. Judgement: more than a page can hold.
inline constexpr std::size_t kMostSpeeds = 24;
inline constexpr std::size_t kMostCounts = 60;

/// \return the seven speeds of a card where none are given: 2.0 to 3.2 mph, or about that in round
/// figures of the units. Common practice, no source.
[[nodiscard]] std::vector<double> UsualSpeeds_mps(DisplayUnits units);
/// \return twelve counts in round steps of at most 20 ft (6 m): the first puts the highest clip
/// under water, the last fits on the shortest reel. \param highest_clip_m above its ball; 0 for
/// none.
[[nodiscard]] std::vector<double> UsualCounts_m(DisplayUnits units, double line_on_reel_m,
                                                double highest_clip_m);

struct CardAnswer {
  CardRequest request;          ///< With the usual speeds and counts filled in.
  plan::Conditions conditions;  ///< Those of the first speed.
  std::vector<tackle::Rigger> rigged;
  std::vector<plan::Card> cards;  ///< One for each rigger meant, in the rig's order.
  Remarks remarks;
};

/// The card of every rigger meant. A cell with no steady shape is left empty.
/// \param progress may be empty.
/// \return a problem when the request is at fault.
[[nodiscard]] Expected<CardAnswer> Answer(const CardRequest& request,
                                          const Progress& progress = {});

}  // namespace offplumb::answers
