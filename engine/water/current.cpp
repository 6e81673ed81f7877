#include "engine/water/current.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

namespace offplumb::water {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kLargestCurrent_mps = 5.0;
/// Layers whose velocity and slope continue within this many m/s (1/s) are one layer. It only joins
/// layers that were split by arithmetic: 1e-12 m/s is far below anything that can be felt or
/// measured.
constexpr double kJoin = 1e-12;

/// (north, east) to (ahead, starboard) for a boat that points along `heading_rad`.
Vector2d ToBoat(const Vector2d& v, double heading_rad) {
  const double c = std::cos(heading_rad);
  const double s = std::sin(heading_rad);
  return {c * v.x() + s * v.y(), -s * v.x() + c * v.y()};
}

Vector2d VelocityIn(const FlowLayer& layer, double depth_m) {
  // A uniform layer may be infinitely deep: 0 * infinity must not appear.
  if (layer.gx == 0 && layer.gy == 0) return {layer.vx, layer.vy};
  const double below = depth_m - layer.top_m;
  return {layer.vx + layer.gx * below, layer.vy + layer.gy * below};
}

bool Continues(const FlowLayer& upper, const FlowLayer& lower) {
  const Vector2d end = VelocityIn(upper, lower.top_m);
  return std::abs(end.x() - lower.vx) <= kJoin && std::abs(end.y() - lower.vy) <= kJoin &&
         std::abs(upper.gx - lower.gx) <= kJoin && std::abs(upper.gy - lower.gy) <= kJoin;
}

FlowLayer Constant(double top_m, double bottom_m, const Vector2d& v) {
  return {top_m, bottom_m, v.x(), v.y(), 0, 0};
}

FlowLayer Sloping(const CurrentPoint& a, const CurrentPoint& b, const Vector2d& va,
                  const Vector2d& vb) {
  const Vector2d slope = (vb - va) / (b.depth_m - a.depth_m);
  return {a.depth_m, b.depth_m, va.x(), va.y(), slope.x(), slope.y()};
}

/// The current as layers in the boat's axes, before the boat's own velocity is added.
std::vector<FlowLayer> Layers(const Current& current, double heading_rad) {
  if (current.points.empty()) return {Constant(0, kInfinity, Vector2d::Zero())};
  std::vector<FlowLayer> layers;
  const auto& points = current.points;
  const auto velocity = [&](size_t i) { return ToBoat(points[i].velocity_mps, heading_rad); };
  if (points[0].depth_m > 0) layers.push_back(Constant(0, points[0].depth_m, velocity(0)));
  for (size_t i = 0; i + 1 < points.size(); ++i) {
    layers.push_back(current.shape == CurrentShape::kSteps
                         ? Constant(points[i].depth_m, points[i + 1].depth_m, velocity(i))
                         : Sloping(points[i], points[i + 1], velocity(i), velocity(i + 1)));
  }
  layers.push_back(Constant(points.back().depth_m, kInfinity, velocity(points.size() - 1)));
  return layers;
}

}  // namespace

Vector2d CurrentAt(const Current& current, double depth_m) {
  const auto& points = current.points;
  if (points.empty()) return Vector2d::Zero();
  size_t below = 0;
  while (below < points.size() && points[below].depth_m <= depth_m) ++below;
  if (below == 0) return points.front().velocity_mps;
  const CurrentPoint& a = points[below - 1];
  if (below == points.size() || current.shape == CurrentShape::kSteps) return a.velocity_mps;
  const CurrentPoint& b = points[below];
  const double part = (depth_m - a.depth_m) / (b.depth_m - a.depth_m);
  return a.velocity_mps + part * (b.velocity_mps - a.velocity_mps);
}

