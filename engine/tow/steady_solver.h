/// \file
/// Finds the steady shape of a tree.
#pragma once

#include <Eigen/Core>
#include <Eigen/LU>

#include "engine/tow/tree.h"
#include "engine/tow/tree_pass.h"

namespace offplumb::tow {

/// How finely and how far to solve. With the defaults the depth is good to 4e-7: the worst of 1,000
/// trees drawn in the ranges of the trade (docs/bench.md; `./run bench` measures it again).
struct SteadyOptions {
  int refine = 1;           ///< Multiplies every step count. >= 1.
  double tolerance = 1e-9;  ///< Largest miss over the line's length.
  int max_passes = 60;      ///< Per attempt.
};

/// Solves trees one after another and keeps its scratch memory: once it has seen a tree with as
/// many clips a call allocates nothing, unless it has to ease the stream in. One object per thread.
///
/// Method: Broyden's (C. G. Broyden, Mathematics of Computation 19 (1965) 577, the "good" update)
/// on the misses of TreePass from an analytic Jacobian, refreshed by differences when it stalls;
/// when that fails, the stream is eased in from rest, or the ball made lighter from a heavier one,
/// and where that way ends the status says what gives way. An iteration that stalls is given up at
/// once, so that a refusal takes little longer than an answer; only what would end without a reason
/// is tried again with more patience. Checked against an independent solver in
/// tests/validation/scipy_bvp_test.cpp to 1e-6 of the line. Near a step of the current, or where
/// rods hold up nearly all of the ball, two shapes may exist; one is found. Tension is positive and
/// every rising line rises in each pass, so the folded shapes that a residual of directions admits
/// are not among the states.
class SteadySolver {
 public:
  explicit SteadySolver(SteadyOptions options = {});

  /// Solves from scratch.
  /// \param problem see TreeProblem for ranges; the caller checks them (plan::MakeProblem does).
  /// \param tree gets the answer; its status says whether it is usable. A numerical failure is not
  /// an exception.
  void Solve(const TreeProblem& problem, SteadyTree& tree);

  /// The same, starting from the solution of a similar problem in `tree`; falls back on `Solve`.
  void SolveFrom(const TreeProblem& problem, SteadyTree& tree);

 private:
  void Begin(const TreeProblem& problem, SteadyTree& tree);
  void Resize(int size);
  /// Where an iteration's first Jacobian comes from: closed forms, differences, or the last one.
  enum class Start { kAnalytic, kDifferences, kKept };
  /// How long an iteration that makes no headway is given. Nearly all that have no shape are told
  /// with short patience; who is left without a reason is tried again with long.
  enum class Patience { kShort, kLong };

  bool Try(const TreeProblem& problem, SteadyTree& tree);
  bool FirstPass(Start start, SteadyTree& tree);
  [[nodiscard]] int MostSteps(Start start) const;
  [[nodiscard]] int MostStalls(Start start) const;
  bool Iterate(Start start, SteadyTree& tree);
  [[nodiscard]] bool Met() const;
  bool Step(SteadyTree& tree);
  bool Refresh(SteadyTree& tree);
  void Invert();
  /// What is changed to get to a shape that is easy to find, and back from there.
  enum class Ease { kStream, kBall };
  void PrepareEased(const TreeProblem& problem, Ease ease, double part);
  void Reach(double part, const SteadyTree& tree);
  void GoBack();
  bool EaseIn(const TreeProblem& problem, Ease ease, SteadyTree& tree);
  bool FindNext(double step, SteadyTree& tree);
  [[nodiscard]] bool Sags(double step, const SteadyTree& tree) const;
  [[nodiscard]] bool WalkedToSag(const SteadyTree& tree) const;
  bool GivesUp(double step, SteadyTree& tree);
  SteadyStatus WhyNot(SteadyTree& tree);
  double FindWeakest();

  SteadyOptions options_;
  TreePass pass_;
  Patience patience_ = Patience::kShort;
  TreeProblem eased_;
  // The last shape found on the way in: how far along, and whether a fishing line is about to sag.
  double reached_part_ = 0;
  bool reached_sags_ = false;
  double looseness_ = 1;  ///< Times the tolerance.
  double line_m_ = 0;
  double tolerance_m_ = 0;
  Eigen::VectorXd unknowns_, misses_, step_, trial_, trial_misses_, change_, inverse_change_, row_,
      reached_;
  Eigen::MatrixXd jacobian_, inverse_, reached_inverse_, identity_;
  Eigen::PartialPivLU<Eigen::MatrixXd> lu_;
};

/// \return a usable solution's lines as points, finer than it was solved.
[[nodiscard]] TreeShape SampleShape(const TreeProblem& problem, const SteadyTree& solution);

}  // namespace offplumb::tow
