/// \file
/// The water and the boat's motion that a question is asked for, and the tree that follows from
/// them and a rig.
#pragma once

#include "engine/learn/prior.h"
#include "engine/problem.h"
#include "engine/tackle/rig.h"
#include "engine/tow/tree.h"
#include "engine/water/current.h"
#include "engine/water/water.h"

namespace offplumb::plan {

/// How the speed is known.
enum class SpeedKind {
  kThroughWater,  ///< Of the boat through the surface water along its heading, no leeway.
  kOverGround,    ///< Over ground along the course; the current carries the water.
};

/// Water and motion. Plain value.
struct Conditions {
  water::Water water;
  SpeedKind speed_kind = SpeedKind::kThroughWater;
  double speed_mps = 0;    ///< In [0, kLargestSpeed_mps].
  double course_rad = 0;   ///< Over ground, clockwise from true north. Only for kOverGround.
  double heading_rad = 0;  ///< Of the bow, clockwise from true north.
  water::Current current;  ///< Empty: still water, or unknown when the speed is over ground.
};

/// Speeds that are called trolling: 0 to 10 mph. Beyond it no law for a ball's drag here was
/// checked, and no gear of this kind is towed.
inline constexpr double kLargestSpeed_mps = 4.4704;
/// Counts that are looked at: the sea has no more for this gear.
inline constexpr double kLargestCount_m = 1000.0;

/// \return the input that carries the speed's error: the log's, or the unknown current's when only
/// the speed over ground is known.
[[nodiscard]] learn::Input SpeedInput(const Conditions& conditions);

/// \return the stream past the boat, with the draw's speed error in it.
[[nodiscard]] water::Flow FlowOf(const Conditions& conditions, const learn::Draw& draw);

/// Checks a rig and a motion before anything is solved, once per question.
/// \return nothing, or the first problem found: a speed, rig or current outside its range.
[[nodiscard]] Expected<void> CheckConditions(const Conditions& conditions);
/// The same for a rig: boom under water, a ball that floats, clips at one height.
[[nodiscard]] Expected<void> CheckRigger(const tackle::Rigger& rigger);
/// Checks a count against the line on the reel. \param count_m as the counter reads it.
[[nodiscard]] Expected<void> CheckCount(const tackle::Rigger& rigger, double count_m);

/// The tree of a rigger at a count.
///
/// The line from boom tip to the ball's eye is count plus boom height long, unstretched; the count
/// is corrected by the rig's marks and the draw's counter factor. \param count_m as the counter
/// reads it, in [0, kLargestCount_m].
[[nodiscard]] tow::TreeProblem MakeProblem(const tackle::Rigger& rigger,
                                           const Conditions& conditions, double count_m,
                                           const learn::Draw& draw);

/// Lets out another count on the same tree. The caller has checked the count (CheckCount).
void SetCount(const tackle::Rigger& rigger, double count_m, const learn::Draw& draw,
              tow::TreeProblem& problem);

/// \return the problem of a status that is not kConverged, in words.
[[nodiscard]] Problem ProblemOf(tow::SteadyStatus status, const tackle::Rigger& rigger);

}  // namespace offplumb::plan
