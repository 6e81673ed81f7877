/// \file
/// Lines as points, for a page that draws them while a finger drags.
#pragma once

#include <string_view>
#include <vector>

#include <Eigen/Core>

#include "answers/questions/json_writer.h"
#include "engine/plan/depth.h"
#include "engine/tackle/rig.h"

namespace offplumb::answers {

/// A drawn line may lie this far from the solved one.
inline constexpr double kShapeTolerance_m = 0.01;

/// \return those of a line's points that keep within a distance of all of them: D. H. Douglas and
/// T. K. Peucker, Cartographica 10 (1973) 112. Both ends stay.
/// \param tolerance_m > 0.
[[nodiscard]] std::vector<Eigen::Vector3d> Thinned(const std::vector<Eigen::Vector3d>& points,
                                                   double tolerance_m);

/// The median shape of one rigger in the boat's frame: lines and places of bodies as [x, y, depth]
/// in metres, to a millimetre. Keys: docs/json.md.
void WriteShape(std::string_view key, const tackle::Rigger& rigger, const plan::RiggerDepth& depth,
                JsonWriter& json);

}  // namespace offplumb::answers
