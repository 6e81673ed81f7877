#include "engine/tow/steady_solver.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace offplumb::tow {
namespace {

/// Longest step of any unknown, as part of the line's length.
constexpr double kLongestStepPart = 0.5;
/// Halvings of a step that leads where no line holds.
constexpr int kMostHalvings = 8;
/// Steps between two looks at the progress. Unless the miss has shrunk well, the Jacobian is
/// renewed.
constexpr int kLookEvery = 8;
constexpr double kShrunkWell = 1e-3;
/// A miss that has not shrunk to this part has stalled. Found by sweeps of random trees: what is
/// solved hardly ever stalls twice, what has no shape nearly always does.
constexpr double kStalled = 0.5;
constexpr int kMostStalls = 2;
/// Relative step of the difference quotients: the cube root of the pass's own error.
constexpr double kDifference = 1e-5;
/// Longest and shortest step in which the stream is eased in from rest, as part of the whole.
constexpr double kLongestEase = 0.125;
constexpr double kShortestEase = 1.0 / 1024;
/// The same when a line is seen to go slack: it soon does so for good.
constexpr double kShortestEaseWithReason = 1.0 / 64;
/// The same when a fishing line was about to sag at the last shape found.
constexpr double kShortestEaseOfSag = 1.0 / 16;
/// Shapes on the way only lead on: they are found to so many times the tolerance.
constexpr double kLoose = 1e4;
/// Steps for an eased problem from a new Jacobian, and from that of the last shape found: some six
/// are enough for most, and a problem that takes many more is better halved.
constexpr int kMostEasedSteps = 40;
constexpr int kMostKeptSteps = 16;
/// Rods that pull with more than this part of the ball's weight count as lifting it.
constexpr double kLiftedPart = 0.5;
/// A fishing line's foot may miss its clip by this part of the line's length.
constexpr double kFootPart = 1e-7;
/// A ball this near to the surface, as part of the line's length, is on its way out of the water.
constexpr double kAtSurfacePart = 0.01;
/// Above this the ball is coming up, and lines that lie level are no sign that they sag.
constexpr double kRisingPart = 0.1;

/// The stream at a part of its strength.
water::Flow EasedStream(const water::Flow& flow, double part) {
  std::vector<water::FlowLayer> layers = flow.layers();
  for (water::FlowLayer& layer : layers) {
    layer.vx *= part;
    layer.vy *= part;
    layer.gx *= part;
    layer.gy *= part;
  }
  return water::Flow::FromLayers(std::move(layers));
}

double RodsPull_N(const TreeProblem& problem) {
  double pull = 0;
  for (const ClipLoads& clip : problem.clips) pull += clip.rod_tip_tension_N;
  return pull;
}

/// The weight of a ball that the rods do not lift: at part 0 heavier by twice their pull.
double EasedBall_N(const TreeProblem& problem, double part) {
  return problem.ball.weight_in_water_N + (1.0 - part) * 2.0 * RodsPull_N(problem);
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
  reached_inverse_.resize(size, size);
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
  return misses_.norm() <= looseness_ * tolerance_m_ &&
         pass_.foot_miss_m() <= looseness_ * kFootPart * line_m_;
}

/// The first pass of an iteration, and an inverse to start from.
bool SteadySolver::FirstPass(Start start, SteadyTree& tree) {
  tree.status = pass_.Run(unknowns_, tree, misses_);
  if (tree.status != SteadyStatus::kConverged) return false;
  if (start == Start::kDifferences) return Refresh(tree);
  if (start == Start::kAnalytic) {
    pass_.GuessJacobian(tree, jacobian_);
    Invert();
  }
  return true;
}

int SteadySolver::MostSteps(Start start) const {
  if (start == Start::kAnalytic) return options_.max_passes;
  return start == Start::kKept ? kMostKeptSteps : kMostEasedSteps;
}

int SteadySolver::MostStalls(Start start) const {
  if (patience_ == Patience::kLong) return std::numeric_limits<int>::max();
  return start == Start::kKept ? 1 : kMostStalls;
}

bool SteadySolver::Iterate(Start start, SteadyTree& tree) {
  if (!FirstPass(start, tree)) return false;
  double before = misses_.norm();
  int stalls = 0;
  for (int i = 1; !Met(); ++i) {
    const double now = misses_.norm();
    const bool look = i % kLookEvery == 0;
    if (look && now > kStalled * before) ++stalls;
    if (i > MostSteps(start) || stalls >= MostStalls(start) || !std::isfinite(now)) {
      tree.status = SteadyStatus::kNotConverged;
      return false;
    }
    if (look) {
      if (now > kShrunkWell * before && !Refresh(tree)) return false;
      before = now;
    }
    if (!Step(tree)) return false;
  }
  tree.residual_m = misses_.norm();
  pass_.Finish(tree);
  return true;
}

/// Makes `eased_` the problem at a part of the way from an easy one to the one asked for.
void SteadySolver::PrepareEased(const TreeProblem& problem, Ease ease, double part) {
  if (ease == Ease::kStream) {
    eased_.flow = EasedStream(problem.flow, part);
  } else {
    eased_.ball.weight_in_water_N = EasedBall_N(problem, part);
  }
  pass_.Prepare(eased_, options_.refine);
  looseness_ = part < 1 && patience_ == Patience::kShort ? kLoose : 1;
}

/// Remembers the shape just found, from which the next step of an easing goes on.
void SteadySolver::Reach(double part, const SteadyTree& tree) {
  reached_part_ = part;
  reached_ = unknowns_;
  reached_inverse_ = inverse_;
  reached_sags_ = unknowns_[2] > kRisingPart * line_m_ && AboutToSag(tree);
}

void SteadySolver::GoBack() {
  unknowns_ = reached_;
  inverse_ = reached_inverse_;
}

/// Goes from an easier problem to the one asked for, in steps as long as they succeed: from rest to
/// the full stream, or from a heavier ball to the true one.
bool SteadySolver::EaseIn(const TreeProblem& problem, Ease ease, SteadyTree& tree) {
  reached_part_ = 0;
  reached_sags_ = false;
  eased_ = problem;
  PrepareEased(problem, ease, 0);
  pass_.Guess(unknowns_);
  if (!Iterate(Start::kDifferences, tree)) return false;
  Reach(0, tree);
  double step = kLongestEase;
  while (reached_part_ < 1) {
    const double next = std::min(1.0, reached_part_ + step);
    PrepareEased(problem, ease, next);
    if (FindNext(step, tree)) {
      Reach(next, tree);
      step = std::min(2 * step, kLongestEase);
    } else {
      step /= 2;
      if (GivesUp(step, tree)) return false;
    }
  }
  return true;
}

/// One step of an easing, from the shape reached last.
bool SteadySolver::FindNext(double step, SteadyTree& tree) {
  const Start start = patience_ == Patience::kShort ? Start::kKept : Start::kDifferences;
  if (Iterate(start, tree)) return true;
  GoBack();
  if (!Sags(step / 2, tree)) return false;
  // Before that is taken for the end: once more from a new Jacobian.
  if (FirstPass(Start::kDifferences, tree) && Iterate(Start::kKept, tree)) return true;
  GoBack();
  tree.status = SteadyStatus::kNotConverged;
  return false;
}

/// Whether an easing that stalls has come to where a fishing line sags, steps of `step` being next.
bool SteadySolver::Sags(double step, const SteadyTree& tree) const {
  return patience_ == Patience::kShort && tree.status == SteadyStatus::kNotConverged &&
         reached_sags_ && step < kShortestEaseOfSag;
}

/// Whether an easing that has failed is given up rather than tried in steps of `step`. The status
/// then says why.
bool SteadySolver::GivesUp(double step, SteadyTree& tree) {
  if (Sags(step, tree)) {
    tree.status = SteadyStatus::kFishingLineSlack;
    return true;
  }
  if (tree.status == SteadyStatus::kNotConverged) {
    if (step >= kShortestEase) return false;
    tree.status = WhyNot(tree);
    return true;
  }
  if (step >= kShortestEaseWithReason) return false;
  // A fishing line that shows no sign of sagging and yet goes slack: worth a longer look.
  const bool sudden = tree.status == SteadyStatus::kFishingLineSlack && !reached_sags_;
  if (patience_ == Patience::kShort && sudden) tree.status = SteadyStatus::kNotConverged;
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
  if (!(FindWeakest() <= kFolded)) return SteadyStatus::kNotConverged;
  Eigen::Index weakest = 0;
  row_.cwiseAbs().maxCoeff(&weakest);
  if (weakest < 3) return SteadyStatus::kMainLineSlack;
  return weakest % 3 == 2 ? SteadyStatus::kNotConverged : SteadyStatus::kFishingLineSlack;
}

/// Puts into `row_` the direction in which the unknowns move the misses least.
/// \return by how much: the smallest singular value of the Jacobian whose inverse is at hand, found
/// by powers of the inverse times its transpose.
double SteadySolver::FindWeakest() {
  constexpr int kRounds = 30;
  double weakest = 0;
  row_.setOnes();
  for (int i = 0; i < kRounds; ++i) {
    row_.normalize();
    trial_.noalias() = inverse_.transpose() * row_;
    weakest = 1.0 / trial_.norm();
    row_.noalias() = inverse_ * trial_;
  }
  return weakest;
}

void SteadySolver::Begin(const TreeProblem& problem, SteadyTree& tree) {
  pass_.Prepare(problem, options_.refine);
  Resize(pass_.size());
  tree.clips.resize(problem.clips.size());
  line_m_ = problem.line_m;
  tolerance_m_ = options_.tolerance * line_m_;
  looseness_ = 1;
  tree.residual_m = -1;
  tree.passes = 0;
}

/// From a guess straight to the shape; failing that, by easing in one way and then the other.
bool SteadySolver::Try(const TreeProblem& problem, SteadyTree& tree) {
  pass_.Prepare(problem, options_.refine);
  pass_.Guess(unknowns_);
  looseness_ = 1;
  if (Iterate(Start::kAnalytic, tree)) return true;
  // At rest rods hang steeper and lift more: where they hold much of the ball, the stream is no way
  // in.
  const bool lifted = RodsPull_N(problem) > kLiftedPart * problem.ball.weight_in_water_N;
  if (EaseIn(problem, lifted ? Ease::kBall : Ease::kStream, tree)) return true;
  const SteadyStatus first = tree.status;
  const bool quick = patience_ == Patience::kShort;
  if (quick && WalkedToSag(tree)) return false;
  if (EaseIn(problem, lifted ? Ease::kStream : Ease::kBall, tree)) return true;
  const bool second_is_open = tree.status == SteadyStatus::kNotConverged && reached_part_ > 0;
  if (quick && second_is_open) return false;
  // The first way's reason stands, and for want of one the second's if it has come some way: at its
  // start the gear is another.
  if (first != SteadyStatus::kNotConverged || !reached_sags_) tree.status = first;
  return false;
}

/// Whether the last easing came some way and ended where a fishing line sags.
bool SteadySolver::WalkedToSag(const SteadyTree& tree) const {
  return reached_sags_ && reached_part_ > 0 && tree.status == SteadyStatus::kFishingLineSlack;
}

void SteadySolver::Solve(const TreeProblem& problem, SteadyTree& tree) {
  Begin(problem, tree);
  for (const Patience patience : {Patience::kShort, Patience::kLong}) {
    patience_ = patience;
    if (Try(problem, tree) || tree.status != SteadyStatus::kNotConverged) break;
  }
  pass_.Prepare(problem, options_.refine);  // Not to keep a pointer to an eased problem.
}

void SteadySolver::SolveFrom(const TreeProblem& problem, SteadyTree& tree) {
  if (tree.usable() && tree.clips.size() == problem.clips.size()) {
    Begin(problem, tree);
    patience_ = Patience::kShort;
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
