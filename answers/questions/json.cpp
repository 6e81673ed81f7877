#include "answers/questions/json.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "answers/questions/notes.h"
#include "answers/questions/question_list.h"
#include "engine/constants.h"

namespace offplumb::answers {
namespace {

using Json = nlohmann::ordered_json;

constexpr int kIndent = 2;

double Degrees(double angle_rad) { return angle_rad * 180.0 / kPi; }

Json Value(const plan::Band& band) {
  return {{"median", band.median}, {"low", band.low}, {"high", band.high}};
}

Json ValueInDegrees(const plan::Band& band_rad) {
  return Value({Degrees(band_rad.median), Degrees(band_rad.low), Degrees(band_rad.high)});
}

Json InputId(const std::optional<learn::Input>& input) {
  if (!input) return nullptr;
  return std::string(learn::Prior()[static_cast<std::size_t>(*input)].id);
}

// Inputs.

Json CurrentPoint(const water::CurrentPoint& point) {
  double toward_rad = std::atan2(point.velocity_mps.y(), point.velocity_mps.x());
  if (toward_rad < 0) toward_rad += 2 * kPi;
  return {{"depth_m", point.depth_m},
          {"speed_mps", point.velocity_mps.norm()},
          {"toward_deg", Degrees(toward_rad)}};
}

Json CurrentJson(const water::Current& current) {
  if (current.points.empty()) return nullptr;
  Json points = Json::array();
  for (const auto& point : current.points) points.push_back(CurrentPoint(point));
  const bool steps = current.shape == water::CurrentShape::kSteps;
  return {{"shape", steps ? "steps" : "linear"}, {"points", points}};
}

Json Way(const plan::Conditions& conditions) {
  const bool over_ground = conditions.speed_kind == plan::SpeedKind::kOverGround;
  Json way;
  way["speed_kind"] = over_ground ? "over_ground" : "through_water";
  way["course_deg"] = over_ground ? Json(Degrees(conditions.course_rad)) : Json(nullptr);
  way["heading_deg"] = Degrees(conditions.heading_rad);
  way["current"] = CurrentJson(conditions.current);
  way["water"] = {{"density_kg_per_m3", conditions.water.density_kg_per_m3},
                  {"kinematic_viscosity_m2_per_s", conditions.water.kinematic_viscosity_m2_per_s}};
  return way;
}

/// What all questions echo, after what is their own.
Json Inputs(Json own, const plan::Conditions& conditions, const Wanted& wanted) {
  own.update(Way(conditions));
  own["bands"] = wanted.bands;
  return own;
}

Json RiggerMeant(const RigChoice& rig) {
  return rig.rigger.empty() ? Json(nullptr) : Json(rig.rigger);
}

Json Envelope(Question question, Json rig, Json inputs) {
  Json json;
  json["question"] = std::string(EntryOf(question).word);
  json["rig"] = std::move(rig);
  json["inputs"] = std::move(inputs);
  return json;
}

std::string Finish(Json& json, const Remarks& remarks) {
  json["cautions"] = remarks.cautions;
  json["notes"] = remarks.notes;
  return json.dump(kIndent, ' ', false, Json::error_handler_t::replace) + "\n";
}

// depth.

Json ClipJson(const std::string& name, const plan::ClipFigures<plan::Band>& clip) {
  return {{"name", name},
          {"depth_m", Value(clip.clip_depth_m)},
          {"trail_m", Value(clip.clip_trail_m)},
          {"side_m", Value(clip.clip_side_m)},
          {"leader_pull_N", Value(clip.leader_pull_N)},
          {"line_pull_N", Value(clip.line_pull_N)},
          {"clip_net_N", Value(clip.clip_net_N)},
          {"fishing_line_m", Value(clip.fishing_line_m)}};
}

Json LureJson(const std::string& clip_name, const plan::ClipFigures<plan::Band>& clip) {
  return {{"clip", clip_name},
          {"depth_m", Value(clip.lure_depth_m)},
          {"trail_m", Value(clip.lure_trail_m)},
          {"side_m", Value(clip.lure_side_m)},
          {"water_speed_mps", Value(clip.lure_water_speed_mps)}};
}

Json DepthOfRigger(const tackle::Rigger& rigger, const plan::RiggerDepth& depth) {
  const auto& figures = depth.figures;
  Json json;
  json["name"] = depth.name;
  json["count_m"] = depth.count_m;
  json["ball"] = {{"depth_m", Value(figures.ball_depth_m)},
                  {"trail_m", Value(figures.ball_trail_m)},
                  {"side_m", Value(figures.ball_side_m)},
                  {"water_speed_mps", Value(figures.ball_water_speed_mps)}};
  json["clips"] = Json::array();
  json["lures"] = Json::array();
  for (std::size_t i = 0; i < figures.clips.size(); ++i) {
    json["clips"].push_back(ClipJson(rigger.clips[i].name, figures.clips[i]));
    json["lures"].push_back(LureJson(rigger.clips[i].name, figures.clips[i]));
  }
  json["line"] = {{"tension_boom_N", Value(figures.tension_boom_N)},
                  {"tension_ball_N", Value(figures.tension_ball_N)},
                  {"angle_boom_deg", ValueInDegrees(figures.angle_boom_rad)},
                  {"length_m", Value(figures.length_m)}};
  json["dominant_input"] = InputId(depth.dominant);
  json["draws"] = depth.members;
  json["draws_without_shape"] = depth.unusable;
  return json;
}

// count.

Json RemedyJson(const plan::Remedy& remedy, DisplayUnits units) {
  const std::string unit = RemedyUnit(remedy.kind);
  return {{"what", RemedyId(remedy.kind)},
          {"value", unit.empty() ? Json(nullptr) : Json(remedy.value)},
          {"unit", unit.empty() ? Json(nullptr) : Json(unit)},
          {"text", RemedyText(remedy, units)}};
}

std::string DepthOfWord(plan::DepthOf of) { return of == plan::DepthOf::kBall ? "ball" : "lure"; }

/// Where everything is at the count found.
Json AtCount(const tackle::Rigger& rigger, const std::optional<plan::RiggerDepth>& depth) {
  if (!depth) return nullptr;
  Json lures = Json::array();
  for (std::size_t i = 0; i < depth->figures.clips.size(); ++i) {
    lures.push_back(
        {{"clip", rigger.clips[i].name}, {"depth_m", Value(depth->figures.clips[i].lure_depth_m)}});
  }
  return {{"ball_depth_m", Value(depth->figures.ball_depth_m)}, {"lures", lures}};
}

Json CountOfRigger(const tackle::Rigger& rigger, const plan::RiggerCount& count,
                   const std::optional<plan::RiggerDepth>& at_count, DisplayUnits units) {
  const bool lure = count.wish.of == plan::DepthOf::kLure;
  Json json;
  json["name"] = count.name;
  json["wanted_depth_m"] = count.wish.depth_m;
  json["of"] = DepthOfWord(count.wish.of);
  json["clip"] = lure ? Json(rigger.clips[count.wish.clip].name) : Json(nullptr);
  json["reachable"] = count.reachable;
  json["count_m"] = count.reachable ? Value(count.count_m) : Json(nullptr);
  json["count_high_open"] = count.high_open;
  json["angle_boom_deg"] = count.reachable ? Json(Degrees(count.angle_boom_rad)) : Json(nullptr);
  json["at_count"] = AtCount(rigger, at_count);
  json["reach_depth_m"] = Value(count.reach_depth_m);
  json["reach_count_m"] = count.reach_count_m;
  json["reach_ends_by"] = count.line_limits ? "line_on_reel" : "angle_boom";
  json["remedies"] = Json::array();
  for (const plan::Remedy& remedy : count.remedies) {
    json["remedies"].push_back(RemedyJson(remedy, units));
  }
  json["draws"] = count.members;
  json["draws_out_of_reach"] = count.unreached;
  return json;
}

// card.

template <typename Cell>
Json Grid(const plan::Card& card, const Cell& cell_json) {
  Json grid = Json::array();
  for (const auto& row : card.cells) {
    Json cells = Json::array();
    for (const plan::CardCell& cell : row) {
      cells.push_back(cell.solved ? cell_json(cell) : Json(nullptr));
    }
    grid.push_back(std::move(cells));
  }
  return grid;
}

Json BallGrid(const plan::Card& card) {
  return Grid(card, [](const plan::CardCell& cell) { return Value(cell.ball_depth_m); });
}

Json LureGrid(const plan::Card& card, std::size_t clip) {
  return Grid(card, [clip](const plan::CardCell& cell) {
    return clip < cell.lure_depth_m.size() ? Value(cell.lure_depth_m[clip]) : Json(nullptr);
  });
}

Json CardOfRigger(const tackle::Rigger& rigger, const plan::Card& card) {
  Json json;
  json["name"] = card.rigger;
  json["ball_depth_m"] = BallGrid(card);
  json["lures"] = Json::array();
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    json["lures"].push_back({{"clip", rigger.clips[i].name}, {"depth_m", LureGrid(card, i)}});
  }
  json["beyond_angle"] =
      Grid(card, [](const plan::CardCell& cell) { return Json(cell.beyond_angle); });
  return json;
}

// compare.

Json BandsWhere(const std::vector<plan::Band>& bands, const std::vector<char>& solved) {
  Json json = Json::array();
  for (std::size_t i = 0; i < bands.size(); ++i) {
    json.push_back(solved[i] ? Value(bands[i]) : Json(nullptr));
  }
  return json;
}

Json RowJson(const plan::ComparedRig& row, DisplayUnits units) {
  Json json;
  json["name"] = row.name;
  json["reach_depth_m"] = Value(row.reach_depth_m);
  json["reach_count_m"] = row.reach_count_m;
  json["reach_ends_by"] = row.line_limits ? "line_on_reel" : "angle_boom";
  json["counts_m"] = row.counts_m;
  json["depth_m"] = BandsWhere(row.depth_m, row.solved);
  json["tension_boom_N"] = BandsWhere(row.tension_boom_N, row.solved);
  json["gains_count_m"] = row.gains_count_m;
  json["gains"] = Json::array();
  for (const plan::Gain& gain : row.gains) {
    json["gains"].push_back(
        {{"what", gain.id}, {"depth_m", gain.depth_m}, {"text", GainText(gain.id, units)}});
  }
  return json;
}

Json RigNames(const CompareRequest& request) {
  Json names = Json::array();
  for (const RigChoice& rig : request.rigs) names.push_back(rig.rig.name);
  return names;
}

}  // namespace

