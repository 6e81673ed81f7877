/// \file
/// Reading a list of quantities: "20 ft, 40 ft, 60 ft" or "20 ft to 240 ft by 20 ft".
#pragma once

#include <string_view>
#include <vector>

#include "answers/units/quantity.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// The most values of one list; a step that would make more is a slip of the pen.
inline constexpr std::size_t kMostOfSeries = 1000;

/// \param range each value's allowed range, SI. \param subject what the list is: "counts".
/// \return the values in SI, in the order written (see the question whether they must increase); a
/// problem for a value without unit, out of range, or a step that leads nowhere.
[[nodiscard]] Expected<std::vector<double>> ParseSeries(std::string_view text, Dimension dimension,
                                                        Range range, std::string_view subject);

}  // namespace offplumb::answers
