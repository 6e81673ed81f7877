#include "bench/errors.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include <fmt/core.h>

#include "bench/allocations.h"
#include "bench/peer_tree.h"
#include "engine/tow/steady_solver.h"

namespace offplumb::bench {
namespace {

constexpr int kFinerMesh = 6;
constexpr double kFinerTolerance = 1e-11;
/// Tolerance of the peer that is held to be right.
constexpr double kFinerPeer = 1e-10;
/// Two depths further apart than this part of the depth are not the same answer.
constexpr double kSameAnswer = 1e-5;

/// Relative differences of one quantity.
class Differences {
 public:
  /// \param b what a is held against.
  void Add(double a, double b) { Put(std::abs(a - b) / std::abs(b)); }
  void Put(double difference) { values_.push_back(difference); }
  /// \param part 0.5 for the median, 1 for the worst.
  double Quantile(double part) {
    if (values_.empty()) return 0;
    std::sort(values_.begin(), values_.end());
    const double at = part * static_cast<double>(values_.size() - 1);
    return values_[static_cast<std::size_t>(at + 0.5)];
  }
  bool empty() const { return values_.empty(); }

 private:
  std::vector<double> values_;
};

/// Calls of malloc while the whole set is solved by a solver that has seen such a tree.
struct HeapCalls {
  long with_shape = 0;
  long without = 0;
};

HeapCalls CountHeapCalls(const CaseSet& set) {
  tow::SteadySolver solver;
  tow::SteadyTree tree;
  solver.Solve(set.problems.front(), tree);
  HeapCalls calls;
  for (const tow::TreeProblem& problem : set.problems) {
    const long before = Allocations();
    solver.Solve(problem, tree);
    (tree.usable() ? calls.with_shape : calls.without) += Allocations() - before;
  }
  return calls;
}

/// What was seen of one set.
struct Findings {
  Differences ball, lure;
  std::map<tow::SteadyStatus, int> without_shape;
  int split = 0;  ///< Solved coarse but not fine, or the other way round.
  long passes = 0;
  int most_passes = 0;
  int usable = 0;
  HeapCalls heap;
};

void Compare(const tow::SteadyTree& tree, const tow::SteadyTree& finer, Findings& findings) {
  if (tree.usable() != finer.usable()) ++findings.split;
  if (!tree.usable()) ++findings.without_shape[tree.status];
  if (!tree.usable() || !finer.usable()) return;
  ++findings.usable;
  findings.passes += tree.passes;
  findings.most_passes = std::max(findings.most_passes, tree.passes);
  findings.ball.Add(tree.ball_m.z(), finer.ball_m.z());
  for (std::size_t i = 0; i < tree.clips.size(); ++i) {
    findings.lure.Add(tree.clips[i].lure_m.z(), finer.clips[i].lure_m.z());
  }
}

Findings Measure(const CaseSet& set) {
  tow::SteadySolver solver;
  tow::SteadySolver fine_solver({kFinerMesh, kFinerTolerance, 60});
  tow::SteadyTree tree;
  tow::SteadyTree finer;
  Findings findings;
  for (const tow::TreeProblem& problem : set.problems) {
    solver.Solve(problem, tree);
    fine_solver.Solve(problem, finer);
    Compare(tree, finer, findings);
  }
  findings.heap = CountHeapCalls(set);
  return findings;
}

void PrintRow(const CaseSet& set, Findings& found) {
  fmt::print("  {:<41} {:5} {:9.1e} {:9.1e} {:9.1e}", set.words, found.usable,
             found.ball.Quantile(0.5), found.ball.Quantile(0.99), found.ball.Quantile(1));
  if (found.lure.empty()) {
    fmt::print(" {:>9} {:>9}", "-", "-");
  } else {
    fmt::print(" {:9.1e} {:9.1e}", found.lure.Quantile(0.99), found.lure.Quantile(1));
  }
  fmt::print(" {:7.2f} {:6} {:8}\n", static_cast<double>(found.passes) / std::max(found.usable, 1),
             found.most_passes, found.heap.with_shape);
}

void PrintWithoutShape(const CaseSet& set, const Findings& found) {
  for (const auto& [status, count] : found.without_shape) {
    fmt::print("    {}: {} without a steady shape. {}\n", set.id, count, tow::Describe(status));
  }
  if (found.heap.without > 0) {
    fmt::print("    {}: {} calls of malloc to find that out\n", set.id, found.heap.without);
  }
  if (found.split > 0) {
    fmt::print("    {}: {} solved on one mesh and not on the other\n", set.id, found.split);
  }
}

/// What was seen of the peer beside the solver.
struct Agreement {
  Differences differences;
  int both = 0;
  int only_ours = 0;
  int only_peers = 0;
  int apart = 0;
};

void Compare(const tow::SteadyTree& tree, const PeerTree& peer, Agreement& agreement) {
  if (tree.usable() != peer.found) ++(tree.usable() ? agreement.only_ours : agreement.only_peers);
  if (!tree.usable() || !peer.found) return;
  ++agreement.both;
  Differences here;
  here.Add(peer.ball_m.z(), tree.ball_m.z());
  for (std::size_t i = 0; i < tree.clips.size(); ++i) {
    here.Add(peer.lure_depth_m[i], tree.clips[i].lure_m.z());
  }
  const double difference = here.Quantile(1);
  if (difference > kSameAnswer) ++agreement.apart;
  agreement.differences.Put(difference);
}

Agreement MeasureAgreement(const CaseSet& set, const PeerOptions& options) {
  tow::SteadySolver solver;
  tow::SteadyTree tree;
  Agreement seen;
  for (const tow::TreeProblem& problem : set.problems) {
    solver.Solve(problem, tree);
    Compare(tree, SolvePeer(problem, options), seen);
  }
  return seen;
}

void PrintRow(const std::string& words, Agreement& seen) {
  fmt::print("  {:<41} {:5} {:9.1e} {:9.1e} {:9.1e} {:10} {:11} {:9}\n", words, seen.both,
             seen.differences.Quantile(0.5), seen.differences.Quantile(0.99),
             seen.differences.Quantile(1), seen.apart, seen.only_ours, seen.only_peers);
}

}  // namespace

bool PrintErrors(const std::vector<CaseSet>& sets) {
  fmt::print("Relative error of the depth, against {} times the steps and a tolerance of {:g}\n",
             kFinerMesh, kFinerTolerance);
  fmt::print("  {:<41} {:>5} {:^29} {:^19} {:^14} {:>8}\n", "", "", "ball", "lure", "passes",
             "calls of");
  fmt::print("  {:<41} {:>5} {:>9} {:>9} {:>9} {:>9} {:>9} {:>7} {:>6} {:>8}\n", "1,000 cases of",
             "found", "median", "99 %", "worst", "99 %", "worst", "mean", "most", "malloc");
  bool same = true;
  for (const CaseSet& set : sets) {
    Findings found = Measure(set);
    PrintRow(set, found);
    PrintWithoutShape(set, found);
    same = same && found.split == 0;
  }
  fmt::print("\n");
  return same;
}

bool PrintAgreement(const std::vector<CaseSet>& sets) {
  const PeerOptions timed;
  const PeerOptions finer{kFinerPeer, kFinerPeer};
  fmt::print(
      "The peer: Dormand-Prince 5(4) of Boost.Odeint on the Cartesian force vector, the unknowns "
      "by Powell's\n"
      "hybrid method of Eigen. Relative difference of its ball and lure depths from the "
      "solver's\n");
  fmt::print("  {:<41} {:>5} {:>9} {:>9} {:>9} {:>10} {:>11} {:>9}\n", "1,000 cases of", "both",
             "median", "99 %", "worst", "over 1e-5", "solver only", "peer only");
  bool same = true;
  for (const CaseSet& set : sets) {
    Agreement seen = MeasureAgreement(set, timed);
    PrintRow(set.words, seen);
    seen = MeasureAgreement(set, finer);
    PrintRow(fmt::format("  the peer at {:g} instead of {:g}", kFinerPeer, timed.line_tolerance),
             seen);
    same = same && seen.apart == 0;
  }
  fmt::print("\n");
  return same;
}

}  // namespace offplumb::bench