std::string ToJson(const DepthAnswer& answer) {
  const DepthRequest& request = answer.request;
  const Json own = {{"rigger", RiggerMeant(request.rig)},
                    {"count_m", request.count_m},
                    {"speed_mps", answer.conditions.speed_mps}};
  Json json = Envelope(Question::kDepth, request.rig.rig.name,
                       Inputs(own, answer.conditions, request.wanted));
  json["riggers"] = Json::array();
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    json["riggers"].push_back(DepthOfRigger(answer.rigged[i], answer.riggers[i]));
  }
  json["dominant_input"] = InputId(answer.dominant);
  return Finish(json, answer.remarks);
}

std::string ToJson(const CountAnswer& answer) {
  const CountRequest& request = answer.request;
  const Json own = {{"rigger", RiggerMeant(request.rig)},
                    {"depth_m", request.depth_m},
                    {"of", DepthOfWord(request.of)},
                    {"speed_mps", answer.conditions.speed_mps}};
  Json json = Envelope(Question::kCount, request.rig.rig.name,
                       Inputs(own, answer.conditions, request.wanted));
  json["riggers"] = Json::array();
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    json["riggers"].push_back(CountOfRigger(answer.rigged[i], answer.riggers[i], answer.at_count[i],
                                            request.wanted.units));
  }
  return Finish(json, answer.remarks);
}

