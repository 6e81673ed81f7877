#include "ports/files/water_text.h"

#include <cstddef>
#include <string>

#include <fmt/format.h>

#include "answers/units/quantity.h"
#include "answers/units/words.h"
#include "ports/files/rig_rules.h"

namespace offplumb::ports {
namespace {

using answers::ParseQuantityWithin;

constexpr std::string_view kRemedy =
    "Write salt, fresh, temperature and salinity (\"10 C 30 psu\"), or a density (\"1025 kg/m3\").";

/// Where the second number starts after "10 C, " or "10 C "; npos if there is none.
std::size_t SecondNumber(std::string_view text) {
  const std::size_t unit = text.find_first_not_of("+-.0123456789 ");
  if (unit == std::string_view::npos) return unit;
  return text.find_first_of("+-.0123456789", unit);
}

Expected<water::Water> OfDensity(std::string_view text) {
  const auto density = ParseQuantityWithin(text, rig_rules::kWaterDensity.dimension,
                                           rig_rules::kWaterDensity.range, "water");
  if (!density) return tl::unexpected(density.error());
  return water::Water{*density, water::UsualSaltWater().kinematic_viscosity_m2_per_s};
}

Expected<water::Water> OfTemperature(std::string_view first, std::string_view second) {
  while (!first.empty() && (first.back() == ' ' || first.back() == ',')) first.remove_suffix(1);
  const auto temperature = ParseQuantityWithin(first, rig_rules::kTemperature.dimension,
                                               rig_rules::kTemperature.range, "water");
  if (!temperature) return tl::unexpected(temperature.error());
  const auto salinity = ParseQuantityWithin(second, rig_rules::kSalinity.dimension,
                                            rig_rules::kSalinity.range, "water");
  if (!salinity) return tl::unexpected(salinity.error());
  return water::MakeWater(*temperature, *salinity);
}

bool IsDensity(std::string_view text) {
  return answers::ParseQuantity(text, answers::Dimension::kDensity, "water").has_value();
}

}  // namespace

Expected<water::Water> ParseWater(std::string_view phrase) {
  const std::string_view text = answers::Trim(phrase);
  if (answers::SameWord(text, "salt")) return water::UsualSaltWater();
  if (answers::SameWord(text, "fresh")) return water::UsualFreshWater();
  if (IsDensity(text)) return OfDensity(text);
  const std::size_t second = SecondNumber(text);
  if (second != std::string_view::npos) {
    auto water = OfTemperature(text.substr(0, second), text.substr(second));
    if (!water) water.error().remedy = kRemedy;
    return water;
  }
  return BadInput("water", fmt::format("{} does not say which water.", answers::Quoted(phrase)),
                  std::string(kRemedy));
}

}  // namespace offplumb::ports
