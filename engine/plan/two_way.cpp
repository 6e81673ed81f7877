#include "engine/plan/two_way.h"

#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>

#include "engine/constants.h"
#include "engine/learn/prior.h"
#include "engine/plan/conditions.h"

namespace offplumb::plan {
namespace {

using water::Vector2d;

constexpr double kMph_mps = 0.44704;
/// Squared radius that holds 90 % of a plane normal distribution: -2 ln 0.1.
constexpr double kPlaneBand = 4.605170185988092;
/// The speed through the water must stand this many standard deviations above none, or what
/// follows from it is no longer straight in the errors.
constexpr double kClearOfNone = 3.0;

double Square(double x) { return x * x; }
double Degrees(double angle_rad) { return angle_rad * 180.0 / kPi; }
double HalfTurnWrap(double angle_rad) { return std::remainder(angle_rad, 2 * kPi); }
double TurnWrap(double angle_rad) {
  const double wrapped = angle_rad - 2 * kPi * std::floor(angle_rad / (2 * kPi));
  return wrapped < 2 * kPi ? wrapped : 0;  // A hair below 0 rounds up to a whole turn.
}

Vector2d Bearing(double angle_rad) { return {std::cos(angle_rad), std::sin(angle_rad)}; }
Vector2d RightOf(const Vector2d& v) { return {-v.y(), v.x()}; }
double BearingOf(const Vector2d& v) { return std::atan2(v.y(), v.x()); }

Band Around(double value, double variance) {
  const double half = learn::kBandNormal * std::sqrt(variance);
  return {value, value - half, value + half};
}

// What was read.

bool IsAngle(double angle_rad) { return std::abs(angle_rad) <= 2 * kPi + 1e-9; }
bool Within(double value, double low, double high) { return value >= low && value <= high; }

Expected<void> CheckAngles(const Leg& leg, const std::string& where) {
  if (IsAngle(leg.course_rad) && IsAngle(leg.heading_rad.value_or(0))) return {};
  return BadInput(where, "Its course or heading is no angle between -360 and 360 degrees.",
                  "Give it in degrees from true north.");
}

Expected<void> CheckSpeeds(const Leg& leg, const std::string& where) {
  if (!Within(leg.ground_speed_mps, 0, kLargestGroundSpeed_mps)) {
    return BadInput(where,
                    fmt::format("The speed over ground is {:.4g} m/s ({:.3g} mph); it must lie "
                                "between 0 and 20 mph (17.4 kn, 8.94 m/s).",
                                leg.ground_speed_mps, leg.ground_speed_mps / kMph_mps),
                    "Hold a trolling speed on both legs.");
  }
  if (!Within(leg.log_mps.value_or(1), kSlowestRun_mps, 2 * kLargestSpeed_mps)) {
    return BadInput(where,
                    fmt::format("The log reads {:.4g} m/s ({:.3g} mph); it must lie between {:.2g} "
                                "and 20 mph (17.4 kn, 8.94 m/s).",
                                *leg.log_mps, *leg.log_mps / kMph_mps, kSlowestRun_mps / kMph_mps),
                    "Look for weed on its wheel, or leave the log out.");
  }
  if (!Within(leg.spread_mps.value_or(0), 0, kLargestSpread_mps)) {
    return BadInput(where,
                    fmt::format("The scatter of the ground speed is {:.4g} m/s; it must lie "
                                "between 0 and {:.3g} m/s ({:.2g} mph).",
                                *leg.spread_mps, kLargestSpread_mps, kLargestSpread_mps / kMph_mps),
                    "Wait until the receiver sees enough sky, then run again.");
  }
  return {};
}

Expected<void> CheckDuration(const Leg& leg, const std::string& where) {
  if (Within(leg.duration_s, kShortestLeg_s, kLongestLeg_s)) return {};
  if (leg.duration_s < kShortestLeg_s) {
    return BadInput(where,
                    fmt::format("The leg was held for {:.3g} s; under {:.0f} s the readings are "
                                "still settling and have no mean.",
                                leg.duration_s, kShortestLeg_s),
                    "Hold each heading for a minute or two.");
  }
  return BadInput(where,
                  fmt::format("The leg was held for {:.4g} s; it must be {:.0f} s at most (an "
                              "hour), since the current changes.",
                              leg.duration_s, kLongestLeg_s),
                  "Hold each heading for a minute or two.");
}

Expected<void> CheckLeg(const Leg& leg, const std::string& where) {
  auto checked = CheckAngles(leg, where);
  if (checked) checked = CheckSpeeds(leg, where);
  if (checked) checked = CheckDuration(leg, where);
  return checked;
}

Vector2d OverGround(const Leg& leg) { return leg.ground_speed_mps * Bearing(leg.course_rad); }

bool BothHeadings(const TwoLegs& legs) { return legs[0].heading_rad && legs[1].heading_rad; }

// What follows from it. Method, section 12.

/// The run before its uncertainty. `difference` is first less second velocity over ground.
struct Run {
  Vector2d mean_mps;
  Vector2d difference_mps;
  double turn_rad = kPi;
  double half_cot = 0;  ///< Half the cotangent of half the turn; 0 for headings just opposite.
  double mix = 0.25;    ///< (1/2 of the cosecant of half the turn) squared: 1/4 + half_cot^2.

