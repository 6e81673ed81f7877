// A solver that has seen a tree with as many clips allocates nothing: the inner loop of cards and
// bands.

// The address sanitizer keeps allocation to itself: nothing to count there. g++ tells of it by a
// macro, clang by a feature.
#ifdef __has_feature
#if __has_feature(address_sanitizer)
#define OFFPLUMB_UNDER_ADDRESS_SANITIZER
#endif
#endif
#if !defined(__SANITIZE_ADDRESS__) && !defined(OFFPLUMB_UNDER_ADDRESS_SANITIZER)
#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>
#include <new>

#include "tests/engine/tow/random_tree.h"

namespace {
std::atomic<long> allocations{0};
}  // namespace

// Eigen calls malloc, not operator new. With the plain GNU library malloc itself can be counted;
// WebAssembly brings its own, and there operator new is what can be seen.
#ifdef __GLIBC__
extern "C" void* __libc_malloc(std::size_t size);
extern "C" void* malloc(std::size_t size) {
  ++allocations;
  return __libc_malloc(size);
}
#else
void* operator new(std::size_t size) {
  ++allocations;
  void* memory = std::malloc(size);
  if (!memory) throw std::bad_alloc();
  return memory;
}
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }
#endif

namespace offplumb::tow::testing {
namespace {

/// The volatile keeps the compiler from dropping an allocation that nobody reads.
TEST(Allocation, TheCounterCounts) {
  const long before = allocations;
  int* volatile number = new int(3);
  delete number;
  EXPECT_GT(allocations - before, 0);
}

long AllocationsOfSecondSolve(const TreeProblem& problem, bool from_neighbour) {
  SteadySolver solver;
  SteadyTree tree;
  solver.Solve(problem, tree);
  if (!tree.usable()) return -1;
  const long before = allocations;
  if (from_neighbour) {
    solver.SolveFrom(problem, tree);
  } else {
    solver.Solve(problem, tree);
  }
  return allocations - before;
}

TEST(Allocation, SolvingAgainAllocatesNothing) {
  EXPECT_EQ(AllocationsOfSecondSolve(MakeUsualTree(), false), 0);
  EXPECT_EQ(AllocationsOfSecondSolve(MakeUsualTree(), true), 0);
}

TEST(Allocation, NeitherDoTreesDrawnAtRandom) {
  int solved = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const TreeProblem problem = RandomTradeTree(seed);
    // Easing the stream in makes new layers at each step; it is the rescue of a few, not the inner
    // loop.
    SteadySolver solver;
    SteadyTree tree;
    solver.Solve(problem, tree);
    if (!tree.usable() || tree.passes > SteadyOptions{}.max_passes) continue;
    ++solved;
    EXPECT_EQ(AllocationsOfSecondSolve(problem, false), 0) << "seed " << seed;
  }
  EXPECT_GT(solved, 20);
}

TEST(Allocation, EasingInAllocatesNoMoreThanTheStreamsLayers) {
  // Making a stream of up to four layers takes at most four, and each step takes five passes or
  // more. 2026-11-25: 30 a tree, half of them copies of the problem.
  SteadySolver solver;
  int eased = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    const TreeProblem problem = RandomTradeTree(seed);
    SteadyTree tree;
    solver.Solve(problem, tree);
    if (tree.passes <= SteadyOptions{}.max_passes) continue;
    ++eased;
    const long before = allocations;
    solver.Solve(problem, tree);
    EXPECT_LE(allocations - before, 4 * tree.passes / 5) << "seed " << seed;
  }
  EXPECT_GT(eased, 5);
}

TEST(Allocation, EasingTheBallAllocatesNothing) {
  // Rods of 70 N lift a ball of 48.6 N: only the heavier ball has a shape to start from.
  TreeProblem problem = MakeUsualTree();
  problem.clips[0].rod_tip_tension_N = 70;
  SteadySolver solver;
  SteadyTree tree;
  solver.Solve(problem, tree);
  ASSERT_EQ(tree.status, SteadyStatus::kMainLineSlack);
  const long before = allocations;
  solver.Solve(problem, tree);
  // The stream, once: its way in ends at its start.
  EXPECT_LE(allocations - before, 2);
}

}  // namespace
}  // namespace offplumb::tow::testing
#endif
