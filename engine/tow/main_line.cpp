// Notation as in fishing_line.cpp. Per unstretched metre s0 going up, e = 1 + T/EA:
//
//     dp/ds0 = -e (S/T)(kappa W + (w/e) p)
//     dT/ds0 = e((w/e)/S - tangential |Wt| Wt),  Wt = (W.p)/S
//     dr_h/ds0 = e p/S
//     dz/ds0 = -e/S
//
// docs/method.md eqs. 3.1-3.4.
#include "engine/tow/main_line.h"

#include <algorithm>
#include <cmath>

#include "engine/tow/luther6.h"
#include "engine/tow/normal_drag.h"

namespace offplumb::tow {
namespace {

enum : std::size_t { kPx, kPy, kTension, kX, kY, kZ, kUnstretched, kStretched, kSize };
using LineState = State<kSize>;

/// Change of slope in one step: then the Lobatto rule for the depth is good to 1e-9 of it.
constexpr double kSlopePerStep = 0.3;
constexpr int kMostSteps = 1000;

/// Derivatives per unstretched metre, or per metre of rise.
struct Rise {
  const LineLoads& line;
  const water::FlowLayer* layer;  ///< Null in the air.
  bool per_rise;

  LineState operator()(const LineState& y) const {
    const double s2 = 1.0 + y[kPx] * y[kPx] + y[kPy] * y[kPy];
    const double s = std::sqrt(s2);
    const double tension = y[kTension];
    const double stretch = 1.0 + tension * line.compliance_per_N;
    const double rate =
        per_rise ? s / stretch : 1.0;  // Unstretched metres per unit of the variable.
    double kx = 0;
    double ky = 0;
    double tangential = 0;
    if (layer) {
      const double below = y[kZ] - layer->top_m;
      const double vx = layer->vx + layer->gx * below;
      const double vy = layer->vy + layer->gy * below;
      const double wt = (vx * y[kPx] + vy * y[kPy]) / s;
      // |Wn|^2 = W^2 - Wt^2 with nothing to cancel, and no root to wait for.
      const double cross = vx * y[kPy] - vy * y[kPx];
      const double kappa = NormalFactor(line, (vx * vx + vy * vy + cross * cross) / s2);
      kx = kappa * vx;
      ky = kappa * vy;
      tangential = line.tangential * std::abs(wt) * wt;
    }
    const double weight =
        (layer ? line.weight_in_water_N_per_m : line.weight_in_air_N_per_m) / stretch;
    const double path = rate * stretch;
    const double turn = -path * s / tension;
    LineState d;
    d[kPx] = turn * (kx + weight * y[kPx]);
    d[kPy] = turn * (ky + weight * y[kPy]);
    d[kTension] = path * (weight / s - tangential);
    d[kX] = path * y[kPx] / s;
    d[kY] = path * y[kPy] / s;
    d[kZ] = -path / s;
    d[kUnstretched] = rate;
    d[kStretched] = path;
    return d;
  }
};

LineState Pack(const MainLinePoint& point) {
  return {point.px,          point.py, point.tension_N,  point.place_m.x(), point.place_m.y(),
          point.place_m.z(), 0,        point.stretched_m};
}

MainLinePoint Unpack(const LineState& y) {
  return {y[kPx], y[kPy], y[kTension], Vector3d(y[kX], y[kY], y[kZ]), y[kStretched]};
}

/// Where the climb is: a layer of the stream, or the air (-1); how high it reaches and the longest
/// step in it.
struct Storey {
  int layer;
  double top_m;
  double longest_step_m;
};

Storey StoreyAt(const water::Flow& flow, double z) {
  constexpr double kNone = 1e300;
  if (z <= 0) return {-1, -kNone, kNone};
  int at = flow.LayerAt(z);
  // Standing on an edge, the climb goes into the layer above it.
  if (at > 0 && z <= flow.layers()[static_cast<std::size_t>(at)].top_m) --at;
  const water::FlowLayer& layer = flow.layers()[static_cast<std::size_t>(at)];
  const double changes = ChangesIn(layer, layer.bottom_m);
  const double longest = changes > 0 ? (layer.bottom_m - layer.top_m) / (1.0 + changes) : kNone;
  return {at, layer.top_m, longest};
}

Rise MakeRise(const MainLineSpan& span, const Storey& storey, bool per_rise) {
  const water::FlowLayer* layer =
      storey.layer < 0 ? nullptr : &span.flow->layers()[static_cast<std::size_t>(storey.layer)];
  return {*span.line, layer, per_rise};
}

/// Whether a step of h along the present slope leaves the storey.
bool Reaches(const LineState& y, const Storey& storey, double h) {
  return (y[kZ] - storey.top_m) * std::sqrt(1.0 + y[kPx] * y[kPx] + y[kPy] * y[kPy]) < h;
}

/// A step with depth as the running variable that ends on the storey's top.
LineState StepToTop(const MainLineSpan& span, const Storey& storey, const LineState& y) {
  LineState top = Luther6Step(MakeRise(span, storey, true), y, y[kZ] - storey.top_m);
  top[kZ] = storey.top_m;
  return top;
}

/// A step of h, or to the storey's top if that comes first. Most crossings show in the slope
/// beforehand; for them no step of h is made only to be thrown away.
LineState StepUp(const MainLineSpan& span, const Storey& storey, const LineState& y, double h) {
  if (Reaches(y, storey, h)) {
    const LineState top = StepToTop(span, storey, y);
    if (top[kUnstretched] <= span.length_m) return top;
  }
  const LineState next = Luther6Step(MakeRise(span, storey, false), y, h);
  return next[kZ] < storey.top_m ? StepToTop(span, storey, y) : next;
}

}  // namespace

Vector3d MainLinePoint::PullFromAbove_N() const {
  const double vertical = tension_N / std::sqrt(1.0 + px * px + py * py);
  return {vertical * px, vertical * py, -vertical};
}

bool MainLinePoint::SetPullFromAbove(const Vector3d& pull_N) {
  if (!(pull_N.z() < 0)) return false;
  px = -pull_N.x() / pull_N.z();
  py = -pull_N.y() / pull_N.z();
  tension_N = pull_N.norm();
  return true;
}

int StepsForSpan(const LineLoads& line, double length_m, double largest_speed_mps,
                 double smallest_tension_N) {
  const double drag = NormalFactor(line, largest_speed_mps * largest_speed_mps) * largest_speed_mps;
  const double turn = drag * length_m / smallest_tension_N;
  return 2 + static_cast<int>(std::min(turn / kSlopePerStep, 1.0 * kMostSteps));
}

bool Climb(const MainLineSpan& span, MainLinePoint& point, std::vector<Vector3d>* trace) {
  LineState y = Pack(point);
  const double h_full = span.length_m / span.steps;
  Storey storey = StoreyAt(*span.flow, y[kZ]);
  while (span.length_m - y[kUnstretched] > 1e-13 * span.length_m) {
    const double h = std::min({h_full, storey.longest_step_m, span.length_m - y[kUnstretched]});
    y = StepUp(span, storey, y, h);
    if (!(y[kTension] > 0)) return false;
    if (y[kZ] <= storey.top_m) storey = StoreyAt(*span.flow, y[kZ]);
    if (trace) trace->emplace_back(y[kX], y[kY], y[kZ]);
  }
  point = Unpack(y);
  return true;
}

}  // namespace offplumb::tow
