// A page drags a finger across set-ups that have no shape: to say so must not take much longer than
// to solve one. Counted in passes, which are what takes the time.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/engine/tow/random_tree.h"

namespace offplumb::tow::testing {
namespace {

TreeProblem FastTree(double speed_mps, double line_m, double rod_tip_tension_N) {
  TreeProblem problem = MakeUsualTree();
  problem.flow = water::Flow::Uniform(speed_mps);
  problem.line_m = line_m;
  problem.clips[0].rod_tip_tension_N = rod_tip_tension_N;
  return problem;
}

void ExpectRefused(const TreeProblem& problem, SteadyStatus status, int most_passes) {
  const SteadyTree tree = SolveTree(problem);
  EXPECT_EQ(tree.status, status) << Describe(tree.status);
  EXPECT_LE(tree.passes, most_passes);
}

TEST(Refusal, OfAFastTowIsQuick) {
  // 2026-11-25: some 1,100 passes each, nearly all of them beyond the last speed with a shape.
  for (const double speed_mps : {3.0, 3.5, 4.0, 4.4}) {
    SCOPED_TRACE(speed_mps);
    ExpectRefused(FastTree(speed_mps, 50, 6), SteadyStatus::kFishingLineSlack, 250);
  }
  ExpectRefused(FastTree(4, 76, 15), SteadyStatus::kFishingLineSlack, 250);
}

TEST(Refusal, OfALiftedBallIsQuick) {
  for (const double rod_N : {55.0, 70.0}) {
    ExpectRefused(FastTree(1.2, 31.48, rod_N), SteadyStatus::kMainLineSlack, 170);
  }
}

TEST(Refusal, OfABallAtTheSurfaceIsQuick) {
  // 2026-11-25: 823 passes.
  TreeProblem problem =
      MakeSingleLine(MakeLine({0.0008, 1.2, 0.01, 0.02, 0.03}), 3, MakeBody(10, 0.02), 6);
  problem.boom_tip_m = {0, 0, -2};
  ExpectRefused(problem, SteadyStatus::kBallAtSurface, 300);
}

TEST(Refusal, OfAClipAboveTheWaterIsAsQuickAsAnAnswer) {
  TreeProblem problem = MakeUsualTree();
  problem.line_m = 3;
  problem.clips[0].above_ball_m = 2.5;
  ExpectRefused(problem, SteadyStatus::kClipAboveWater, 20);
}

TEST(Refusal, OfTreesOfTheTradeIsQuick) {
  // 2026-11-25: 903 passes in the mean, 1,998 at most.
  SteadySolver solver;
  int refused = 0;
  int most = 0;
  long passes = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    SteadyTree tree;
    solver.Solve(RandomTradeTree(seed), tree);
    if (tree.usable()) continue;
    ++refused;
    passes += tree.passes;
    most = std::max(most, tree.passes);
  }
  ASSERT_GT(refused, 10);
  EXPECT_LT(passes, 250L * refused);
  EXPECT_LT(most, 1000);
}

TEST(Refusal, IsNotTheWayOutOfAHardTree) {
  // Each of these is solved only by taking its time: given up on as soon as it stalls, it has no
  // shape. Some of 12,000 found so on 2026-11-25.
  for (const std::uint64_t seed : {426, 2923, 6066, 7611}) {
    const SteadyTree tree = SolveTree(RandomTradeTree(seed));
    EXPECT_TRUE(tree.usable()) << "seed " << seed << ": " << Describe(tree.status);
  }
}

}  // namespace
}  // namespace offplumb::tow::testing