std::string ToJson(const CardAnswer& answer) {
  const CardRequest& request = answer.request;
  const Json own = {{"rigger", RiggerMeant(request.rig)}};
  Json json = Envelope(Question::kCard, request.rig.rig.name,
                       Inputs(own, answer.conditions, request.wanted));
  json["axes"] = {"speed", "count"};
  json["speeds_mps"] = request.speeds_mps;
  json["counts_m"] = request.counts_m;
  json["ball_depth_m"] = BallGrid(answer.cards.front());
  json["lure_depth_m"] = LureGrid(answer.cards.front(), 0);
  json["riggers"] = Json::array();
  for (std::size_t i = 0; i < answer.cards.size(); ++i) {
    json["riggers"].push_back(CardOfRigger(answer.rigged[i], answer.cards[i]));
  }
  return Finish(json, answer.remarks);
}

std::string ToJson(const CompareAnswer& answer) {
  const CompareRequest& request = answer.request;
  const Json own = {{"counts_m", request.counts_m}, {"speed_mps", answer.conditions.speed_mps}};
  Json json = Envelope(Question::kCompare, RigNames(request),
                       Inputs(own, answer.conditions, request.wanted));
  json["rigs"] = Json::array();
  for (const plan::ComparedRig& row : answer.rows) {
    json["rigs"].push_back(RowJson(row, request.wanted.units));
  }
  return Finish(json, answer.remarks);
}

}  // namespace offplumb::answers
