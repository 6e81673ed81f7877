/// \file
/// The forces of water and weight on a line and on a body, per unit of what they act on.
///
/// Equations (docs/method.md section 2). W water velocity past the boat, t unit tangent, Wt =
/// (W.t), Wn = W - Wt t:
///     load per stretched metre = weight + 1/2 rho d Cn |Wn| Wn + 1/2 rho pi d Cf |Wt| Wt t
///     load on a body           = weight + 1/2 rho CdA |W| W
/// The cross-flow principle (independent normal and tangential load): S. F. Hoerner, Fluid-Dynamic
/// Drag (1965); the FAO handbook (A. L. Fridman, Calculations for fishing gear designs, 1986)
/// eq. 5.23.
#pragma once

#include <Eigen/Core>

#include "engine/tackle/body.h"
#include "engine/tackle/line.h"
#include "engine/water/water.h"

namespace offplumb::tow {

using Eigen::Vector3d;

/// A line in a given water, as the equations need it. Plain value.
struct LineLoads {
  double weight_in_water_N_per_m = 0;  ///< Per unstretched metre; negative floats.
  double weight_in_air_N_per_m = 0;    ///< Per unstretched metre.
  double normal_linear = 0;     ///< 1/2 rho d Cn = normal_linear + normal_cbrt |Wn|^(-2/3), kg/m2.
  double normal_cbrt = 0;       ///< White's Reynolds number term, see Resolve.
  double tangential = 0;        ///< 1/2 rho pi d Cf, kg/m2.
  double compliance_per_N = 0;  ///< 1/EA; 0 does not stretch.
};

/// A body in a given water. Plain value.
struct BodyLoads {
  double weight_in_water_N = 0;  ///< Positive sinks.
  double drag_per_q_kg_per_m =
      0;  ///< 1/2 rho CdA; for a sphere 1/2 rho A, to be multiplied by Cd(Re).
  double lift_per_q_kg_per_m = 0;  ///< 1/2 rho ClA, upward positive.
  double side_per_q_kg_per_m = 0;  ///< 1/2 rho CsA, to the right of the way it swims.
  double reynolds_per_mps = 0;     ///< D/nu of a sphere; 0: constant drag area.
};

/// \return the line's loads in this water. `factor` multiplies the normal drag (> 0).
///
/// The level of Cn is stated at 1.2 m/s across the line; at other speeds it follows the shape of
/// White's law:
///     Cn(U) = level (1 + 10 Re^(-2/3)) / (1 + 10 Re_ref^(-2/3)),   Re = U d/nu.
/// `line.constant_drag` keeps the level at every speed.
[[nodiscard]] LineLoads Resolve(const tackle::Line& line, const water::Water& water, double factor);

/// \return the body's loads in this water. `factor` multiplies the drag (>= 0).
[[nodiscard]] BodyLoads Resolve(const tackle::Body& body, const water::Water& water, double factor);

/// \return force of the stream on a body and its weight, N, boat frame (z down).
/// \param vx, vy water velocity past the body, m/s.
[[nodiscard]] Vector3d Load(const BodyLoads& body, double vx, double vy);

/// \return weight per metre of a line, N/m, submerged or in air, before any override.
[[nodiscard]] double WeightInWater_N_per_m(const tackle::Line& line,
                                           double water_density_kg_per_m3);
/// \return the same in air.
[[nodiscard]] double WeightInAir_N_per_m(const tackle::Line& line);

/// \return EA of a line, N: stated, or modulus times solid area; infinity if stated so.
[[nodiscard]] double Stiffness_N(const tackle::Line& line);

}  // namespace offplumb::tow
