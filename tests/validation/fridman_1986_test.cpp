// Lines with a free end, and the cross-flow principle against measured ropes.
//
// A. L. Fridman, Calculations for fishing gear designs, FAO Fishing Manuals (1986): the critical
// angle of a heavy towed line, table 3.3 (p. 64, as transcribed in a public research code) and
// eq. 5.23.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/tow/trail.h"
#include "tests/engine/tow/tree_builders.h"

namespace offplumb::tow::testing {
namespace {

/// A trail that is one line with nothing on its end.
TrailLoads BareTrail(const LineLoads& line, double length_m) {
  TrailLoads trail;
  trail.setback = line;
  trail.setback_m = length_m;
  return trail;
}

struct HeavyLine {
  double diameter_m, cn, cf, weight_N_per_m, speed_mps, length_m;

  /// w cos(phi) = R sin^2(phi): cos(phi) = -r + sqrt(r^2 + 1), r = w/(2 R).
  [[nodiscard]] double Angle_rad() const {
    const double resistance = 0.5 * kRho * diameter_m * cn * speed_mps * speed_mps;
    const double r = weight_N_per_m / (2 * resistance);
    return std::acos(std::sqrt(r * r + 1) - r);
  }
  /// T(L) = L (w sin(phi) + 1/2 rho pi d Cf U^2 cos^2(phi)).
  [[nodiscard]] double Tension_N() const {
    const double c = std::cos(Angle_rad());
    const double friction = 0.5 * kRho * kPi * diameter_m * cf * speed_mps * speed_mps;
    return length_m * (weight_N_per_m * std::sin(Angle_rad()) + friction * c * c);
  }
  [[nodiscard]] TrailMarch March() const {
    const LineLoads line = MakeLine({diameter_m, cn, cf, weight_N_per_m});
    return MarchTrail(water::Flow::Uniform(speed_mps), BareTrail(line, length_m), 60, 4);
  }
};

/// The free end starts with a billionth of the load on one metre (there the direction is not
/// defined): 1e-8 of the answer at most. The rest is rounding.
constexpr double kFreeEndError = 1e-8;

void ExpectStraight(const HeavyLine& line) {
  const TrailMarch march = line.March();
  ASSERT_TRUE(march.holds);
  const Vector3d lure = march.lure_from_clip_m;
  const double phi = line.Angle_rad();
  EXPECT_NEAR(lure.z(), line.length_m * std::sin(phi), kFreeEndError * line.length_m);
  EXPECT_NEAR(-lure.x(), line.length_m * std::cos(phi), kFreeEndError * line.length_m);
  EXPECT_NEAR(march.force_on_clip_N.norm(), line.Tension_N(), kFreeEndError * line.Tension_N());
}

TEST(Fridman, K1WireLiesAtItsCriticalAngle) {
  // 0.8 mm wire at 1.2 m/s, 100 m: 10.9631 degrees from the stream, 19.0176 m below its head,
  // pulling with 2.2841 N.
  const HeavyLine wire{0.0008, 1.2, 0.01, 0.0261, 1.2, 100};
  ExpectStraight(wire);
  EXPECT_NEAR(wire.Angle_rad() / kDegree, 10.9631, 1e-4);
  EXPECT_NEAR(wire.March().lure_from_clip_m.z(), 19.0176, 1e-5 * 100);
  EXPECT_NEAR(-wire.March().lure_from_clip_m.x(), 98.1750, 1e-5 * 100);
  EXPECT_NEAR(wire.March().force_on_clip_N.norm(), 2.2841, 1e-4);
}

TEST(Fridman, SteeperWhenHeavierOrSlower) {
  // K2's and K3's kind: lines that hang at some 30 and 40 degrees.
  ExpectStraight({0.0012, 1.5, 0.02, 0.6, 1.3, 60});
  ExpectStraight({0.002, 1.2, 0.005, 0.9, 0.9, 80});
}

TEST(Fridman, TangentialFrictionLeavesTheAngleAlone) {
  // It acts along the line only. (Not from Cf = 0: near a free end without friction the tension
  // grows so slowly that the equations are stiff there, and the march is not made for that; every
  // lure has drag.)
  HeavyLine wire{0.0008, 1.2, 0.01, 0.0261, 1.2, 100};
  const Vector3d smooth = wire.March().lure_from_clip_m.normalized();
  wire.cf = 0.05;
  const Vector3d rough = wire.March().lure_from_clip_m.normalized();
  EXPECT_LT((smooth - rough).norm(), 1e-9);
}

TEST(Fridman, BuoyantLineRisesAtTheSameAngle) {
  const HeavyLine wire{0.0008, 1.2, 0.01, 0.0261, 1.2, 50};
  const LineLoads floats = MakeLine({0.0008, 1.2, 0.01, -0.0261});
  const TrailMarch up = MarchTrail(water::Flow::Uniform(1.2), BareTrail(floats, 50), 60, 4);
  ASSERT_TRUE(up.holds);
  EXPECT_NEAR(up.lure_from_clip_m.z(), -wire.March().lure_from_clip_m.z(), kFreeEndError * 50);
}

TEST(Fridman, K4NeutralLineLiesStraightAft) {
  // Friction alone: T = 1/2 rho pi d Cf U^2 L.
  const double friction_N = 0.5 * kRho * kPi * 0.0008 * 0.02 * 1.2 * 1.2 * 100;
  EXPECT_NEAR(friction_N, 3.7096, 1e-4);  // The printed figure of K4.
  const LineLoads line = MakeLine({0.0008, 1.2, 0.02});
  const TrailMarch march = MarchTrail(water::Flow::Uniform(1.2), BareTrail(line, 100), 30, 4);
  ASSERT_TRUE(march.holds);
  EXPECT_NEAR(march.lure_from_clip_m.z(), 0, kFreeEndError * 100);
  EXPECT_NEAR(-march.lure_from_clip_m.x(), 100, kFreeEndError * 100);
  EXPECT_NEAR(march.force_on_clip_N.norm(), friction_N, kFreeEndError * friction_N);
}

struct Rope {
  double angle_deg;  ///< Between rope and stream.
  double measured;   ///< Drag along the stream on L d, table 3.3.
};

constexpr Rope kTable33[] = {{0, 0.12},  {10, 0.20}, {20, 0.32}, {30, 0.41}, {40, 0.56},
                             {50, 0.70}, {60, 0.90}, {70, 1.12}, {80, 1.25}, {90, 1.30}};

/// The engine's own loads on a short, stiffly held rope, as a coefficient on L d along the stream:
/// the change of the pull over a metre of line that is too tight to bend.
double CrossFlowDrag(double angle_deg) {
  const double d = 0.01, tension = 1e7;
  LineLoads rope = MakeLine({d, 1.30, 0.12 / kPi});
  TrailLoads trail = BareTrail(rope, 1);
  // A "lure" that pulls the rope straight at the angle, by weight and drag.
  const double a = angle_deg * kDegree;
  trail.lure.weight_in_water_N = tension * std::sin(a);
  trail.lure.drag_per_q_kg_per_m = tension * std::cos(a);
  const TrailMarch march = MarchTrail(water::Flow::Uniform(1), trail, 50, 1);
  return (-march.force_on_clip_N.x() - tension * std::cos(a)) / (0.5 * kRho * d);
}

TEST(Fridman, CrossFlowPrincipleAgainstMeasuredRopes) {
  // With Cn = 1.30 and Cf = 0.12/pi, which meet the table's ends, the principle gives 1.3 sin^3 +
  // 0.12 cos^3. It is within 5 % of the measured ropes from 60 degrees up, where a trolled line
  // mostly is; 12 % low at 50; 40 % low near 30. This test states that known shortcoming; it is a
  // limit of the model, not of the numerics.
  for (const Rope& rope : kTable33) {
    const double s = std::sin(rope.angle_deg * kDegree);
    const double c = std::cos(rope.angle_deg * kDegree);
    const double principle = 1.3 * s * s * s + 0.12 * c * c * c;
    EXPECT_NEAR(CrossFlowDrag(rope.angle_deg), principle, 2e-4) << rope.angle_deg;
    const double ratio = principle / rope.measured;
    if (rope.angle_deg >= 60) {
      EXPECT_NEAR(ratio, 1, 0.05) << rope.angle_deg;
    } else if (rope.angle_deg == 50) {
      EXPECT_NEAR(ratio, 0.88, 0.01);
    } else if (rope.angle_deg == 30) {
      EXPECT_NEAR(ratio, 0.59, 0.01);
    }
    EXPECT_LE(ratio, 1.005) << rope.angle_deg;  // Never more drag than measured.
  }
}

}  // namespace
}  // namespace offplumb::tow::testing
