// Notation. z depth; u log-slope (2 components), p = sinh(|u|) u/|u| slope, S = sqrt(1 + p^2) =
// cosh|u| stretched length per metre of rise, T tension, W water velocity, kappa the normal factor.
// Going up by one metre:
//
//     dp = -(S^2/T)(kappa W + w p)
//     dT = w - tangential |Wt| Wt S,  Wt = (W.p)/S
//     du = n (n.dp)/S + (|u|/|p|)(dp - n (n.dp)),  n = u/|u|
//
// docs/method.md eqs. 3.6-3.9.
#include "engine/tow/fishing_line.h"

#include <algorithm>
#include <cmath>

#include "engine/tow/luther6.h"
#include "engine/tow/normal_drag.h"

namespace offplumb::tow {
namespace {

/// Indices of the state that is carried down from the rod tip.
enum : std::size_t { kUx, kUy, kTension, kX, kY, kPath, kUnstretched, kDepth, kSize };
using LineState = State<kSize>;

/// Largest step in log-slope.
constexpr double kLogSlopePerStep = 0.4;
constexpr int kMostSteps = 400;
/// cosh(30) = 5e12: no line gets there; stops overflow on the way.
constexpr double kLargestLogSlope = 30.0;
/// sinh(u)/u is 1 to the last bit below this.
constexpr double kSmallLogSlope = 1e-8;

/// The slope that a log-slope stands for, and what the derivatives need of it.
struct Slope {
  double px, py;
  double s;  ///< cosh|u|: path per metre of rise.
  double inv_s;
  double u_over_p;  ///< |u|/|p|.
  double bend;      ///< (1/s - |u|/|p|)/p^2: what the part of a change along p differs by.
};

Slope SlopeOf(double ux, double uy) {
  const double u = std::sqrt(ux * ux + uy * uy);
  if (u < kSmallLogSlope) return {ux, uy, 1.0, 1.0, 1.0, 0.0};
  const double e = std::exp(u);
  const double inv_e = 1.0 / e;
  const double sinh_u = 0.5 * (e - inv_e);
  const double cosh_u = 0.5 * (e + inv_e);
  const double p_over_u = sinh_u / u;
  const double u_over_p = u / sinh_u;
  const double inv_s = 1.0 / cosh_u;
  return {p_over_u * ux, p_over_u * uy, cosh_u,
          inv_s,         u_over_p,      (inv_s - u_over_p) / (sinh_u * sinh_u)};
}

/// Fills in the derivatives with depth, downward. (ax, ay): change of slope; `weight`: per
/// stretched metre.
LineState Derivatives(const Slope& slope, double ax, double ay, double tension_change,
                      double stretch) {
  const double along = slope.bend * (ax * slope.px + ay * slope.py);
  return {slope.u_over_p * ax + along * slope.px,
          slope.u_over_p * ay + along * slope.py,
          tension_change,
          -slope.px,
          -slope.py,
          slope.s,
          slope.s / stretch,
          1.0};
}

struct Water {
  const LineLoads& line;
  const water::FlowLayer& layer;

  LineState operator()(const LineState& y) const {
    const Slope slope = SlopeOf(y[kUx], y[kUy]);
    const double below = y[kDepth] - layer.top_m;
    const double vx = layer.vx + layer.gx * below;
    const double vy = layer.vy + layer.gy * below;
    const double wt = (vx * slope.px + vy * slope.py) * slope.inv_s;
    const double cross = vx * slope.py - vy * slope.px;
    const double across = (vx * vx + vy * vy + cross * cross) * slope.inv_s;  // |Wn|^2 S
    const double kappa = NormalFactor(line, across * slope.inv_s);
    const double stretch = 1.0 + y[kTension] * line.compliance_per_N;
    const double weight = line.weight_in_water_N_per_m / stretch;
    const double c = slope.s * slope.s / y[kTension];
    return Derivatives(slope, c * (kappa * vx + weight * slope.px),
                       c * (kappa * vy + weight * slope.py),
                       line.tangential * std::abs(wt) * wt * slope.s - weight, stretch);
  }
};

struct Air {
  const LineLoads& line;

