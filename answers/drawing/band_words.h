/// \file
/// A band in the words of a drawing, in parts: the figure large, its band beside or below it.
#pragma once

#include <string>

#include "answers/units/display.h"
#include "engine/plan/band.h"

namespace offplumb::answers {

/// \return "84 to 91"; nothing when both ends look like the median.
[[nodiscard]] std::string RangeWords(const plan::Band& band, Shown shown, DisplayUnits units);

/// \return the figure and what follows it, then its band: "41 ft aft, 38 to 45". \param after what
/// follows the unit, its own blank included.
[[nodiscard]] std::string FigureWords(const plan::Band& band, Shown shown, DisplayUnits units,
                                      const std::string& after);

}  // namespace offplumb::answers
