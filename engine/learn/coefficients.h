/// \file
/// Every coefficient and default of this room with its source or mark: the prior and its ensemble.
#pragma once

#include <vector>

#include "engine/tackle/catalogue.h"

namespace offplumb::learn {

[[nodiscard]] std::vector<tackle::Coefficient> Coefficients();

}  // namespace offplumb::learn
