/// \file
/// The one list of units. Reading, writing and the manual (docs/rig-file.md) are made from it.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace offplumb::answers {

/// What a quantity measures, and the SI unit in which the program works. X(name, id for JSON, words
/// for messages)
#define OFFPLUMB_DIMENSIONS(X)                                                       \
  X(kLength, "length", "length")                              /* m */                \
  X(kMass, "mass", "weight")                                  /* kg */               \
  X(kForce, "force", "force")                                 /* N */                \
  X(kSpeed, "speed", "speed")                                 /* m/s */              \
  X(kAngle, "angle", "angle")                                 /* rad */              \
  X(kArea, "area", "area")                                    /* m2 */               \
  X(kForcePerLength, "force_per_length", "weight per length") /* N/m */              \
  X(kDensity, "density", "density")                           /* kg/m3 */            \
  X(kViscosity, "viscosity", "viscosity")                     /* Kinematic, m2/s. */ \
  X(kTemperature, "temperature", "temperature")               /* Degrees Celsius. */ \
  X(kSalinity, "salinity", "salinity") /* g/kg; practical is taken as g/kg */        \
  X(kPressure, "pressure", "pressure") /* Pa */                                      \
  X(kTime, "time", "time")             /* s */

enum class Dimension {
#define OFFPLUMB_ENTRY(name, id, words) name,
  OFFPLUMB_DIMENSIONS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

/// \return the ids of all dimensions, in the order of the enum.
[[nodiscard]] std::span<const std::string_view> DimensionIds();

/// One unit: SI value = factor * value + offset.
struct Unit {
  Dimension dimension;
  std::string_view name;     ///< As it is written out and named in messages.
  std::string_view aliases;  ///< Further spellings, separated by one space. Capitals do not matter.
  double factor;             ///< To the SI unit above. Exact, but for rounding to a double.
  double offset;             ///< In the SI unit; 0 but for temperatures.
  std::string_view source;   ///< Where the factor comes from.
};

/// \return all units; within a dimension in the order in which messages offer them.
[[nodiscard]] std::span<const Unit> Units();

/// \return the unit of a dimension with this name or alias; nullptr if there is none.
[[nodiscard]] const Unit* FindUnit(Dimension dimension, std::string_view name);

/// \return "length", "force per length", ... for messages.
[[nodiscard]] std::string_view DimensionName(Dimension dimension);

/// \return the names of a dimension's units in words: "ft, in, m, cm, mm or fathom".
[[nodiscard]] std::string UnitNames(Dimension dimension);

}  // namespace offplumb::answers
