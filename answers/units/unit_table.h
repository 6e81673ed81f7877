/// \file
/// The one list of units. Reading, writing and the manual (docs/rig-file.md) are made from it.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace offplumb::answers {

/// What a quantity measures. The program works in the SI unit named here.
enum class Dimension {
  kLength,          ///< m
  kMass,            ///< kg
  kForce,           ///< N
  kSpeed,           ///< m/s
  kAngle,           ///< rad
  kArea,            ///< m2
  kForcePerLength,  ///< N/m
  kDensity,         ///< kg/m3
  kViscosity,       ///< Kinematic, m2/s.
  kTemperature,     ///< Degrees Celsius.
  kSalinity,        ///< g/kg; practical salinity is taken as g/kg.
  kPressure,        ///< Pa
  kTime,            ///< s
};

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
