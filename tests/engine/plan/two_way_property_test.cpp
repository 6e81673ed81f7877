// What must hold of every two-way run.
#include <cmath>
#include <utility>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "engine/constants.h"
#include "engine/plan/two_way.h"

namespace offplumb::plan {
namespace {

using water::Vector2d;

/// Far above the rounding of some ten sums, far below anything that is told.
constexpr double kRounding = 1e-11;

/// A number in steps of a ten-thousandth of its range, so that RapidCheck can shrink it.
double Drawn(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 10001) / 10000.0;
}

Vector2d Bearing(double angle_rad) { return {std::cos(angle_rad), std::sin(angle_rad)}; }

double Turn(double angle_rad) { return std::remainder(angle_rad, 2 * kPi); }

/// A run without noise, and what is true of it.
struct Run {
  double water_speed_mps = Drawn(0.5, 3);
  double heading_rad = Drawn(0, 2 * kPi);
  double turn_rad = kPi + Drawn(-0.34, 0.34);
  double compass_rad = Drawn(-0.7, 0.7);
  Vector2d current_mps = Drawn(0, 3) * Bearing(Drawn(0, 2 * kPi));
  TwoLegs legs;

  Run() {
    for (std::size_t i = 0; i < legs.size(); ++i) {
      const double heading = heading_rad + (i == 0 ? 0 : turn_rad);
      const Vector2d over_ground = current_mps + water_speed_mps * Bearing(heading);
      legs[i].ground_speed_mps = over_ground.norm();
      legs[i].course_rad = std::atan2(over_ground.y(), over_ground.x());
      legs[i].heading_rad = Turn(heading + compass_rad);
      legs[i].duration_s = Drawn(20, 300);
      legs[i].spread_mps = Drawn(0, 0.2);
    }
  }
};

void AssertBand(const Band& band) {
  RC_ASSERT(band.low <= band.median && band.median <= band.high);
}

void AssertNear(double a, double b) { RC_ASSERT(std::abs(a - b) < kRounding); }

void AssertSame(const Band& a, const Band& b) {
  AssertNear(a.median, b.median);
  AssertNear(a.low, b.low);
  AssertNear(a.high, b.high);
}

/// The same figure told from the other side.
Band Turned(const Band& band) { return {-band.median, -band.high, -band.low}; }

RC_GTEST_PROP(TwoWay, RecoversAnyCurrentFromRunsWithoutNoise, ()) {
  const Run run;
  const auto found = FindTwoWay(run.legs);
  RC_ASSERT(found.has_value());
  const double speed = found->speed_mps.median;
  const Vector2d current = speed * Bearing(found->toward_rad.median);
  AssertNear((current - run.current_mps).norm(), 0);
  AssertNear(found->water_speed_mps.median, run.water_speed_mps);
  AssertNear(Turn(found->first_heading_rad.median - run.heading_rad), 0);
  AssertNear(found->compass_error_rad->median, run.compass_rad);
  AssertNear(std::hypot(found->along_mps.median, found->across_mps.median), speed);
}

RC_GTEST_PROP(TwoWay, RecoversTheCurrentWithoutHeadingsWhenTheyWereOpposite, ()) {
  Run run;
  // Slower than the boat, or courses go one way and headings are asked for.
  const Vector2d current = run.current_mps * (0.99 * run.water_speed_mps / 3);
  for (std::size_t i = 0; i < 2; ++i) {
    const double heading = run.heading_rad + (i == 0 ? 0 : kPi);
    const Vector2d over_ground = current + run.water_speed_mps * Bearing(heading);
    run.legs[i].ground_speed_mps = over_ground.norm();
    run.legs[i].course_rad = std::atan2(over_ground.y(), over_ground.x());
    run.legs[i].heading_rad.reset();
  }
  const auto found = FindTwoWay(run.legs);
  RC_ASSERT(found.has_value());
  AssertNear((found->speed_mps.median * Bearing(found->toward_rad.median) - current).norm(), 0);
  AssertNear(found->water_speed_mps.median, run.water_speed_mps);
}

RC_GTEST_PROP(TwoWay, TellsBandsThatHoldTheirMedians, ()) {
  Run run;
  run.legs[0].log_mps = Drawn(0.5, 4);
  const auto found = FindTwoWay(run.legs);
  RC_ASSERT(found.has_value());
  for (const Band& band : {found->speed_mps, found->toward_rad, found->along_mps, found->across_mps,
                           found->water_speed_mps, found->first_heading_rad, found->log->factor,
                           found->log->error_mps}) {
    AssertBand(band);
  }
  RC_ASSERT(found->speed_mps.low >= 0);
  RC_ASSERT(found->log->factor.low > 0);
  RC_ASSERT(found->toward_rad.high - found->toward_rad.low <= 2 * kPi + kRounding);
}

RC_GTEST_PROP(TwoWay, IsTheSameInTheOtherOrderOfLegs, ()) {
  Run run;
  const bool headings = *rc::gen::arbitrary<bool>();
  for (Leg& leg : run.legs) {
    if (!headings) leg.heading_rad.reset();
    if (*rc::gen::arbitrary<bool>()) leg.log_mps = Drawn(0.5, 3);
  }
  const auto one = FindTwoWay(run.legs);
  std::swap(run.legs[0], run.legs[1]);
  const auto other = FindTwoWay(run.legs);
  RC_ASSERT(one.has_value() == other.has_value());
  if (!one) RC_DISCARD("courses that go one way");
  AssertSame(one->speed_mps, other->speed_mps);
  RC_ASSERT(one->differs_from_none == other->differs_from_none);
  AssertSame(one->water_speed_mps, other->water_speed_mps);
  RC_ASSERT(one->log.has_value() == other->log.has_value());
  if (one->log) AssertSame(one->log->factor, other->log->factor);
  AssertNear(Turn(other->first_heading_rad.median - one->first_heading_rad.median - one->turn_rad),
             0);
  if (headings) return;
  AssertSame(one->along_mps, Turned(other->along_mps));
  AssertSame(one->across_mps, Turned(other->across_mps));
}

RC_GTEST_PROP(TwoWay, TurnsWithTheCompassRose, ()) {
  Run run;
  const auto one = FindTwoWay(run.legs);
  const double by_rad = Drawn(-kPi, kPi);
  for (Leg& leg : run.legs) {
    leg.course_rad = Turn(leg.course_rad + by_rad);
    leg.heading_rad = Turn(*leg.heading_rad + by_rad);
  }
  const auto turned = FindTwoWay(run.legs);
  RC_ASSERT(one.has_value() && turned.has_value());
  AssertSame(one->speed_mps, turned->speed_mps);
  AssertSame(one->along_mps, turned->along_mps);
  AssertSame(one->across_mps, turned->across_mps);
  AssertSame(*one->compass_error_rad, *turned->compass_error_rad);
}

RC_GTEST_PROP(TwoWay, AnswersOrRefusesWhateverIsRead, ()) {
  TwoLegs legs;
  for (Leg& leg : legs) {
    leg.ground_speed_mps = Drawn(-1, 10);
    leg.course_rad = Drawn(-7, 7);
    leg.duration_s = Drawn(0, 400);
    if (*rc::gen::arbitrary<bool>()) leg.heading_rad = Drawn(-7, 7);
    if (*rc::gen::arbitrary<bool>()) leg.log_mps = Drawn(-1, 10);
    if (*rc::gen::arbitrary<bool>()) leg.spread_mps = Drawn(-0.1, 2.1);
  }
  const auto found = FindTwoWay(legs);
  if (!found) {
    RC_ASSERT(!found.error().message.empty() && !found.error().remedy.empty());
    return;
  }
  for (const Band& band : {found->speed_mps, found->toward_rad, found->along_mps, found->across_mps,
                           found->water_speed_mps}) {
    RC_ASSERT(std::isfinite(band.median) && std::isfinite(band.low) && std::isfinite(band.high));
    AssertBand(band);
  }
}

}  // namespace
}  // namespace offplumb::plan
