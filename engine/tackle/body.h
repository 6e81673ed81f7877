/// \file
/// A body on the tree: ball, flasher, lure.
#pragma once

#include <optional>
#include <string>

namespace offplumb::tackle {

/// A steady pull read off a spring scale beside the boat: "2.1 lb at 2.5 mph".
struct SpringScalePull {
  double force_N = 0;  ///< > 0. On the line just ahead of the body, with all that swims behind it.
  double speed_mps = 0;  ///< Through the water. > 0.
};

/// Where a drag area comes from. It selects the prior.
enum class DragSource {
  kCatalogue,  ///< Ours: wide band.
  kPull,       ///< A spring-scale pull: narrow band.
  kStated,     ///< A constant stated by the owner: no band.
};

/// A body. Plain value.
struct Body {
  std::string name;    ///< "12 lb lead ball".
  double mass_kg = 0;  ///< In air. >= 0.
  double density_kg_per_m3 =
      0;  ///< Of the body as a whole, > 0; with `mass_kg` gives its weight in water.
  std::optional<double> weight_in_water_N;  ///< Replaces mass and density. Negative floats.
  DragSource drag_source = DragSource::kCatalogue;
  double drag_area_m2 =
      0;  ///< Drag over dynamic pressure. >= 0. Unused when `sphere_diameter_m` > 0.
  double sphere_diameter_m = 0;  ///< > 0: drag follows the sphere law on this diameter.
  double lift_area_m2 = 0;       ///< Lift over dynamic pressure: positive rises, negative dives.
  double side_area_m2 =
      0;  ///< Side force over dynamic pressure: positive to the right of the body's way.
  std::optional<SpringScalePull> pull;  ///< Replaces the drag area.
  double eye_to_centre_m = 0;  ///< From the eye the line ties to, to the body's centre. >= 0.
};

}  // namespace offplumb::tackle
