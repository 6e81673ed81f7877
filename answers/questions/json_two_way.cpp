#include "answers/questions/json_answers.h"
#include "answers/questions/json_values.h"

namespace offplumb::answers {
namespace {

void WriteLeg(const plan::Leg& leg, JsonWriter& json) {
  json.ObjectItem();
  json.Number("ground_speed_mps", leg.ground_speed_mps);
  json.Number("course_deg", Degrees(leg.course_rad));
  json.NumberOrNull("heading_deg", leg.heading_rad
                                       ? std::optional<double>(Degrees(*leg.heading_rad))
                                       : std::nullopt);
  json.NumberOrNull("log_mps", leg.log_mps);
  json.Number("seconds", leg.duration_s);
  json.NumberOrNull("spread_mps", leg.spread_mps);
  json.End();
}

/// The keys of a request, so that it can be asked again.
void WriteInputs(const TwoWayRequest& request, JsonWriter& json) {
  json.Object("inputs");
  json.List("legs");
  for (const plan::Leg& leg : request.legs) WriteLeg(leg, json);
  json.End();
  json.Flag("bands", request.wanted.bands);
  json.Text("units", kUnitWords[static_cast<std::size_t>(request.wanted.units)]);
  json.End();
}

void WriteCurrent(const plan::TwoWay& found, JsonWriter& json) {
  json.Object("current");
  WriteBand("speed_mps", found.speed_mps, json);
  WriteBandInDegrees("toward_deg", found.toward_rad, json);
  WriteBand("along_mps", found.along_mps, json);
  WriteBand("across_mps", found.across_mps, json);
  json.Flag("differs_from_none", found.differs_from_none);
  json.End();
}

void WriteLog(const std::optional<plan::LogCheck>& log, JsonWriter& json) {
  if (!log) return json.Null("log");
  json.Object("log");
  WriteBand("factor", log->factor, json);
  WriteBand("error_mps", log->error_mps, json);
  json.End();
}

}  // namespace

void Write(const TwoWayAnswer& answer, JsonWriter& json) {
  const plan::TwoWay& found = answer.found;
  json.Text("question", EntryOf(Question::kTwoWay).word);
  json.Null("rig");
  WriteInputs(answer.request, json);
  WriteCurrent(found, json);
  WriteBand("water_speed_mps", found.water_speed_mps, json);
  WriteBandInDegrees("first_heading_deg", found.first_heading_rad, json);
  WriteLog(found.log, json);
  if (found.compass_error_rad) {
    WriteBandInDegrees("compass_error_deg", *found.compass_error_rad, json);
  } else {
    json.Null("compass_error_deg");
  }
  json.Text("turn_from", found.turn_from == plan::TurnFrom::kHeadings ? "headings" : "reverse");
  json.Number("turn_deg", Degrees(found.turn_rad));
  WriteRemarks(answer.remarks, json);
}

}  // namespace offplumb::answers
