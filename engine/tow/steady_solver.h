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
/// many clips a call allocates nothing, unless it has to ease its way in (1 tree in 1,000). One
/// object per thread.
///
/// Method: Broyden's (C. G. Broyden, Mathematics of Computation 19 (1965) 577, the "good" update)
/// on the misses of TreePass from an analytic Jacobian, refreshed by differences when it stalls;
/// when that fails, the stream is eased in from rest, or the ball made lighter from a heavier one,
/// and where that way ends the status says what gives way. Checked against an independent solver in
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
  /// Where an iteration's first Jacobian comes from.
  enum class Start { kAnalytic, kDifferences };

  bool Iterate(Start start, SteadyTree& tree);
  bool Met() const;
  bool Step(SteadyTree& tree);
  bool Refresh(SteadyTree& tree);
  void Invert();
  /// What is changed to get to a shape that is easy to find, and back from there.
  enum class Ease { kStream, kBall };
  bool EaseIn(const TreeProblem& problem, Ease ease, SteadyTree& tree);
  SteadyStatus WhyNot(SteadyTree& tree);

  SteadyOptions options_;
  TreePass pass_;
  double line_m_ = 0;
  double tolerance_m_ = 0;
  Eigen::VectorXd unknowns_, misses_, step_, trial_, trial_misses_, change_, inverse_change_, row_,
      reached_;
  Eigen::MatrixXd jacobian_, inverse_, identity_;
  Eigen::PartialPivLU<Eigen::MatrixXd> lu_;
};

/// \return a usable solution's lines as points, finer than it was solved.
[[nodiscard]] TreeShape SampleShape(const TreeProblem& problem, const SteadyTree& solution);

}  // namespace offplumb::tow
