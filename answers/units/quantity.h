/// \file
/// Reading quantities as a person writes them: a number and a unit, "100 ft", "2.7 mph", "0.8 mm".
#pragma once

#include <string_view>

#include "answers/units/unit_table.h"
#include "engine/problem.h"
#include "engine/tackle/body.h"

namespace offplumb::answers {

/// Reads a quantity.
///
/// \param text     a decimal number, then a unit of this dimension; blanks between and around do
/// not matter.
///                 "1e3 m" is a number; "0x10 m", "nan m", "1,5 m" are not.
/// \param dimension what it must be; it decides what "lb" means (mass or force).
/// \param subject  what the quantity is, as the person calls it; goes into the problem.
/// \return the value in the dimension's SI unit (see Dimension), finite. Not checked for range: see
/// CheckRange.
///         A number without a unit, a unit of another dimension, trailing text or an overflow is a
///         problem that says which units would do.
[[nodiscard]] Expected<double> ParseQuantity(std::string_view text, Dimension dimension,
                                             std::string_view subject);

/// Reads a number that has no unit: a coefficient.
/// \return the value, finite; a problem when there is anything else in the text.
[[nodiscard]] Expected<double> ParseNumber(std::string_view text, std::string_view subject);

/// Reads a pull taken with a spring scale: "2.1 lb at 2.5 mph".
/// \return force in N (> 0) and speed in m/s (> 0).
[[nodiscard]] Expected<tackle::SpringScalePull> ParsePull(std::string_view text,
                                                          std::string_view subject);

/// An allowed range, ends included, in the SI unit of its dimension.
struct Range {
  double low = 0;
  double high = 0;
};

/// Checks a value against its range.
/// \param written the value as the person wrote it; its unit is the one in which the range is told.
/// \return the value, or a problem that names value and range.
[[nodiscard]] Expected<double> CheckRange(double value, Range range, std::string_view written,
                                          Dimension dimension, std::string_view subject);

/// ParseQuantity, then CheckRange.
[[nodiscard]] Expected<double> ParseQuantityWithin(std::string_view text, Dimension dimension,
                                                   Range range, std::string_view subject);

}  // namespace offplumb::answers