  [[nodiscard]] double speed_mps() const { return std::sqrt(mix) * difference_mps.norm(); }
  [[nodiscard]] Vector2d current_mps() const {
    return mean_mps - half_cot * RightOf(difference_mps);
  }
  /// Midway between the two headings, clockwise from the first.
  [[nodiscard]] double middle_rad() const { return BearingOf(difference_mps) + kPi / 2; }
  [[nodiscard]] double heading_rad(std::size_t leg) const {
    return middle_rad() + (leg == 0 ? -0.5 : 0.5) * turn_rad;
  }
};

Run MakeRun(const TwoLegs& legs) {
  const Vector2d first = OverGround(legs[0]);
  const Vector2d second = OverGround(legs[1]);
  Run run;
  run.mean_mps = 0.5 * (first + second);
  run.difference_mps = first - second;
  if (!BothHeadings(legs)) return run;
  run.turn_rad = kPi + HalfTurnWrap(*legs[1].heading_rad - *legs[0].heading_rad - kPi);
  run.half_cot = 0.5 * std::cos(run.turn_rad / 2) / std::sin(run.turn_rad / 2);
  run.mix = 0.25 + Square(run.half_cot);
  return run;
}

/// Variances of what follows, in the axes of the difference of the two velocities.
struct Spread {
  Vector2d axis{1, 0};        ///< Of the difference.
  double current_along = 0;   ///< Of the current, along the axis.
  double current_across = 0;  ///< The same, square to it.
  double water_speed = 0;
  double middle = 0;  ///< Of the middle of the two headings, rad2.
  double turn = 0;    ///< Of the change of heading, rad2.

