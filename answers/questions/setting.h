/// \file
/// What every question is asked with: a rig, the water and the boat's way through it.
///
/// Requests and answers are plain values in SI. The programs fill requests from what a person
/// typed; a request read from JSON will fill the same ones.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "answers/units/display.h"
#include "engine/learn/prior.h"
#include "engine/plan/conditions.h"
#include "engine/problem.h"
#include "engine/tackle/rig.h"

namespace offplumb::answers {

/// A rig and which of its riggers is meant.
struct RigChoice {
  tackle::Rig rig;
  std::string rigger;     ///< Name, capitals do not matter; empty: all of them.
  bool invented = false;  ///< The rig is an invented example, and the answer says so.
};

/// The boat's way and the water around it, as far as they were told.
struct Sea {
  plan::SpeedKind speed_kind = plan::SpeedKind::kThroughWater;
  std::optional<double> speed_mps;    ///< In [0, plan::kLargestSpeed_mps].
  std::optional<double> course_rad;   ///< Over ground, clockwise from true north.
  std::optional<double> heading_rad;  ///< Of the bow; left out: the course.
  water::Current current;             ///< Empty: still water, or not known.
  std::optional<water::Water> water;  ///< Left out: the rig's, else the usual sea water.
};

/// How the answer is wanted.
struct Wanted {
  bool bands = true;                         ///< 5 % and 95 % beside each median.
  DisplayUnits units = DisplayUnits::kFeet;  ///< Of sentences; figures stay in SI.
};

/// What an answer carries beside its figures.
struct Remarks {
  std::vector<std::string> cautions;  ///< What to mind on the water. Never empty.
  std::vector<std::string> notes;     ///< What to know about these figures. May be empty.
};

/// Told while an answer is worked out: the part that is done, in [0, 1], never falling.
using Progress = std::function<void(double done)>;

/// \return the riggers that are meant; a problem that names them all when none has this name.
[[nodiscard]] Expected<std::vector<tackle::Rigger>> ChooseRiggers(const RigChoice& choice);

/// Puts together and checks what is needed to solve anything.
/// \return a problem when the speed is missing or out of range, or a course or heading is needed
/// and missing.
[[nodiscard]] Expected<plan::Conditions> MakeConditions(const Sea& sea, const tackle::Rig& rig);

/// \return the draws behind the bands; nothing without bands.
[[nodiscard]] std::optional<learn::Ensemble> MakeEnsemble(const Wanted& wanted);

/// \return a pointer to the draws, or null. \param ensemble must outlive it.
[[nodiscard]] inline const learn::Ensemble* Pointer(
    const std::optional<learn::Ensemble>& ensemble) {
  return ensemble ? &*ensemble : nullptr;
}

}  // namespace offplumb::answers
