/// \file
/// From the boat's frame, seen from starboard, to the paper: one scale for both axes.
#pragma once

#include <Eigen/Core>

#include "answers/drawing/drawing.h"

namespace offplumb::answers {

/// Where a point of the boat's frame (x ahead, z down, m) lies on the paper. The bow is to the
/// right.
struct SideFrame {
  double mm_per_m = 1;
  Point origin;  ///< Of the stern on the waterline.

  [[nodiscard]] Point At(double x_m, double z_m) const {
    return {origin.x_mm + x_m * mm_per_m, origin.y_mm + z_m * mm_per_m};
  }
  [[nodiscard]] Point At(const Eigen::Vector3d& place_m) const {
    return At(place_m.x(), place_m.z());
  }
};

}  // namespace offplumb::answers
