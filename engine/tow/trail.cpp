// Notation. s unstretched arc length from the free end forward; F = T t the force vector, t the
// tangent toward the clip, W water velocity. dF/ds = -(weight z + (1 + strain)(kappa Wn +
// tangential |Wt| Wt t)), dr/ds = (1 + strain) t (docs/method.md eqs. 3.10-3.11). At a body F drops
// by its load.
#include "engine/tow/trail.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/constants.h"
#include "engine/tow/luther6.h"
#include "engine/tow/normal_drag.h"

namespace offplumb::tow {
namespace {

enum : std::size_t { kFx, kFy, kFz, kX, kY, kZ, kSize };
using LineState = State<kSize>;

/// Step over the length in which the line's drag turns it, T/R; and the steps at least and at most.
constexpr double kTurnPerStep = 0.5;
constexpr int kFewestSteps = 2;
constexpr int kMostSteps = 200;
/// A line crosses few layer edges; grazing one for ever must end. What is left is then stepped
/// without edges.
constexpr int kMostEdges = 64;
/// The free end of a line with no body starts with this part of the load on one metre.
constexpr double kFreeEnd = 1e-9;

struct March {
  const LineLoads& line;
  const water::FlowLayer& layer;

  LineState operator()(const LineState& y) const {
    const double tension2 = y[kFx] * y[kFx] + y[kFy] * y[kFy] + y[kFz] * y[kFz];
    const double tension = std::sqrt(tension2);
    const double tx = y[kFx] / tension;
    const double ty = y[kFy] / tension;
    const double tz = y[kFz] / tension;
    // Above the surface the surface's stream: a lure that surfaces is refused afterwards.
    const double below = std::max(y[kZ], 0.0) - layer.top_m;
    const double vx = layer.vx + layer.gx * below;
    const double vy = layer.vy + layer.gy * below;
    const double wt = vx * tx + vy * ty;
    // |Wn|^2 = |W x F|^2/F^2: a line along the stream leaves little of W^2 - Wt^2 but rounding.
    const double cross = vx * y[kFy] - vy * y[kFx];
    const double across2 = cross * cross + (vx * vx + vy * vy) * y[kFz] * y[kFz];
    const double kappa = NormalFactor(line, across2 / tension2);
    const double along = line.tangential * std::abs(wt) * wt - kappa * wt;
    const double stretch = 1.0 + tension * line.compliance_per_N;
    LineState d;
    d[kFx] = -stretch * (kappa * vx + along * tx);
    d[kFy] = -stretch * (kappa * vy + along * ty);
    d[kFz] = -stretch * (along * tz) - line.weight_in_water_N_per_m;
    d[kX] = stretch * tx;
    d[kY] = stretch * ty;
    d[kZ] = stretch * tz;
    return d;
  }
};

/// What a march needs besides the line.
struct Way {
  const water::Flow& flow;
  int refine;
  std::vector<Vector3d>* trace;
};

double Tension(const LineState& y) { return std::hypot(y[kFx], y[kFy], y[kFz]); }

/// Depth of the edge that a step from `before` to `after` crosses first; NaN when it stays in the
/// layer.
double EdgeCrossed(const water::FlowLayer& layer, double before, double after) {
  if (after > layer.bottom_m && before <= layer.bottom_m) return layer.bottom_m;
  if (after < layer.top_m && layer.top_m > 0 && before >= layer.top_m) return layer.top_m;
  return std::numeric_limits<double>::quiet_NaN();
}

/// The part of step h that ends on an edge: regula falsi (Illinois) on the depth.
double StepToEdge(const March& march, const LineState& y, double h, double edge_m) {
  double a = 0;
  double b = h;
  double fa = y[kZ] - edge_m;
  double fb = Luther6Step(march, y, h)[kZ] - edge_m;
  if (fa == 0) return 0;
  for (int i = 0; i < 60 && std::abs(b - a) > 1e-13 * h; ++i) {
    const double c = b - fb * (b - a) / (fb - fa);
    const double fc = Luther6Step(march, y, c)[kZ] - edge_m;
    if (std::abs(fc) < 1e-13) return c;
    if (fc * fb < 0) {
      a = b;
      fa = fb;
    } else {
      fa *= 0.5;
    }
    b = c;
    fb = fc;
  }
  return b;
}

/// Steps for one line, from inputs only, so that no iteration changes the mesh.
/// \param pull_kg_per_m drag per speed squared of all that the line pulls.
int StepsFor(const LineLoads& line, double length_m, double pull_kg_per_m) {
  const double turn = line.normal_linear * length_m / std::max(pull_kg_per_m, 1e-6);
  return kFewestSteps + static_cast<int>(std::min(turn / kTurnPerStep, 1.0 * kMostSteps));
}

/// Index of the layer that a point on the way enters: at an edge the one its tangent leads into.
int LayerAhead(const water::Flow& flow, const LineState& y) {
  const int i = flow.LayerAt(std::max(y[kZ], 0.0));
  const auto& layer = flow.layers()[static_cast<std::size_t>(i)];
  return i > 0 && y[kZ] <= layer.top_m && y[kFz] < 0 ? i - 1 : i;
}

/// Marches y over a length of line. \return false when the tension vanishes.
bool MarchOver(const Way& way, const LineLoads& line, double length_m, int steps, LineState& y) {
  const double h_full = length_m / (steps * way.refine);
  double left = length_m;
  int edges = 0;
  int at = LayerAhead(way.flow, y);
  while (left > 1e-14 * length_m) {
    const auto& layer = way.flow.layers()[static_cast<std::size_t>(at)];
    const March march{line, layer};
    double h = std::min(h_full, left);
    LineState next = Luther6Step(march, y, h);
    const double edge = EdgeCrossed(layer, y[kZ], next[kZ]);
    if (!std::isnan(edge) && edges < kMostEdges) {
      ++edges;
      h = StepToEdge(march, y, h, edge);
      next = Luther6Step(march, y, h);
      next[kZ] = edge;
      at = edge == layer.bottom_m ? at + 1 : at - 1;
    }
    y = next;
    left -= h;
    if (!(Tension(y) > 0)) return false;
    if (way.trace) way.trace->emplace_back(y[kX], y[kY], y[kZ]);
  }
  return true;
}

/// Angle between the stream and a heavy line that is towed with a free end: the critical angle, on
/// which weight and normal drag balance across the line: w cos(phi) = kappa |W| sin(phi)^2 ...
/// (docs/method.md 3.12).
double CriticalAngle(const LineLoads& line, double speed_mps) {
  const double w = std::abs(line.weight_in_water_N_per_m);
  double low = 0;
  double high = kPi / 2;
  for (int i = 0; i < 60; ++i) {
    const double phi = 0.5 * (low + high);
    const double vn = speed_mps * std::sin(phi);
    const bool drag_wins = NormalFactor(line, vn * vn) * vn > w * std::cos(phi);
    (drag_wins ? high : low) = phi;
  }
  return 0.5 * (low + high);
}

/// Direction from the free end forward of a line with nothing on its end.
Vector3d FreeEndDirection(const LineLoads& line, double vx, double vy) {
  const double speed = std::hypot(vx, vy);
  const double up = line.weight_in_water_N_per_m >= 0 ? -1.0 : 1.0;
  if (speed == 0) return {0, 0, up};
  const double phi = CriticalAngle(line, speed);
  return {-vx / speed * std::cos(phi), -vy / speed * std::cos(phi), up * std::sin(phi)};
}

void Drop(LineState& y, const Vector3d& load) {
  y[kFx] -= load.x();
  y[kFy] -= load.y();
  y[kFz] -= load.z();
}

/// The state at the lure, ready to march.
LineState AtLure(const TrailLoads& trail, const LineLoads& first, double vx, double vy, double z) {
  LineState y{0, 0, 0, 0, 0, z};
  Drop(y, Load(trail.lure, vx, vy));
  const double metre = std::abs(first.weight_in_water_N_per_m) +
                       NormalFactor(first, vx * vx + vy * vy) * std::hypot(vx, vy) + 1e-9;
  if (Tension(y) < kFreeEnd * metre) {
    const Vector3d start = kFreeEnd * metre * FreeEndDirection(first, vx, vy);
    y = {start.x(), start.y(), start.z(), 0, 0, z};
  }
  return y;
}

/// One march from a lure at depth z to the clip. Positions relative to the lure.
struct Marched {
  bool ok = false;
  LineState clip{};
  Vector3d flasher = Vector3d::Zero();
};

Marched MarchToClip(const Way& way, const TrailLoads& trail, double z) {
  Marched out;
  const LineLoads& first = trail.has_flasher ? trail.leader : trail.setback;
  const Eigen::Vector2d v = way.flow.OverBody(z);
  double pull = trail.lure.drag_per_q_kg_per_m;
  LineState y = AtLure(trail, first, v.x(), v.y(), z);
  if (way.trace) way.trace->emplace_back(y[kX], y[kY], y[kZ]);
  if (trail.has_flasher) {
    const int steps = StepsFor(first, trail.leader_m, pull);
    if (!MarchOver(way, trail.leader, trail.leader_m, steps, y)) return out;
    const Eigen::Vector2d vf = way.flow.OverBody(y[kZ]);
    Drop(y, Load(trail.flasher, vf.x(), vf.y()));
    if (!(Tension(y) > 0)) return out;
    pull += trail.flasher.drag_per_q_kg_per_m;
  }
  out.flasher = {y[kX], y[kY], y[kZ]};
  const int steps = StepsFor(trail.setback, trail.setback_m, pull);
  out.ok = MarchOver(way, trail.setback, trail.setback_m, steps, y);
  out.clip = y;
  return out;
}

}  // namespace

TrailMarch MarchTrail(const water::Flow& flow, const TrailLoads& trail, double lure_m, int refine) {
  const Marched marched = MarchToClip({flow, refine, nullptr}, trail, lure_m);
  TrailMarch out;
  if (!marched.ok) return out;
  const LineState& y = marched.clip;
  const Vector3d clip(y[kX], y[kY], y[kZ]);
  out.holds = true;
  out.fore_end_m = y[kZ];
  out.force_on_clip_N = {-y[kFx], -y[kFy], -y[kFz]};
  out.flasher_from_clip_m = marched.flasher - clip;
  out.lure_from_clip_m = Vector3d(0, 0, lure_m) - clip;
  return out;
}

void TraceTrail(const water::Flow& flow, const TrailLoads& trail, const Vector3d& clip_m,
                double lure_m, std::vector<Vector3d>& setback, std::vector<Vector3d>& leader) {
  constexpr int kFine = 4;
  std::vector<Vector3d> points;
  const Marched marched = MarchToClip({flow, kFine, &points}, trail, lure_m);
  const Vector3d shift = clip_m - Vector3d(marched.clip[kX], marched.clip[kY], marched.clip[kZ]);
  bool past_flasher = false;
  for (auto point = points.rbegin(); point != points.rend(); ++point) {
    (past_flasher ? leader : setback).push_back(*point + shift);
    if (trail.has_flasher && !past_flasher && *point == marched.flasher) {
      past_flasher = true;
      leader.push_back(*point + shift);
    }
  }
}

}  // namespace offplumb::tow
