// A changed rig is the rig one would have bought: scaled gear equals the catalogue's in that size.
#include "engine/plan/alter.h"

#include <cmath>

#include <gtest/gtest.h>

#include "engine/tow/loads.h"
#include "tests/engine/plan/rigs.h"

namespace offplumb::plan {
namespace {

using testing::kPound_kg;

constexpr double kRounding = 1e-12;

void ExpectSameBall(const tackle::Body& a, const tackle::Body& b) {
  const water::Water water = water::UsualSaltWater();
  const tow::BodyLoads x = tow::Resolve(a, water, 1);
  const tow::BodyLoads y = tow::Resolve(b, water, 1);
  EXPECT_NEAR(x.weight_in_water_N, y.weight_in_water_N, kRounding * y.weight_in_water_N);
  EXPECT_NEAR(x.drag_per_q_kg_per_m, y.drag_per_q_kg_per_m, kRounding * y.drag_per_q_kg_per_m);
  EXPECT_NEAR(x.reynolds_per_mps, y.reynolds_per_mps, kRounding * y.reynolds_per_mps);
  EXPECT_NEAR(a.eye_to_centre_m, b.eye_to_centre_m, kRounding);
}

TEST(ScaledBall, IsTheBallOfThatWeight) {
  for (const char* shape : {"sphere", "finned", "flat"}) {
    const std::string id = std::string("ball-") + shape;
    ExpectSameBall(ScaledBall(tackle::MakeBall(id + "-12lb").value(), 15.0 / 12.0),
                   tackle::MakeBall(id + "-15lb").value());
  }
}

TEST(ScaledBall, ScalesWhatWasStated) {
  tackle::Body ball;
  ball.weight_in_water_N = 40;
  ball.drag_area_m2 = 0.003;
  ball.lift_area_m2 = -0.001;
  ball.pull = tackle::SpringScalePull{2, 1.1};
  const tackle::Body larger = ScaledBall(ball, 8);  // Twice as long.
  EXPECT_NEAR(*larger.weight_in_water_N, 320, kRounding * 320);
  EXPECT_NEAR(larger.drag_area_m2, 0.012, kRounding);
  EXPECT_NEAR(larger.lift_area_m2, -0.004, kRounding);
  EXPECT_NEAR(larger.pull->force_N, 8, kRounding * 8);
  EXPECT_EQ(larger.pull->speed_mps, 1.1);
}

TEST(ScaledLine, IsTheLineOfThatDiameter) {
  const water::Water water = water::UsualSaltWater();
  for (const char* id : {"wire-1x7", "wire-7x7", "braid", "nylon"}) {
    const tackle::Line thick = tackle::MakeLine(id, 8e-4).value();
    const tow::LineLoads a = tow::Resolve(ScaledLine(thick, 0.75), water, 1);
    const tow::LineLoads b = tow::Resolve(tackle::MakeLine(id, 6e-4).value(), water, 1);
    EXPECT_NEAR(a.weight_in_water_N_per_m / b.weight_in_water_N_per_m, 1, kRounding) << id;
    EXPECT_NEAR(a.weight_in_air_N_per_m / b.weight_in_air_N_per_m, 1, kRounding) << id;
    EXPECT_NEAR(a.normal_linear / b.normal_linear, 1, kRounding) << id;
    EXPECT_NEAR(a.normal_cbrt / b.normal_cbrt, 1, kRounding) << id;
    EXPECT_NEAR(a.tangential / b.tangential, 1, kRounding) << id;
    EXPECT_NEAR(a.compliance_per_N / b.compliance_per_N, 1, kRounding) << id;
  }
}

TEST(ScaledLine, ScalesWhatWasStated) {
  tackle::Line line = tackle::MakeLine("wire-1x7-0.8mm").value();
  line.weight_in_water_N_per_m = 0.04;
  line.weight_in_air_N_per_m = 0.05;
  line.stiffness_N = 40000;
  const tackle::Line half = ScaledLine(line, 0.5);
  EXPECT_NEAR(*half.weight_in_water_N_per_m, 0.01, kRounding);
  EXPECT_NEAR(*half.weight_in_air_N_per_m, 0.0125, kRounding);
  EXPECT_NEAR(*half.stiffness_N, 10000, kRounding * 10000);
}

TEST(BallMass, IsThatOfLeadWhenOnlyTheWeightInWaterIsKnown) {
  EXPECT_DOUBLE_EQ(BallMass_kg(tackle::MakeBall("ball-sphere-12lb").value()), 12 * kPound_kg);
  // 12 lb of lead in water of 1025 kg/m3: 12 lb * g * (1 - 1025/11340).
  tackle::Body ball;
  ball.weight_in_water_N = 12 * kPound_kg * kGravity_mps2 * (1 - 1025.0 / 11340.0);
  EXPECT_NEAR(BallMass_kg(ball), 12 * kPound_kg, kRounding * 10);
}

TEST(WithoutFlashers, LeavesSetbackAndLureAlone) {
  const tackle::Rigger before = testing::StackedRigger();
  const tackle::Rigger after = WithoutFlashers(before);
  ASSERT_EQ(after.clips.size(), before.clips.size());
  for (std::size_t i = 0; i < after.clips.size(); ++i) {
    EXPECT_FALSE(after.clips[i].trail.flasher);
    EXPECT_EQ(after.clips[i].trail.leader_m, 0);
    EXPECT_EQ(after.clips[i].trail.setback_m, before.clips[i].trail.setback_m);
    EXPECT_EQ(after.clips[i].trail.lure.name, before.clips[i].trail.lure.name);
  }
}

}  // namespace
}  // namespace offplumb::plan
