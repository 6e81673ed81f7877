/// \file
/// Reading the parts of a rig file: lines, balls, flashers, lures, water, places. Problems go to
/// the fields' report; what is returned then is not to be used.
#pragma once

#include <optional>

#include "engine/tackle/rig.h"
#include "engine/water/water.h"
#include "ports/files/fields.h"

namespace offplumb::ports {

/// \param usual what a line of stated constants alone counts as: it selects the prior on its drag.
[[nodiscard]] tackle::Line ReadLine(const Fields& fields, tackle::LineKind usual);

[[nodiscard]] tackle::Body ReadBall(const Fields& fields);

/// A lure. Its pull, if stated, was taken with nothing behind it.
[[nodiscard]] tackle::Body ReadLure(const Fields& fields);

/// A flasher. Its pull, if stated, was taken with the lure behind it: the lure's own is taken off.
/// \param density_kg_per_m3 of the water.
[[nodiscard]] tackle::Body ReadFlasher(const Fields& fields, const tackle::Body& lure,
                                       double density_kg_per_m3);

/// A point on the boat from { ahead or aft, starboard or port, up }. What is left out is 0.
[[nodiscard]] tackle::Vector3d ReadPlace(const Fields& fields);

/// Water stated by temperature and salinity, or by density and viscosity.
[[nodiscard]] std::optional<water::Water> ReadWater(const Fields& fields);

}  // namespace offplumb::ports
