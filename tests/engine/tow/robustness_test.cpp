// Thousands of trees drawn at random: each is solved to tolerance or refused for a physical reason.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <iostream>
#include <string>
#include <utility>
#include <vector>

#include "engine/tow/fishing_line.h"
#include "tests/engine/tow/random_tree.h"

namespace offplumb::tow::testing {
namespace {

/// Part of the trees that may end without an answer or a reason. The aim is none.
constexpr double kMostWithoutReason = 0.001;
/// Far outside the trade (6 m/s, rods of 60 N, floating lures): measured 1.8 %, natively, and 2.2 %
/// as WebAssembly; kept from growing.
constexpr double kMostWithoutReasonFarOut = 0.03;

struct Tally {
  std::array<int, 7> by_status{};
  std::string without_reason;

  [[nodiscard]] int Of(SteadyStatus status) const {
    return by_status[static_cast<std::size_t>(status)];
  }
};

/// How far a fishing line's foot is from its clip when it is followed anew, over the line's length.
/// The solver stops at 1e-9 by its own measure of a miss; this is the plain distance, and a bowed
/// line may make it ten times that. (2026-11-25: seeds 525, 1493 and 2332 of RandomWideTree were
/// called solved with feet metres off.)
constexpr double kFootMiss = 1e-7;

double FootMiss(const TreeProblem& problem, const ClipLoads& clip, const ClipState& state) {
  const FishingLineProblem rod{&problem.flow,          &clip.fishing_line, clip.rod_tip_m,
                               clip.rod_tip_tension_N, problem.line_m,     1};
  const FishingLineFoot foot = FollowFishingLine(rod, state.rod_log_slope, state.clip_m.z());
  EXPECT_TRUE(foot.holds);
  return (foot.place_m - state.clip_m.head<2>()).norm() / problem.line_m;
}

void ExpectSound(const TreeProblem& problem, const SteadyTree& tree) {
  EXPECT_GE(tree.residual_m, 0);
  EXPECT_LE(tree.residual_m, SteadyOptions{}.tolerance * problem.line_m);
  EXPECT_GT(tree.tension_ball_N, 0);
  EXPECT_GT(tree.tension_boom_N, 0);
  EXPECT_GE(tree.eye_m.z(), 0);
  EXPECT_GE(tree.stretched_m, problem.line_m * (1 - 1e-12));
  for (std::size_t i = 0; i < tree.clips.size(); ++i) {
    const ClipState& clip = tree.clips[i];
    EXPECT_GT(clip.clip_m.z(), 0);
    EXPECT_GT(clip.lure_m.z(), 0);
    EXPECT_GT(clip.trail_force_N.norm(), 0);
    EXPECT_GT(clip.fishing_line_force_N.norm(), 0);
    EXPECT_LT(FootMiss(problem, problem.clips[i], clip), kFootMiss);
    // A line is at least as long as the way between its ends.
    const double way = (problem.clips[i].rod_tip_m - clip.clip_m).norm();
    EXPECT_GE(clip.fishing_line_m, way * (1 - 1e-9));
  }
}

TreeProblem Mirrored(TreeProblem problem) {
  std::vector<water::FlowLayer> layers = problem.flow.layers();
  for (water::FlowLayer& layer : layers) {
    layer.vy = -layer.vy;
    layer.gy = -layer.gy;
  }
  problem.flow = water::Flow::FromLayers(std::move(layers));
  problem.boom_tip_m.y() = -problem.boom_tip_m.y();
  for (ClipLoads& clip : problem.clips) clip.rod_tip_m.y() = -clip.rod_tip_m.y();
  return problem;
}

template <typename Draw>
Tally Sweep(const Draw& draw, std::uint64_t first, int count) {
  Tally tally;
  SteadySolver solver;
  for (int i = 0; i < count; ++i) {
    const std::uint64_t seed = first + static_cast<std::uint64_t>(i);
    const TreeProblem problem = draw(seed);
    SteadyTree tree;
    solver.Solve(problem, tree);
    ++tally.by_status[static_cast<std::size_t>(tree.status)];
    if (tree.status == SteadyStatus::kNotConverged) {
      tally.without_reason += " " + std::to_string(seed);
    }
    SCOPED_TRACE("seed " + std::to_string(seed));
    if (tree.usable()) ExpectSound(problem, tree);
  }
  return tally;
}

void Print(const Tally& tally, int count) {
  for (std::size_t i = 0; i < tally.by_status.size(); ++i) {
    std::cout << "  " << 100.0 * tally.by_status[i] / count << " %  "
              << Describe(static_cast<SteadyStatus>(i)) << "\n";
  }
  if (!tally.without_reason.empty()) {
    std::cout << "  without a reason, seeds:" << tally.without_reason << "\n";
  }
}

TEST(Robustness, TreesOfTheTradeAreSolvedOrRefusedForAReason) {
  constexpr int kCount = 2000;
  const Tally tally = Sweep(RandomTradeTree, 1, kCount);
  Print(tally, kCount);
  EXPECT_LE(tally.Of(SteadyStatus::kNotConverged), kMostWithoutReason * kCount);
  // Rods of 6 N on 76 m of line at 4 mph cannot hold it: some are refused. Most trees are not like
  // that.
  EXPECT_GE(tally.Of(SteadyStatus::kConverged), 0.9 * kCount);
}

TEST(Robustness, NeighboursOfASlackTreeAreSound) {
  // 2026-11-25: seed 14621 was called solved with all three fishing lines 0.2 to 0.5 m off their
  // clips.
  const Tally tally = Sweep(RandomTradeTree, 14600, 50);
  EXPECT_LE(tally.Of(SteadyStatus::kNotConverged), 1);
}

TEST(Robustness, TreesFarOutsideTheTradeAreSolvedOrRefusedForAReason) {
  constexpr int kCount = 500;
  const Tally tally = Sweep(RandomWideTree, 1, kCount);
  Print(tally, kCount);
  EXPECT_LE(tally.Of(SteadyStatus::kNotConverged), kMostWithoutReasonFarOut * kCount);
  EXPECT_GE(tally.Of(SteadyStatus::kConverged), 0.3 * kCount);
}

TEST(Robustness, AMirroredTreeFaresAsItsTwin) {
  // Left and right are one problem: a refusal must not hang on rounding. One is known that does
  // (2026-11-25): in seed 17901 two rods hold up all but 0.8 N of a 25 N ball, and whether its way
  // in is found differs from its mirror image and from machine to machine (docs/method.md, limits).
  SteadySolver solver;
  const auto status = [&solver](const TreeProblem& problem) {
    SteadyTree tree;
    solver.Solve(problem, tree);
    return tree.status;
  };
  const auto check = [&status](std::uint64_t seed) {
    const TreeProblem problem = RandomTradeTree(seed);
    EXPECT_EQ(status(problem), status(Mirrored(problem))) << "seed " << seed;
  };
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) check(seed);
}

TEST(Robustness, ALineWithoutClipsIsAlwaysSolved) {
  // A ball heavier than water on a line in the trade's ranges has a steady shape, whatever the
  // current.
  SteadySolver solver;
  for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
    TreeProblem problem = RandomTradeTree(seed);
    problem.clips.clear();
    SteadyTree tree;
    solver.Solve(problem, tree);
    ASSERT_TRUE(tree.usable()) << "seed " << seed << ": " << Describe(tree.status);
  }
}

TEST(Robustness, ABallAtAStepOfTheCurrentIsSolved) {
  // The stream jumps just where the ball would hang: above the step it would sink, below it would
  // rise, so it must hang in the step. Found 2026-11-25 by random trees: 2 of 100 trees had a body
  // at a step and no answer; with this ball 20 of these 41 steps had none.
  TreeProblem problem =
      MakeSingleLine(MakeLine({0.0008, 1.2, 0.01, 0.0267}), 30, MakeBody(48, 0.004), 1.2);
  const double depth = SolveTree(problem).eye_m.z();
  int solved = 0;
  for (int i = -20; i <= 20; ++i) {
    const double edge = depth + 0.002 * i;
    problem.flow =
        water::Flow::FromLayers({{0, edge, -1.2, 0, 0, 0}, {edge, INFINITY, -2.5, 0, 0, 0}});
    const SteadyTree tree = SolveTree(problem);
    EXPECT_TRUE(tree.usable()) << "step at " << edge << " m: " << Describe(tree.status);
    if (tree.usable()) ++solved;
  }
  EXPECT_EQ(solved, 41);
}

}  // namespace
}  // namespace offplumb::tow::testing
