#include "ports/files/rig_facts.h"

#include <algorithm>
#include <cstddef>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "engine/constants.h"
#include "engine/plan/alter.h"

namespace offplumb::ports {
namespace {

using Json = nlohmann::ordered_json;

/// The lightest ball that a page offers: 6 lb. Common practice, no source.
constexpr double kLightestBall_kg = 2.72155422;

/// Adding zero turns a negative zero, such as the depth of a boom tip at the waterline, into a
/// plain one.
Json Point(const tackle::Vector3d& point_m) {
  return {point_m.x() + 0.0, point_m.y() + 0.0, point_m.z() + 0.0};
}

Json BallFacts(const tackle::Body& ball) {
  const double mass_kg = plan::BallMass_kg(ball);
  return {{"name", ball.name},
          {"mass_kg", mass_kg},
          {"smallest_mass_kg", std::min(mass_kg, kLightestBall_kg)},
          {"largest_mass_kg", std::max(mass_kg, plan::kHeaviestBall_kg)}};
}

Json ClipFacts(const tackle::Clip& clip, const std::string& path) {
  Json flasher;
  if (clip.trail.flasher) flasher = clip.trail.flasher->name;
  return {{"name", clip.name},
          {"path", path},
          {"above_ball_m", clip.above_ball_m},
          {"lure", clip.trail.lure.name},
          {"flasher", flasher},
          {"setback_m", clip.trail.setback_m},
          {"leader_m", clip.trail.leader_m}};
}

Json RiggerFacts(const tackle::Rigger& rigger) {
  return {{"name", rigger.name},
          {"boom_tip", Point(rigger.boom_tip_m)},
          {"ball", BallFacts(rigger.ball)},
          {"line", {{"name", rigger.line.name}, {"diameter_m", rigger.line.diameter_m}}},
          {"line_on_reel_m", rigger.line_on_reel_m},
          {"largest_boom_angle_deg", rigger.largest_boom_angle_rad * 180.0 / kPi},
          {"clips", Json::array()}};
}

}  // namespace

Json RigFacts(const RigFile& file, const WrittenRig& written) {
  Json facts;
  facts["name"] = file.rig.name;
  facts["invented"] = file.invented;
  facts["riggers"] = Json::array();
  for (std::size_t i = 0; i < file.rig.riggers.size(); ++i) {
    const tackle::Rigger& rigger = file.rig.riggers[i];
    Json json = RiggerFacts(rigger);
    for (std::size_t j = 0; j < rigger.clips.size(); ++j) {
      const int line = file.LineOf(fmt::format("riggers[{}].clips[{}]", i, j));
      json["clips"].push_back(ClipFacts(rigger.clips[j], written.PathAt(line)));
    }
    facts["riggers"].push_back(std::move(json));
  }
  return facts;
}

}  // namespace offplumb::ports
