/// \file
/// The question `count`: how much line to let out for a wanted depth, or why none will do and what
/// would.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "answers/questions/setting.h"
#include "engine/plan/count.h"
#include "engine/plan/depth.h"

namespace offplumb::answers {

struct CountRequest {
  RigChoice rig;
  Sea sea;
  Wanted wanted;
  double depth_m = 0;                       ///< In (0, kLargestCount_m].
  plan::DepthOf of = plan::DepthOf::kBall;  ///< Whose depth.
  std::string clip;  ///< Of the lure: its clip's name, or 1, 2 from the lowest; empty: lowest.
};

struct CountAnswer {
  CountRequest request;
  plan::Conditions conditions;
  std::vector<tackle::Rigger> rigged;
  std::vector<plan::RiggerCount> riggers;  ///< One for each rigger meant, in the rig's order.
  std::vector<std::optional<plan::RiggerDepth>> at_count;  ///< Where all is there; none if none.
  Remarks remarks;

  /// \return whether every rigger meant gets there.
  [[nodiscard]] bool reachable() const;
};

/// The count for a wanted depth. A depth below the reach is an answer, not a problem.
/// \param progress may be empty.
/// \return a problem when the request is at fault or a rigger has no steady shape at any count.
[[nodiscard]] Expected<CountAnswer> Answer(const CountRequest& request,
                                           const Progress& progress = {});

/// \return the id of a remedy, as JSON calls it: "heavier_ball".
[[nodiscard]] std::string RemedyId(plan::RemedyKind kind);
/// \return the SI unit of a remedy's value: "kg"; empty for one without a value.
[[nodiscard]] std::string RemedyUnit(plan::RemedyKind kind);
/// \return a remedy for a person, rounded to the side that still gets there: "a ball of 15 lb".
[[nodiscard]] std::string RemedyText(const plan::Remedy& remedy, DisplayUnits units);

}  // namespace offplumb::answers
