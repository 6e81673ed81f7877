#include "answers/units/unit_table.h"

#include <array>
#include <cstddef>
#include <vector>

#include "answers/units/words.h"

namespace offplumb::answers {
namespace {

// Factors: B. N. Taylor and A. Thompson, Guide for the use of the International System of Units,
// NIST Special Publication 811 (2008), appendix B.8; products and quotients of exact factors are
// worked out by the compiler.
constexpr std::string_view kSi = "SI";
constexpr std::string_view kNist = "NIST SP 811 (2008), appendix B.8, exact";
constexpr std::string_view kQuotient =
    "worked out from the exact factors of NIST SP 811 (2008), B.8";

constexpr double kFoot = 0.3048;
constexpr double kInch = 0.0254;
constexpr double kMile = 1609.344;
constexpr double kNauticalMile = 1852.0;
constexpr double kPound = 0.45359237;
constexpr double kGravity = 9.80665;
constexpr double kPoundForce = kPound * kGravity;
constexpr double kDegree = 3.14159265358979323846 / 180.0;

constexpr auto kUnits = std::to_array<Unit>({
    {Dimension::kLength, "ft", "foot feet '", kFoot, 0, kNist},
    {Dimension::kLength, "in", "inch inches \"", kInch, 0, kNist},
    {Dimension::kLength, "m", "metre metres meter meters", 1, 0, kSi},
    {Dimension::kLength, "cm", "centimetre centimetres centimeter centimeters", 0.01, 0, kSi},
    {Dimension::kLength, "mm", "millimetre millimetres millimeter millimeters", 0.001, 0, kSi},
    {Dimension::kLength, "yd", "yard yards", 3 * kFoot, 0, kNist},
    {Dimension::kLength, "fathom", "fathoms fm", 6 * kFoot, 0, kQuotient},
    {Dimension::kLength, "km", "kilometre kilometres kilometer kilometers", 1000, 0, kSi},
    {Dimension::kLength, "nmi", "", kNauticalMile, 0, kNist},

    {Dimension::kMass, "lb", "lbs lbm pound pounds", kPound, 0, kNist},
    {Dimension::kMass, "oz", "ounce ounces", kPound / 16, 0, kQuotient},
    {Dimension::kMass, "kg", "kilogram kilograms kilo kilos", 1, 0, kSi},
    {Dimension::kMass, "g", "gram grams", 0.001, 0, kSi},

    {Dimension::kForce, "lb", "lbf lbs pound pounds", kPoundForce, 0, kQuotient},
    {Dimension::kForce, "oz", "ozf ounce ounces", kPoundForce / 16, 0, kQuotient},
    {Dimension::kForce, "N", "newton newtons", 1, 0, kSi},
    {Dimension::kForce, "kgf", "kg kilogram kilograms kp", kGravity, 0, kNist},
    {Dimension::kForce, "gf", "g gram grams", kGravity / 1000, 0, kQuotient},
    {Dimension::kForce, "kN", "kilonewton kilonewtons", 1000, 0, kSi},

    {Dimension::kSpeed, "mph", "mi/h mile/h miles/h", kMile / 3600, 0, kNist},
    {Dimension::kSpeed, "kn", "knot knots kt kts nmi/h", kNauticalMile / 3600, 0, kQuotient},
    {Dimension::kSpeed, "m/s", "mps", 1, 0, kSi},
    {Dimension::kSpeed, "km/h", "kph kmh", 1.0 / 3.6, 0, kQuotient},
    {Dimension::kSpeed, "ft/s", "fps", kFoot, 0, kNist},

    {Dimension::kAngle, "deg", "degree degrees \xC2\xB0", kDegree, 0, kQuotient},
    {Dimension::kAngle, "rad", "radian radians", 1, 0, kSi},

    {Dimension::kArea, "m2", "m^2 m\xC2\xB2", 1, 0, kSi},
    {Dimension::kArea, "cm2", "cm^2 cm\xC2\xB2", 1e-4, 0, kSi},
    {Dimension::kArea, "in2", "in^2 in\xC2\xB2", kInch* kInch, 0, kNist},
    {Dimension::kArea, "ft2", "ft^2 ft\xC2\xB2", kFoot* kFoot, 0, kNist},
    {Dimension::kArea, "mm2", "mm^2 mm\xC2\xB2", 1e-6, 0, kSi},

    {Dimension::kForcePerLength, "N/m", "", 1, 0, kSi},
    {Dimension::kForcePerLength, "lb/ft", "lbf/ft", kPoundForce / kFoot, 0, kQuotient},
    {Dimension::kForcePerLength, "gf/m", "g/m", kGravity / 1000, 0, kQuotient},

    {Dimension::kDensity, "kg/m3", "kg/m^3 kg/m\xC2\xB3", 1, 0, kSi},
    {Dimension::kDensity, "g/cm3", "g/cm^3 g/cm\xC2\xB3 kg/l", 1000, 0, kSi},
    {Dimension::kDensity, "lb/ft3", "lb/ft^3", kPound / (kFoot * kFoot * kFoot), 0, kQuotient},

    {Dimension::kViscosity, "m2/s", "m^2/s m\xC2\xB2/s", 1, 0, kSi},
    {Dimension::kViscosity, "mm2/s", "mm^2/s cst", 1e-6, 0, kSi},

    {Dimension::kTemperature, "F",
     "\xC2\xB0"
     "F degf fahrenheit",
     1 / 1.8, -32 / 1.8, kNist},
    {Dimension::kTemperature, "C",
     "\xC2\xB0"
     "C degc celsius",
     1, 0, kSi},

    {Dimension::kSalinity, "g/kg", "", 1, 0, kSi},
    {Dimension::kSalinity, "psu", "ppt", 1, 0,
     "practical salinity taken as g/kg: UNESCO EOS-80 is written in it"},

    {Dimension::kPressure, "GPa", "", 1e9, 0, kSi},
    {Dimension::kPressure, "MPa", "", 1e6, 0, kSi},
    {Dimension::kPressure, "kPa", "", 1e3, 0, kSi},
    {Dimension::kPressure, "Pa", "", 1, 0, kSi},
    {Dimension::kPressure, "psi", "", kPoundForce / (kInch * kInch), 0, kQuotient},

    {Dimension::kTime, "s", "sec second seconds", 1, 0, kSi},
    {Dimension::kTime, "min", "minute minutes", 60, 0, kNist},
    {Dimension::kTime, "h", "hr hour hours", 3600, 0, kNist},
});

constexpr auto kIds = std::to_array<std::string_view>({
#define OFFPLUMB_ENTRY(name, id, words) id,
    OFFPLUMB_DIMENSIONS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
});

constexpr auto kWords = std::to_array<std::string_view>({
#define OFFPLUMB_ENTRY(name, id, words) words,
    OFFPLUMB_DIMENSIONS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
});

bool HasAlias(const Unit& unit, std::string_view name) {
  for (std::string_view rest = unit.aliases; !rest.empty();) {
    const std::size_t blank = rest.find(' ');
    if (SameWord(rest.substr(0, blank), name)) return true;
    rest = blank == std::string_view::npos ? std::string_view{} : rest.substr(blank + 1);
  }
  return false;
}

}  // namespace

std::span<const Unit> Units() { return kUnits; }

const Unit* FindUnit(Dimension dimension, std::string_view name) {
  if (name.empty()) return nullptr;
  for (const Unit& unit : kUnits) {
    if (unit.dimension != dimension) continue;
    if (SameWord(unit.name, name) || HasAlias(unit, name)) return &unit;
  }
  return nullptr;
}

std::span<const std::string_view> DimensionIds() { return kIds; }

std::string_view DimensionName(Dimension dimension) {
  return kWords[static_cast<std::size_t>(dimension)];
}

std::string UnitNames(Dimension dimension) {
  std::vector<std::string_view> names;
  for (const Unit& unit : kUnits) {
    if (unit.dimension == dimension) names.push_back(unit.name);
  }
  return JoinWords(names, "or");
}

}  // namespace offplumb::answers
