// The question two_way: notes and cautions for what was read, bands left out, and its JSON.
#include "answers/questions/two_way.h"

#include <cmath>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "answers/questions/json.h"
#include "answers/questions/question_list.h"
#include "engine/constants.h"

namespace offplumb::answers {
namespace {

using nlohmann::json;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::UnorderedElementsAre;

constexpr double kDegree = kPi / 180;

plan::Leg LegOf(double ground_speed_mps, double course_deg) {
  plan::Leg leg;
  leg.ground_speed_mps = ground_speed_mps;
  leg.course_rad = course_deg * kDegree;
  leg.duration_s = 90;
  leg.spread_mps = 0.08;
  return leg;
}

/// 0.2 m/s along the way out, 1.2 m/s through the water, a log that reads 1.3.
TwoWayRequest Request() {
  TwoWayRequest request;
  request.legs = {LegOf(1.4, 40), LegOf(1.0, 220)};
  for (plan::Leg& leg : request.legs) leg.log_mps = 1.3;
  return request;
}

TwoWayRequest WithHeadings(double out_deg, double back_deg) {
  TwoWayRequest request = Request();
  request.legs[0].heading_rad = out_deg * kDegree;
  request.legs[1].heading_rad = back_deg * kDegree;
  return request;
}

TwoWayAnswer Answered(const TwoWayRequest& request) {
  const auto answer = Answer(request);
  EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().message);
  return answer.value_or(TwoWayAnswer{});
}

std::vector<std::string> NotesOn(const TwoWayRequest& request) {
  return Answered(request).remarks.notes;
}

TEST(TwoWay, TellsCurrentSpeedAndLog) {
  double done = 0;
  const auto answer = Answer(Request(), [&](double part) { done = part; });
  ASSERT_TRUE(answer.has_value());
  EXPECT_EQ(done, 1);
  EXPECT_NEAR(answer->found.speed_mps.median, 0.2, 1e-12);
  EXPECT_NEAR(answer->found.water_speed_mps.median, 1.2, 1e-12);
  EXPECT_NEAR(answer->found.log->error_mps.median, 0.1, 1e-12);
  EXPECT_THAT(answer->remarks.cautions, Contains(HasSubstr("lookout")));
}

TEST(TwoWay, SaysHowTheTurnIsKnown) {
  EXPECT_THAT(NotesOn(Request()), Contains(HasSubstr("the reverse of the first")));
  EXPECT_THAT(NotesOn(WithHeadings(40, 223)), Contains(HasSubstr("3 deg from opposite")));
  EXPECT_THAT(NotesOn(WithHeadings(40, 223)), Not(Contains(HasSubstr("the reverse of the first"))));
}

TEST(TwoWay, SaysWhatCoursesFarFromOppositeMean) {
  TwoWayRequest request = Request();
  request.legs[1].course_rad = 245 * kDegree;
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("25 deg from opposite")));
  EXPECT_THAT(NotesOn(Request()), Not(Contains(HasSubstr("courses are"))));
}

TEST(TwoWay, SaysWhatWasTakenForGranted) {
  TwoWayRequest request = Request();
  EXPECT_THAT(NotesOn(request), Not(Contains(HasSubstr("was not told"))));
  EXPECT_THAT(NotesOn(request), Not(Contains(HasSubstr("shorter than a minute"))));
  request.legs[1].spread_mps.reset();
  request.legs[1].duration_s = 45;
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("0.2 mph is taken")));
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("shorter than a minute")));
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("wind")));
  request.wanted.units = DisplayUnits::kMetric;
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("0.10 m/s is taken")));
}

TEST(TwoWay, SaysWhenInstrumentsDisagree) {
  EXPECT_THAT(NotesOn(WithHeadings(56, 236)), Contains(HasSubstr("16 deg too high")));
  EXPECT_THAT(NotesOn(WithHeadings(24, 204)), Contains(HasSubstr("16 deg too low")));
  EXPECT_THAT(NotesOn(WithHeadings(43, 223)), Not(Contains(HasSubstr("deg too "))));
  TwoWayRequest request = Request();
  request.legs[1].log_mps = 1.2;
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("was the throttle touched")));
  request.legs[1].log_mps = 1.28;
  EXPECT_THAT(NotesOn(request), Not(Contains(HasSubstr("was the throttle touched"))));
}