  LineState operator()(const LineState& y) const {
    const Slope slope = SlopeOf(y[kUx], y[kUy]);
    const double stretch = 1.0 + y[kTension] * line.compliance_per_N;
    const double weight = line.weight_in_air_N_per_m / stretch;
    const double c = slope.s * slope.s / y[kTension] * weight;
    return Derivatives(slope, c * slope.px, c * slope.py, -weight, stretch);
  }
};

bool Holds(const LineState& y) {
  return y[kTension] > 0 && std::abs(y[kUx]) + std::abs(y[kUy]) < kLargestLogSlope &&
         y[kPath] < kLongestFishingLine_m;
}

/// Steps for one layer, from inputs only, so that no iteration changes the mesh.
int StepsIn(const FishingLineProblem& problem, const water::FlowLayer& layer) {
  const double bottom = std::min(layer.bottom_m, problem.deepest_m);
  const double dz = std::max(0.0, bottom - layer.top_m);
  const double bx = layer.vx + layer.gx * dz;
  const double by = layer.vy + layer.gy * dz;
  const double v2 = std::max(layer.vx * layer.vx + layer.vy * layer.vy, bx * bx + by * by);
  const double turn =
      NormalFactor(*problem.line, v2) * std::sqrt(v2) * dz / problem.rod_tip_tension_N;
  const double wanted = turn / kLogSlopePerStep + ChangesIn(layer, layer.top_m + dz);
  const int steps = 1 + static_cast<int>(std::min(wanted, 1.0 * kMostSteps));
  return problem.refine * steps;
}

/// Steps evenly from y down to a depth. \return false when the line does not hold.
template <typename F>
bool Descend(const F& f, LineState& y, double to_m, int steps, std::vector<Vector3d>* trace) {
  const double h = (to_m - y[kDepth]) / steps;
  for (int i = 0; i < steps; ++i) {
    y = Luther6Step(f, y, h);
    if (!Holds(y)) return false;
    if (trace) trace->emplace_back(y[kX], y[kY], y[kDepth]);
  }
  y[kDepth] = to_m;
  return true;
}

/// Follows the line from the rod tip down to a depth.
bool Follow(const FishingLineProblem& problem, const Vector2d& u, double depth_m, LineState& y,
            std::vector<Vector3d>* trace) {
  y = {u.x(), u.y(), problem.rod_tip_tension_N, problem.rod_tip_m.x(), problem.rod_tip_m.y(),
       0,     0,     problem.rod_tip_m.z()};
  if (trace) trace->push_back(problem.rod_tip_m);
  const LineLoads& line = *problem.line;
  if (y[kDepth] < 0) {
    if (!Descend(Air{line}, y, std::min(0.0, depth_m), problem.refine, trace)) return false;
  }
  for (const water::FlowLayer& layer : problem.flow->layers()) {
    if (layer.top_m >= depth_m) break;
    const double to = std::min(layer.bottom_m, depth_m);
    if (to <= y[kDepth]) continue;
    if (!Descend(Water{line, layer}, y, to, StepsIn(problem, layer), trace)) return false;
  }
  return true;
}

/// Force of the line on the clip: tension along the upward tangent.
Vector3d ForceAtFoot(const LineState& y) {
  const Slope slope = SlopeOf(y[kUx], y[kUy]);
  const double vertical = y[kTension] / slope.s;
  return {vertical * slope.px, vertical * slope.py, -vertical};
}

/// Change of log-slope from end to end in the stream at mid-depth.
double Turn(const FishingLineProblem& problem, const Vector3d& clip_m) {
  const double depth = std::max(clip_m.z(), 0.0);
  const double speed = problem.flow->At(0.5 * depth).norm();
  const double drag = NormalFactor(*problem.line, speed * speed) * speed * depth;
  return std::min(drag / problem.rod_tip_tension_N, 2 * kLargestLogSlope);
}

}  // namespace

double Bow(const FishingLineProblem& problem, const Vector3d& clip_m) {
  const double turn = Turn(problem, clip_m);
  return turn > 1e-6 ? std::sinh(turn / 2) / (turn / 2) : 1.0;
}

Vector2d MeanLogSlope(const Vector2d& run_m, double rise_bow_m) {
  const double slope = run_m.norm() / rise_bow_m;
  if (slope < kSmallLogSlope) return run_m / rise_bow_m;
  return std::asinh(slope) / slope * run_m / rise_bow_m;
}

Eigen::Matrix2d MeanLogSlopeByRun(const Vector2d& run_m, double rise_bow_m) {
  const double run = run_m.norm();
  const double slope = run / rise_bow_m;
  if (slope < kSmallLogSlope) return Eigen::Matrix2d::Identity() / rise_bow_m;
  const Vector2d n = run_m / run;
  const double along = 1.0 / std::sqrt(1.0 + slope * slope);
  const double across = std::asinh(slope) / slope;
  return (across * Eigen::Matrix2d::Identity() + (along - across) * n * n.transpose()) / rise_bow_m;
}

Eigen::Matrix<double, 3, 2> PullByLogSlope(const Vector3d& pull_N) {
  // The pull is T (tanh|u| n, -1/cosh|u|).
  const double tension = pull_N.norm();
  const double level = pull_N.head<2>().norm();
  const double upright = -pull_N.z();  // T/cosh|u|
  Eigen::Matrix<double, 3, 2> change = Eigen::Matrix<double, 3, 2>::Zero();
  change.topRows<2>().diagonal().setConstant(tension);
  if (level < kSmallLogSlope * tension) return change;
  const Vector2d n = pull_N.head<2>() / level;
  const double across = level / std::asinh(level / upright);
  const double along = upright * upright / tension;
  change.topRows<2>() = across * Eigen::Matrix2d::Identity() + (along - across) * n * n.transpose();
  change.row(2) = upright * level / tension * n;
  return change;
}

Vector2d TurnPerMetre(const FishingLineProblem& problem, double clip_depth_m, double tension_N) {
  const Vector2d v = problem.flow->At(clip_depth_m);
  return NormalFactor(*problem.line, v.squaredNorm()) / tension_N * v;
}

Vector2d GuessRodLogSlope(const FishingLineProblem& problem, const Vector3d& clip_m) {
  const double rise = std::max(clip_m.z() - problem.rod_tip_m.z(), 1e-6);
  const Vector2d run = (problem.rod_tip_m - clip_m).head<2>();
  const Vector2d v = problem.flow->At(0.5 * std::max(clip_m.z(), 0.0));
  const double speed = v.norm();
  const Vector2d forward = speed > 0 ? Vector2d(-v / speed) : Vector2d(1, 0);
  return MeanLogSlope(run, rise * Bow(problem, clip_m)) + 0.5 * Turn(problem, clip_m) * forward;
}

FishingLineFoot FollowFishingLine(const FishingLineProblem& problem, const Vector2d& rod_log_slope,
                                  double depth_m, std::vector<Vector3d>* trace) {
  FishingLineFoot foot;
  LineState y;
  if (!(depth_m > problem.rod_tip_m.z()) || !Follow(problem, rod_log_slope, depth_m, y, trace)) {
    return foot;
  }
  foot.holds = true;
  foot.place_m = {y[kX], y[kY]};
  foot.force_on_clip_N = ForceAtFoot(y);
  foot.path_m = y[kPath];
  foot.unstretched_m = y[kUnstretched];
  return foot;
}

}  // namespace offplumb::tow
