#include <fmt/format.h>

#include "ports/files/rig_parts.h"
#include "ports/files/rig_rules.h"

namespace offplumb::ports {
namespace {

/// A coordinate that may be stated along either of two opposite ways.
double Along(const Fields& fields, std::string_view forth, std::string_view back,
             const QuantityRule& rule) {
  if (fields.Has(forth) && fields.Has(back)) {
    fields.Fail(back, fmt::format("A place has \"{}\" or \"{}\", not both.", forth, back),
                "Leave one of them out.");
  }
  if (const auto value = fields.Quantity(forth, rule)) return *value;
  if (const auto value = fields.Quantity(back, rule)) return -*value;
  return 0;
}

std::optional<water::Water> OfTemperature(const Fields& fields) {
  const double temperature_C =
      fields.Required("temperature", rig_rules::kTemperature, "temperature = \"10 C\"");
  const double salinity = fields.Required("salinity", rig_rules::kSalinity,
                                          "salinity = \"30 psu\" (fresh water: 0 psu)");
  const auto water = water::MakeWater(temperature_C, salinity);
  if (water) return *water;
  fields.Fail("temperature", water.error());
  return std::nullopt;
}

}  // namespace

tackle::Vector3d ReadPlace(const Fields& fields) {
  const double ahead = Along(fields, "ahead", "aft", rig_rules::kAhead);
  const double starboard = Along(fields, "starboard", "port", rig_rules::kAside);
  const double up = fields.Required("up", rig_rules::kUp, "up = \"3 ft\" (above the water)");
  return {ahead, starboard, -up};
}

std::optional<water::Water> ReadWater(const Fields& fields) {
  const bool by_temperature = fields.Has("temperature") || fields.Has("salinity");
  if (by_temperature && (fields.Has("density") || fields.Has("viscosity"))) {
    fields.Fail(
        fields.Has("density") ? "density" : "viscosity",
        "Water is described by temperature and salinity, or by density and viscosity, not by both.",
        "Leave two of them out.");
  }
  if (by_temperature) return OfTemperature(fields);
  water::Water water = water::UsualSaltWater();
  water.density_kg_per_m3 =
      fields.Required("density", rig_rules::kWaterDensity, "density = \"1025 kg/m3\"");
  if (const auto viscosity = fields.Quantity("viscosity", rig_rules::kViscosity)) {
    water.kinematic_viscosity_m2_per_s = *viscosity;
  }
  return water;
}

}  // namespace offplumb::ports
