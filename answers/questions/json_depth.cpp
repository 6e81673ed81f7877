#include "answers/questions/json_answers.h"
#include "answers/questions/json_shape.h"
#include "answers/questions/json_sheet.h"
#include "answers/questions/json_values.h"
#include "answers/questions/sheets.h"

namespace offplumb::answers {
namespace {

void WriteClip(const std::string& name, const plan::ClipFigures<plan::Band>& clip,
               JsonWriter& json) {
  json.ObjectItem();
  json.Text("name", name);
  WriteBand("depth_m", clip.clip_depth_m, json);
  WriteBand("trail_m", clip.clip_trail_m, json);
  WriteBand("side_m", clip.clip_side_m, json);
  WriteBand("leader_pull_N", clip.leader_pull_N, json);
  WriteBand("line_pull_N", clip.line_pull_N, json);
  WriteBand("clip_net_N", clip.clip_net_N, json);
  WriteBand("fishing_line_m", clip.fishing_line_m, json);
  json.End();
}

void WriteLure(const std::string& clip_name, const plan::ClipFigures<plan::Band>& clip,
               JsonWriter& json) {
  json.ObjectItem();
  json.Text("clip", clip_name);
  WriteBand("depth_m", clip.lure_depth_m, json);
  WriteBand("trail_m", clip.lure_trail_m, json);
  WriteBand("side_m", clip.lure_side_m, json);
  WriteBand("water_speed_mps", clip.lure_water_speed_mps, json);
  json.End();
}

void WriteFigures(const tackle::Rigger& rigger, const plan::RiggerFigures<plan::Band>& figures,
                  JsonWriter& json) {
  json.Object("ball");
  WriteBand("depth_m", figures.ball_depth_m, json);
  WriteBand("trail_m", figures.ball_trail_m, json);
  WriteBand("side_m", figures.ball_side_m, json);
  WriteBand("water_speed_mps", figures.ball_water_speed_mps, json);
  json.End();
  json.List("clips");
  for (std::size_t i = 0; i < figures.clips.size(); ++i) {
    WriteClip(rigger.clips[i].name, figures.clips[i], json);
  }
  json.End();
  json.List("lures");
  for (std::size_t i = 0; i < figures.clips.size(); ++i) {
    WriteLure(rigger.clips[i].name, figures.clips[i], json);
  }
  json.End();
  json.Object("line");
  WriteBand("tension_boom_N", figures.tension_boom_N, json);
  WriteBand("tension_ball_N", figures.tension_ball_N, json);
  WriteBandInDegrees("angle_boom_deg", figures.angle_boom_rad, json);
  WriteBand("length_m", figures.length_m, json);
  json.End();
}

void WriteRigger(const tackle::Rigger& rigger, const plan::RiggerDepth& depth, bool shape,
                 JsonWriter& json) {
  json.ObjectItem();
  json.Text("name", depth.name);
  json.Number("count_m", depth.count_m);
  WriteFigures(rigger, depth.figures, json);
  WriteInput("dominant_input", depth.dominant, json);
  json.Whole("draws", depth.members);
  json.Whole("draws_without_shape", depth.unusable);
  if (shape) WriteShape("shape", rigger, depth, json);
  json.End();
}

}  // namespace

void Write(const DepthAnswer& answer, JsonWriter& json) {
  const DepthRequest& request = answer.request;
  json.Text("question", EntryOf(Question::kDepth).word);
  json.Text("rig", request.rig.rig.name);
  json.Object("inputs");
  WriteChoice(request.rig, json);
  json.Number("count_m", request.count_m);
  json.Number("speed_mps", answer.conditions.speed_mps);
  WriteConditions(answer.conditions, request.wanted, json);
  json.End();
  json.List("riggers");
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    WriteRigger(answer.rigged[i], answer.riggers[i], request.wanted.shape, json);
  }
  json.End();
  WriteInput("dominant_input", answer.dominant, json);
  if (request.wanted.sheet) WriteSheet(SideViewOf(answer), json);
  WriteRemarks(answer.remarks, json);
}

}  // namespace offplumb::answers
