#include "answers/asking/requests.h"

#include <array>
#include <utility>

#include <fmt/format.h>

#include "answers/asking/request_parts.h"

namespace offplumb::answers {
namespace {

/// What all questions are asked with but the rig.
template <typename Request>
Asked<Request> ReadShared(const RequestFields& fields, Question question) {
  CheckRequestKeys(fields, question);
  Asked<Request> asked;
  asked.request.wanted = ReadWanted(fields);
  asked.request.sea = ReadSea(fields);
  return asked;
}

/// The same with the rig, for a question about one.
template <typename Request>
Asked<Request> ReadOneRig(const RequestFields& fields, Question question, const RigTexts& texts) {
  auto asked = ReadShared<Request>(fields, question);
  fields.Require("rig_toml", "The rig", "\"the text of a rig file\"");
  const auto toml = fields.Text("rig_toml");
  if (!toml) return asked;
  auto rig = ReadRig(fields, "rig_toml", *toml, texts);
  if (!rig) return asked;
  asked.request.rig = ChoiceOf(fields, *rig);
  asked.rigs.push_back(std::move(*rig));
  return asked;
}

template <typename Request>
Expected<Asked<Request>> Finish(Asked<Request> asked, const std::optional<Problem>& first) {
  if (first) return tl::unexpected<Problem>(*first);
  return asked;
}

void RequireSpeed(const RequestFields& fields) {
  fields.Require("speed_mps", "The boat's speed", "1.2");
}

constexpr NumberRule kGroundSpeedRule{{0, plan::kLargestGroundSpeed_mps}, "m/s"};
constexpr NumberRule kLogRule{{plan::kSlowestRun_mps, 2 * plan::kLargestSpeed_mps}, "m/s"};
constexpr NumberRule kSecondsRule{{plan::kShortestLeg_s, plan::kLongestLeg_s}, "s"};
constexpr NumberRule kSpreadRule{{0, plan::kLargestSpread_mps}, "m/s"};

plan::Leg ReadLeg(const RequestFields& fields) {
  constexpr auto kLegKeys = std::to_array<std::string_view>(
      {"ground_speed_mps", "course_deg", "heading_deg", "log_mps", "seconds", "spread_mps"});
  fields.CheckKeys(kLegKeys, "a leg");
  fields.Require("ground_speed_mps", "The mean speed over ground", "1.4");
  fields.Require("course_deg", "The mean course over ground", "40");
  fields.Require("seconds", "How long the leg took", "60");
  plan::Leg leg;
  leg.ground_speed_mps = fields.Number("ground_speed_mps", kGroundSpeedRule).value_or(0);
  leg.course_rad = ReadBearing(fields, "course_deg").value_or(0);
  leg.heading_rad = ReadBearing(fields, "heading_deg");
  leg.log_mps = fields.Number("log_mps", kLogRule);
  leg.duration_s = fields.Number("seconds", kSecondsRule).value_or(0);
  leg.spread_mps = fields.Number("spread_mps", kSpreadRule);
  return leg;
}

}  // namespace

Expected<Asked<DepthRequest>> ReadDepthRequest(const JsonValue& json, const RigTexts& texts) {
  std::optional<Problem> first;
  const RequestFields fields(json, {}, first);
  auto asked = ReadOneRig<DepthRequest>(fields, Question::kDepth, texts);
  fields.Require("count_m", "The count", "30");
  RequireSpeed(fields);
  asked.request.count_m = fields.Number("count_m", kCountRule).value_or(0);
  return Finish(std::move(asked), first);
}

Expected<Asked<CountRequest>> ReadCountRequest(const JsonValue& json, const RigTexts& texts) {
  constexpr auto kOf = std::to_array<std::string_view>({"ball", "lure"});
  std::optional<Problem> first;
  const RequestFields fields(json, {}, first);
  auto asked = ReadOneRig<CountRequest>(fields, Question::kCount, texts);
  fields.Require("depth_m", "The wanted depth", "27");
  RequireSpeed(fields);
  asked.request.depth_m = fields.Number("depth_m", kWantedDepthRule).value_or(0);
  asked.request.clip = fields.Text("clip").value_or("");
  // A clip alone says that its lure is meant.
  const std::size_t otherwise = asked.request.clip.empty() ? 0 : 1;
  const bool lure = fields.Word("of", kOf).value_or(otherwise) == 1;
  asked.request.of = lure ? plan::DepthOf::kLure : plan::DepthOf::kBall;
  if (!lure && !asked.request.clip.empty()) {
    fields.Fail("clip", "A clip says which lure is meant, but the ball's depth is asked for.",
                "Write \"of\": \"lure\", or leave the clip out.");
  }
  return Finish(std::move(asked), first);
}

Expected<Asked<CardRequest>> ReadCardRequest(const JsonValue& json, const RigTexts& texts) {
  std::optional<Problem> first;
  const RequestFields fields(json, {}, first);
  auto asked = ReadOneRig<CardRequest>(fields, Question::kCard, texts);
  asked.request.speeds_mps = fields.Numbers("speeds_mps", kSpeedRule, kMostSpeeds);
  asked.request.counts_m = fields.Numbers("counts_m", kCountRule, kMostCounts);
  return Finish(std::move(asked), first);
}

Expected<Asked<CompareRequest>> ReadCompareRequest(const JsonValue& json, const RigTexts& texts) {
  std::optional<Problem> first;
  const RequestFields fields(json, {}, first);
  auto asked = ReadShared<CompareRequest>(fields, Question::kCompare);
  fields.Require("rigs_toml", "The list of rigs", "[\"the text of a rig file\"]");
  RequireSpeed(fields);
  for (const std::string& toml : fields.Texts("rigs_toml", kMostRigs)) {
    auto rig = ReadRig(fields, "rigs_toml", toml, texts);
    if (!rig) continue;
    asked.request.rigs.push_back(ChoiceOf(fields, *rig));
    asked.rigs.push_back(std::move(*rig));
  }
  asked.request.counts_m = fields.Numbers("counts_m", kCountRule, kMostComparedCounts);
  asked.request.gains_count_m = fields.Number("gains_count_m", kCountRule);
  return Finish(std::move(asked), first);
}

Expected<Asked<TwoWayRequest>> ReadTwoWayRequest(const JsonValue& json) {
  std::optional<Problem> first;
  const RequestFields fields(json, {}, first);
  CheckRequestKeys(fields, Question::kTwoWay);
  Asked<TwoWayRequest> asked;
  asked.request.wanted = ReadWanted(fields);
  fields.Require("legs", "The list of the two legs",
                 R"([{"ground_speed_mps": 1.4, "course_deg": 40, "seconds": 60}, ...])");
  plan::TwoLegs& legs = asked.request.legs;
  const auto given = fields.Objects("legs", legs.size());
  if (given.size() < legs.size()) {
    fields.Fail("legs", fmt::format("A two-way run has two legs, not {}.", given.size()),
                "Give the way out, then the way back.");
  }
  for (std::size_t i = 0; i < given.size(); ++i) legs[i] = ReadLeg(given[i]);
  return Finish(std::move(asked), first);
}

}  // namespace offplumb::answers
