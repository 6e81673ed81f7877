// Two-way runs: the example of docs/method.md, section 12, worked by hand; runs that are none; and
// whether the bands hold what they promise.
#include "engine/plan/two_way.h"

#include <cmath>
#include <limits>
#include <random>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <boost/math/special_functions/erf.hpp>

#include "engine/constants.h"
#include "engine/plan/coefficients.h"

namespace offplumb::plan {
namespace {

using ::testing::HasSubstr;
using water::Vector2d;

constexpr double kDegree = kPi / 180;

Vector2d Bearing(double angle_rad) { return {std::cos(angle_rad), std::sin(angle_rad)}; }

Leg LegOf(const Vector2d& over_ground_mps, double duration_s = 100) {
  Leg leg;
  leg.ground_speed_mps = over_ground_mps.norm();
  leg.course_rad = std::atan2(over_ground_mps.y(), over_ground_mps.x());
  leg.duration_s = duration_s;
  leg.spread_mps = 0.1;
  return leg;
}

/// The worked example: current 0.1 with the boat and 0.2 to starboard, 1.2 m/s through the water.
TwoLegs Example() {
  TwoLegs legs{LegOf({1.3, 0.2}), LegOf({-1.1, 0.2})};
  for (Leg& leg : legs) leg.log_mps = 1.25;
  return legs;
}

TwoWay Found(const TwoLegs& legs) {
  const auto found = FindTwoWay(legs);
  EXPECT_TRUE(found.has_value()) << found.error().message;
  return found.value_or(TwoWay{});
}

void ExpectBand(const Band& band, double median, double low, double high, double within) {
  EXPECT_NEAR(band.median, median, within);
  EXPECT_NEAR(band.low, low, within);
  EXPECT_NEAR(band.high, high, within);
}

void ExpectRefused(const TwoLegs& legs, ProblemKind kind, const std::string& subject,
                   const std::string& saying) {
  const auto found = FindTwoWay(legs);
  ASSERT_FALSE(found.has_value()) << saying;
  EXPECT_EQ(found.error().kind, kind);
  EXPECT_THAT(found.error().subject, HasSubstr(subject));
  EXPECT_THAT(found.error().message, HasSubstr(saying));
  EXPECT_FALSE(found.error().remedy.empty());
}

TEST(TwoWay, AnswersTheExampleWorkedByHand) {
  const TwoWay found = Found(Example());
  constexpr double kDigits = 6e-5;
  ExpectBand(found.speed_mps, 0.2236, 0.1251, 0.3221, kDigits);
  ExpectBand(found.along_mps, 0.1, 0.0332, 0.1668, kDigits);
  ExpectBand(found.across_mps, 0.2, 0.0951, 0.3049, kDigits);
  ExpectBand(found.water_speed_mps, 1.2, 1.1401, 1.2599, kDigits);
  EXPECT_NEAR(found.toward_rad.median / kDegree, 63.4349, 1e-4);
  EXPECT_NEAR(found.toward_rad.low / kDegree, 43.97, 0.006);
  EXPECT_NEAR(found.toward_rad.high / kDegree, 82.90, 0.006);
  EXPECT_NEAR(std::remainder(found.first_heading_rad.median, 2 * kPi), 0, 1e-12);
  ASSERT_TRUE(found.log.has_value());
  ExpectBand(found.log->error_mps, 0.05, -0.0142, 0.1142, kDigits);
  ExpectBand(found.log->factor, 0.96, 0.9089, 1.0111, kDigits);
  EXPECT_TRUE(found.differs_from_none);
  EXPECT_EQ(found.turn_from, TurnFrom::kReverse);
  EXPECT_FALSE(found.compass_error_rad.has_value());
  EXPECT_NEAR(found.course_miss_rad / kDegree, 180 - (169.695154 - 8.746162), 1e-5);
}

TEST(TwoWay, ReckonsWithHeadingsThatAreNotJustOpposite) {
  // The same current and speed, but the boat came back on 170 and its compass reads 12 too high.
  TwoLegs legs{LegOf(Vector2d{0.1, 0.2} + 1.2 * Bearing(0)),
               LegOf(Vector2d{0.1, 0.2} + 1.2 * Bearing(170 * kDegree))};
  legs[0].heading_rad = 12 * kDegree;
  legs[1].heading_rad = 182 * kDegree;
  const TwoWay found = Found(legs);
  EXPECT_NEAR(found.along_mps.median, 0.1, 1e-12);
  EXPECT_NEAR(found.across_mps.median, 0.2, 1e-12);
  EXPECT_NEAR(found.water_speed_mps.median, 1.2, 1e-12);
  EXPECT_EQ(found.turn_from, TurnFrom::kHeadings);
  EXPECT_NEAR(found.turn_rad, 170 * kDegree, 1e-12);
  ASSERT_TRUE(found.compass_error_rad.has_value());
  EXPECT_NEAR(found.compass_error_rad->median, 12 * kDegree, 1e-12);
  // Without the headings the 10 degrees that are missing look like 0.1 m/s of current.
  for (Leg& leg : legs) leg.heading_rad.reset();
  EXPECT_NEAR((Found(legs).across_mps.median), 0.2 + 1.2 * std::sin(5 * kDegree), 0.02);
}

TEST(TwoWay, OneHeadingAloneTellsOnlyItsCompassError) {
  TwoLegs legs = Example();
  legs[1].heading_rad = 187 * kDegree;
  const TwoWay found = Found(legs);
  EXPECT_EQ(found.turn_from, TurnFrom::kReverse);
  EXPECT_EQ(found.speed_mps.median, Found(Example()).speed_mps.median);
  ASSERT_TRUE(found.compass_error_rad.has_value());
  EXPECT_NEAR(found.compass_error_rad->median, 7 * kDegree, 1e-12);
}

TEST(TwoWay, TellsACurrentFasterThanTheBoatWhenHeadingsAreGiven) {
  const Vector2d current{-1.7, 0.3};
  TwoLegs legs{LegOf(current + 1.1 * Bearing(0)), LegOf(current - 1.1 * Bearing(0))};
  ExpectRefused(legs, ProblemKind::kBadInput, "courses", "go the same way over ground");
  legs[0].heading_rad = 0;
  legs[1].heading_rad = kPi;
  const TwoWay found = Found(legs);
  EXPECT_NEAR(found.speed_mps.median, current.norm(), 1e-12);
  EXPECT_NEAR(found.water_speed_mps.median, 1.1, 1e-12);
}

TEST(TwoWay, SaysWhenThereMayBeNoCurrent) {
  const TwoWay still = Found({LegOf({1.2, 0}), LegOf({-1.2, 0})});
  EXPECT_FALSE(still.differs_from_none);
  EXPECT_EQ(still.speed_mps.low, 0);
  EXPECT_NEAR(still.toward_rad.high - still.toward_rad.low, 2 * kPi, 1e-12);
  EXPECT_GT(still.speed_mps.high, still.along_mps.high - 1e-12);
  const TwoWay slow = Found({LegOf({1.25, 0}), LegOf({-1.15, 0})});
  EXPECT_FALSE(slow.differs_from_none);
  EXPECT_NEAR(slow.speed_mps.median, 0.05, 1e-12);
  EXPECT_EQ(slow.speed_mps.low, 0);
}

TEST(TwoWay, LongerAndSteadierLegsNarrowTheBand) {
  const auto width = [](double duration_s, double spread_mps) {
    TwoLegs legs = Example();
    for (Leg& leg : legs) {
      leg.duration_s = duration_s;
      leg.spread_mps = spread_mps;
    }
    const Band band = Found(legs).water_speed_mps;
    return band.high - band.low;
  };
  EXPECT_LT(width(120, 0.2), width(30, 0.2));
  EXPECT_LT(width(60, 0.05), width(60, 0.2));
  // What does not average out stays: 1.645 sqrt((2 * 0.02^2 + 0.05^2)/4) to either side.
  EXPECT_NEAR(width(3600, 0), 2 * 1.6448536 * std::sqrt(0.0033 / 4), 1e-7);
}

TEST(TwoWay, TakesTheUsualScatterWhenNoneIsGiven) {
  TwoLegs legs = Example();
  for (Leg& leg : legs) leg.spread_mps.reset();
  EXPECT_EQ(Found(legs).speed_mps.low, Found(Example()).speed_mps.low);
}

TEST(TwoWay, RefusesWhatIsNoTwoWayRun) {
  TwoLegs legs = Example();
  legs[1].duration_s = 19;
  ExpectRefused(legs, ProblemKind::kBadInput, "second leg", "held for 19 s");
  legs[1].duration_s = 4000;
  ExpectRefused(legs, ProblemKind::kBadInput, "second leg", "4000 s");
  legs = Example();
  legs[0].heading_rad = 0;
  legs[1].heading_rad = 158 * kDegree;
  ExpectRefused(legs, ProblemKind::kBadInput, "headings", "22 deg from opposite");
  legs[1].heading_rad = 161 * kDegree;
  EXPECT_TRUE(FindTwoWay(legs).has_value());
  legs[0].heading_rad = kPi;
  legs[1].heading_rad = 0;
  ExpectRefused(legs, ProblemKind::kBadInput, "headings", "180 deg off the way the boat went");
  // Not turned round; drifting; under sail.
  ExpectRefused({LegOf({1.2, 0.1}), LegOf({1.15, 0})}, ProblemKind::kBadInput, "legs",
                "nearly one");
  ExpectRefused({LegOf({0, 0}), LegOf({0, 0})}, ProblemKind::kBadInput, "legs", "nearly one");
  ExpectRefused({LegOf({1.2, 0}), LegOf({0, 1.2})}, ProblemKind::kBadInput, "courses",
                "go the same way");
  ExpectRefused({LegOf({5, 0}), LegOf({-5, 0})}, ProblemKind::kBadInput, "legs", "11.2 mph");
}

TEST(TwoWay, RefusesReadingsOutOfRange) {
  const auto with = [](auto change) {
    TwoLegs legs = Example();
    change(legs[0]);
    return legs;
  };
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double speed : {-0.1, 9.0, nan}) {
    ExpectRefused(with([&](Leg& leg) { leg.ground_speed_mps = speed; }), ProblemKind::kBadInput,
                  "first leg", "speed over ground");
  }
  for (const double log : {0.0, 9.0, nan}) {
    ExpectRefused(with([&](Leg& leg) { leg.log_mps = log; }), ProblemKind::kBadInput, "first leg",
                  "log reads");
  }
  for (const double spread : {-0.1, 2.1, nan}) {
    ExpectRefused(with([&](Leg& leg) { leg.spread_mps = spread; }), ProblemKind::kBadInput,
                  "first leg", "scatter");
  }
  for (const double angle : {7.0, nan}) {
    ExpectRefused(with([&](Leg& leg) { leg.course_rad = angle; }), ProblemKind::kBadInput,
                  "first leg", "no angle");
    ExpectRefused(with([&](Leg& leg) { leg.heading_rad = angle; }), ProblemKind::kBadInput,
                  "first leg", "no angle");
  }
  ExpectRefused(with([&](Leg& leg) { leg.duration_s = nan; }), ProblemKind::kBadInput, "first leg",
                "held for");
}

TEST(TwoWay, CannotTellASpeedThatDrownsInTheScatter) {
  TwoLegs legs = Example();
  for (Leg& leg : legs) leg.spread_mps = 1.9;
  ExpectRefused(legs, ProblemKind::kCannotBeDone, "legs", "scatters too much");
}

// Simulation. Runs are drawn by the variances of method.md, section 12, written down anew here.

/// Draws that are the same on every machine.
class Dice {
 public:
  double Uniform(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_() >> 11) + 0.5) / 9007199254740992.0;
  }
  double Normal(double deviation) {
    return -std::sqrt(2.0) * boost::math::erfc_inv(2 * Uniform(0, 1)) * deviation;
  }
  Vector2d Plane(double deviation) { return {Normal(deviation), Normal(deviation)}; }

 private:
  std::mt19937_64 engine_{20240611};
};

