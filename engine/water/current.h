/// \file
/// Current against depth, and the water that streams past the boat because of it.
///
/// Earth frame: velocities as (north, east), m/s, the way the water goes. Boat frame: x ahead, y to
/// starboard.
#pragma once

#include <vector>

#include <Eigen/Core>

#include "engine/problem.h"

namespace offplumb::water {

using Eigen::Vector2d;

/// How a current runs between the depths at which it is given.
enum class CurrentShape {
  kSteps,   ///< Layers of constant velocity; a point's depth is the top of its layer.
  kLinear,  ///< Straight between points, constant above the first and below the last.
};

/// The current at one depth.
struct CurrentPoint {
  double depth_m = 0;                        ///< Positive down. >= 0.
  Vector2d velocity_mps = Vector2d::Zero();  ///< (north, east), the way the water goes.
};

/// Current against depth. Empty means still water.
struct Current {
  CurrentShape shape = CurrentShape::kSteps;
  std::vector<CurrentPoint>
      points;  ///< Strictly increasing depth; the first at depth 0 for `kSteps`.
};

/// \return the current at a depth, (north, east) m/s. At a step the lower layer's velocity.
[[nodiscard]] Vector2d CurrentAt(const Current& current, double depth_m);

/// \return a problem when depths do not strictly increase, a value is not finite, `kSteps` does not
/// start at the surface, or a velocity is above 5 m/s (no trolling water runs so fast).
[[nodiscard]] Expected<Current> CheckCurrent(Current current);

/// One layer of the stream past the boat: velocity linear in depth.
struct FlowLayer {
  double top_m = 0;     ///< Depth of the upper edge.
  double bottom_m = 0;  ///< Depth of the lower edge; infinity for the last.
  double vx = 0;        ///< Velocity at the upper edge, boat frame, m/s.
  double vy = 0;
  double gx = 0;  ///< Change of velocity per metre of depth, 1/s.
  double gy = 0;
};

/// Height over which a ball, flasher or lure feels the stream: about its own. Judgement.
inline constexpr double kBodyHeight_m = 0.2;

/// The velocity of the water past the boat against depth, in the boat's frame. Adjoining layers
/// that continue each other exactly are joined, so that splitting a layer in two changes no answer.
class Flow {
 public:
  /// Uniform stream: the boat makes `speed_mps` through still water.
  static Flow Uniform(double speed_mps);
  /// Stream given layer by layer; see `FlowPast...` below for the usual ways to get one.
  /// Layers must start at depth 0, touch, and end at infinity.
  static Flow FromLayers(std::vector<FlowLayer> layers);

  const std::vector<FlowLayer>& layers() const { return layers_; }
  bool uniform() const { return layers_.size() == 1 && layers_[0].gx == 0 && layers_[0].gy == 0; }
  /// \return index of the layer that holds a depth; negative depths belong to the first. At an edge
  /// the lower.
  int LayerAt(double depth_m) const;
  /// \return velocity at a depth, m/s; above the surface the surface's.
  Vector2d At(double depth_m) const;
  /// \return the velocity that a small body feels, m/s: at its centre; but at a step the mean over
  /// its height, kBodyHeight_m, since its drag changes gradually there and an equilibrium needs it
  /// to. \param depth_m of the body's centre.
  Vector2d OverBody(double depth_m) const;
  /// \return the greatest speed at any layer edge down to a depth, m/s.
  double LargestSpeed_mps(double depth_m) const;
  /// The same stream with a velocity added everywhere. \param added boat frame, m/s.
  Flow Plus(const Vector2d& added) const;

 private:
  /// Whether the velocity jumps at an edge from one layer down to another.
  bool JumpsBetween(int upper, int lower) const;

  std::vector<FlowLayer> layers_;
};

/// Speed through the surface water is known: the stream is `-speed` along the heading plus the
/// current's difference from the surface. \param speed_mps >= 0. \param heading_rad clockwise from
/// true north.
[[nodiscard]] Flow FlowThroughWater(double speed_mps, double heading_rad, const Current& current);

/// Speed over ground is known: the stream is the current minus the boat's velocity over ground, in
/// the axes of a boat that points along `heading_rad`. \param course_rad the way the boat goes over
/// ground, clockwise from true north.
[[nodiscard]] Flow FlowOverGround(double speed_mps, double course_rad, double heading_rad,
                                  const Current& current);

}  // namespace offplumb::water
