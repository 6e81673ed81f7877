/// \file
/// The water as a person names it.
#pragma once

#include <string_view>

#include "engine/problem.h"
#include "engine/water/water.h"

namespace offplumb::ports {

/// \param phrase "salt", "fresh", a temperature and a salinity ("10 C 30 psu", "50 F, 30 g/kg"), or
/// a density
/// ("1025 kg/m3"; the viscosity is then that of the usual sea water).
[[nodiscard]] Expected<water::Water> ParseWater(std::string_view phrase);

}  // namespace offplumb::ports