/// A run with its truth.
struct DrawnRun {
  TwoLegs legs;
  Vector2d current_mps;  ///< Of the second leg.
  double water_speed_mps = 0;
  double heading_rad = 0;
  double log_factor = 1;
  double compass_error_rad = 0;
};

DrawnRun DrawRun(bool headings, bool one_log, Dice& dice) {
  DrawnRun run;
  run.water_speed_mps = dice.Uniform(1.0, 1.6);
  run.heading_rad = dice.Uniform(0, 2 * kPi);
  run.log_factor = dice.Uniform(0.85, 1.15);
  const Vector2d current = 0.7 * std::sqrt(dice.Uniform(0, 1)) * Bearing(dice.Uniform(0, 2 * kPi));
  const Vector2d change = dice.Plane(0.05);
  run.current_mps = current + 0.5 * change;
  const double throttle = dice.Normal(0.03);
  const double turn = kPi + (headings ? dice.Uniform(-0.2, 0.2) : dice.Normal(5 * kDegree));
  const double compass = headings ? dice.Uniform(-0.3, 0.3) : 0;
  for (std::size_t i = 0; i < 2; ++i) {
    const double side = i == 0 ? -0.5 : 0.5;
    const double speed = run.water_speed_mps * (1 - side * throttle);
    const double heading = run.heading_rad + (i == 0 ? 0 : turn);
    const double duration_s = dice.Uniform(30, 180);
    const double spread = dice.Uniform(0.03, 0.2);
    const double error = std::sqrt(0.02 * 0.02 + spread * spread * 10 / duration_s);
    Leg& leg = run.legs[i] =
        LegOf(current + side * change + speed * Bearing(heading) + dice.Plane(error), duration_s);
    leg.spread_mps = spread;
    if (!one_log || i == 0) leg.log_mps = speed / run.log_factor + dice.Normal(0.02);
    if (!headings) continue;
    const double compass_i = compass + dice.Normal(4 * kDegree / std::sqrt(2.0));
    run.compass_error_rad += 0.5 * compass_i;
    leg.heading_rad = std::remainder(heading + compass_i, 2 * kPi);
  }
  return run;
}

