#include "answers/questions/json_values.h"

#include <cmath>

#include "engine/constants.h"

namespace offplumb::answers {
namespace {

void WriteEnds(const plan::Band& band, JsonWriter& json) {
  json.Number("median", band.median);
  json.Number("low", band.low);
  json.Number("high", band.high);
  json.End();
}

void WritePoint(const water::CurrentPoint& point, JsonWriter& json) {
  double toward_rad = std::atan2(point.velocity_mps.y(), point.velocity_mps.x());
  if (toward_rad < 0) toward_rad += 2 * kPi;
  json.ObjectItem();
  json.Number("depth_m", point.depth_m);
  json.Number("speed_mps", point.velocity_mps.norm());
  json.Number("toward_deg", Degrees(toward_rad));
  json.End();
}

void WriteCurrent(const water::Current& current, JsonWriter& json) {
  if (current.points.empty()) return json.Null("current");
  json.Object("current");
  json.Text("shape", current.shape == water::CurrentShape::kSteps ? "steps" : "linear");
  json.List("points");
  for (const auto& point : current.points) WritePoint(point, json);
  json.End();
  json.End();
}

void WriteWater(const std::optional<water::Water>& water, JsonWriter& json) {
  if (!water) return json.Null("water");
  json.Object("water");
  json.Number("density_kg_per_m3", water->density_kg_per_m3);
  json.Number("kinematic_viscosity_m2_per_s", water->kinematic_viscosity_m2_per_s);
  json.End();
}

}  // namespace

double Degrees(double angle_rad) { return angle_rad * 180.0 / kPi; }

void WriteBand(std::string_view key, const plan::Band& band, JsonWriter& json) {
  json.Object(key);
  WriteEnds(band, json);
}

void WriteBandInDegrees(std::string_view key, const plan::Band& band_rad, JsonWriter& json) {
  WriteBand(key, {Degrees(band_rad.median), Degrees(band_rad.low), Degrees(band_rad.high)}, json);
}

void WriteBandItem(const plan::Band& band, JsonWriter& json) {
  json.ObjectItem();
  WriteEnds(band, json);
}

void WriteInput(std::string_view key, const std::optional<learn::Input>& input, JsonWriter& json) {
  if (!input) return json.Null(key);
  json.Text(key, learn::Prior()[static_cast<std::size_t>(*input)].id);
}

void WriteChoice(const RigChoice& choice, JsonWriter& json) {
  json.TextOrNull("rigger", choice.rigger);
  json.NumberOrNull("ball_mass_kg", choice.ball_mass_kg);
}

void WriteConditions(const plan::Conditions& conditions, const Wanted& wanted, JsonWriter& json) {
  WriteConditions(conditions, conditions.water, wanted, json);
}

void WriteConditions(const plan::Conditions& conditions, const std::optional<water::Water>& water,
                     const Wanted& wanted, JsonWriter& json) {
  const bool over_ground = conditions.speed_kind == plan::SpeedKind::kOverGround;
  json.Text("speed_kind", over_ground ? "over_ground" : "through_water");
  if (over_ground) {
    json.Number("course_deg", Degrees(conditions.course_rad));
  } else {
    json.Null("course_deg");
  }
  json.Number("heading_deg", Degrees(conditions.heading_rad));
  WriteCurrent(conditions.current, json);
  WriteWater(water, json);
  json.Flag("bands", wanted.bands);
  json.Whole("draws", wanted.draws);
  json.Text("units", kUnitWords[static_cast<std::size_t>(wanted.units)]);
  if (wanted.shape) json.Flag("shape", true);
  if (wanted.sheet) json.Flag("sheet", true);
  if (!wanted.date.empty()) json.Text("date", wanted.date);
}

void WriteRemarks(const Remarks& remarks, JsonWriter& json) {
  json.Texts("cautions", remarks.cautions);
  json.Texts("notes", remarks.notes);
}

}  // namespace offplumb::answers
