#include "engine/tow/steady_solver.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace offplumb::tow {
namespace {

/// Longest step of any unknown, as part of the line's length.
constexpr double kLongestStepPart = 0.5;
/// Halvings of a step that leads where no line holds.
constexpr int kMostHalvings = 8;
/// Passes between two looks at the progress; a stall refreshes the Jacobian.
constexpr int kPatience = 8;
/// Relative step of the difference quotients: the cube root of the pass's own error.
constexpr double kDifference = 1e-5;
/// Steps in which the stream is eased in from rest.
constexpr int kEaseSteps = 16;

/// The problem with part of its stream.
TreeProblem Eased(const TreeProblem& problem, double part) {
  TreeProblem eased = problem;
  std::vector<water::FlowLayer> layers = problem.flow.layers();
  for (water::FlowLayer& layer : layers) {
    layer.vx *= part;
    layer.vy *= part;
    layer.gx *= part;
    layer.gy *= part;
  }
  eased.flow = water::Flow::FromLayers(std::move(layers));
  return eased;
}

/// Whether a fishing line arrives at its clip all but level. Its weight is then about to make it
/// sag below the clip, which a line that is followed in depth cannot do and a fisher would call
/// slack.
bool AboutToSag(const SteadyTree& tree) {
  constexpr double kLevel = 0.15;
  for (const ClipState& clip : tree.clips) {
    const Vector3d& pull = clip.fishing_line_force_N;
    if (-pull.z() < kLevel * pull.norm()) return true;
  }
  return false;
}

}  // namespace

SteadySolver::SteadySolver(SteadyOptions options) : options_(options) {}

void SteadySolver::Resize(int size) {
  if (unknowns_.size() == size) return;
  for (auto* vector :
       {&unknowns_, &misses_, &step_, &trial_, &trial_misses_, &change_, &inverse_change_, &row_}) {
    vector->resize(size);
  }
  jacobian_.resize(size, size);
  inverse_.resize(size, size);
  identity_ = Eigen::MatrixXd::Identity(size, size);
  lu_ = Eigen::PartialPivLU<Eigen::MatrixXd>(size);
}

void SteadySolver::Invert() {
  lu_.compute(jacobian_);
  inverse_.noalias() = lu_.solve(identity_);
}

/// One quasi-Newton step; halved while it leads where no line holds.
bool SteadySolver::Step(SteadyTree& tree) {
  step_.noalias() = -(inverse_ * misses_);
  const double longest = step_.cwiseAbs().maxCoeff();
  if (longest > longest_step_m_) step_ *= longest_step_m_ / longest;
  // Never more than most of the way to the surface at once.
  const double rise = -step_[2];
  if (rise > 0.9 * unknowns_[2] && unknowns_[2] > 0) step_ *= 0.9 * unknowns_[2] / rise;
  for (int i = 0; i < kMostHalvings; ++i) {
    trial_ = unknowns_ + step_;
    tree.status = pass_.Run(trial_, tree, trial_misses_);
    if (tree.status == SteadyStatus::kConverged) break;
    step_ *= 0.5;
  }
  if (tree.status != SteadyStatus::kConverged) return false;
  change_ = trial_misses_ - misses_;
  inverse_change_.noalias() = inverse_ * change_;
  row_.noalias() = inverse_.transpose() * step_;
  const double denominator = step_.dot(inverse_change_);
  if (std::abs(denominator) > 1e-300) {
    inverse_.noalias() += ((step_ - inverse_change_) / denominator) * row_.transpose();
  }
  unknowns_.swap(trial_);
  misses_.swap(trial_misses_);
  return true;
}

/// Jacobian by one-sided differences at the present unknowns.
bool SteadySolver::Refresh(SteadyTree& tree) {
  const double h = kDifference * tolerance_m_ / options_.tolerance;
  for (Eigen::Index j = 0; j < unknowns_.size(); ++j) {
    trial_ = unknowns_;
    trial_[j] += h;
    tree.status = pass_.Run(trial_, tree, trial_misses_);
    if (tree.status != SteadyStatus::kConverged) return false;
    jacobian_.col(j) = (trial_misses_ - misses_) / h;
  }
  Invert();
  return true;
}

bool SteadySolver::Iterate(SteadyTree& tree) {
  tree.status = pass_.Run(unknowns_, tree, misses_);
  if (tree.status != SteadyStatus::kConverged) return false;
  pass_.GuessJacobian(jacobian_);
  Invert();
  double before = misses_.norm();
  for (int i = 1; misses_.norm() > tolerance_m_; ++i) {
    if (i > options_.max_passes) {
      tree.status = SteadyStatus::kNotConverged;
      return false;
    }
    if (i % kPatience == 0) {
      const double now = misses_.norm();
      if (now > 1e-3 * before && !Refresh(tree)) return false;
      before = now;
    }
    if (!Step(tree)) return false;
  }
  tree.residual_m = misses_.norm();
  pass_.Finish(tree);
  return true;
}

bool SteadySolver::EaseIn(const TreeProblem& problem, SteadyTree& tree) {
  for (int i = 0; i <= kEaseSteps; ++i) {
    const TreeProblem eased = Eased(problem, static_cast<double>(i) / kEaseSteps);
    pass_.Prepare(eased, options_.refine);
    if (i == 0) pass_.Guess(unknowns_);
    if (!Iterate(tree)) return false;
  }
  pass_.Prepare(problem, options_.refine);
  return true;
}

void SteadySolver::Solve(const TreeProblem& problem, SteadyTree& tree) {
  pass_.Prepare(problem, options_.refine);
  Resize(pass_.size());
  tree.clips.resize(problem.clips.size());
  tolerance_m_ = options_.tolerance * problem.line_m;
  longest_step_m_ = kLongestStepPart * problem.line_m;
  tree.residual_m = -1;
  tree.passes = 0;
  pass_.Guess(unknowns_);
  if (Iterate(tree) || EaseIn(problem, tree)) return;
  if (tree.status == SteadyStatus::kNotConverged && AboutToSag(tree)) {
    tree.status = SteadyStatus::kFishingLineSlack;
  }
}

void SteadySolver::SolveFrom(const TreeProblem& problem, SteadyTree& tree) {
  if (tree.usable() && tree.clips.size() == problem.clips.size()) {
    pass_.Prepare(problem, options_.refine);
    Resize(pass_.size());
    tolerance_m_ = options_.tolerance * problem.line_m;
    longest_step_m_ = kLongestStepPart * problem.line_m;
    tree.passes = 0;
    pass_.Recall(tree, unknowns_);
    if (Iterate(tree)) return;
  }
  Solve(problem, tree);
}

TreeShape SampleShape(const TreeProblem& problem, const SteadyTree& solution) {
  TreePass pass;
  pass.Prepare(problem, 1);
  return pass.Trace(solution);
}

}  // namespace offplumb::tow
