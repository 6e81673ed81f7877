/// \file
/// Writing quantities for a person: few digits, their units, bands as words.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "engine/plan/band.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// The units a person chose, once, for everything that is shown.
enum class DisplayUnits {
  kFeet,       ///< Feet, pounds and miles an hour.
  kFeetKnots,  ///< Feet, pounds and knots.
  kMetric,     ///< Metres, newtons and metres a second.
};

/// What is shown; it decides unit and digits.
enum class Shown {
  kDepth,     ///< Depths, counts, trails: whole feet, tenths of a metre.
  kLength,    ///< Leaders and other short lengths: tenths of a foot, hundredths of a metre.
  kDiameter,  ///< Of lines: hundredths of a millimetre, whatever the units.
  kSpeed,     ///< Tenths of a mph or knot, hundredths of a m/s.
  kForce,     ///< Tenths of a pound or newton up to 10, whole ones above.
  kMass,      ///< Tenths of a pound or kilogram.
  kAngle,     ///< Whole degrees.
  kTime,      ///< Whole seconds.
};

/// \return the units called "feet", "knots" or "metric"; a problem for any other word.
[[nodiscard]] Expected<DisplayUnits> ParseDisplayUnits(std::string_view text);

/// \return the name of the unit in which something is shown: "ft".
[[nodiscard]] std::string_view ShownUnit(Shown shown, DisplayUnits units);

/// \return a value in the unit in which it is shown. \param si in the SI unit.
[[nodiscard]] double InShownUnit(double si, Shown shown, DisplayUnits units);

/// \return the number alone: "88". Not finite: "-".
[[nodiscard]] std::string FormatNumber(double si, Shown shown, DisplayUnits units);

/// \return number and unit: "88 ft".
[[nodiscard]] std::string FormatQuantity(double si, Shown shown, DisplayUnits units);

/// A value with its band, all in the same SI unit: low (5 %) <= median <= high (95 %).
using plan::Band;

/// \return a band in words: "88 ft, 84 to 91"; without the tail when both ends look like the
/// median.
[[nodiscard]] std::string FormatBand(const Band& band, Shown shown, DisplayUnits units);

/// \return half the band's width in words, "give or take 3"; nothing when its two sides differ by a
/// fifth or more of the longer, since the words would then hide the longer side.
[[nodiscard]] std::optional<std::string> GiveOrTake(const Band& band, Shown shown,
                                                    DisplayUnits units);

}  // namespace offplumb::answers
