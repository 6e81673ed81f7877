// A rig file may hold anything: reading it ends in a rig that can be used or in a problem, never in
// a crash.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "engine/tow/loads.h"
#include "ports/files/rig_file.h"

namespace {

using offplumb::tackle::Line;
using offplumb::water::Water;

void Require(bool holds) {
  if (!holds) std::abort();
}

void CheckLine(const Line& line, const Water& water) {
  const auto loads = offplumb::tow::Resolve(line, water, 1);
  Require(line.diameter_m > 0);
  Require(std::isfinite(loads.weight_in_water_N_per_m) && std::isfinite(loads.normal_linear));
  Require(std::isfinite(loads.normal_cbrt) && std::isfinite(loads.tangential));
  Require(loads.compliance_per_N >= 0 && std::isfinite(loads.compliance_per_N));
}

void CheckRig(const offplumb::tackle::Rig& rig) {
  const Water water = rig.water.value_or(offplumb::water::UsualSaltWater());
  Require(!rig.riggers.empty());
  for (const auto& rigger : rig.riggers) {
    CheckLine(rigger.line, water);
    Require(offplumb::tow::Resolve(rigger.ball, water, 1).weight_in_water_N > 0);
    double below_m = -1;
    for (const auto& clip : rigger.clips) {
      CheckLine(clip.fishing_line, water);
      CheckLine(clip.trail.setback_line, water);
      if (clip.trail.flasher) CheckLine(clip.trail.leader_line, water);
      Require(clip.above_ball_m > below_m && clip.rod_tip_m.z() < 0 && clip.rod_tip_tension_N > 0);
      below_m = clip.above_ball_m;
    }
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto file = offplumb::ports::ReadRigText(text, "fuzz.toml");
  if (file) {
    CheckRig(file->rig);
  } else {
    Require(!file.error().message.empty());
  }
  return 0;
}
