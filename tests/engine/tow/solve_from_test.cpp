// A solution found from a neighbour's is the one found from scratch.
#include <gtest/gtest.h>

#include "tests/engine/tow/random_tree.h"

namespace offplumb::tow::testing {
namespace {

/// Both routes stop at a miss of 1e-11 of the line; the answer moves by about the miss (the
/// Jacobian's inverse is of order one to ten in the unknowns' scale).
constexpr SteadyOptions kTight{/*refine=*/1, /*tolerance=*/1e-11, /*max_passes=*/200};
constexpr double kSame = 1e-9;

void ExpectSame(const SteadyTree& a, const SteadyTree& b, double line_m) {
  ASSERT_EQ(a.status, b.status);
  EXPECT_LT((a.ball_m - b.ball_m).norm(), kSame * line_m);
  for (std::size_t i = 0; i < a.clips.size(); ++i) {
    EXPECT_LT((a.clips[i].clip_m - b.clips[i].clip_m).norm(), kSame * line_m);
    EXPECT_LT((a.clips[i].lure_m - b.clips[i].lure_m).norm(), kSame * line_m);
  }
}

TEST(SolveFrom, ANeighbourGivesTheSameAnswerAsScratch) {
  SteadySolver solver(kTight);
  int solved = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    TreeProblem problem = RandomTradeTree(seed);
    SteadyTree from;
    solver.Solve(problem, from);
    if (!from.usable()) continue;
    problem.line_m *= 1.02;
    problem.ball.drag_per_q_kg_per_m *= 1.1;
    SteadyTree scratch;
    solver.Solve(problem, scratch);
    solver.SolveFrom(problem, from);
    if (!scratch.usable()) continue;
    ++solved;
    SCOPED_TRACE(seed);
    ExpectSame(from, scratch, problem.line_m);
  }
  EXPECT_GT(solved, 150);
}

TEST(SolveFrom, TakesFewerPassesThanScratch) {
  SteadySolver solver;
  TreeProblem problem = MakeUsualTree();
  SteadyTree tree;
  solver.Solve(problem, tree);
  const int scratch = tree.passes;
  problem.line_m *= 1.001;
  solver.SolveFrom(problem, tree);
  ASSERT_TRUE(tree.usable());
  EXPECT_LT(tree.passes, scratch);
}

TEST(SolveFrom, AnUnusableStartIsNoHindrance) {
  SteadySolver solver(kTight);
  const TreeProblem problem = MakeUsualTree();
  SteadyTree scratch;
  solver.Solve(problem, scratch);
  SteadyTree tree;  // Never solved.
  solver.SolveFrom(problem, tree);
  ExpectSame(tree, scratch, problem.line_m);
  SteadyTree other;  // Solved, with no clip.
  solver.Solve(MakeSingleLine(problem.line, 20, problem.ball, 1), other);
  solver.SolveFrom(problem, other);
  ExpectSame(other, scratch, problem.line_m);
}

TEST(Solve, DoesNotDependOnWhatTheSolverSolvedBefore) {
  const TreeProblem problem = MakeUsualTree();
  const SteadyTree fresh = SolveTree(problem);
  SteadySolver used;
  SteadyTree tree;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) used.Solve(RandomTradeTree(seed), tree);
  used.Solve(problem, tree);
  EXPECT_EQ(tree.ball_m, fresh.ball_m);
  EXPECT_EQ(tree.clips[0].lure_m, fresh.clips[0].lure_m);
  EXPECT_EQ(tree.passes, fresh.passes);
}

}  // namespace
}  // namespace offplumb::tow::testing
