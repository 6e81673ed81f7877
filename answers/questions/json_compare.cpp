#include "answers/questions/json_answers.h"
#include "answers/questions/json_values.h"

namespace offplumb::answers {
namespace {

void WriteBandsWhere(std::string_view key, const std::vector<plan::Band>& bands,
                     const std::vector<char>& solved, JsonWriter& json) {
  json.List(key);
  for (std::size_t i = 0; i < bands.size(); ++i) {
    if (solved[i] != 0) {
      WriteBandItem(bands[i], json);
    } else {
      json.NullItem();
    }
  }
  json.End();
}

void WriteRow(const plan::ComparedRig& row, DisplayUnits units, JsonWriter& json) {
  json.ObjectItem();
  json.Text("name", row.name);
  WriteBand("reach_depth_m", row.reach_depth_m, json);
  json.Number("reach_count_m", row.reach_count_m);
  json.Text("reach_ends_by", row.line_limits ? "line_on_reel" : "angle_boom");
  json.Numbers("counts_m", row.counts_m);
  WriteBandsWhere("depth_m", row.depth_m, row.solved, json);
  WriteBandsWhere("tension_boom_N", row.tension_boom_N, row.solved, json);
  json.Number("gains_count_m", row.gains_count_m);
  json.List("gains");
  for (const plan::Gain& gain : row.gains) {
    json.ObjectItem();
    json.Text("what", gain.id);
    json.Number("depth_m", gain.depth_m);
    json.Text("text", GainText(gain.id, units));
    json.End();
  }
  json.End();
  json.End();
}

std::vector<std::string> RigNames(const CompareRequest& request) {
  std::vector<std::string> names;
  for (const RigChoice& rig : request.rigs) names.push_back(rig.rig.name);
  return names;
}

/// The water of all rigs; nothing when they have several.
std::optional<water::Water> OneWater(const CompareRequest& request) {
  const water::Water first = WaterOf(request.sea, request.rigs.front().rig);
  for (const RigChoice& rig : request.rigs) {
    if (!SameWater(first, WaterOf(request.sea, rig.rig))) return std::nullopt;
  }
  return first;
}

}  // namespace

void Write(const CompareAnswer& answer, JsonWriter& json) {
  const CompareRequest& request = answer.request;
  json.Text("question", EntryOf(Question::kCompare).word);
  json.Texts("rig", RigNames(request));
  json.Object("inputs");
  // Rigger and ball asked for are the same for all rigs.
  WriteChoice(request.rigs.front(), json);
  json.Numbers("counts_m", request.counts_m);
  json.NumberOrNull("gains_count_m", request.gains_count_m);
  json.Number("speed_mps", answer.conditions.speed_mps);
  WriteConditions(answer.conditions, OneWater(request), request.wanted, json);
  json.End();
  json.List("rigs");
  for (const plan::ComparedRig& row : answer.rows) WriteRow(row, request.wanted.units, json);
  json.End();
  WriteRemarks(answer.remarks, json);
}

}  // namespace offplumb::answers
