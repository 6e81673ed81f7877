// A current file, phrase or water may hold anything: reading it ends in values that can be used or
// in a problem.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "ports/files/current_file.h"
#include "ports/files/water_text.h"

namespace {

void Require(bool holds) {
  if (!holds) std::abort();
}

void CheckCurrent(const offplumb::Expected<offplumb::water::Current>& current) {
  if (!current) {
    Require(!current.error().message.empty());
    return;
  }
  const auto flow = offplumb::water::FlowThroughWater(1.2, 0.3, *current);
  for (const double depth_m : {0.0, 1.0, 30.0, 5000.0}) Require(flow.At(depth_m).norm() < 20);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  CheckCurrent(offplumb::ports::ReadCurrentText(text, "fuzz.toml"));
  CheckCurrent(offplumb::ports::ParseCurrent(text));
  const auto water = offplumb::ports::ParseWater(text);
  Require(!water || (water->density_kg_per_m3 > 0 && water->kinematic_viscosity_m2_per_s > 0));
  return 0;
}
