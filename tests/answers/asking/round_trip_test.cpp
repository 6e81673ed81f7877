// An answer's inputs, sent back as a request, give the same answer.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "answers/asking/ask.h"
#include "tests/answers/questions/example_rigs.h"

namespace offplumb::answers {
namespace {

using Json = nlohmann::json;

/// Every text is TestRig; "fresh" has a water of its own.
RigTexts TestTexts() {
  RigTexts texts;
  texts.read = [](std::string_view text) -> Expected<RigText> {
    RigText rig{TestRig(), true, {3, 9}};
    if (text == "fresh") rig.rig.water = water::UsualFreshWater();
    return rig;
  };
  return texts;
}

/// Bearings pass through radians and back, currents through north and east: a last digit, which the
/// solver carries on.
constexpr double kLastDigits = 1e-9;

void ExpectSame(const Json& a, const Json& b, const std::string& path) {
  ASSERT_EQ(a.type(), b.type()) << path;
  if (a.is_number()) {
    const double size = std::max(1.0, std::abs(a.get<double>()));
    EXPECT_NEAR(a.get<double>(), b.get<double>(), kLastDigits * size) << path;
  } else if (a.is_structured()) {
    ASSERT_EQ(a.size(), b.size()) << path;
    for (const auto& [key, value] : a.items()) {
      ASSERT_TRUE(b.is_array() || b.contains(key)) << path << "." << key;
      ExpectSame(value, b.is_array() ? b[std::stoul(key)] : b.at(key), path + "." + key);
    }
  } else {
    EXPECT_EQ(a, b) << path;
  }
}

Json Asked(const Json& request) {
  const Json answer = Json::parse(Ask(request.dump(), TestTexts()));
  EXPECT_FALSE(answer.contains("problem")) << answer.dump(1);
  return answer;
}

/// Asks, sends the inputs back with the rig put to them again, and compares.
void ExpectRoundTrip(const Json& request) {
  const Json first = Asked(request);
  ASSERT_TRUE(first.contains("inputs"));
  Json again = first.at("inputs");
  for (const char* key : {"question", "rig_toml", "rigs_toml"}) {
    if (request.contains(key)) again[key] = request.at(key);
  }
  ExpectSame(first, Asked(again), std::string(request.at("question")));
}

/// A sea with everything in it.
Json OverGround(Json request) {
  request.update({{"speed_kind", "over_ground"},
                  {"course_deg", 350.5},
                  {"heading_deg", 12},
                  {"water", {{"temperature_C", 8}, {"salinity_g_per_kg", 20}}},
                  {"current",
                   {{"shape", "steps"},
                    {"points",
                     {{{"depth_m", 0}, {"speed_mps", 0.3}, {"toward_deg", 200}},
                      {{"depth_m", 12.5}, {"speed_mps", 0}, {"toward_deg", 0}},
                      {{"depth_m", 20}, {"speed_mps", 0.1}, {"toward_deg", 285}}}}}}});
  return request;
}

TEST(RoundTrip, Depth) {
  const Json request = {{"question", "depth"}, {"rig_toml", "x"}, {"count_m", 30},
                        {"speed_mps", 1.2},    {"draws", 8},      {"units", "metric"}};
  ExpectRoundTrip(request);
  ExpectRoundTrip(OverGround(request));
  Json drawn = request;
  drawn.update({{"shape", true}, {"sheet", true}, {"rigger", "port"}, {"ball_mass_kg", 6.5}});
  ExpectRoundTrip(drawn);
}

TEST(RoundTrip, OnlyTheGroundSpeedIsKnown) {
  ExpectRoundTrip({{"question", "depth"},
                   {"rig_toml", "x"},
                   {"count_m", 30},
                   {"speed_mps", 1.2},
                   {"draws", 8},
                   {"speed_kind", "over_ground"}});
}

// The water is then told, and is the rig's own: no reason for a remark.
TEST(RoundTrip, ARigWithAWaterOfItsOwn) {
  ExpectRoundTrip({{"question", "depth"},
                   {"rig_toml", "fresh"},
                   {"count_m", 20},
                   {"speed_mps", 1},
                   {"bands", false}});
}

TEST(RoundTrip, Count) {
  const Json request = {{"question", "count"}, {"rig_toml", "x"}, {"depth_m", 22},
                        {"speed_mps", 1.1},    {"draws", 4},      {"units", "knots"}};
  ExpectRoundTrip(request);
  Json lure = OverGround(request);
  lure.update({{"of", "lure"}, {"clip", "stacked"}, {"rigger", "starboard"}});
  ExpectRoundTrip(lure);
}

TEST(RoundTrip, Card) {
  const Json request = {{"question", "card"}, {"rig_toml", "x"}, {"bands", false}};
  ExpectRoundTrip(request);
  Json own = OverGround(request);
  own.update({{"speeds_mps", {0.9, 1.3}},
              {"counts_m", {10, 20, 60}},
              {"sheet", true},
              {"date", "2026-07-01"}});
  ExpectRoundTrip(own);
}

TEST(RoundTrip, Compare) {
  const Json request = {
      {"question", "compare"}, {"rigs_toml", {"x", "fresh"}}, {"speed_mps", 1.2}, {"bands", false}};
  ExpectRoundTrip(request);
  // One rig is in fresh water, the other in salt: neither may be told as that of both.
  EXPECT_TRUE(Asked(request).at("inputs").at("water").is_null());
  Json own = request;
  own.update({{"counts_m", {20, 55}}, {"gains_count_m", 33}, {"rigger", "port"}});
  ExpectRoundTrip(own);
}

TEST(RoundTrip, TwoWay) {
  const Json out = {{"ground_speed_mps", 1.4}, {"course_deg", 40}, {"seconds", 90}};
  Json back = {{"ground_speed_mps", 1.0}, {"course_deg", 222}, {"seconds", 80}};
  ExpectRoundTrip({{"question", "two_way"}, {"legs", {out, back}}});
  back.update({{"log_mps", 1.3}, {"spread_mps", 0.05}, {"heading_deg", 219}});
  ExpectRoundTrip(
      {{"question", "two_way"}, {"legs", {out, back}}, {"bands", false}, {"units", "metric"}});
}

}  // namespace
}  // namespace offplumb::answers
