#include "bench/case_sets.h"

#include <utility>

#include "bench/random_trees.h"
#include "engine/tow/steady_solver.h"

namespace offplumb::bench {
namespace {

constexpr std::uint32_t kSeed = 7;
constexpr double kNeighbourSpeed = 1.01;
// The aims for one core.
constexpr double kLinesPerSecond = 100e3;
constexpr double kTreesPerSecond = 10e3;

tow::TreeProblem ProblemOf(const RandomCase& drawn) {
  return plan::MakeProblem(drawn.rigger, drawn.conditions, drawn.count_m, learn::MedianDraw());
}

CaseSet MakeCaseSet(std::string id, std::string words, double aim_per_s,
                    const RandomRanges& ranges) {
  CaseSet set;
  set.id = std::move(id);
  set.words = std::move(words);
  set.aim_per_s = aim_per_s;
  for (RandomCase& drawn : DrawCases(kCases, ranges, kSeed)) {
    set.problems.push_back(ProblemOf(drawn));
    drawn.conditions.speed_mps *= kNeighbourSpeed;
    set.neighbours.push_back(ProblemOf(drawn));
  }
  return set;
}

}  // namespace

std::vector<CaseSet> MakeCaseSets() {
  return {
      MakeCaseSet("line/current", "single line, current changing with depth", kLinesPerSecond,
                  {0, true}),
      MakeCaseSet("line/still", "single line, still water", kLinesPerSecond, {0, false}),
      MakeCaseSet("tree/current", "whole tree, current changing with depth", kTreesPerSecond,
                  {1, true}),
      MakeCaseSet("tree/still", "whole tree, still water", kTreesPerSecond, {1, false}),
  };
}

CaseSet CasesWithShape(const CaseSet& set, bool with) {
  CaseSet part{set.id, set.words, set.aim_per_s, {}, {}};
  tow::SteadySolver solver;
  tow::SteadyTree here, beside;
  for (std::size_t i = 0; i < set.problems.size(); ++i) {
    solver.Solve(set.problems[i], here);
    solver.Solve(set.neighbours[i], beside);
    if ((here.usable() && beside.usable()) != with) continue;
    part.problems.push_back(set.problems[i]);
    part.neighbours.push_back(set.neighbours[i]);
  }
  return part;
}

}  // namespace offplumb::bench
