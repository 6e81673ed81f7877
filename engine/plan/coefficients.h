/// \file
/// Every coefficient and default of this room with its source or mark: what is asked at most,
/// suggested and searched.
#pragma once

#include <vector>

#include "engine/tackle/catalogue.h"

namespace offplumb::plan {

[[nodiscard]] std::vector<tackle::Coefficient> Coefficients();

}  // namespace offplumb::plan
