/// \file
/// The two-way run: one heading for a minute or two, then the reverse at the same throttle. From
/// the two velocities over ground follow the current, the speed through the water and the error of
/// the boat's log.
///
/// The idea is that of runs on reciprocal headings over a measured course, as ships' speed trials
/// make them (ISO 15016; ITTC recommended procedure 7.5-04-01-01; both from memory): the current
/// adds on one way what it takes on the other. Equations: docs/method.md, section 12.
#pragma once

#include <array>
#include <optional>

#include "engine/plan/band.h"
#include "engine/problem.h"
#include "engine/water/current.h"

namespace offplumb::plan {

/// What was read on one leg. Angles clockwise from true north.
struct Leg {
  double ground_speed_mps = 0;        ///< Mean over ground. In [0, kLargestGroundSpeed_mps].
  double course_rad = 0;              ///< Mean way over ground. In [-2 pi, 2 pi].
  std::optional<double> heading_rad;  ///< Mean heading of the bow, by compass. In [-2 pi, 2 pi].
  std::optional<double> log_mps;      ///< Mean of the boat's log. In [kSlowestRun_mps, twice
                                      ///< kLargestSpeed_mps].
  double duration_s = 0;              ///< In [kShortestLeg_s, kLongestLeg_s].
  /// Standard deviation of the ground speed's readings, or the accuracy that the receiver states.
  /// In [0, kLargestSpread_mps]; left out: kUsualSpread_mps.
  std::optional<double> spread_mps;
};

/// First leg, second leg. Equal in rank: the other order gives the same current.
using TwoLegs = std::array<Leg, 2>;

/// Where the change of heading between the legs comes from.
enum class TurnFrom {
  kReverse,   ///< Taken as a half turn: a heading is missing.
  kHeadings,  ///< The difference of the two headings read.
};

/// What the log says against the speed through the water, at this speed.
struct LogCheck {
  Band factor;     ///< To multiply the log's reading by.
  Band error_mps;  ///< Reading less true speed: positive when the log reads high.
};

/// What a two-way run tells.
struct TwoWay {
  Band speed_mps;                  ///< Of the current. Never below 0.
  Band toward_rad;                 ///< Where it goes; the median in [0, 2 pi), low and high run on
                                   ///< past the ends of the circle. Half a turn to either side
                                   ///< where the current may as well be none.
  bool differs_from_none = false;  ///< No current at all lies outside the band of the current.
  Band along_mps;                  ///< Part of the current along the first heading worked out.
  Band across_mps;                 ///< The same to starboard of it.
  Band water_speed_mps;            ///< Of the boat, mean of the two legs.
  Band first_heading_rad;          ///< Worked out from the run; the median in [0, 2 pi).
  std::optional<LogCheck> log;     ///< Of the legs whose log was read.
  /// Compass less the heading worked out, mean of the headings read: variation not allowed for,
  /// deviation, a phone laid down askew. Nothing without a heading.
  std::optional<Band> compass_error_rad;
  TurnFrom turn_from = TurnFrom::kReverse;
  double turn_rad = 0;         ///< From the first heading to the second, clockwise.
  double course_miss_rad = 0;  ///< How far the two courses are from opposite, in [0, pi].
};

/// Fastest over ground that is believed: 20 mph, 10 of boat and 10 of current. Judgement.
inline constexpr double kLargestGroundSpeed_mps = 8.9408;
/// Slowest speed through the water that makes a run, and the least a log may read. Judgement.
inline constexpr double kSlowestRun_mps = 0.25;
/// A shorter leg is no mean; one longer than an hour meets another current. Judgement.
inline constexpr double kShortestLeg_s = 20.0;
inline constexpr double kLongestLeg_s = 3600.0;
/// A leg below this is called short. Judgement.
inline constexpr double kFairLeg_s = 60.0;
/// Headings further than this from opposite are no two-way run: 20 deg. Judgement.
inline constexpr double kLargestTurnMiss_rad = 0.3490658503988659;
/// A compass further off than this means that legs or headings are mixed up: 45 deg. Judgement.
inline constexpr double kLargestCompassError_rad = 0.7853981633974483;
/// Scatter of a ground speed when none is given, and the most that is believed. Judgement.
inline constexpr double kUsualSpread_mps = 0.1;
inline constexpr double kLargestSpread_mps = 2.0;
/// Readings of a ground speed closer than this are not independent. Judgement.
inline constexpr double kSpreadTime_s = 10.0;
/// Standard deviations. What averaging a leg does not take away from its mean velocity; of the
/// heading's change when both headings were read (4 deg), and when it is taken as a half turn (5
/// deg); of the current's change from one leg to the other, each way; of the change in speed
/// through the water at one throttle, as part of it; of a log's mean reading. Judgement.
inline constexpr double kLegFloor_mps = 0.02;
inline constexpr double kTurnRead_rad = 0.06981317007977318;
inline constexpr double kTurnTaken_rad = 0.08726646259971647;
inline constexpr double kCurrentChange_mps = 0.05;
inline constexpr double kThrottleChange = 0.03;
inline constexpr double kLogReading_mps = 0.02;

/// Works out a two-way run.
///
/// The same speed through the water on both legs; the current told is that of the second leg, the
/// mean of the two as its best estimate. Uncertainties by the law of propagation (JCGM 100:2008,
/// section 5.1.2, from memory), low and high at 5 % and 95 %.
/// \return kBadInput for a reading out of range, headings not opposite, courses that go the same
/// way with a heading missing, headings that do not fit the courses, a speed through the water that
/// is no trolling; kCannotBeDone when the readings scatter so much that the speed through the water
/// cannot be told from none.
[[nodiscard]] Expected<TwoWay> FindTwoWay(const TwoLegs& legs);

}  // namespace offplumb::plan
