/// \file
/// What every question is asked with: a rig, the water and the boat's way through it.
///
/// Requests and answers are plain values in SI. The command line fills requests from what a person
/// typed, answers/asking from JSON.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "answers/units/display.h"
#include "answers/units/quantity.h"
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
  /// That ball, in the same shape and material, on every rigger meant. In kBallMass.
  std::optional<double> ball_mass_kg = std::nullopt;
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
  int draws = learn::kMembers;               ///< Behind the bands. In [1, learn::kMembers].
  DisplayUnits units = DisplayUnits::kFeet;  ///< Of sentences; figures stay in SI.
  bool shape = false;                        ///< With the lines as points. Only `depth` has them.
  bool sheet = false;  ///< With the drawing: `depth` its side view, `card` its sheets.
  std::string date;    ///< As it is to be printed on a card's sheet.
};

/// What an answer carries beside its figures.
struct Remarks {
  std::vector<std::string> cautions;  ///< What to mind on the water. Never empty.
  std::vector<std::string> notes;     ///< What to know about these figures. May be empty.
};

/// Told while an answer is worked out: the part that is done, in [0, 1], never falling.
using Progress = std::function<void(double done)>;

/// Balls that can be put on every rigger, in kg. Wide, as for a rig file: it keeps out slips of the
/// finger, not odd rigs. Judgement.
inline constexpr Range kBallMass{0.1, 100};

/// \return the riggers that are meant, with the ball that is wanted; a problem that names them all
/// when none has this name, or a ball outside kBallMass.
[[nodiscard]] Expected<std::vector<tackle::Rigger>> ChooseRiggers(const RigChoice& choice);

/// Puts together and checks what is needed to solve anything.
/// \return a problem when the speed is missing or out of range, or a course or heading is needed
/// and missing.
[[nodiscard]] Expected<plan::Conditions> MakeConditions(const Sea& sea, const tackle::Rig& rig);

[[nodiscard]] bool SameWater(const water::Water& a, const water::Water& b);

/// \return the water that is asked for, else the rig's, else the usual sea water.
[[nodiscard]] water::Water WaterOf(const Sea& sea, const tackle::Rig& rig);

/// \return whether a current differs from depth to depth: only then does it change anything when
/// the speed is the one through the surface water.
[[nodiscard]] bool VariesWithDepth(const water::Current& current);

/// Riggers and conditions: what every question about one rig starts from.
struct Setting {
  std::vector<tackle::Rigger> riggers;  ///< Those meant, in the rig's order. Never empty.
  plan::Conditions conditions;
};
[[nodiscard]] Expected<Setting> MakeSetting(const RigChoice& choice, const Sea& sea);

/// \return the draws behind the bands; nothing without bands.
[[nodiscard]] std::optional<learn::Ensemble> MakeEnsemble(const Wanted& wanted);

/// \return a pointer to the draws, or null. \param ensemble must outlive it.
[[nodiscard]] inline const learn::Ensemble* Pointer(
    const std::optional<learn::Ensemble>& ensemble) {
  return ensemble ? &*ensemble : nullptr;
}

}  // namespace offplumb::answers