TEST(TwoWay, SaysWhenTheCurrentIsNoneOrFast) {
  TwoWayRequest request = Request();
  request.legs = {LegOf(1.2, 40), LegOf(1.2, 220)};
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("cannot be told from none")));
  request = WithHeadings(40, 220);
  request.legs[0].ground_speed_mps = 2.6;
  request.legs[1].ground_speed_mps = 0.2;
  request.legs[1].course_rad = 40 * kDegree;
  EXPECT_THAT(NotesOn(request), Contains(HasSubstr("faster than the boat")));
}

TEST(TwoWay, WithoutBandsAllThreeAreTheOneValue) {
  TwoWayRequest request = WithHeadings(43, 223);
  request.wanted.bands = false;
  const TwoWayAnswer plain = Answered(request);
  request.wanted.bands = true;
  const TwoWayAnswer banded = Answered(request);
  EXPECT_EQ(plain.found.speed_mps.median, banded.found.speed_mps.median);
  EXPECT_LT(banded.found.speed_mps.low, banded.found.speed_mps.high);
  for (const plan::Band& band :
       {plain.found.speed_mps, plain.found.toward_rad, plain.found.along_mps,
        plain.found.across_mps, plain.found.water_speed_mps, plain.found.first_heading_rad,
        plain.found.log->factor, plain.found.log->error_mps, *plain.found.compass_error_rad}) {
    EXPECT_EQ(band.low, band.median);
    EXPECT_EQ(band.high, band.median);
  }
  EXPECT_THAT(plain.remarks.notes, Not(Contains(HasSubstr("bands"))));
}

TEST(TwoWay, HandsOnWhatTheEngineRefuses) {
  TwoWayRequest request = Request();
  request.legs[0].duration_s = 5;
  const auto answer = Answer(request);
  ASSERT_FALSE(answer.has_value());
  EXPECT_EQ(answer.error().kind, ProblemKind::kBadInput);
  EXPECT_THAT(answer.error().message, HasSubstr("5 s"));
}

TEST(TwoWay, IsFoundByBothItsWords) {
  EXPECT_EQ(FindQuestion("two_way").value(), Question::kTwoWay);
  EXPECT_EQ(FindQuestion("two-way").value(), Question::kTwoWay);
  EXPECT_EQ(EntryOf(Question::kTwoWay).word, "two_way");
  EXPECT_THAT(FindQuestion("two-wey").error().message, HasSubstr("Did you mean two-way?"));
}

TEST(WholeBearing, StaysOnTheCompassRose) {
  EXPECT_EQ(WholeBearing(-8 * kDegree), "352");
  EXPECT_EQ(WholeBearing(359.7 * kDegree), "0");
  EXPECT_EQ(WholeBearing(725 * kDegree), "5");
}

// JSON.

std::set<std::string> KeysOf(const json& object) {
  std::set<std::string> keys;
  for (const auto& item : object.items()) keys.insert(item.key());
  return keys;
}

void ExpectValue(const json& value) {
  ASSERT_THAT(KeysOf(value), UnorderedElementsAre("median", "low", "high"));
  EXPECT_LE(value.at("low"), value.at("median"));
  EXPECT_LE(value.at("median"), value.at("high"));
}

