#include "bench/peer_line.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include <boost/math/tools/roots.hpp>
#include <boost/numeric/odeint/stepper/generation/generation_dense_output_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/generation/generation_runge_kutta_dopri5.hpp>
#include <boost/numeric/odeint/stepper/generation/make_dense_output.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>

namespace offplumb::bench {
namespace {

namespace odeint = boost::numeric::odeint;

enum : std::size_t { kFx, kFy, kFz, kX, kY, kZ, kSize };
using LineState = std::array<double, kSize>;

constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// More steps than any line of the trade needs.
constexpr int kMostSteps = 20000;

/// A band of depth with one law: the air above 0, or one layer of the stream.
struct Region {
  double top_m;
  double bottom_m;
  const water::FlowLayer* layer;  ///< Null in the air.
};

/// The region that a line at a depth goes into, on an edge by the way it goes.
Region RegionAt(const water::Flow& flow, double depth_m, bool downward) {
  if (depth_m < 0 || (depth_m == 0 && !downward)) return {-kInfinity, 0, nullptr};
  const auto& layers = flow.layers();
  std::size_t i = 0;
  while (i + 1 < layers.size() &&
         (depth_m > layers[i].bottom_m || (depth_m == layers[i].bottom_m && downward))) {
    ++i;
  }
  return {layers[i].top_m, layers[i].bottom_m, &layers[i]};
}

/// d(T t)/ds = -load, dr/ds = (1 + strain) t.
struct Equations {
  const tow::LineLoads& line;
  const water::FlowLayer* layer;

  void operator()(const LineState& y, LineState& dy, double /*s*/) const {
    const Vector3d force(y[kFx], y[kFy], y[kFz]);
    const double tension = force.norm();
    const Vector3d t = force / tension;
    const double stretch = 1 + tension * line.compliance_per_N;
    Vector3d load(0, 0, line.weight_in_air_N_per_m);
    if (layer) load = stretch * Drag(t, y[kZ]) + Vector3d(0, 0, line.weight_in_water_N_per_m);
    const Vector3d way = stretch * t;
    dy = {-load.x(), -load.y(), -load.z(), way.x(), way.y(), way.z()};
  }

  /// Of the stream on a metre of stretched line.
  Vector3d Drag(const Vector3d& t, double depth_m) const {
    const double below = depth_m - layer->top_m;
    const double gx = layer->gx == 0 ? 0 : layer->gx * below;
    const double gy = layer->gy == 0 ? 0 : layer->gy * below;
    const Vector3d v(layer->vx + gx, layer->vy + gy, 0);
    const double along = v.dot(t);
    const Vector3d across = v - along * t;
    const double speed = across.norm();
    const double normal = line.normal_linear * speed + line.normal_cbrt * std::cbrt(speed);
    return normal * across + line.tangential * std::abs(along) * along * t;
  }
};

/// Where within the last step the depth passes an edge.
template <typename Stepper>
double FindEdge(const Stepper& stepper, double edge_m, double from_s, double to_s) {
  const auto miss = [&](double s) {
    LineState y{};
    stepper.calc_state(s, y);
    return y[kZ] - edge_m;
  };
  const double at_start = miss(from_s);
  const double at_end = miss(to_s);
  if (at_start == 0 || at_end == 0 || (at_start > 0) == (at_end > 0)) return to_s;
  std::uintmax_t most = 60;
  const auto bracket = boost::math::tools::toms748_solve(
      miss, from_s, to_s, at_start, at_end, boost::math::tools::eps_tolerance<double>(48), most);
  return 0.5 * (bracket.first + bracket.second);
}

/// Follows the line to the region's edge or the line's end. \return the length reached; negative
/// when given up.
double CrossRegion(const Region& region, const tow::LineLoads& line, double from_s, double length_m,
                   double tolerance, LineState& y) {
  auto stepper =
      odeint::make_dense_output(tolerance, tolerance, odeint::runge_kutta_dopri5<LineState>());
  const Equations equations{line, region.layer};
  stepper.initialize(y, from_s, 0.1 * (length_m - from_s));
  for (int i = 0; i < kMostSteps; ++i) {
    const auto [before_s, after_s] = stepper.do_step(equations);
    if (!std::isfinite(stepper.current_state()[kZ])) return -1;
    const double to_s = std::min(after_s, length_m);
    stepper.calc_state(to_s, y);
    if (y[kZ] < region.top_m || y[kZ] > region.bottom_m) {
      const double edge_m = y[kZ] < region.top_m ? region.top_m : region.bottom_m;
      const double edge_s = FindEdge(stepper, edge_m, before_s, to_s);
      stepper.calc_state(edge_s, y);
      y[kZ] = edge_m;
      return edge_s;
    }
    if (after_s >= length_m) return length_m;
  }
  return -1;
}

}  // namespace

bool FollowPeerLine(const water::Flow& flow, const tow::LineLoads& line, double length_m,
                    double tolerance, PeerPoint& point) {
  LineState y{point.pull_N.x(),  point.pull_N.y(),  point.pull_N.z(),
              point.place_m.x(), point.place_m.y(), point.place_m.z()};
  double s = 0;
  for (int regions = 0; s < length_m; ++regions) {
    const Region region = RegionAt(flow, y[kZ], y[kFz] > 0);
    s = CrossRegion(region, line, s, length_m, tolerance, y);
    if (s < 0 || regions > kMostSteps) return false;
  }
  point.pull_N = {y[kFx], y[kFy], y[kFz]};
  point.place_m = {y[kX], y[kY], y[kZ]};
  return true;
}

}  // namespace offplumb::bench
