// A solver that has seen a tree with as many clips allocates nothing: the inner loop of cards and
// bands.

// The address sanitizer keeps allocation to itself: nothing to count there.
#ifndef __SANITIZE_ADDRESS__
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
    // Easing the stream in copies the problem and may allocate; it is the rescue of a few, not the
    // inner loop.
    SteadySolver solver;
    SteadyTree tree;
    solver.Solve(problem, tree);
    if (!tree.usable() || tree.passes > SteadyOptions{}.max_passes) continue;
    ++solved;
    EXPECT_EQ(AllocationsOfSecondSolve(problem, false), 0) << "seed " << seed;
  }
  EXPECT_GT(solved, 20);
}

}  // namespace
}  // namespace offplumb::tow::testing
#endif
