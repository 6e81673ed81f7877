// The JSON door: what is said to requests, good and bad.
#include "answers/asking/ask.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "answers/questions/depth.h"
#include "tests/answers/questions/example_rigs.h"

namespace offplumb::answers {
namespace {

using ::testing::HasSubstr;
using Json = nlohmann::json;

/// A stand-in for the reader of rig files: "rig" is TestRig, everything else has a fault in line 7.
RigTexts TestTexts() {
  RigTexts texts;
  texts.read = [](std::string_view text) -> Expected<RigText> {
    if (text == "rig") return RigText{TestRig(), true, {3, 9}};
    return tl::unexpected(
        Problem{ProblemKind::kBadInput, "ball", "The ball is missing.", "Give one.", {}, 7});
  };
  texts.describe = [](std::string_view text) {
    return Reply{"{\"described\":\"" + std::string(text) + "\"}", std::nullopt};
  };
  texts.write = [](const JsonValue& document) {
    JsonWriter json;
    WriteJson("document", document, json);
    return Reply{json.Take(), std::nullopt};
  };
  return texts;
}

Json AskFor(const Json& request) { return Json::parse(Ask(request.dump(), TestTexts())); }

Json DepthRequestJson() {
  return {{"question", "depth"}, {"rig_toml", "rig"}, {"count_m", 30},
          {"speed_mps", 1.2},    {"bands", false},    {"units", "feet"}};
}

Json With(Json request, const std::string& key, const Json& value) {
  request[key] = value;
  return request;
}

/// The problem of a request that must have one.
Json ProblemOf(const Json& request) {
  const Json answer = AskFor(request);
  EXPECT_TRUE(answer.contains("problem")) << answer.dump(1);
  return answer.value("problem", Json::object());
}

TEST(Ask, AnswersDepthAsTheQuestionItselfDoes) {
  const Json answer = AskFor(DepthRequestJson());
  DepthRequest request;
  request.rig.rig = TestRig();
  request.sea = TestSea(1.2);
  request.wanted.bands = false;
  request.count_m = 30;
  const auto direct = Answer(request);
  ASSERT_TRUE(direct);
  ASSERT_EQ(answer["riggers"].size(), 2u);
  EXPECT_EQ(answer["riggers"][0]["ball"]["depth_m"]["median"].get<double>(),
            direct->riggers[0].figures.ball_depth_m.median);
  EXPECT_THAT(answer["notes"].dump(), HasSubstr("invented"));
}

TEST(Ask, AnswersInputsSentBackGiveTheSameAnswer) {
  Json request = With(DepthRequestJson(), "bands", true);
  request["draws"] = 8;
  request["current"] = {{"shape", "linear"},
                        {"points",
                         {{{"depth_m", 0}, {"speed_mps", 0.2}, {"toward_deg", 30}},
                          {{"depth_m", 20}, {"speed_mps", 0.1}, {"toward_deg", 200}}}}};
  request["heading_deg"] = 45;
  const Json first = AskFor(request);
  ASSERT_TRUE(first.contains("inputs")) << first.dump(1);
  Json again = first["inputs"];
  again["question"] = "depth";
  again["rig_toml"] = "rig";
  const Json second = AskFor(again);
  ASSERT_TRUE(second.contains("riggers")) << second.dump(1);
  // Bearings pass through radians and back: a last digit.
  const double a = first["riggers"][1]["lures"][0]["depth_m"]["high"];
  const double b = second["riggers"][1]["lures"][0]["depth_m"]["high"];
  EXPECT_NEAR(a, b, 1e-9);
}

TEST(Ask, OneRiggerWithAnotherBall) {
  Json request = With(DepthRequestJson(), "rigger", "PORT");
  const double light = AskFor(request)["riggers"][0]["ball"]["depth_m"]["median"];
  request["ball_mass_kg"] = 9;
  const Json heavy = AskFor(request);
  ASSERT_EQ(heavy["riggers"].size(), 1u);
  EXPECT_GT(heavy["riggers"][0]["ball"]["depth_m"]["median"].get<double>(), light + 0.5);
}

TEST(Ask, ShapeEndsWhereTheFiguresSay) {
  const Json rigger = AskFor(With(DepthRequestJson(), "shape", true))["riggers"][1];
  const Json& shape = rigger["shape"];
  EXPECT_EQ(shape["clips"].size(), 2u);
  // Points are rounded to the millimetre.
  EXPECT_NEAR(shape["ball"][2].get<double>(), rigger["ball"]["depth_m"]["median"].get<double>(),
              1e-3);
  EXPECT_NEAR(shape["boom_tip"][0].get<double>() - shape["ball"][0].get<double>(),
              rigger["ball"]["trail_m"]["median"].get<double>(), 2e-3);
  EXPECT_NEAR(shape["clips"][1]["lure"][2].get<double>(),
              rigger["lures"][1]["depth_m"]["median"].get<double>(), 1e-3);
  EXPECT_TRUE(shape["clips"][1]["flasher"].is_null());
  EXPECT_LE(shape["main_line"].size(), 40u);
  EXPECT_NEAR(shape["main_line"][0][2].get<double>(), -1.0, 1e-3);
}

TEST(Ask, FewerDrawsMakeARoughBandOfTheSameMedian) {
  Json request = With(DepthRequestJson(), "bands", true);
  const Json full = AskFor(request)["riggers"][0];
  request["draws"] = 8;
  const Json rough = AskFor(request)["riggers"][0];
  EXPECT_EQ(full["draws"], 128);
  EXPECT_EQ(rough["draws"], 8);
  EXPECT_EQ(full["ball"]["depth_m"]["median"], rough["ball"]["depth_m"]["median"]);
  EXPECT_NEAR(full["ball"]["depth_m"]["low"].get<double>(),
              rough["ball"]["depth_m"]["low"].get<double>(), 2.0);
}

TEST(Ask, CardCarriesItsSheet) {
  const Json answer = AskFor({{"question", "card"},
                              {"rig_toml", "rig"},
                              {"bands", false},
                              {"sheet", true},
                              {"date", "2026-07-01"},
                              {"counts_m", {20, 30, 40}},
                              {"speeds_mps", {1.0, 1.3}}});
  ASSERT_TRUE(answer.contains("riggers")) << answer.dump(1);
  const Json& sheet = answer["riggers"][0]["sheet"];
  EXPECT_GT(sheet["width_mm"].get<double>(), 150);
  EXPECT_GT(sheet["texts"].size(), 20u);
  EXPECT_GT(sheet["lines"].size(), 3u);
  EXPECT_THAT(sheet["texts"].dump(), HasSubstr("2026-07-01"));
  for (const Json& text : sheet["texts"]) {
    EXPECT_GE(text["x_mm"].get<double>(), 0);
    EXPECT_LE(text["x_mm"].get<double>(), sheet["width_mm"].get<double>());
  }
}

TEST(Ask, CountThatCannotBeIsAnAnswerWithItsKind) {
  const Json request = {{"question", "count"}, {"rig_toml", "rig"}, {"depth_m", 300},
                        {"of", "lure"},        {"speed_mps", 1.2},  {"bands", false}};
  const Reply reply = ReplyTo(request.dump(), TestTexts());
  EXPECT_EQ(reply.problem, ProblemKind::kCannotBeDone);
  const Json answer = Json::parse(reply.json);
  EXPECT_FALSE(answer["riggers"][0]["reachable"].get<bool>());
  EXPECT_LT(answer["riggers"][0]["reach_depth_m"]["median"].get<double>(), 300);
  EXPECT_TRUE(answer["riggers"][0]["count_m"].is_null());
}

TEST(Ask, AboutNamesUnitsLimitsAndTheCatalogue) {
  const Json about = AskFor({{"question", "about"}});
  EXPECT_EQ(about["shown"]["feet"]["depth"]["unit"], "ft");
  EXPECT_DOUBLE_EQ(about["shown"]["feet"]["depth"]["si"].get<double>(), 0.3048);
  EXPECT_EQ(about["shown"]["feet"]["force"]["whole_from"], 10);
  EXPECT_EQ(about["shown"]["metric"]["speed"]["digits"], 2);
  EXPECT_FALSE(about["catalogue"]["balls"].empty());
  EXPECT_FALSE(about["cautions"]["depth"].empty());
}

TEST(Ask, QuantityReadsAndRefuses) {
  Json request = {
      {"question", "quantity"}, {"text", "90 ft"}, {"dimension", "length"}, {"subject", "depth"}};
  EXPECT_DOUBLE_EQ(AskFor(request)["value"].get<double>(), 27.432);
  EXPECT_THAT(ProblemOf(With(request, "text", "90")).dump(), HasSubstr("ft, in, m"));
  request["low"] = 1;
  request["high"] = 20;
  EXPECT_THAT(ProblemOf(request)["message"].get<std::string>(), HasSubstr("out of range"));
}

TEST(Ask, RigTextsGoToTheirReader) {
  EXPECT_EQ(AskFor({{"question", "rig_read"}, {"rig_toml", "words"}})["described"], "words");
  const Json document = {{"name", "x"}};
  EXPECT_EQ(AskFor({{"question", "rig_write"}, {"document", document}})["document"], document);
}

TEST(Ask, AFaultInARigTellsItsLine) {
  const Json problem = ProblemOf(With(DepthRequestJson(), "rig_toml", "broken"));
  EXPECT_EQ(problem["kind"], "bad_input");
  EXPECT_EQ(problem["line"], 7);
}

/// A request with one thing wrong, and what the message must name.
struct Wrong {
  std::string key;
  Json value;
  std::string names;
};

class AskRefuses : public ::testing::TestWithParam<Wrong> {};

TEST_P(AskRefuses, NamesTheKeyAndWhatWouldDo) {
  const Json problem = ProblemOf(With(DepthRequestJson(), GetParam().key, GetParam().value));
  EXPECT_EQ(problem["kind"], "bad_input");
  EXPECT_THAT(problem.dump(), HasSubstr(GetParam().names));
}

INSTANTIATE_TEST_SUITE_P(
    Keys, AskRefuses,
    ::testing::Values(
        Wrong{"count_m", -1, "0 to 1000 m"}, Wrong{"count_m", "30 m", "count_m"},
        Wrong{"speed_mps", nullptr, "speed_mps"}, Wrong{"speed_mps", 40, "speed_mps"},
        Wrong{"units", "cubits", "feet, knots or metric"}, Wrong{"bands", "yes", "true or false"},
        Wrong{"draws", 0, "1 to 128"}, Wrong{"draws", 2.5, "draws"},
        Wrong{"rigger", "nobody", "port"}, Wrong{"ball_mass_kg", -2, "0.1 to 100 kg"},
        Wrong{"nonsense", 1, "nonsense"}, Wrong{"counts_m", Json::array({1}), "card and compare"},
        Wrong{"speed_kind", "sideways", "through_water"}, Wrong{"rig_toml", nullptr, "rig_toml"},
        Wrong{"current", {{"shape", "steps"}, {"points", Json::array()}}, "no points"},
        Wrong{"current", {{"shape", "round"}, {"points", Json::array()}}, "steps or linear"},
        Wrong{"water", {{"temperature_C", 99}, {"salinity_g_per_kg", 1}}, "0 to 40 C"}));

TEST(Ask, AnyBytesAreSafe) {
  for (const std::string text :
       {"", "x", "[", "{", "null", "[1]", "{\"question\":", "{\"question\":5}", "\xff\xfe", "{}",
        "{\"question\":\"depth\"}", "{\"question\":\"soup\"}"}) {
    const Json answer = Json::parse(Ask(text, TestTexts()));
    EXPECT_EQ(answer["problem"]["kind"], "bad_input") << text;
    EXPECT_FALSE(answer["problem"]["message"].get<std::string>().empty());
  }
  const std::string deep(100000, '[');
  EXPECT_EQ(Json::parse(Ask(deep, TestTexts()))["problem"]["kind"], "bad_input");
}

TEST(Remembering, ReadsTheSameTextOnce) {
  int reads = 0;
  const RigReader reader = Remembering([&reads](std::string_view) -> Expected<RigText> {
    ++reads;
    return RigText{TestRig(), false, {1, 2}};
  });
  for (int i = 0; i < 3; ++i) ASSERT_TRUE(reader("one"));
  EXPECT_EQ(reads, 1);
  for (std::size_t i = 0; i < kRememberedRigs; ++i) ASSERT_TRUE(reader("rig " + std::to_string(i)));
  ASSERT_TRUE(reader("one"));
  EXPECT_EQ(reads, 2 + static_cast<int>(kRememberedRigs));
}

}  // namespace
}  // namespace offplumb::answers