TEST(TwoWayJson, HoldsEveryKey) {
  const json answer = json::parse(ToJson(Answered(WithHeadings(43, 221))));
  EXPECT_THAT(KeysOf(answer),
              UnorderedElementsAre("question", "rig", "inputs", "current", "water_speed_mps",
                                   "first_heading_deg", "log", "compass_error_deg", "turn_from",
                                   "turn_deg", "cautions", "notes"));
  EXPECT_EQ(answer.at("question"), "two_way");
  EXPECT_TRUE(answer.at("rig").is_null());
  const json& current = answer.at("current");
  for (const char* key : {"speed_mps", "toward_deg", "along_mps", "across_mps"}) {
    ExpectValue(current.at(key));
  }
  EXPECT_EQ(current.at("differs_from_none"), true);
  ExpectValue(answer.at("water_speed_mps"));
  ExpectValue(answer.at("first_heading_deg"));
  ExpectValue(answer.at("compass_error_deg"));
  ExpectValue(answer.at("log").at("factor"));
  ExpectValue(answer.at("log").at("error_mps"));
  EXPECT_EQ(answer.at("turn_from"), "headings");
  EXPECT_NEAR(answer.at("turn_deg").get<double>(), 178, 1e-9);
  EXPECT_NEAR(current.at("toward_deg").at("median").get<double>(), 34, 0.5);
}

TEST(TwoWayJson, EchoesTheLegsInTheKeysOfARequest) {
  TwoWayRequest request = Request();
  request.legs[0].heading_rad = 43 * kDegree;
  request.legs[1].log_mps.reset();
  request.legs[1].spread_mps.reset();
  request.wanted.units = DisplayUnits::kFeetKnots;
  const json inputs = json::parse(ToJson(Answered(request))).at("inputs");
  EXPECT_THAT(KeysOf(inputs), UnorderedElementsAre("legs", "bands", "units"));
  EXPECT_EQ(inputs.at("units"), "knots");
  ASSERT_EQ(inputs.at("legs").size(), 2u);
  for (const json& leg : inputs.at("legs")) {
    EXPECT_THAT(KeysOf(leg), UnorderedElementsAre("ground_speed_mps", "course_deg", "heading_deg",
                                                  "log_mps", "seconds", "spread_mps"));
  }
  const json& out = inputs.at("legs").at(0);
  EXPECT_EQ(out.at("ground_speed_mps"), 1.4);
  EXPECT_NEAR(out.at("course_deg").get<double>(), 40, 1e-12);
  EXPECT_NEAR(out.at("heading_deg").get<double>(), 43, 1e-12);
  EXPECT_EQ(out.at("seconds"), 90);
  const json& back = inputs.at("legs").at(1);
  EXPECT_TRUE(back.at("heading_deg").is_null());
  EXPECT_TRUE(back.at("log_mps").is_null());
  EXPECT_TRUE(back.at("spread_mps").is_null());
}

TEST(TwoWayJson, IsNullWhereNothingWasRead) {
  TwoWayRequest request = Request();
  for (plan::Leg& leg : request.legs) leg.log_mps.reset();
  const json answer = json::parse(ToJson(Answered(request)));
  EXPECT_TRUE(answer.at("log").is_null());
  EXPECT_TRUE(answer.at("compass_error_deg").is_null());
  EXPECT_EQ(answer.at("turn_from"), "reverse");
}

/// Every key of a JSON value.
void Collect(const json& value, std::set<std::string>& keys) {
  if (value.is_object()) {
    for (const auto& item : value.items()) keys.insert(item.key());
  }
  if (value.is_structured()) {
    for (const json& inner : value) Collect(inner, keys);
  }
}

TEST(TwoWayJson, HasNoKeyThatTheManualLeavesOut) {
  std::ostringstream manual;
  manual << std::ifstream(OFFPLUMB_SOURCE_DIR "/docs/json.md").rdbuf();
  std::set<std::string> keys;
  Collect(json::parse(ToJson(Answered(WithHeadings(43, 221)))), keys);
  std::set<std::string> untold;
  for (const std::string& key : keys) {
    if (manual.str().find(key) == std::string::npos) untold.insert(key);
  }
  EXPECT_GT(keys.size(), 20u);
  EXPECT_THAT(untold, IsEmpty());
}

}  // namespace
}  // namespace offplumb::answers
