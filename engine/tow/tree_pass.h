/// \file
/// One pass through a tree from guessed unknowns: what misses, and by how much.
///
/// Unknowns, all in metres so that one tolerance serves: the place of the ball's eye (3); for each
/// clip the fishing line's log-slope at the rod tip times the length of the line (2), and the
/// lure's depth below the clip (1). Misses, in metres and in the same order: the main line's upper
/// end from the boom tip; the mean log-slope that the fishing line makes less the one it needs to
/// meet the clip, times the same length; the trail's fore end from the clip's depth.
#pragma once

#include <vector>

#include <Eigen/Core>

#include "engine/tow/fishing_line.h"
#include "engine/tow/main_line.h"
#include "engine/tow/tree.h"

namespace offplumb::tow {

/// What stays the same over all passes of one problem. Prepare it once per problem.
class TreePass {
 public:
  /// \param refine multiplies every step count, >= 1.
  void Prepare(const TreeProblem& problem, int refine);

  [[nodiscard]] int size() const { return 3 + 3 * static_cast<int>(rods_.size()); }

  /// A start from closed forms: small bow for the main line, sideways catenaries for the fishing
  /// lines.
  void Guess(Eigen::VectorXd& unknowns) const;
  /// A start from the solution of a similar problem with the same number of clips.
  void Recall(const SteadyTree& tree, Eigen::VectorXd& unknowns) const;
  /// Estimate of d misses/d unknowns about the last pass, from closed forms.
  /// \param tree what that pass left.
  void GuessJacobian(const SteadyTree& tree, Eigen::MatrixXd& jacobian);

  /// One pass. \param tree gets places relative to the clips; Finish makes them absolute.
  /// \return kConverged when the pass came to its end (the misses may be large), else what stopped
  /// it.
  SteadyStatus Run(const Eigen::VectorXd& unknowns, SteadyTree& tree, Eigen::VectorXd& misses);

  /// \return how far a fishing line's foot was from its clip at most in the last pass, m. A line
  /// that bellies out far misses by more than its mean log-slope shows.
  [[nodiscard]] double foot_miss_m() const { return foot_miss_m_; }

  /// Turns what the last pass left into the answer's places and figures, and sets its status.
  void Finish(SteadyTree& tree) const;

  /// The solved lines as points. \param tree a finished tree of this problem.
  [[nodiscard]] TreeShape Trace(const SteadyTree& tree) const;

 private:
  SteadyStatus Join(std::size_t i, const Eigen::VectorXd& unknowns, SteadyTree& tree,
                    Eigen::VectorXd& misses);
  SteadyStatus March(std::size_t i, double lure_below_m, ClipState& state);

  const TreeProblem* problem_ = nullptr;
  int refine_ = 1;
  std::vector<MainLineSpan> spans_;  ///< From the ball up: one more than clips.
  std::vector<FishingLineProblem> rods_;
  std::vector<double>
      rod_scale_m_;                ///< Length that makes the rod's log-slope an unknown in metres.
  std::vector<double> bow_;        ///< Of each fishing line, see Bow.
  std::vector<char> trail_known_;  ///< In a uniform stream a trail is marched once.
  std::vector<Vector3d>
      pull_above_N_;         ///< Of the main line just above each clip, in the last pass.
  Eigen::Matrix3Xd moved_;   ///< GuessJacobian's: place and
  Eigen::Matrix3Xd pulled_;  ///< pull at the point it has come to, by unknown.
  double foot_miss_m_ = 0;
  MainLinePoint top_;  ///< Where the last pass ended.
};

}  // namespace offplumb::tow
