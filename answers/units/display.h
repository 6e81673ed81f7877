/// \file
/// Writing quantities for a person: few digits, their units, bands as words.
#pragma once

#include <array>
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

/// Their words, in the order of the enum.
inline constexpr std::array<std::string_view, 3> kUnitWords{"feet", "knots", "metric"};

/// What is shown; it decides unit and digits. X(name, id for JSON)
#define OFFPLUMB_SHOWN(X)                                                                        \
  X(kDepth, "depth")       /* Depths, counts, trails: whole feet, tenths of a metre. */          \
  X(kLength, "length")     /* Leaders and other short lengths: tenths of a foot, hundredths of a \
                              metre. */                                                          \
  X(kDiameter, "diameter") /* Of lines: hundredths of a millimetre, whatever the units. */       \
  X(kSpeed, "speed")       /* Tenths of a mph or knot, hundredths of a m/s. */                   \
  X(kForce, "force")       /* Tenths of a pound or newton up to 10, whole ones above. */         \
  X(kMass, "mass")         /* Tenths of a pound or kilogram. */                                  \
  X(kAngle, "angle")       /* Whole degrees. */                                                  \
  X(kTime, "time")         /* Whole seconds. */

enum class Shown {
#define OFFPLUMB_ENTRY(name, id) name,
  OFFPLUMB_SHOWN(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

/// \return the units called "feet", "knots" or "metric"; a problem for any other word.
[[nodiscard]] Expected<DisplayUnits> ParseDisplayUnits(std::string_view text);

/// \return the name of the unit in which something is shown: "ft".
[[nodiscard]] std::string_view ShownUnit(Shown shown, DisplayUnits units);

/// How something is shown.
struct ShownAs {
  std::string_view unit;
  double si = 1;   ///< What one of that unit is in SI.
  int digits = 0;  ///< After the point.
  /// From here on, in that unit, no digits after the point; nothing: always as many.
  std::optional<double> whole_from;
};
[[nodiscard]] ShownAs HowShown(Shown shown, DisplayUnits units);

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
