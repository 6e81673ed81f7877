/// \file
/// Physical constants shared by every room of the engine.
#pragma once

namespace offplumb {

/// Standard acceleration of free fall, m/s2. Source: 3rd General Conference on Weights and Measures
/// (1901).
inline constexpr double kGravity_mps2 = 9.80665;

inline constexpr double kPi = 3.14159265358979323846;

}  // namespace offplumb
