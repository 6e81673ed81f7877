#include "engine/tow/steady_solver.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/SVD>

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
/// Longest and shortest step in which the stream is eased in from rest, as part of the whole.
constexpr double kLongestEase = 0.125;
constexpr double kShortestEase = 1.0 / 1024;
/// The same when a line is seen to go slack: it soon does so for good.
constexpr double kShortestEaseWithReason = 1.0 / 64;
constexpr int kMostEasedPasses = 40;
/// Rods that pull with more than this part of the ball's weight count as lifting it.
constexpr double kLiftedPart = 0.5;
/// A fishing line's foot may miss its clip by this part of the line's length.
constexpr double kFootPart = 1e-7;
/// A ball this near to the surface, as part of the line's length, is on its way out of the water.
constexpr double kAtSurfacePart = 0.01;

/// The problem with part of its stream.
TreeProblem EasedStream(const TreeProblem& problem, double part) {
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

double RodsPull_N(const TreeProblem& problem) {
  double pull = 0;
  for (const ClipLoads& clip : problem.clips) pull += clip.rod_tip_tension_N;
  return pull;
}

/// The problem with a ball that the rods do not lift: at part 0 heavier by twice their pull.
TreeProblem EasedBall(const TreeProblem& problem, double part) {
  TreeProblem eased = problem;
  eased.ball.weight_in_water_N += (1.0 - part) * 2.0 * RodsPull_N(problem);
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
  for (auto* vector : {&unknowns_, &misses_, &step_, &trial_, &trial_misses_, &change_,
                       &inverse_change_, &row_, &reached_}) {
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
  const double allowed = kLongestStepPart * line_m_;
  if (longest > allowed) step_ *= allowed / longest;
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
  const double h = kDifference * line_m_;
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

/// Whether the last pass missed by little enough. False for anything that is not a number.
bool SteadySolver::Met() const {
  return misses_.norm() <= tolerance_m_ && pass_.foot_miss_m() <= kFootPart * line_m_;
}

bool SteadySolver::Iterate(Start start, SteadyTree& tree) {
  tree.status = pass_.Run(unknowns_, tree, misses_);
  if (tree.status != SteadyStatus::kConverged) return false;
  if (start == Start::kAnalytic) {
    pass_.GuessJacobian(tree, jacobian_);
    Invert();
  } else if (!Refresh(tree)) {
    return false;
  }
  // A step of the easing that does not succeed soon is better halved.
  const int most = start == Start::kAnalytic ? options_.max_passes : kMostEasedPasses;
  double before = misses_.norm();
  for (int i = 1; !Met(); ++i) {
    const double now = misses_.norm();
    if (i > most || !std::isfinite(now)) {
      tree.status = SteadyStatus::kNotConverged;
      return false;
    }
    if (i % kPatience == 0) {
      if (now > 1e-3 * before && !Refresh(tree)) return false;
      before = now;
    }
    if (!Step(tree)) return false;
  }
  tree.residual_m = misses_.norm();
  pass_.Finish(tree);
  return true;
}

/// Goes from an easier problem to the one asked for, in steps as long as they succeed: from rest to
/// the full stream, or from a heavier ball to the true one. `reached_` keeps the last shape found.
bool SteadySolver::EaseIn(const TreeProblem& problem, Ease ease, SteadyTree& tree) {
  const auto Eased = ease == Ease::kStream ? EasedStream : EasedBall;
  TreeProblem eased = Eased(problem, 0);
  pass_.Prepare(eased, options_.refine);
  pass_.Guess(unknowns_);
  if (!Iterate(Start::kDifferences, tree)) return false;
  double part = 0;
  double step = kLongestEase;
  while (part < 1) {
    reached_ = unknowns_;
    const double next = std::min(1.0, part + step);
    eased = Eased(problem, next);
    pass_.Prepare(eased, options_.refine);
    if (Iterate(Start::kDifferences, tree)) {
      part = next;
      step = std::min(2 * step, kLongestEase);
    } else {
      unknowns_ = reached_;
      step /= 2;
      const bool reason = tree.status != SteadyStatus::kNotConverged;
      if (step >= (reason ? kShortestEaseWithReason : kShortestEase)) continue;
      if (!reason) tree.status = WhyNot(tree);
      return false;
    }
  }
  return true;
}

/// Why no shape follows on the last one reached: where the equations fold, the weakest direction
/// names the line that gives way.
SteadyStatus SteadySolver::WhyNot(SteadyTree& tree) {
  constexpr double kFolded = 0.05;
  unknowns_ = reached_;
  if (unknowns_[2] < kAtSurfacePart * line_m_) return SteadyStatus::kBallAtSurface;
  if (pass_.Run(unknowns_, tree, misses_) != SteadyStatus::kConverged || !Refresh(tree))
    return tree.status;
  if (AboutToSag(tree)) return SteadyStatus::kFishingLineSlack;
  const Eigen::JacobiSVD<Eigen::MatrixXd> svd(jacobian_, Eigen::ComputeFullV);
  if (svd.singularValues().tail<1>()[0] > kFolded) return SteadyStatus::kNotConverged;
  Eigen::Index weakest = 0;
  svd.matrixV().rightCols<1>().cwiseAbs().maxCoeff(&weakest);
  if (weakest < 3) return SteadyStatus::kMainLineSlack;
  return weakest % 3 == 2 ? SteadyStatus::kNotConverged : SteadyStatus::kFishingLineSlack;
}

void SteadySolver::Begin(const TreeProblem& problem, SteadyTree& tree) {
  pass_.Prepare(problem, options_.refine);
  Resize(pass_.size());
  tree.clips.resize(problem.clips.size());
  line_m_ = problem.line_m;
  tolerance_m_ = options_.tolerance * line_m_;
  tree.residual_m = -1;
  tree.passes = 0;
}

void SteadySolver::Solve(const TreeProblem& problem, SteadyTree& tree) {
  Begin(problem, tree);
  pass_.Guess(unknowns_);
  if (Iterate(Start::kAnalytic, tree)) return;
  // At rest rods hang steeper and lift more: where they hold much of the ball, the stream is no way
  // in.
  const bool lifted = RodsPull_N(problem) > kLiftedPart * problem.ball.weight_in_water_N;
  if (!EaseIn(problem, lifted ? Ease::kBall : Ease::kStream, tree)) {
    const SteadyStatus first = tree.status;
    if (!EaseIn(problem, lifted ? Ease::kStream : Ease::kBall, tree)) tree.status = first;
  }
  pass_.Prepare(problem, options_.refine);  // Not to keep a pointer to an eased problem.
}

void SteadySolver::SolveFrom(const TreeProblem& problem, SteadyTree& tree) {
  if (tree.usable() && tree.clips.size() == problem.clips.size()) {
    Begin(problem, tree);
    pass_.Recall(tree, unknowns_);
    if (Iterate(Start::kAnalytic, tree)) return;
  }
  Solve(problem, tree);
}

TreeShape SampleShape(const TreeProblem& problem, const SteadyTree& solution) {
  TreePass pass;
  pass.Prepare(problem, 1);
  return pass.Trace(solution);
}

}  // namespace offplumb::tow
