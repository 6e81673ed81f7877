/// \file
/// Small changes of a rig: a heavier ball, a thinner line, no flasher. Shared by remedies and
/// comparison.
#pragma once

#include "engine/tackle/rig.h"

namespace offplumb::plan {

/// Heaviest ball that is suggested: 20 lb. Common practice, no source.
inline constexpr double kHeaviestBall_kg = 9.07184740;
/// Thinnest main line that is suggested: 0.4 mm. Common practice, no source.
inline constexpr double kThinnestLine_m = 0.0004;

/// \return mass of a ball in air; of one given only by its weight in water, that of lead of the
/// same weight.
[[nodiscard]] double BallMass_kg(const tackle::Body& ball);

/// The same shape and material with `factor` times the mass: lengths grow with its cube root.
[[nodiscard]] tackle::Body ScaledBall(tackle::Body ball, double factor);

/// The same material with `factor` times the diameter: stated weights and stiffness go with its
/// square.
[[nodiscard]] tackle::Line ScaledLine(tackle::Line line, double factor);

/// Every flasher and leader taken off: the setback runs to the lure.
[[nodiscard]] tackle::Rigger WithoutFlashers(tackle::Rigger rigger);

}  // namespace offplumb::plan
