// The JSON of each question holds every key of docs/json.md, and no number that is none.

#include "answers/questions/json.h"

#include <cmath>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "tests/answers/questions/example_rigs.h"

namespace offplumb::answers {
namespace {

using nlohmann::json;
using testing::ElementsAre;

/// Keys under which null means something: docs/json.md says what.
const std::set<std::string> kMayBeNull{
    "rigger",         "course_deg",   "current",  "dominant_input", "clip",         "count_m",
    "angle_boom_deg", "value",        "unit",     "ball_depth_m",   "lure_depth_m", "depth_m",
    "tension_boom_N", "beyond_angle", "at_count", "ball_mass_kg",   "gains_count_m"};

/// A number that is not finite would be written as null: none may stand where null means nothing.
void ExpectNoHoles(const json& value, const std::string& key) {
  if (value.is_null()) {
    EXPECT_TRUE(kMayBeNull.count(key) > 0) << "null at " << key;
  } else if (value.is_object()) {
    for (const auto& [name, inner] : value.items()) ExpectNoHoles(inner, name);
  } else if (value.is_array()) {
    for (const json& inner : value) ExpectNoHoles(inner, key);
  } else if (value.is_number_float()) {
    EXPECT_TRUE(std::isfinite(value.get<double>())) << key;
  }
}

std::string Manual() {
  std::ostringstream text;
  text << std::ifstream(OFFPLUMB_SOURCE_DIR "/docs/json.md").rdbuf();
  return text.str();
}

/// \return every key of an answer that docs/json.md does not name.
void FindUntold(const json& value, const std::string& manual, std::set<std::string>& untold) {
  if (value.is_object()) {
    for (const auto& [key, inner] : value.items()) {
      if (manual.find(key) == std::string::npos) untold.insert(key);
      FindUntold(inner, manual, untold);
    }
  } else if (value.is_array()) {
    for (const json& inner : value) FindUntold(inner, manual, untold);
  }
}

void ExpectKeys(const json& object, const std::vector<std::string>& keys) {
  for (const std::string& key : keys) EXPECT_TRUE(object.contains(key)) << key << " in\n" << object;
}

void ExpectValue(const json& value) {
  ASSERT_TRUE(value.is_object()) << value;
  ExpectKeys(value, {"median", "low", "high"});
  EXPECT_LE(value.at("low"), value.at("median"));
  EXPECT_LE(value.at("median"), value.at("high"));
}

void ExpectValues(const json& object, const std::vector<std::string>& keys) {
  ExpectKeys(object, keys);
  for (const std::string& key : keys) ExpectValue(object.at(key));
}

/// What all questions have.
template <typename Request>
json Ask(const Request& request, const char* question) {
  const auto answer = Answer(request);
  EXPECT_TRUE(answer) << (answer ? "" : answer.error().message);
  if (!answer) return {};
  const std::string text = ToJson(*answer);
  EXPECT_EQ(text, ToJson(*Answer(request))) << "the same question, another text";
  const json parsed = json::parse(text);
  ExpectKeys(parsed, {"question", "rig", "inputs", "cautions", "notes"});
  EXPECT_EQ(parsed.at("question"), question);
  EXPECT_TRUE(parsed.at("inputs").is_object());
  EXPECT_TRUE(parsed.at("notes").is_array());
  EXPECT_GE(parsed.at("cautions").size(), 3u);
  ExpectNoHoles(parsed, "");
  std::set<std::string> untold;
  FindUntold(parsed, Manual(), untold);
  EXPECT_THAT(untold, testing::IsEmpty()) << "not in docs/json.md";
  return parsed;
}

DepthRequest DepthOf(double count_m, double speed_mps) {
  DepthRequest request;
  request.rig.rig = TestRig();
  request.sea = TestSea(speed_mps);
  request.count_m = count_m;
  return request;
}

TEST(DepthJson, HoldsEveryKey) {
  const json answer = Ask(DepthOf(30, 1.2), "depth");
  EXPECT_EQ(answer.at("rig"), "Test rig");
  EXPECT_EQ(answer.at("inputs").at("speed_mps"), 1.2);
  EXPECT_EQ(answer.at("inputs").at("speed_kind"), "through_water");
  EXPECT_TRUE(answer.at("dominant_input").is_string());
  ASSERT_EQ(answer.at("riggers").size(), 2u);
  for (const json& rigger : answer.at("riggers")) {
    ExpectKeys(rigger, {"name", "count_m", "ball", "clips", "lures", "line", "dominant_input"});
    ExpectValues(rigger.at("ball"), {"depth_m", "trail_m", "side_m", "water_speed_mps"});
    ExpectValues(rigger.at("line"),
                 {"tension_boom_N", "tension_ball_N", "angle_boom_deg", "length_m"});
    for (const json& clip : rigger.at("clips")) {
      ExpectValues(clip, {"depth_m", "trail_m", "side_m", "leader_pull_N", "line_pull_N",
                          "clip_net_N", "fishing_line_m"});
    }
    for (const json& lure : rigger.at("lures")) {
      ExpectValues(lure, {"depth_m", "trail_m", "side_m", "water_speed_mps"});
    }
  }
  const json& starboard = answer.at("riggers").at(1);
  ASSERT_EQ(starboard.at("clips").size(), 2u);
  EXPECT_EQ(starboard.at("clips").at(1).at("name"), "stacked");
  EXPECT_EQ(starboard.at("lures").at(1).at("clip"), "stacked");
  EXPECT_GT(starboard.at("clips").at(0).at("depth_m").at("median"),
            starboard.at("clips").at(1).at("depth_m").at("median"));
}

TEST(DepthJson, TopDominantInputIsThatOfTheFirstRigger) {
  const json answer = Ask(DepthOf(30, 1.2), "depth");
  EXPECT_EQ(answer.at("dominant_input"), answer.at("riggers").at(0).at("dominant_input"));
}

TEST(DepthJson, WithoutBandsAllThreeAreTheOneValue) {
  DepthRequest request = DepthOf(30, 1.2);
  request.wanted.bands = false;
  const json answer = Ask(request, "depth");
  const json& depth = answer.at("riggers").at(0).at("ball").at("depth_m");
  EXPECT_EQ(depth.at("low"), depth.at("median"));
  EXPECT_EQ(depth.at("high"), depth.at("median"));
  EXPECT_TRUE(answer.at("dominant_input").is_null());
}

TEST(DepthJson, EchoesTheCurrentTheWayItWasGiven) {
  DepthRequest request = DepthOf(30, 1.2);
  request.sea.heading_rad = 0;
  // 0.3 m/s toward 225 degrees below 10 m.
  const double part = -0.3 * std::sqrt(0.5);
  request.sea.current.points = {{0, {0, 0}}, {10, {part, part}}};
  const json current = Ask(request, "depth").at("inputs").at("current");
  EXPECT_EQ(current.at("shape"), "steps");
  EXPECT_NEAR(current.at("points").at(1).at("speed_mps"), 0.3, 1e-12);
  EXPECT_NEAR(current.at("points").at(1).at("toward_deg"), 225, 1e-9);
}

TEST(CountJson, HoldsEveryKey) {
  CountRequest request;
  request.rig.rig = TestRig();
  request.sea = TestSea(1.2);
  request.depth_m = 25;
  const json answer = Ask(request, "count");
  ASSERT_EQ(answer.at("riggers").size(), 2u);
  for (const json& rigger : answer.at("riggers")) {
    ExpectKeys(rigger, {"name", "wanted_depth_m", "of", "reachable", "count_m", "reach_depth_m",
                        "remedies"});
    EXPECT_EQ(rigger.at("wanted_depth_m"), 25);
    EXPECT_EQ(rigger.at("of"), "ball");
    EXPECT_EQ(rigger.at("reachable"), true);
    EXPECT_TRUE(rigger.at("remedies").empty());
    ExpectValues(rigger, {"count_m", "reach_depth_m"});
    ExpectValues(rigger.at("at_count"), {"ball_depth_m"});
    // FindCount promises 1e-6 m of depth.
    EXPECT_NEAR(rigger.at("at_count").at("ball_depth_m").at("median"), 25, 2e-6);
    for (const json& lure : rigger.at("at_count").at("lures")) ExpectValues(lure, {"depth_m"});
  }
  const json& lures = answer.at("riggers").at(1).at("at_count").at("lures");
  ASSERT_EQ(lures.size(), 2u);
  EXPECT_EQ(lures.at(1).at("clip"), "stacked");
  EXPECT_GT(lures.at(0).at("depth_m").at("median"), lures.at(1).at("depth_m").at("median"));
}

// Between ball and boom tip, a clip trails less than the ball and more than nothing.
TEST(DepthJson, AClipTrailsLessThanItsBall) {
  const json answer = Ask(DepthOf(30, 1.2), "depth");
  for (const json& rigger : answer.at("riggers")) {
    const double ball_m = rigger.at("ball").at("trail_m").at("median");
    for (const json& clip : rigger.at("clips")) {
      EXPECT_GT(clip.at("trail_m").at("median"), 0);
      EXPECT_LT(clip.at("trail_m").at("median"), ball_m);
    }
  }
}

TEST(CountJson, OutOfReachHasNoCountButRemedies) {
  CountRequest request;
  request.rig.rig = TestRig();
  request.rig.rigger = "starboard";
  request.sea = TestSea(1.2);
  request.depth_m = 85;
  request.of = plan::DepthOf::kLure;
  request.clip = "stacked";
  const json rigger = Ask(request, "count").at("riggers").at(0);
  EXPECT_EQ(rigger.at("reachable"), false);
  EXPECT_TRUE(rigger.at("count_m").is_null());
  EXPECT_TRUE(rigger.at("at_count").is_null());
  EXPECT_EQ(rigger.at("of"), "lure");
  EXPECT_EQ(rigger.at("clip"), "stacked");
  EXPECT_LT(rigger.at("reach_depth_m").at("median"), 85);
  ASSERT_FALSE(rigger.at("remedies").empty());
  for (const json& remedy : rigger.at("remedies")) {
    ExpectKeys(remedy, {"what", "value", "unit", "text"});
    EXPECT_EQ(remedy.at("value").is_null(), remedy.at("what") == "no_flasher");
  }
}

TEST(CardJson, HoldsEveryKeyBySpeedThenCount) {
  CardRequest request;
  request.rig.rig = TestRig();
  request.speeds_mps = {1.0, 1.4};
  request.counts_m = {0.5, 10, 30};
  const json answer = Ask(request, "card");
  EXPECT_THAT(answer.at("axes"), ElementsAre("speed", "count"));
  EXPECT_THAT(answer.at("speeds_mps"), ElementsAre(1.0, 1.4));
  EXPECT_THAT(answer.at("counts_m"), ElementsAre(0.5, 10, 30));
  for (const char* key : {"ball_depth_m", "lure_depth_m"}) {
    ASSERT_EQ(answer.at(key).size(), 2u);
    for (const json& row : answer.at(key)) {
      ASSERT_EQ(row.size(), 3u);
      // At half a metre the clip is above the water: an empty cell.
      EXPECT_TRUE(row.at(0).is_null());
      ExpectValue(row.at(1));
      ExpectValue(row.at(2));
    }
  }
  // Slower is deeper.
  EXPECT_GT(answer.at("ball_depth_m").at(0).at(2).at("median"),
            answer.at("ball_depth_m").at(1).at(2).at("median"));
  ASSERT_EQ(answer.at("riggers").size(), 2u);
  EXPECT_EQ(answer.at("riggers").at(0).at("ball_depth_m"), answer.at("ball_depth_m"));
  EXPECT_EQ(answer.at("riggers").at(1).at("lures").size(), 2u);
}

TEST(CompareJson, HoldsEveryKey) {
  CompareRequest request;
  request.rigs = {RigChoice{TestRig(), "port", false}, RigChoice{TestRig(), "port", false}};
  request.rigs[1].rig.riggers[0].ball = *tackle::MakeBall("ball-sphere-15lb");
  request.sea = TestSea(1.2);
  request.counts_m = {20, 40, 200};
  const json answer = Ask(request, "compare");
  EXPECT_TRUE(answer.at("rig").is_array());
  ASSERT_EQ(answer.at("rigs").size(), 2u);
  EXPECT_NE(answer.at("rigs").at(0).at("name"), answer.at("rigs").at(1).at("name"));
  for (const json& rig : answer.at("rigs")) {
    ExpectKeys(rig, {"name", "reach_depth_m", "depth_m", "counts_m", "tension_boom_N", "gains"});
    ExpectValue(rig.at("reach_depth_m"));
    EXPECT_THAT(rig.at("counts_m"), ElementsAre(20, 40, 200));
    ASSERT_EQ(rig.at("depth_m").size(), 3u);
    ASSERT_EQ(rig.at("tension_boom_N").size(), 3u);
    ExpectValue(rig.at("depth_m").at(1));
    ExpectValue(rig.at("tension_boom_N").at(1));
    // More than the line on the reel.
    EXPECT_TRUE(rig.at("depth_m").at(2).is_null());
    for (const json& gain : rig.at("gains")) ExpectKeys(gain, {"what", "depth_m", "text"});
  }
  const auto at_40 = [&](std::size_t rig) {
    return answer.at("rigs").at(rig).at("depth_m").at(1).at("median").get<double>();
  };
  EXPECT_GT(at_40(1), at_40(0)) << "a heavier ball rides deeper";
}

// A name is written as it is, whatever letters it has, and broken ones do no harm.
TEST(Json, NamesAreEscaped) {
  DepthRequest request = DepthOf(30, 1.2);
  request.rig.rig.name = "a \"b\"\n\x1b \xff";
  const json answer = Ask(request, "depth");
  EXPECT_EQ(answer.at("rig"), "a \"b\"\n\x1b \xEF\xBF\xBD");
}

}  // namespace
}  // namespace offplumb::answers
