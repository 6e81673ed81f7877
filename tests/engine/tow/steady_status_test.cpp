// What the solver says where no usable shape exists, and that it says nothing else.
#include <gtest/gtest.h>

#include "tests/engine/tow/tree_builders.h"

namespace offplumb::tow::testing {
namespace {

ClipLoads SecondClip(const ClipLoads& first, double above_ball_m) {
  ClipLoads clip = first;
  clip.above_ball_m = above_ball_m;
  clip.rod_tip_m = {1.0, 1.5, -2.0};
  return clip;
}

TEST(SteadyStatus, HeavyRodsAreAnsweredWhileTheLineStillPulls) {
  // Rods of 48 to 50 N on a ball of 48.6 N: they pull aslant, so the line still carries some.
  // 2026-11-25: from 49 N on this was called slack.
  double last_N = 7;
  for (const double rod_N : {48.0, 49.0, 50.0}) {
    TreeProblem problem = MakeUsualTree();
    problem.clips[0].rod_tip_tension_N = rod_N;
    const SteadyTree tree = SolveTree(problem);
    ASSERT_TRUE(tree.usable()) << rod_N << " N: " << Describe(tree.status);
    EXPECT_GT(tree.tension_boom_N, 2.0);
    EXPECT_LT(tree.tension_boom_N, last_N);
    last_N = tree.tension_boom_N;
  }
}

TEST(SteadyStatus, UsualTreeIsSolved) {
  EXPECT_EQ(SolveTree(MakeUsualTree()).status, SteadyStatus::kConverged);
}

TEST(SteadyStatus, MainLineGoesSlackWhenTheRodsHoldUpTheBall) {
  // 6 lb weigh 24.3 N in the sea. Two rods of 15 N whose lines stand steeply lift 30 N: nothing is
  // left for the main line. At rest this is plain statics; with way on, drag only tilts the pulls.
  TreeProblem problem = MakeUsualTree();
  problem.ball = MakeBody(24.28, 0.0022);
  problem.clips.push_back(SecondClip(problem.clips[0], 6));
  for (double speed : {0.0, 0.3, 0.6}) {
    problem.flow = water::Flow::Uniform(speed);
    EXPECT_EQ(SolveTree(problem).status, SteadyStatus::kMainLineSlack) << speed << " m/s";
  }
}

TEST(SteadyStatus, LiftOfTheBallBeyondItsWeightIsASlackMainLine) {
  // Lift area 0.2 m2 at 1.2 m/s: 147 N up on a ball of 48 N.
  TreeProblem problem = MakeSingleLine(MakeLine({0.0008, 1.2, 0.01}), 30, MakeBody(48, 0.003), 1.2);
  problem.ball.lift_per_q_kg_per_m = 0.5 * kRho * 0.2;
  EXPECT_EQ(SolveTree(problem).status, SteadyStatus::kMainLineSlack);
}

TEST(SteadyStatus, ClipAboveTheWaterIsNamed) {
  // 3 m of line from a boom 1 m up: the clip 2.5 m above the ball hangs half a metre in the air.
  TreeProblem problem = MakeUsualTree();
  problem.line_m = 3;
  problem.clips[0].above_ball_m = 2.5;
  EXPECT_EQ(SolveTree(problem).status, SteadyStatus::kClipAboveWater);
}

TEST(SteadyStatus, LureThatPlanesUpIsAtTheSurface) {
  // A diving plane turned over: lift area 0.05 m2 at 1.2 m/s pulls 37 N up on a lure of 0.15 N, on
  // a clip 3 m down.
  TreeProblem problem = MakeUsualTree();
  problem.line_m = 6;
  problem.clips[0].trail.setback_m = 20;
  problem.clips[0].trail.lure.lift_per_q_kg_per_m = 0.5 * kRho * 0.002;
  problem.clips[0].trail.flasher.weight_in_water_N = 0;
  EXPECT_EQ(SolveTree(problem).status, SteadyStatus::kLureAtSurface);
}

TEST(SteadyStatus, FishingLineGoesSlackWhereTheRodCannotHoldItsWeight) {
  // A line of 0.5 N/m in still water, 29 m below a rod with 3 N: its weight alone is 14 N.
  TreeProblem problem = MakeUsualTree();
  problem.flow = water::Flow::Uniform(0);
  problem.clips[0].fishing_line = MakeLine({0.001, 1.2, 0.01, 0.5, 0.5});
  problem.clips[0].rod_tip_tension_N = 3;
  EXPECT_EQ(SolveTree(problem).status, SteadyStatus::kFishingLineSlack);
}

TEST(SteadyStatus, FishingLineGoesSlackWhereTheStreamTakesMoreThanTheRodHolds) {
  // 3 N at the rod against some 20 N of stream on 90 m of 0.8 mm line at 2 m/s: friction along the
  // line alone takes the tension away before the clip is reached.
  TreeProblem problem = MakeUsualTree();
  problem.line_m = 90;
  problem.ball = MakeBody(90, 0.005);
  problem.flow = water::Flow::Uniform(2);
  problem.clips[0].fishing_line = MakeLine({0.0008, 1.2, 0.02, 0.0005, 0.005});
  problem.clips[0].rod_tip_tension_N = 3;
  EXPECT_EQ(SolveTree(problem).status, SteadyStatus::kFishingLineSlack);
}

TEST(SteadyStatus, BallThatIsTowedUpToTheSurfaceIsNamed) {
  // A boom 2 m up and 3 m of line, at 6 m/s with 400 N of drag on 10 N of ball: the line lies
  // nearly level.
  TreeProblem problem =
      MakeSingleLine(MakeLine({0.0008, 1.2, 0.01, 0.02, 0.03}), 3, MakeBody(10, 0.02), 6);
  problem.boom_tip_m = {0, 0, -2};
  EXPECT_EQ(SolveTree(problem).status, SteadyStatus::kBallAtSurface);
}

TEST(SteadyStatus, EveryStatusHasASentence) {
  for (int i = 0; i <= static_cast<int>(SteadyStatus::kNotConverged); ++i) {
    const std::string_view text = Describe(static_cast<SteadyStatus>(i));
    ASSERT_FALSE(text.empty());
    EXPECT_EQ(text.back(), '.');
  }
}

TEST(SteadyStatus, StillWaterHangsPlumb) {
  // No stream, no boat speed: the ball hangs the line's length below the boom, to rounding
  // (statement 8 of the reference notes: depth = line out exactly).
  TreeProblem problem =
      MakeSingleLine(MakeLine({0.0008, 1.2, 0.01, 0.0267, 0.031}), 61.5, MakeBody(48, 0.0035), 0);
  problem.boom_tip_m = {0.3, -1.2, -0.75};
  const SteadyTree tree = SolveFinely(problem);
  ASSERT_TRUE(tree.usable());
  EXPECT_NEAR(tree.ball_m.z(), 61.5 - 0.75, 1e-12 * 61.5);
  EXPECT_NEAR(tree.ball_m.x(), 0.3, 1e-12 * 61.5);
  EXPECT_NEAR(tree.ball_m.y(), -1.2, 1e-12 * 61.5);
  EXPECT_NEAR(tree.tension_boom_N, 48 + 60.75 * 0.0267 + 0.75 * 0.031, 1e-11);
}

}  // namespace
}  // namespace offplumb::tow::testing
