/// \file
/// Every coefficient and default of this room with its source or mark: the tree's limits and the
/// solver's defaults.
#pragma once

#include <vector>

#include "engine/tackle/catalogue.h"

namespace offplumb::tow {

[[nodiscard]] std::vector<tackle::Coefficient> Coefficients();

}  // namespace offplumb::tow
