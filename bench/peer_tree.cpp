// Unknowns: the place of the ball's eye; for each clip the slope of the fishing line at the rod tip
// (run per metre down, two components) times its straight length, its unstretched length, and the
// lure's depth. Misses: the main line's end from the boom tip; for each clip the fishing line's
// foot from the clip and the trail's fore end from the clip's depth.
#include "bench/peer_tree.h"

#include <cmath>

#include <unsupported/Eigen/NonLinearOptimization>

#include "bench/peer_line.h"
#include "engine/tow/fishing_line.h"
#include "engine/tow/tree_pass.h"

namespace offplumb::bench {
namespace {

using Eigen::Index;
using Eigen::Vector2d;
using Eigen::VectorXd;

constexpr Index kOfTree = 3;  ///< Unknowns of the eye.
constexpr Index kOfClip = 4;  ///< Unknowns of one clip.
/// A miss over the line's length below which the peer's answer counts as one.
constexpr double kFound = 1e-6;

Index FirstOf(std::size_t clip) { return kOfTree + kOfClip * static_cast<Index>(clip); }

/// The straight length that the fishing line might have: makes its slope an unknown in metres.
double Scale_m(const tow::TreeProblem& problem, std::size_t clip) {
  const tow::ClipLoads& loads = problem.clips[clip];
  return problem.line_m - loads.above_ball_m - loads.rod_tip_m.z();
}

/// Misses of a tree as a functor for Eigen's solvers.
class Misses {
 public:
  Misses(const tow::TreeProblem& problem, double tolerance)
      : problem_(problem), tolerance_(tolerance) {}

  /// \return negative to give up, as the solver wants it.
  int operator()(const VectorXd& unknowns, VectorXd& misses) const {
    ++passes_;
    return Climb(unknowns, misses) ? 0 : -1;
  }

  int passes() const { return passes_; }

 private:
  bool Follow(const tow::LineLoads& line, double length_m, PeerPoint& point) const {
    return FollowPeerLine(problem_.flow, line, length_m, tolerance_, point);
  }

  Vector3d LoadAt(const tow::BodyLoads& body, double depth_m) const {
    const Vector2d v = problem_.flow.OverBody(depth_m);
    return tow::Load(body, v.x(), v.y());
  }

  bool Climb(const VectorXd& unknowns, VectorXd& misses) const {
    PeerPoint up;
    up.place_m = unknowns.head<3>();
    up.pull_N = -LoadAt(problem_.ball, up.place_m.z());
    double from_m = 0;
    for (std::size_t i = 0; i < problem_.clips.size(); ++i) {
      const double to_m = problem_.clips[i].above_ball_m;
      if (to_m > from_m && !Follow(problem_.line, to_m - from_m, up)) return false;
      if (!JoinTrail(i, unknowns, up, misses) || !JoinRod(i, unknowns, up, misses)) return false;
      from_m = to_m;
    }
    if (!Follow(problem_.line, problem_.line_m - from_m, up)) return false;
    misses.head<3>() = up.place_m - problem_.boom_tip_m;
    return true;
  }

  /// From the lure forward to the clip.
  bool JoinTrail(std::size_t i, const VectorXd& unknowns, PeerPoint& up, VectorXd& misses) const {
    const tow::TrailLoads& trail = problem_.clips[i].trail;
    PeerPoint aft;
    aft.place_m.z() = unknowns[FirstOf(i) + 3];
    aft.pull_N = -LoadAt(trail.lure, aft.place_m.z());
    if (trail.has_flasher) {
      if (!Follow(trail.leader, trail.leader_m, aft)) return false;
      aft.pull_N -= LoadAt(trail.flasher, aft.place_m.z());
    }
    if (!Follow(trail.setback, trail.setback_m, aft)) return false;
    misses[FirstOf(i) + 3] = aft.place_m.z() - up.place_m.z();
    up.pull_N += aft.pull_N;
    return true;
  }

  /// From the rod tip down to the clip.
  bool JoinRod(std::size_t i, const VectorXd& unknowns, PeerPoint& up, VectorXd& misses) const {
    const tow::ClipLoads& clip = problem_.clips[i];
    const Vector2d slope = unknowns.segment<2>(FirstOf(i)) / Scale_m(problem_, i);
    const double length_m = unknowns[FirstOf(i) + 2];
    PeerPoint down;
    down.place_m = clip.rod_tip_m;
    down.pull_N = clip.rod_tip_tension_N * Vector3d(slope.x(), slope.y(), 1).normalized();
    if (!(length_m > 0) || !Follow(clip.fishing_line, length_m, down)) return false;
    misses.segment<3>(FirstOf(i)) = down.place_m - up.place_m;
    up.pull_N += down.pull_N;
    return true;
  }

  const tow::TreeProblem& problem_;
  double tolerance_;
  mutable int passes_ = 0;
};

/// The solver's own start, in the peer's unknowns.
VectorXd Guess(const tow::TreeProblem& problem) {
  tow::TreePass pass;
  pass.Prepare(problem, 1);
  VectorXd ours(pass.size());
  pass.Guess(ours);
  VectorXd unknowns(FirstOf(problem.clips.size()));
  unknowns.head<3>() = ours.head<3>();
  for (std::size_t i = 0; i < problem.clips.size(); ++i) {
    const tow::ClipLoads& clip = problem.clips[i];
    const Vector3d eye = ours.head<3>();
    const Vector3d clip_m = eye + clip.above_ball_m / problem.line_m * (problem.boom_tip_m - eye);
    const tow::FishingLineProblem rod{&problem.flow,          &clip.fishing_line, clip.rod_tip_m,
                                      clip.rod_tip_tension_N, problem.line_m,     1};
    const Vector2d u = tow::GuessRodLogSlope(rod, clip_m);
    const double slope = u.norm() > 0 ? std::sinh(u.norm()) / u.norm() : 1.0;
    // The rod's log-slope points from foot to tip; the peer's slope the way the line is followed,
    // down.
    unknowns.segment<2>(FirstOf(i)) = -slope * Scale_m(problem, i) * u;
    unknowns[FirstOf(i) + 2] = (clip_m - clip.rod_tip_m).norm() * tow::Bow(rod, clip_m);
    unknowns[FirstOf(i) + 3] = clip_m.z();
  }
  return unknowns;
}

}  // namespace

PeerTree SolvePeer(const tow::TreeProblem& problem, const PeerOptions& options) {
  Misses misses(problem, options.line_tolerance);
  VectorXd unknowns = Guess(problem);
  Eigen::HybridNonLinearSolver<Misses> solver(misses);
  solver.parameters.xtol = options.root_tolerance;
  solver.parameters.epsfcn = options.line_tolerance;
  solver.solveNumericalDiff(unknowns);

  PeerTree tree;
  tree.passes = misses.passes();
  VectorXd left(unknowns.size());
  tree.found = misses(unknowns, left) == 0 && left.norm() < kFound * problem.line_m;
  tree.miss_m = left.norm();
  const Vector3d eye = unknowns.head<3>();
  const Vector2d v = problem.flow.OverBody(eye.z());
  const Vector3d load = tow::Load(problem.ball, v.x(), v.y());
  tree.ball_m = eye + problem.eye_to_centre_m * load.normalized();
  for (std::size_t i = 0; i < problem.clips.size(); ++i) {
    tree.lure_depth_m.push_back(unknowns[FirstOf(i) + 3]);
  }
  return tree;
}

}  // namespace offplumb::bench