/// How often bands hold the truth.
struct Held {
  int runs = 0, refused = 0;
  int speed = 0, toward = 0, along = 0, across = 0, water_speed = 0, heading = 0, factor = 0,
      compass = 0;
};

bool Holds(const Band& band, double truth) { return band.low <= truth && truth <= band.high; }
bool HoldsAngle(const Band& band, double truth) {
  return Holds(band, band.median + std::remainder(truth - band.median, 2 * kPi));
}

void Count(const DrawnRun& run, Held& held) {
  ++held.runs;
  const auto found = FindTwoWay(run.legs);
  if (!found) {
    ++held.refused;
    return;
  }
  const Vector2d ahead = Bearing(found->first_heading_rad.median);
  const Vector2d right{-ahead.y(), ahead.x()};
  held.speed += Holds(found->speed_mps, run.current_mps.norm());
  held.toward +=
      HoldsAngle(found->toward_rad, std::atan2(run.current_mps.y(), run.current_mps.x()));
  held.along += Holds(found->along_mps, run.current_mps.dot(ahead));
  held.across += Holds(found->across_mps, run.current_mps.dot(right));
  held.water_speed += Holds(found->water_speed_mps, run.water_speed_mps);
  held.heading += HoldsAngle(found->first_heading_rad, run.heading_rad);
  held.factor += Holds(found->log->factor, run.log_factor);
  if (found->compass_error_rad) {
    held.compass += Holds(*found->compass_error_rad, run.compass_error_rad);
  }
}

