/// \file
/// A line as a thing one can buy and measure: main line, fishing line, leader.
#pragma once

#include <optional>
#include <string>

namespace offplumb::tackle {

/// What a line is made of. It selects the prior on its drag.
enum class LineKind { kWire, kBraid, kNylon, kFluorocarbon };

/// A uniform line. Plain value. Values come from the catalogue or the rig file; what the optional
/// members state replaces what would follow from material and water.
struct Line {
  std::string name;  ///< "7x7 stainless wire, 0.8 mm".
  LineKind kind = LineKind::kWire;
  double diameter_m = 0;               ///< Over all, as a calliper measures it. > 0.
  double solid_fraction = 1;           ///< Part of the circle that is solid. In (0, 1].
  double solid_density_kg_per_m3 = 0;  ///< > 0.
  double modulus_Pa = 0;               ///< Young's modulus on the solid area, > 0.
  double normal_drag_coefficient = 0;  ///< Level of Cn at 1.2 m/s across the line. > 0.
  bool constant_drag = false;  ///< Cn is the same at every Reynolds number (stated by the owner).
  bool strumming = false;      ///< Multiply Cn by StrummingFactor. Off in the median.
  double tangential_drag_coefficient = 0;         ///< Cf on pi*d*L. >= 0.
  std::optional<double> weight_in_water_N_per_m;  ///< Negative floats.
  std::optional<double> weight_in_air_N_per_m;    ///< >= 0.
  std::optional<double> stiffness_N;  ///< EA. > 0; infinity for a line that does not stretch.
};

/// Cross-flow speed at which a line's drag level is stated; between speeds the coefficient follows
/// White's law.
inline constexpr double kReferenceSpeed_mps = 1.2;

}  // namespace offplumb::tackle
