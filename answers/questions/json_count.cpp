#include "answers/questions/json_answers.h"
#include "answers/questions/json_values.h"

namespace offplumb::answers {
namespace {

void WriteRemedy(const plan::Remedy& remedy, DisplayUnits units, JsonWriter& json) {
  const std::string unit = RemedyUnit(remedy.kind);
  json.ObjectItem();
  json.Text("what", RemedyId(remedy.kind));
  json.NumberOrNull("value", unit.empty() ? std::nullopt : std::optional<double>(remedy.value));
  json.TextOrNull("unit", unit);
  json.Text("text", RemedyText(remedy, units));
  json.End();
}

const char* DepthOfWord(plan::DepthOf of) { return of == plan::DepthOf::kBall ? "ball" : "lure"; }

/// Where everything is at the count found.
void WriteAtCount(const tackle::Rigger& rigger, const std::optional<plan::RiggerDepth>& depth,
                  JsonWriter& json) {
  if (!depth) return json.Null("at_count");
  json.Object("at_count");
  WriteBand("ball_depth_m", depth->figures.ball_depth_m, json);
  json.List("lures");
  for (std::size_t i = 0; i < depth->figures.clips.size(); ++i) {
    json.ObjectItem();
    json.Text("clip", rigger.clips[i].name);
    WriteBand("depth_m", depth->figures.clips[i].lure_depth_m, json);
    json.End();
  }
  json.End();
  json.End();
}

/// Count and lean, null where no count gets there.
void WriteReached(const plan::RiggerCount& count, JsonWriter& json) {
  json.Flag("reachable", count.reachable);
  if (count.reachable) {
    WriteBand("count_m", count.count_m, json);
  } else {
    json.Null("count_m");
  }
  json.Flag("count_high_open", count.high_open);
  json.NumberOrNull("angle_boom_deg", count.reachable
                                          ? std::optional<double>(Degrees(count.angle_boom_rad))
                                          : std::nullopt);
}

void WriteRigger(const tackle::Rigger& rigger, const plan::RiggerCount& count,
                 const std::optional<plan::RiggerDepth>& at_count, DisplayUnits units,
                 JsonWriter& json) {
  json.ObjectItem();
  json.Text("name", count.name);
  json.Number("wanted_depth_m", count.wish.depth_m);
  json.Text("of", DepthOfWord(count.wish.of));
  if (count.wish.of == plan::DepthOf::kLure) {
    json.Text("clip", rigger.clips[count.wish.clip].name);
  } else {
    json.Null("clip");
  }
  WriteReached(count, json);
  WriteAtCount(rigger, at_count, json);
  WriteBand("reach_depth_m", count.reach_depth_m, json);
  json.Number("reach_count_m", count.reach_count_m);
  json.Text("reach_ends_by", count.line_limits ? "line_on_reel" : "angle_boom");
  json.List("remedies");
  for (const plan::Remedy& remedy : count.remedies) WriteRemedy(remedy, units, json);
  json.End();
  json.Whole("draws", count.members);
  json.Whole("draws_out_of_reach", count.unreached);
  json.End();
}

}  // namespace

void Write(const CountAnswer& answer, JsonWriter& json) {
  const CountRequest& request = answer.request;
  json.Text("question", EntryOf(Question::kCount).word);
  json.Text("rig", request.rig.rig.name);
  json.Object("inputs");
  WriteChoice(request.rig, json);
  json.Number("depth_m", request.depth_m);
  json.Text("of", DepthOfWord(request.of));
  json.TextOrNull("clip", request.clip);
  json.Number("speed_mps", answer.conditions.speed_mps);
  WriteConditions(answer.conditions, request.wanted, json);
  json.End();
  json.List("riggers");
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    WriteRigger(answer.rigged[i], answer.riggers[i], answer.at_count[i], request.wanted.units,
                json);
  }
  json.End();
  WriteRemarks(answer.remarks, json);
}

}  // namespace offplumb::answers