Held Simulate(bool headings, bool one_log) {
  Dice dice;
  Held held;
  for (int i = 0; i < 20000; ++i) Count(DrawRun(headings, one_log, dice), held);
  return held;
}

void ExpectNineInTen(const Held& held, bool compass) {
  EXPECT_LT(held.refused, held.runs / 50);
  const double runs = held.runs - held.refused;
  const auto expect = [&](int count, const char* what) {
    EXPECT_GT(count / runs, 0.88) << what;
    EXPECT_LT(count / runs, 0.92) << what;
    ::testing::Test::RecordProperty(what, std::to_string(count / runs));
  };
  expect(held.speed, "speed");
  expect(held.toward, "toward");
  expect(held.along, "along");
  expect(held.across, "across");
  expect(held.water_speed, "water speed");
  expect(held.heading, "first heading");
  expect(held.factor, "log factor");
  if (compass) expect(held.compass, "compass error");
}

TEST(TwoWaySimulation, BandsHoldTheTruthInNineOfTenWithoutHeadings) {
  ExpectNineInTen(Simulate(false, false), false);
}

TEST(TwoWaySimulation, BandsHoldTheTruthInNineOfTenWithHeadings) {
  ExpectNineInTen(Simulate(true, true), true);
}

}  // namespace
}  // namespace offplumb::plan
