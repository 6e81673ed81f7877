#include "engine/tow/tree_pass.h"

#include <algorithm>
#include <cmath>

#include "engine/tow/normal_drag.h"
#include "engine/tow/trail.h"

namespace offplumb::tow {
namespace {

/// Part of the ball's weight below which no mesh expects the tension to fall.
constexpr double kLeastTensionPart = 0.2;
/// Steps of a traced curve over those of a solved one, so that it draws smoothly.
constexpr int kTraceRefine = 8;

/// Index of a clip's first unknown.
Eigen::Index FirstOf(std::size_t clip) { return 3 + 3 * static_cast<Eigen::Index>(clip); }

/// Smallest tension to expect above the first `clips_below` clips.
double LeastTension_N(const TreeProblem& problem, std::size_t clips_below) {
  double tension = problem.ball.weight_in_water_N;
  for (std::size_t i = 0; i < clips_below; ++i) tension -= problem.clips[i].rod_tip_tension_N;
  return std::max(tension, kLeastTensionPart * problem.ball.weight_in_water_N);
}

/// Pull of the stream on ball and tackle, all of it aft: only for the guess.
Eigen::Vector2d BodiesDrag_N(const TreeProblem& problem, const Eigen::Vector2d& v) {
  Eigen::Vector2d drag = Load(problem.ball, v.x(), v.y()).head<2>();
  for (const ClipLoads& clip : problem.clips) {
    drag += Load(clip.trail.lure, v.x(), v.y()).head<2>();
    if (clip.trail.has_flasher) drag += Load(clip.trail.flasher, v.x(), v.y()).head<2>();
  }
  return drag;
}

/// Forces of the stream and weight on the ball, as the pull that the line must give.
bool StartAtEye(const TreeProblem& problem, const Vector3d& eye_m, MainLinePoint& point) {
  const Eigen::Vector2d v = problem.flow.OverBody(eye_m.z());
  point = MainLinePoint{};
  point.place_m = eye_m;
  return point.SetPullFromAbove(-Load(problem.ball, v.x(), v.y()));
}

SteadyStatus CheckPlaces(const SteadyTree& tree) {
  if (!(tree.eye_m.z() >= 0)) return SteadyStatus::kBallAtSurface;
  for (const ClipState& clip : tree.clips) {
    if (!(clip.clip_m.z() > 0)) return SteadyStatus::kClipAboveWater;
  }
  for (const ClipState& clip : tree.clips) {
    if (!(clip.lure_m.z() > 0) || !(clip.flasher_m.z() > 0)) return SteadyStatus::kLureAtSurface;
  }
  return SteadyStatus::kConverged;
}

/// How a foot's mean log-slope, less the one it needs, changes with the clip's place, 1/m.
Eigen::Matrix<double, 2, 3> MissByClip(const FishingLineProblem& rod, const ClipState& clip,
                                       double bow) {
  const Vector3d to_rod_m = rod.rod_tip_m - clip.clip_m;
  const Vector3d& pull = clip.fishing_line_force_N;
  Eigen::Matrix<double, 2, 3> change;
  change.leftCols<2>() = MeanLogSlopeByRun(to_rod_m.head<2>(), -to_rod_m.z() * bow);
  // A metre deeper the foot itself has run on by its slope.
  change.col(2) = change.leftCols<2>() * (pull.head<2>() / -pull.z());
  return change;
}

/// How the upper end of a line moves against its lower with the pull that it carries, m/N.
Eigen::Matrix3d EndByPull(const Vector3d& chord_m, double tension_N) {
  const double length = chord_m.norm();
  if (!(length > 0)) return Eigen::Matrix3d::Zero();
  const Vector3d t = chord_m / length;
  return length / tension_N * (Eigen::Matrix3d::Identity() - t * t.transpose());
}

}  // namespace

void TreePass::Prepare(const TreeProblem& problem, int refine) {
  problem_ = &problem;
  refine_ = refine;
  const std::size_t clips = problem.clips.size();
  spans_.resize(clips + 1);
  rods_.resize(clips);
  rod_scale_m_.resize(clips);
  bow_.resize(clips);
  trail_known_.assign(clips, 0);
  pull_above_N_.resize(clips);
  moved_.resize(3, size());
  pulled_.resize(3, size());
  const double fastest = problem.flow.LargestSpeed_mps(problem.line_m);
  double from_m = 0;
  for (std::size_t i = 0; i <= clips; ++i) {
    const double to_m = i < clips ? problem.clips[i].above_ball_m : problem.line_m;
    const int steps =
        StepsForSpan(problem.line, to_m - from_m, fastest, LeastTension_N(problem, i));
    spans_[i] = {&problem.flow, &problem.line, to_m - from_m, refine * steps};
    from_m = to_m;
  }
  for (std::size_t i = 0; i < clips; ++i) {
    const ClipLoads& clip = problem.clips[i];
    rods_[i] = {&problem.flow,          &clip.fishing_line, clip.rod_tip_m,
                clip.rod_tip_tension_N, problem.line_m,     refine};
    const double above_m = problem.line_m - clip.above_ball_m;
    rod_scale_m_[i] = above_m - clip.rod_tip_m.z();
    bow_[i] = Bow(rods_[i], Vector3d(0, 0, above_m + problem.boom_tip_m.z()));
  }
}

void TreePass::Guess(Eigen::VectorXd& unknowns) const {
  const TreeProblem& problem = *problem_;
  const Eigen::Vector2d v = problem.flow.At(0.5 * problem.line_m);
  const double tension = LeastTension_N(problem, problem.clips.size());
  const Eigen::Vector2d line_drag =
      NormalFactor(problem.line, v.squaredNorm()) * problem.line_m * v;
  // Mean slope of a line with small bow; docs/method.md eq. 4.3.
  const Eigen::Vector2d slope = (BodiesDrag_N(problem, v) + 0.5 * line_drag) / tension;
  const double s = std::sqrt(1.0 + slope.squaredNorm());
  unknowns.head<2>() = problem.boom_tip_m.head<2>() + slope * (problem.line_m / s);
  unknowns[2] = problem.boom_tip_m.z() + problem.line_m / s;
  unknowns[2] = std::max(unknowns[2], 0.05 * problem.line_m);
  for (std::size_t i = 0; i < rods_.size(); ++i) {
    const double part = problem.clips[i].above_ball_m / problem.line_m;
    const Vector3d eye = unknowns.head<3>();
    const Vector3d clip_m = eye + part * (problem.boom_tip_m - eye);
    unknowns.segment<2>(FirstOf(i)) = rod_scale_m_[i] * GuessRodLogSlope(rods_[i], clip_m);
    unknowns[FirstOf(i) + 2] = 0;
  }
}

void TreePass::Recall(const SteadyTree& tree, Eigen::VectorXd& unknowns) const {
  unknowns.head<3>() = tree.eye_m;
  for (std::size_t i = 0; i < rods_.size(); ++i) {
    const ClipState& clip = tree.clips[i];
    unknowns.segment<2>(FirstOf(i)) = rod_scale_m_[i] * clip.rod_log_slope;
    unknowns[FirstOf(i) + 2] = clip.lure_m.z() - clip.clip_m.z();
  }
}

void TreePass::GuessJacobian(const SteadyTree& tree, Eigen::MatrixXd& jacobian) {
  // Up the main line once more, with the derivatives of place and pull. Moving the eye moves all of
  // the line; turning a fishing line changes its pull, and with it the way of the main line above.
  // docs/method.md section 4.
  jacobian.setIdentity();
  moved_.setIdentity();
  pulled_.setZero();
  for (std::size_t i = 0; i < rods_.size(); ++i) {
    const ClipState& clip = tree.clips[i];
    const Vector3d& rod_pull = clip.fishing_line_force_N;
    const Eigen::Index of_rod = FirstOf(i);
    jacobian.middleRows<2>(of_rod).noalias() =
        rod_scale_m_[i] * MissByClip(rods_[i], clip, bow_[i]) * moved_;
    jacobian.block<2, 2>(of_rod, of_rod).setIdentity();

    const Eigen::Matrix<double, 3, 2> by_slope = PullByLogSlope(rod_pull);
    const Vector3d by_depth = by_slope * TurnPerMetre(rods_[i], clip.clip_m.z(), rod_pull.norm());
    pulled_.middleCols<2>(of_rod) -= by_slope / rod_scale_m_[i];
    pulled_.noalias() -= by_depth * moved_.row(2);
    const Vector3d end_m = i + 1 < rods_.size() ? tree.clips[i + 1].clip_m : top_.place_m;
    moved_.noalias() += EndByPull(end_m - clip.clip_m, pull_above_N_[i].norm()) * pulled_;
  }
  jacobian.topRows<3>() = moved_;
}

SteadyStatus TreePass::March(std::size_t i, double lure_below_m, ClipState& state) {
  const TrailMarch trail = MarchTrail(problem_->flow, problem_->clips[i].trail,
                                      state.clip_m.z() + lure_below_m, refine_);
  if (!trail.holds) return SteadyStatus::kNotConverged;
  state.trail_force_N = trail.force_on_clip_N;
  state.flasher_m = trail.flasher_from_clip_m;
  state.lure_m = trail.lure_from_clip_m;
  trail_known_[i] = problem_->flow.uniform();
  return SteadyStatus::kConverged;
}

SteadyStatus TreePass::Join(std::size_t i, const Eigen::VectorXd& unknowns, SteadyTree& tree,
                            Eigen::VectorXd& misses) {
  ClipState& state = tree.clips[i];
  const Eigen::Index first = FirstOf(i);
  const double lure_below_m = unknowns[first + 2];
  state.clip_m = top_.place_m;
  if (!trail_known_[i]) {
    const SteadyStatus status = March(i, lure_below_m, state);
    if (status != SteadyStatus::kConverged) return status;
  }
  // state.lure_m is the lure as the march puts it under its own fore end.
  misses[first + 2] = lure_below_m - state.lure_m.z();

  state.rod_log_slope = unknowns.segment<2>(first) / rod_scale_m_[i];
  const FishingLineFoot foot = FollowFishingLine(rods_[i], state.rod_log_slope, state.clip_m.z());
  if (!foot.holds) return SteadyStatus::kFishingLineSlack;
  const Vector3d& rod_tip_m = rods_[i].rod_tip_m;
  const double rise_bow_m = (state.clip_m.z() - rod_tip_m.z()) * bow_[i];
  foot_miss_m_ = std::max(foot_miss_m_, (foot.place_m - state.clip_m.head<2>()).norm());
  misses.segment<2>(first) =
      rod_scale_m_[i] * (MeanLogSlope(rod_tip_m.head<2>() - foot.place_m, rise_bow_m) -
                         MeanLogSlope((rod_tip_m - state.clip_m).head<2>(), rise_bow_m));
  state.fishing_line_force_N = foot.force_on_clip_N;
  state.fishing_line_m = foot.path_m;
  state.fishing_line_unstretched_m = foot.unstretched_m;
  pull_above_N_[i] = top_.PullFromAbove_N() - state.trail_force_N - state.fishing_line_force_N;
  const bool rises = top_.SetPullFromAbove(pull_above_N_[i]);
  return rises ? SteadyStatus::kConverged : SteadyStatus::kMainLineSlack;
}

SteadyStatus TreePass::Run(const Eigen::VectorXd& unknowns, SteadyTree& tree,
                           Eigen::VectorXd& misses) {
  ++tree.passes;
  foot_miss_m_ = 0;
  tree.eye_m = unknowns.head<3>();
  if (!StartAtEye(*problem_, tree.eye_m, top_)) return SteadyStatus::kMainLineSlack;
  tree.tension_ball_N = top_.tension_N;
  for (std::size_t i = 0; i < rods_.size(); ++i) {
    if (!Climb(spans_[i], top_)) return SteadyStatus::kMainLineSlack;
    const SteadyStatus status = Join(i, unknowns, tree, misses);
    if (status != SteadyStatus::kConverged) return status;
  }
  if (!Climb(spans_.back(), top_)) return SteadyStatus::kMainLineSlack;
  misses.head<3>() = top_.place_m - problem_->boom_tip_m;
  return SteadyStatus::kConverged;
}

void TreePass::Finish(SteadyTree& tree) const {
  const water::Flow& flow = problem_->flow;
  const Eigen::Vector2d v = flow.OverBody(tree.eye_m.z());
  // The ball hangs under its eye in line with the pull on it.
  tree.ball_m = tree.eye_m + problem_->eye_to_centre_m / tree.tension_ball_N *
                                 Load(problem_->ball, v.x(), v.y());
  tree.ball_water_speed_mps = flow.OverBody(tree.ball_m.z()).norm();
  tree.tension_boom_N = top_.tension_N;
  tree.angle_boom_rad = std::atan(std::hypot(top_.px, top_.py));
  tree.stretched_m = top_.stretched_m;
  for (ClipState& clip : tree.clips) {
    clip.lure_m += clip.clip_m;
    clip.flasher_m += clip.clip_m;
    clip.lure_water_speed_mps = flow.OverBody(clip.lure_m.z()).norm();
  }
  tree.status = CheckPlaces(tree);
}

TreeShape TreePass::Trace(const SteadyTree& tree) const {
  TreeShape shape;
  MainLinePoint point;
  StartAtEye(*problem_, tree.eye_m, point);
  shape.main_line.push_back(tree.eye_m);
  for (std::size_t i = 0; i < spans_.size(); ++i) {
    MainLineSpan span = spans_[i];
    span.steps *= kTraceRefine;
    Climb(span, point, &shape.main_line);
    if (i == rods_.size()) break;
    const ClipState& clip = tree.clips[i];
    point.SetPullFromAbove(point.PullFromAbove_N() - clip.trail_force_N -
                           clip.fishing_line_force_N);
    FishingLineProblem rod = rods_[i];
    rod.refine *= kTraceRefine;
    TreeShape::OfClip lines;
    (void)FollowFishingLine(rod, clip.rod_log_slope, clip.clip_m.z(), &lines.fishing_line);
    TraceTrail(problem_->flow, problem_->clips[i].trail, clip.clip_m, clip.lure_m.z(),
               lines.setback, lines.leader);
    shape.clips.push_back(std::move(lines));
  }
  std::reverse(shape.main_line.begin(), shape.main_line.end());
  return shape;
}

}  // namespace offplumb::tow
