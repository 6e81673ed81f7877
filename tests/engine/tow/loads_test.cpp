// Loads of lines and bodies: overrides, signs and the Reynolds number.
#include "engine/tow/loads.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/constants.h"
#include "engine/tackle/drag_law.h"
#include "engine/tow/normal_drag.h"

namespace offplumb::tow {
namespace {

constexpr water::Water kSea{1025.0, 1.35e-6};
/// Products of some ten factors. Roots in the inner loops are good to 1e-12, far below any
/// coefficient.
constexpr double kRounding = 1e-14;
constexpr double kRoot = 1e-12;

tackle::Line Strand() {
  tackle::Line line;
  line.diameter_m = 0.8e-3;
  line.solid_fraction = 7.0 / 9;
  line.solid_density_kg_per_m3 = 8000;
  line.modulus_Pa = 150e9;
  line.normal_drag_coefficient = 1.25;
  line.tangential_drag_coefficient = 0.01;
  return line;
}

/// Cn of a line at a speed across it.
double Cn(const LineLoads& loads, double speed_mps, double diameter_m) {
  return NormalFactor(loads, speed_mps * speed_mps) / speed_mps /
         (0.5 * kSea.density_kg_per_m3 * diameter_m);
}

TEST(LineLoads, WeightOfAStrandCountsItsMetalOnly) {
  // 7/9 of the circle, 8000 - 1025 kg/m3: 0.02674 N/m, the figure of the reference cases.
  const LineLoads loads = Resolve(Strand(), kSea, 1);
  EXPECT_NEAR(loads.weight_in_water_N_per_m, 0.02674178, 5e-9);
  EXPECT_NEAR(loads.weight_in_air_N_per_m, 0.02674178 * 8000 / 6975, 5e-9);
}

TEST(LineLoads, LevelHoldsAtTheReferenceSpeedAndWhitesLawElsewhere) {
  const LineLoads loads = Resolve(Strand(), kSea, 1);
  EXPECT_NEAR(Cn(loads, 1.2, 0.8e-3), 1.25, kRoot);
  const double ratio =
      tackle::WhiteCylinder(0.4 * 0.8e-3 / 1.35e-6) / tackle::WhiteCylinder(1.2 * 0.8e-3 / 1.35e-6);
  EXPECT_NEAR(Cn(loads, 0.4, 0.8e-3), 1.25 * ratio, kRoot);
}

TEST(LineLoads, StatedConstantHoldsAtEverySpeed) {
  tackle::Line line = Strand();
  line.constant_drag = true;
  const LineLoads loads = Resolve(line, kSea, 1);
  for (double speed : {0.1, 1.0, 3.0}) EXPECT_NEAR(Cn(loads, speed, 0.8e-3), 1.25, 10 * kRounding);
}

TEST(LineLoads, FactorMultipliesNormalDragOnly) {
  const LineLoads one = Resolve(Strand(), kSea, 1);
  const LineLoads more = Resolve(Strand(), kSea, 1.4);
  EXPECT_NEAR(Cn(more, 0.7, 0.8e-3) / Cn(one, 0.7, 0.8e-3), 1.4, kRoot);
  EXPECT_EQ(more.tangential, one.tangential);
  EXPECT_EQ(more.weight_in_water_N_per_m, one.weight_in_water_N_per_m);
}

TEST(LineLoads, StrummingMultipliesByThePublishedFactor) {
  tackle::Line line = Strand();
  const double still = Cn(Resolve(line, kSea, 1), 1.2, line.diameter_m);
  line.strumming = true;
  const double strums = Cn(Resolve(line, kSea, 1), 1.2, line.diameter_m);
  EXPECT_NEAR(strums / still, tackle::StrummingFactor(1.2 * 0.8e-3 / 1.35e-6), kRoot);
}

TEST(LineLoads, StatedConstantsReplaceTheMaterials) {
  tackle::Line line = Strand();
  line.weight_in_water_N_per_m = -0.001;
  line.weight_in_air_N_per_m = 0.5;
  line.stiffness_N = INFINITY;
  const LineLoads loads = Resolve(line, kSea, 1);
  EXPECT_EQ(loads.weight_in_water_N_per_m, -0.001);
  EXPECT_EQ(loads.weight_in_air_N_per_m, 0.5);
  EXPECT_EQ(loads.compliance_per_N, 0);
}

tackle::Body LeadBall() {
  tackle::Body ball;
  ball.mass_kg = 12 * 0.45359237;
  ball.density_kg_per_m3 = 11340;
  ball.drag_area_m2 = 0.004;
  return ball;
}

TEST(BodyLoads, TwelvePoundsOfLeadWeighLessInTheSea) {
  // 5.44311 kg * 9.80665 * (1 - 1025/11340) = 48.5539 N, the figure of the reference cases.
  EXPECT_NEAR(Resolve(LeadBall(), kSea, 1).weight_in_water_N, 48.553868742234975, 1e-9);
}

TEST(BodyLoads, DragRunsWithTheStreamAndWeightDown) {
  const Vector3d load = Load(Resolve(LeadBall(), kSea, 1), -0.6, 0.8);
  const double drag = 0.5 * 1025 * 0.004;
  EXPECT_NEAR(load.x(), -0.6 * drag, kRounding);
  EXPECT_NEAR(load.y(), 0.8 * drag, kRounding);
  EXPECT_NEAR(load.z(), 48.553868742234975, 1e-9);
}

TEST(BodyLoads, LiftRisesAndSideForceGoesToTheRightOfTheWay) {
  // Water runs aft (-x): the body swims ahead and its right is starboard, +y.
  tackle::Body body = LeadBall();
  body.drag_area_m2 = 0;
  body.lift_area_m2 = 0.01;
  body.side_area_m2 = 0.02;
  const Vector3d load = Load(Resolve(body, kSea, 1), -1, 0);
  EXPECT_NEAR(load.x(), 0, kRounding);
  EXPECT_NEAR(load.y(), 0.5 * 1025 * 0.02, 10 * kRounding);
  EXPECT_NEAR(load.z(), 48.553868742234975 - 0.5 * 1025 * 0.01, 1e-9);
}

TEST(BodyLoads, SphereFollowsItsLaw) {
  tackle::Body body = LeadBall();
  body.sphere_diameter_m = 0.0971;
  const double speed = 1.1;
  const double cd = tackle::HaiderLevenspielSphere(speed * 0.0971 / 1.35e-6);
  const double drag = 0.5 * 1025 * cd * kPi / 4 * 0.0971 * 0.0971 * speed * speed;
  EXPECT_NEAR(Load(Resolve(body, kSea, 1), -speed, 0).x(), -drag, 10 * kRounding);
}

TEST(BodyLoads, SpringScalePullIsGivenBackAtItsSpeed) {
  tackle::Body body = LeadBall();
  body.pull = tackle::SpringScalePull{9.3, 1.1};
  EXPECT_NEAR(Load(Resolve(body, kSea, 1), -1.1, 0).x(), -9.3, 10 * kRounding);
  EXPECT_NEAR(Load(Resolve(body, kSea, 1), -2.2, 0).x(), -4 * 9.3, 40 * kRounding);
}

TEST(BodyLoads, StillWaterGivesWeightAlone) {
  tackle::Body body = LeadBall();
  body.sphere_diameter_m = 0.0971;
  const Vector3d load = Load(Resolve(body, kSea, 1), 0, 0);
  EXPECT_EQ(load.x(), 0);
  EXPECT_EQ(load.y(), 0);
}

}  // namespace
}  // namespace offplumb::tow
