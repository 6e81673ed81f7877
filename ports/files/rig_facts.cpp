#include "ports/files/rig_facts.h"

#include <algorithm>
#include <cstddef>

#include <fmt/format.h>

#include "engine/constants.h"
#include "engine/plan/alter.h"

namespace offplumb::ports {
namespace {

using answers::JsonWriter;

/// The lightest ball that a page offers: 6 lb. Common practice, no source.
constexpr double kLightestBall_kg = 2.72155422;

/// Adding zero turns a negative zero, such as the depth of a boom tip at the waterline, into a
/// plain one.
std::vector<double> Point(const tackle::Vector3d& point_m) {
  return {point_m.x() + 0.0, point_m.y() + 0.0, point_m.z() + 0.0};
}

void WriteBall(const tackle::Body& ball, JsonWriter& json) {
  const double mass_kg = plan::BallMass_kg(ball);
  json.Object("ball");
  json.Text("name", ball.name);
  json.Number("mass_kg", mass_kg);
  json.Number("smallest_mass_kg", std::min(mass_kg, kLightestBall_kg));
  json.Number("largest_mass_kg", std::max(mass_kg, plan::kHeaviestBall_kg));
  json.End();
}

void WriteClip(const tackle::Clip& clip, const std::string& path, JsonWriter& json) {
  const auto& flasher = clip.trail.flasher;
  json.ObjectItem();
  json.Text("name", clip.name);
  json.Text("path", path);
  json.Number("above_ball_m", clip.above_ball_m);
  json.Text("lure", clip.trail.lure.name);
  if (flasher) {
    json.Text("flasher", flasher->name);
  } else {
    json.Null("flasher");
  }
  json.Number("setback_m", clip.trail.setback_m);
  json.Number("leader_m", clip.trail.leader_m);
  json.End();
}

void WriteRigger(const tackle::Rigger& rigger, JsonWriter& json) {
  json.Text("name", rigger.name);
  json.Numbers("boom_tip", Point(rigger.boom_tip_m));
  WriteBall(rigger.ball, json);
  json.Object("line");
  json.Text("name", rigger.line.name);
  json.Number("diameter_m", rigger.line.diameter_m);
  json.End();
  json.Number("line_on_reel_m", rigger.line_on_reel_m);
  json.Number("largest_boom_angle_deg", rigger.largest_boom_angle_rad * 180.0 / kPi);
}

}  // namespace

void WriteFacts(const RigFile& file, const WrittenRig& written, JsonWriter& json) {
  json.Object("facts");
  json.Text("name", file.rig.name);
  json.Flag("invented", file.invented);
  json.List("riggers");
  for (std::size_t i = 0; i < file.rig.riggers.size(); ++i) {
    const tackle::Rigger& rigger = file.rig.riggers[i];
    json.ObjectItem();
    WriteRigger(rigger, json);
    json.List("clips");
    for (std::size_t j = 0; j < rigger.clips.size(); ++j) {
      const int line = file.LineOf(fmt::format("riggers[{}].clips[{}]", i, j));
      WriteClip(rigger.clips[j], written.PathAt(line), json);
    }
    json.End();
    json.End();
  }
  json.End();
  json.End();
}

}  // namespace offplumb::ports
