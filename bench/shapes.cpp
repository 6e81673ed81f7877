#include "bench/shapes.h"

#include <benchmark/benchmark.h>

#include "bench/peer_tree.h"
#include "engine/tow/steady_solver.h"

namespace offplumb::bench {
namespace {

constexpr int kRepetitions = 7;
constexpr double kSeconds = 0.2;  // Of one repetition, at least.
constexpr int kPeerRepetitions = 3;

void CountShapes(benchmark::State& state, const CaseSet& set) {
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(set.problems.size()));
}

/// Each shape from scratch, by one solver.
void Cold(benchmark::State& state, const CaseSet& set) {
  tow::SteadySolver solver;
  tow::SteadyTree tree;
  for (auto _ : state) {
    for (const tow::TreeProblem& problem : set.problems) {
      solver.Solve(problem, tree);
      benchmark::DoNotOptimize(tree.ball_m);
    }
  }
  CountShapes(state, set);
}

/// Each shape from its solution at a speed 1 % off: to and fro between the two.
void Warm(benchmark::State& state, const CaseSet& set) {
  tow::SteadySolver solver;
  std::vector<tow::SteadyTree> trees(set.problems.size());
  for (std::size_t i = 0; i < trees.size(); ++i) solver.Solve(set.problems[i], trees[i]);
  bool back = false;
  for (auto _ : state) {
    const std::vector<tow::TreeProblem>& problems = back ? set.problems : set.neighbours;
    for (std::size_t i = 0; i < trees.size(); ++i) {
      solver.SolveFrom(problems[i], trees[i]);
      benchmark::DoNotOptimize(trees[i].ball_m);
    }
    back = !back;
  }
  CountShapes(state, set);
}

void Peer(benchmark::State& state, const CaseSet& set) {
  for (auto _ : state) {
    for (const tow::TreeProblem& problem : set.problems) {
      benchmark::DoNotOptimize(SolvePeer(problem).ball_m);
    }
  }
  CountShapes(state, set);
}

}  // namespace

void RegisterShapes(const std::vector<CaseSet>& sets) {
  for (const CaseSet& set : sets) {
    const auto add = [&](const char* how, void (*run)(benchmark::State&, const CaseSet&),
                         bool with_shape) {
      const CaseSet part = CasesWithShape(set, with_shape);
      return benchmark::RegisterBenchmark(
          ("shapes/" + set.id + "/" + how).c_str(),
          [part, run](benchmark::State& state) { run(state, part); });
    };
    add("cold", Cold, true)->MinTime(kSeconds)->Repetitions(kRepetitions);
    add("warm", Warm, true)->MinTime(kSeconds)->Repetitions(kRepetitions);
    add("peer", Peer, true)->Iterations(1)->Repetitions(kPeerRepetitions);
    if (!CasesWithShape(set, false).problems.empty()) add("refused", Cold, false);
  }
}

}  // namespace offplumb::bench