  /// Variance of the current's part along a unit vector.
  [[nodiscard]] double Along(const Vector2d& way) const {
    return Square(way.dot(axis)) * current_along + Square(way.dot(RightOf(axis))) * current_across;
  }
};

double MeanVariance(const Leg& leg) {
  return Square(kLegFloor_mps) +
         Square(leg.spread_mps.value_or(kUsualSpread_mps)) * kSpreadTime_s / leg.duration_s;
}

/// \param run with a difference that is not none.
Spread MakeSpread(const TwoLegs& legs, const Run& run) {
  const double difference = run.difference_mps.norm();
  const double noise = MeanVariance(legs[0]) + MeanVariance(legs[1]) + Square(kCurrentChange_mps);
  Spread spread;
  spread.axis = run.difference_mps / difference;
  spread.turn = Square(BothHeadings(legs) ? kTurnRead_rad : kTurnTaken_rad);
  spread.current_along = run.mix * noise + Square(run.mix * difference * kThrottleChange);
  spread.current_across = run.mix * noise + Square(run.mix * difference) * spread.turn;
  spread.water_speed = run.mix * noise + Square(run.half_cot * run.speed_mps()) * spread.turn;
  spread.middle = noise / Square(difference) + Square(run.half_cot * kThrottleChange);
  return spread;
}

// Whether it was a two-way run at all.

Expected<void> CheckHeadings(const Run& run) {
  const double miss_rad = std::abs(run.turn_rad - kPi);
  if (miss_rad <= kLargestTurnMiss_rad) return {};
  return BadInput("headings",
                  fmt::format("The two headings are {:.0f} deg from opposite; {:.0f} deg are "
                              "allowed.",
                              Degrees(miss_rad), Degrees(kLargestTurnMiss_rad)),
                  "Hold one heading, then its reverse by the compass: out on 40, back on 220.");
}

/// Courses more than a right angle from opposite: as much as saying that the current is faster than
/// the boat. Without headings that is less likely than a boat that was not turned round.
Expected<void> CheckCourses(const TwoLegs& legs) {
  const bool same_way = OverGround(legs[0]).dot(OverGround(legs[1])) >= 0;
  if (BothHeadings(legs) || !same_way) return {};
  return BadInput("courses",
                  "Both legs go the same way over ground: the boat was not turned round, or the "
                  "current is faster than the boat.",
                  "Turn to the reverse heading; in so fast a current, give the headings of both "
                  "legs.");
}

Expected<void> CheckWaterSpeed(const Run& run) {
  const double speed_mps = run.speed_mps();
  if (speed_mps < kSlowestRun_mps) {
    return BadInput("legs",
                    fmt::format("The two velocities over ground are nearly one: the boat would "
                                "make {:.2g} mph through the water, and {:.2g} mph are needed.",
                                speed_mps / kMph_mps, kSlowestRun_mps / kMph_mps),
                    "Go at trolling speed, and turn to the reverse heading for the second leg.");
  }
  if (speed_mps > kLargestSpeed_mps) {
    return BadInput("legs",
                    fmt::format("The boat would make {:.3g} mph through the water; it must be 10 "
                                "mph (8.7 kn, 4.47 m/s) at most.",
                                speed_mps / kMph_mps),
                    "Hold a trolling speed on both legs.");
  }
  return {};
}

Expected<void> CheckScatter(const Run& run, const Spread& spread) {
  const double error_mps = std::sqrt(spread.water_speed);
  if (run.speed_mps() >= kClearOfNone * error_mps) return {};
  return tl::unexpected<Problem>(
      Problem{ProblemKind::kCannotBeDone,
              "legs",
              fmt::format("The ground speed scatters too much: {:.2g} mph through the water, give "
                          "or take {:.2g}.",
                          run.speed_mps() / kMph_mps, learn::kBandNormal * error_mps / kMph_mps),
              "Hold each heading longer, with the receiver in sight of the sky.",
              {},
              0});
}

/// What the headings read are off by; nothing where none was read. Where both were, their change is
/// the run's own, so that both are off by the same.
std::optional<double> CompassError(const TwoLegs& legs, const Run& run) {
  for (std::size_t i = 0; i < legs.size(); ++i) {
    if (legs[i].heading_rad) return HalfTurnWrap(*legs[i].heading_rad - run.heading_rad(i));
  }
  return std::nullopt;
}

Expected<void> CheckCompass(const std::optional<double>& error_rad) {
  if (std::abs(error_rad.value_or(0)) <= kLargestCompassError_rad) return {};
  return BadInput("headings",
                  fmt::format("The headings are {:.0f} deg off the way the boat went; {:.0f} deg "
                              "are allowed.",
                              std::abs(Degrees(*error_rad)), Degrees(kLargestCompassError_rad)),
                  "Look whether the two legs, or their headings, are mixed up.");
}

// What is told.

Band SpeedBand(double speed_mps, const Vector2d& way, const Spread& spread, bool differs) {
  if (!differs) {
    // Its direction is open: the widest way counts, and none is among what may be.
    Band band = Around(speed_mps, std::max(spread.current_along, spread.current_across));
    band.low = 0;
    return band;
  }
  Band band = Around(speed_mps, spread.Along(way));
  band.low = std::max(band.low, 0.0);  // A speed has no other side; where it goes turns instead.
  return band;
}

Band TowardBand(double toward_rad, double speed_mps, const Vector2d& way, const Spread& spread,
                bool differs) {
  double half_rad = kPi;
  if (differs) {
    half_rad =
        std::min(half_rad, learn::kBandNormal * std::sqrt(spread.Along(RightOf(way))) / speed_mps);
  }
  return {toward_rad, toward_rad - half_rad, toward_rad + half_rad};
}

void TellCurrent(const Run& run, const Spread& spread, TwoWay& told) {
  const Vector2d current_mps = run.current_mps();
  const double speed_mps = current_mps.norm();
  const double toward_rad = TurnWrap(BearingOf(current_mps));
  const Vector2d way = Bearing(toward_rad);
  const double from_none = Square(current_mps.dot(spread.axis)) / spread.current_along +
                           Square(current_mps.dot(RightOf(spread.axis))) / spread.current_across;
  told.differs_from_none = from_none > kPlaneBand;
  told.speed_mps = SpeedBand(speed_mps, way, spread, told.differs_from_none);
  told.toward_rad = TowardBand(toward_rad, speed_mps, way, spread, told.differs_from_none);
  const Vector2d ahead = Bearing(run.heading_rad(0));
  told.along_mps = Around(current_mps.dot(ahead), spread.Along(ahead));
  told.across_mps = Around(current_mps.dot(RightOf(ahead)), spread.Along(RightOf(ahead)));
}

std::optional<LogCheck> CheckLog(const TwoLegs& legs, const Run& run, const Spread& spread) {
  double sum_mps = 0;
  int read = 0;
  for (const Leg& leg : legs) {
    if (!leg.log_mps) continue;
    sum_mps += *leg.log_mps;
    ++read;
  }
  if (read == 0) return std::nullopt;
  const double log_mps = sum_mps / read;
  const double speed_mps = run.speed_mps();
  double variance = Square(kLogReading_mps) / read;
  // One leg's speed is half the throttle's change away from the mean of both.
  if (read == 1) variance += Square(0.5 * speed_mps * kThrottleChange);
  const double relative = spread.water_speed / Square(speed_mps) + variance / Square(log_mps);
  return LogCheck{Around(speed_mps / log_mps, Square(speed_mps / log_mps) * relative),
                  Around(log_mps - speed_mps, spread.water_speed + variance)};
}

TwoWay Tell(const TwoLegs& legs, const Run& run, const Spread& spread) {
  TwoWay told;
  TellCurrent(run, spread, told);
  told.water_speed_mps = Around(run.speed_mps(), spread.water_speed);
  told.first_heading_rad = Around(TurnWrap(run.heading_rad(0)), spread.middle + 0.25 * spread.turn);
  told.log = CheckLog(legs, run, spread);
  told.turn_from = BothHeadings(legs) ? TurnFrom::kHeadings : TurnFrom::kReverse;
  told.turn_rad = run.turn_rad;
  told.course_miss_rad = std::abs(HalfTurnWrap(legs[1].course_rad - legs[0].course_rad - kPi));
  if (const auto error_rad = CompassError(legs, run)) {
    // With both headings their change is what the run was worked out with: its error drops out.
    const double of_turn = BothHeadings(legs) ? 0 : 0.25 * spread.turn;
    told.compass_error_rad = Around(*error_rad, spread.middle + of_turn);
  }
  return told;
}

}  // namespace

Expected<TwoWay> FindTwoWay(const TwoLegs& legs) {
  auto checked = CheckLeg(legs[0], "first leg, out");
  if (checked) checked = CheckLeg(legs[1], "second leg, back");
  if (!checked) return tl::unexpected<Problem>(checked.error());
  const Run run = MakeRun(legs);
  checked = CheckHeadings(run);
  if (checked) checked = CheckWaterSpeed(run);
  if (checked) checked = CheckCourses(legs);
  if (!checked) return tl::unexpected<Problem>(checked.error());
  const Spread spread = MakeSpread(legs, run);
  checked = CheckScatter(run, spread);
  if (checked) checked = CheckCompass(CompassError(legs, run));
  if (!checked) return tl::unexpected<Problem>(checked.error());
  return Tell(legs, run, spread);
}

}  // namespace offplumb::plan
