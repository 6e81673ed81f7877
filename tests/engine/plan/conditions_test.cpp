// What is refused before anything is solved, and the tree that a rig, a motion and a draw make.
#include "engine/plan/conditions.h"

#include <cmath>
#include <limits>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/engine/plan/rigs.h"

namespace offplumb::plan {
namespace {

using learn::Input;
using ::testing::HasSubstr;
using testing::kFoot_m;

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

TEST(CheckConditions, AcceptsTheWholeRangeOfSpeeds) {
  for (const double mph : {0.0, 2.5, 10.0}) EXPECT_TRUE(CheckConditions(testing::Trolling(mph)));
}

TEST(CheckConditions, RefusesASpeedOutOfRangeAndSaysTheRange) {
  for (const double mph : {-0.1, 20.0, static_cast<double>(INFINITY), kNan}) {
    const auto check = CheckConditions(testing::Trolling(mph));
    ASSERT_FALSE(check) << mph;
    EXPECT_EQ(check.error().kind, ProblemKind::kBadInput);
    EXPECT_EQ(check.error().subject, "speed");
    EXPECT_THAT(check.error().message, HasSubstr("between 0 and 10 mph"));
    EXPECT_FALSE(check.error().remedy.empty());
  }
  EXPECT_THAT(CheckConditions(testing::Trolling(20)).error().message, HasSubstr("20 mph"));
}

TEST(CheckConditions, RefusesACurrentThatNoWaterRuns) {
  Conditions conditions = testing::Trolling(2.5);
  conditions.current = testing::OneLayer({0, 9});
  const auto check = CheckConditions(conditions);
  ASSERT_FALSE(check);
  EXPECT_EQ(check.error().kind, ProblemKind::kBadInput);
  EXPECT_FALSE(check.error().message.empty());
}

TEST(CheckRigger, AcceptsTheRigsOfTheseTests) {
  EXPECT_TRUE(CheckRigger(testing::BareRigger()));
  EXPECT_TRUE(CheckRigger(testing::UsualRigger()));
  EXPECT_TRUE(CheckRigger(testing::StackedRigger()));
}

void ExpectRefused(const tackle::Rigger& rigger, const char* words) {
  const auto check = CheckRigger(rigger);
  ASSERT_FALSE(check) << words;
  EXPECT_EQ(check.error().kind, ProblemKind::kBadInput);
  EXPECT_THAT(check.error().subject, HasSubstr(rigger.name));
  EXPECT_THAT(check.error().message, HasSubstr(words));
  EXPECT_FALSE(check.error().remedy.empty());
}

TEST(CheckRigger, RefusesABoomUnderWater) {
  tackle::Rigger rigger = testing::UsualRigger();
  rigger.boom_tip_m.z() = 0.1;
  ExpectRefused(rigger, "under water");
}

TEST(CheckRigger, RefusesABallThatFloats) {
  tackle::Rigger rigger = testing::UsualRigger();
  rigger.ball.density_kg_per_m3 = 900;
  ExpectRefused(rigger, "floats");
  rigger.ball.weight_in_water_N = 0;
  ExpectRefused(rigger, "floats");
}

TEST(CheckRigger, RefusesClipsAtOneHeightOrBelowTheBall) {
  tackle::Rigger rigger = testing::StackedRigger();
  rigger.clips[1].above_ball_m = rigger.clips[0].above_ball_m;
  ExpectRefused(rigger, "same height");
  rigger = testing::UsualRigger();
  rigger.clips[0].above_ball_m = -1;
  ExpectRefused(rigger, "below it");
}

TEST(CheckCount, AcceptsUpToTheLineOnTheReel) {
  const tackle::Rigger rigger = testing::UsualRigger();
  EXPECT_TRUE(CheckCount(rigger, 30));
  EXPECT_TRUE(CheckCount(rigger, rigger.line_on_reel_m));
  EXPECT_TRUE(CheckCount(testing::BareRigger(), 0));
}

TEST(CheckCount, RefusesMoreThanAnyReelHolds) {
  for (const double count_m : {-1.0, 10000.0, static_cast<double>(INFINITY), kNan}) {
    const auto check = CheckCount(testing::UsualRigger(), count_m);
    ASSERT_FALSE(check) << count_m;
    EXPECT_EQ(check.error().kind, ProblemKind::kBadInput);
    EXPECT_THAT(check.error().message, HasSubstr("between 0 and 1000 m"));
  }
}

TEST(CheckCount, RefusesMoreThanTheReelHoldsByTheTape) {
  tackle::Rigger rigger = testing::UsualRigger();
  rigger.line_on_reel_m = 100 * kFoot_m;
  const auto check = CheckCount(rigger, 101 * kFoot_m);
  ASSERT_FALSE(check);
  EXPECT_EQ(check.error().kind, ProblemKind::kBadInput);
  EXPECT_THAT(check.error().message, HasSubstr("101 ft"));
  EXPECT_THAT(check.error().message, HasSubstr("100 ft of line on the reel"));
  // A counter that reads 101 ft at 99.99 ft of line is within it.
  rigger.marks = {{101 * kFoot_m, 99.99 * kFoot_m}};
  EXPECT_TRUE(CheckCount(rigger, 101 * kFoot_m));
}

TEST(CheckCount, SaysThatAClipWouldBeAboveTheWater) {
  const auto check = CheckCount(testing::UsualRigger(), 3 * kFoot_m);
  ASSERT_FALSE(check);
  EXPECT_EQ(check.error().kind, ProblemKind::kCannotBeDone);
  EXPECT_THAT(check.error().message, HasSubstr("4.0 ft above the ball"));
  EXPECT_THAT(check.error().message, HasSubstr("above the water"));
  EXPECT_THAT(check.error().remedy, HasSubstr("more than 4.0 ft"));
}

TEST(SpeedInput, IsTheUnknownCurrentOnlyWhenNoneIsGivenOverGround) {
  Conditions conditions = testing::Trolling(2.5);
  EXPECT_EQ(SpeedInput(conditions), Input::kLogSpeed);
  conditions.speed_kind = SpeedKind::kOverGround;
  EXPECT_EQ(SpeedInput(conditions), Input::kGroundSpeed);
  conditions.current = testing::OneLayer({0.1, 0});
  EXPECT_EQ(SpeedInput(conditions), Input::kLogSpeed);
}

TEST(FlowOf, AddsTheSpeedErrorToTheBoatsSpeed) {
  const Conditions conditions = testing::Trolling(2.5);
  learn::Draw draw = learn::MedianDraw();
  draw[Input::kLogSpeed] = 0.04;
  draw[Input::kGroundSpeed] = 9;  // Not this one's input.
  EXPECT_NEAR(FlowOf(conditions, draw).At(10).x(), -(conditions.speed_mps + 0.04), 1e-15);
  EXPECT_EQ(FlowOf(conditions, draw).At(10).y(), 0);
}

TEST(MakeProblem, LetsOutCountPlusBoomHeightOfLine) {
  const tackle::Rigger rigger = testing::UsualRigger();
  const auto problem = MakeProblem(rigger, testing::Trolling(2.5), 30, learn::MedianDraw());
  EXPECT_DOUBLE_EQ(problem.line_m, 31);
}

// 50 reads 49: between the origin and the mark in proportion, beyond the last as its last piece.
TEST(MakeProblem, CorrectsTheCountByMarksAndByTheDrawsCounter) {
  tackle::Rigger rigger = testing::UsualRigger();
  rigger.marks = {{10, 9.8}, {50, 49}};
  const Conditions conditions = testing::Trolling(2.5);
  learn::Draw draw = learn::MedianDraw();
  const auto line = [&](double count_m) {
    return MakeProblem(rigger, conditions, count_m, draw).line_m - 1;
  };
  EXPECT_NEAR(line(5), 4.9, 1e-12);
  EXPECT_NEAR(line(30), 29.4, 1e-12);
  EXPECT_NEAR(line(50), 49, 1e-12);
  EXPECT_NEAR(line(90), 88.2, 1e-12);
  draw[Input::kCounter] = 1.015;
  EXPECT_NEAR(line(30), 29.4 * 1.015, 1e-12);
}

TEST(MakeProblem, ScalesEachPartByItsOwnInput) {
  const tackle::Rigger rigger = testing::StackedRigger();
  const Conditions conditions = testing::Trolling(2.5);
  const auto median = MakeProblem(rigger, conditions, 40, learn::MedianDraw());
  learn::Draw draw = learn::MedianDraw();
  draw[Input::kWireDrag] = 7;  // No wire on this rig.
  draw[Input::kBraidDrag] = 1.1;
  draw[Input::kNylonDrag] = 1.2;
  draw[Input::kTackleDrag] = 1.3;
  draw[Input::kPulledTackleDrag] = 7;  // No pull on this rig.
  draw[Input::kBallDrag] = 1.4;
  draw[Input::kRodTension] = 1.5;
  const auto drawn = MakeProblem(rigger, conditions, 40, draw);
  const auto expect = [](double a, double b, double factor) {
    EXPECT_NEAR(a, factor * b, 1e-14 * std::abs(a));
  };
  expect(drawn.line.normal_linear, median.line.normal_linear, 1.1);
  expect(drawn.ball.drag_per_q_kg_per_m, median.ball.drag_per_q_kg_per_m, 1.4);
  const auto& low = drawn.clips[0];
  const auto& low_median = median.clips[0];
  expect(low.fishing_line.normal_linear, low_median.fishing_line.normal_linear, 1.2);
  expect(low.trail.setback.normal_linear, low_median.trail.setback.normal_linear, 1.2);
  expect(low.trail.leader.normal_linear, low_median.trail.leader.normal_linear, 1.2);
  expect(low.trail.flasher.drag_per_q_kg_per_m, low_median.trail.flasher.drag_per_q_kg_per_m, 1.3);
  expect(low.trail.lure.drag_per_q_kg_per_m, low_median.trail.lure.drag_per_q_kg_per_m, 1.3);
  expect(low.rod_tip_tension_N, low_median.rod_tip_tension_N, 1.5);
  // The stacked clip's fishing line is braid.
  expect(drawn.clips[1].fishing_line.normal_linear, median.clips[1].fishing_line.normal_linear,
         1.1);
  // Weights are known.
  EXPECT_EQ(drawn.ball.weight_in_water_N, median.ball.weight_in_water_N);
  EXPECT_EQ(drawn.line.weight_in_water_N_per_m, median.line.weight_in_water_N_per_m);
}

TEST(ProblemOf, SaysWhatToDoAboutEveryStatus) {
  const tackle::Rigger rigger = testing::UsualRigger();
  for (const auto status : {tow::SteadyStatus::kMainLineSlack, tow::SteadyStatus::kFishingLineSlack,
                            tow::SteadyStatus::kClipAboveWater, tow::SteadyStatus::kBallAtSurface,
                            tow::SteadyStatus::kLureAtSurface, tow::SteadyStatus::kNotConverged}) {
    const Problem problem = ProblemOf(status, rigger);
    EXPECT_EQ(problem.kind, ProblemKind::kCannotBeDone);
    EXPECT_THAT(problem.subject, HasSubstr("port"));
    EXPECT_EQ(problem.message, tow::Describe(status));
    EXPECT_FALSE(problem.remedy.empty());
  }
}

}  // namespace
}  // namespace offplumb::plan