Expected<Current> CheckCurrent(Current current) {
  double above = -1;
  for (const CurrentPoint& point : current.points) {
    if (!(point.depth_m >= 0 && point.depth_m < kInfinity)) {
      return BadInput("current depth",
                      "A depth in the current is not a number of metres at or below "
                      "the surface.");
    }
    if (!(point.depth_m > above)) {
      return BadInput("current depth",
                      "The depths of the current must increase from one point to "
                      "the next; " +
                          std::to_string(point.depth_m) + " m follows " + std::to_string(above) +
                          " m.");
    }
    if (!(point.velocity_mps.norm() <= kLargestCurrent_mps)) {
      return BadInput("current speed",
                      "A current speed must be a number from 0 to 5 m/s (9.7 kn).");
    }
    above = point.depth_m;
  }
  if (current.shape == CurrentShape::kSteps && !current.points.empty() &&
      current.points.front().depth_m != 0) {
    return BadInput("current depth",
                    "The first layer of the current must start at the surface (0).");
  }
  return current;
}

Flow Flow::Uniform(double speed_mps) {
  return FromLayers({Constant(0, kInfinity, Vector2d(-speed_mps, 0))});
}

Flow Flow::FromLayers(std::vector<FlowLayer> layers) {
  Flow flow;
  for (const FlowLayer& layer : layers) {
    if (!flow.layers_.empty() && Continues(flow.layers_.back(), layer)) {
      flow.layers_.back().bottom_m = layer.bottom_m;
    } else {
      flow.layers_.push_back(layer);
    }
  }
  return flow;
}

int Flow::LayerAt(double depth_m) const {
  int i = 0;
  const int last = static_cast<int>(layers_.size()) - 1;
  while (i < last && depth_m >= layers_[static_cast<size_t>(i)].bottom_m) ++i;
  return i;
}

Vector2d Flow::At(double depth_m) const {
  const double depth = std::max(depth_m, 0.0);
  return VelocityIn(layers_[static_cast<size_t>(LayerAt(depth))], depth);
}

bool Flow::JumpsBetween(int upper, int lower) const {
  for (int i = upper; i < lower; ++i) {
    const FlowLayer& above = layers_[static_cast<size_t>(i)];
    const FlowLayer& below = layers_[static_cast<size_t>(i) + 1];
    const Vector2d jump = VelocityIn(above, above.bottom_m) - VelocityIn(below, below.top_m);
    if (jump.norm() > kJoin) return true;
  }
  return false;
}

Vector2d Flow::OverBody(double depth_m) const {
  const double top = std::max(depth_m - kBodyHeight_m / 2, 0.0);
  const double bottom = std::max(depth_m + kBodyHeight_m / 2, 0.0);
  const int upper = LayerAt(top);
  const int lower = LayerAt(bottom);
  if (upper == lower || !JumpsBetween(upper, lower)) return At(depth_m);
  Vector2d sum = Vector2d::Zero();
  for (int i = upper; i <= lower; ++i) {
    const FlowLayer& layer = layers_[static_cast<size_t>(i)];
    const double from = std::max(top, layer.top_m);
    const double to = std::min(bottom, layer.bottom_m);
    sum += (to - from) * VelocityIn(layer, 0.5 * (from + to));
  }
  return sum / (bottom - top);
}

double Flow::LargestSpeed_mps(double depth_m) const {
  double largest = At(depth_m).norm();
  for (const FlowLayer& layer : layers_) {
    if (layer.top_m > depth_m) break;
    largest = std::max(largest, std::hypot(layer.vx, layer.vy));
    largest = std::max(largest, VelocityIn(layer, std::min(depth_m, layer.bottom_m)).norm());
  }
  return largest;
}

Flow Flow::Plus(const Vector2d& added) const {
  Flow moved = *this;
  for (FlowLayer& layer : moved.layers_) {
    layer.vx += added.x();
    layer.vy += added.y();
  }
  return moved;
}

Flow FlowThroughWater(double speed_mps, double heading_rad, const Current& current) {
  const Vector2d surface = ToBoat(CurrentAt(current, 0), heading_rad);
  return Flow::FromLayers(Layers(current, heading_rad)).Plus(Vector2d(-speed_mps, 0) - surface);
}

Flow FlowOverGround(double speed_mps, double course_rad, double heading_rad,
                    const Current& current) {
  const Vector2d ground = speed_mps * Vector2d(std::cos(course_rad), std::sin(course_rad));
  return Flow::FromLayers(Layers(current, heading_rad)).Plus(-ToBoat(ground, heading_rad));
}

}  // namespace offplumb::water
