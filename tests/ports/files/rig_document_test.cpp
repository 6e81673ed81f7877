#include "ports/files/rig_document.h"

#include <filesystem>
#include <string>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "engine/plan/alter.h"
#include "ports/files/rig_file.h"
#include "ports/files/text_file.h"
#include "tests/ports/files/ask_rig.h"
#include "tests/ports/files/same_rig.h"

namespace offplumb::ports {
namespace {

using ::testing::HasSubstr;
using Json = nlohmann::ordered_json;
using Pointer = Json::json_pointer;

std::string Example(const std::string& name) {
  return ReadTextFile(fmt::format("{}/examples/rigs/{}.toml", OFFPLUMB_SOURCE_DIR, name)).value();
}

Json Read(std::string_view toml) { return Json::parse(ReplyToRigRead(toml).json); }
Json Write(const Json& document) { return Json::parse(testing::WriteRigJson(document.dump())); }

Json TwoRiggers() { return Read(Example("two-riggers"))["document"]; }

TEST(RigDocument, EveryExampleComesBackTheSame) {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(
           std::filesystem::path(OFFPLUMB_SOURCE_DIR) / "examples/rigs")) {
    SCOPED_TRACE(entry.path().string());
    const std::string text = ReadTextFile(entry.path().string()).value();
    const Json read = Read(text);
    ASSERT_FALSE(read.contains("problem")) << read;
    const std::string canonical = read["toml"];
    const auto before = ReadRigText(text, "t");
    const auto after = ReadRigText(canonical, "t");
    ASSERT_TRUE(before && after);
    EXPECT_TRUE(testing::Same(before->rig, after->rig));
    EXPECT_EQ(before->invented, after->invented);
    EXPECT_EQ(Read(canonical), read);
    Json written = Write(read["document"]);
    EXPECT_EQ(written["question"], "rig_write");
    written["question"] = "rig_read";
    EXPECT_EQ(written, read);
    ++count;
  }
  EXPECT_GE(count, 6);
}

TEST(RigDocument, KeepsWhatAPersonWrote) {
  const Json read = Read(R"(
[[riggers]]  # A remark.
line.from = 'wire-1x7-0.8mm'
name = "Bäckbord \"1\""
boom_tip.up = "3.30 feet"
ball = { weight = "12.0 pounds", eye_to_centre = "6 cm" }
)");
  ASSERT_FALSE(read.contains("problem")) << read;
  EXPECT_EQ(read["document"]["riggers"][0]["boom_tip"]["up"], "3.30 feet");
  EXPECT_EQ(read["toml"], R"(# Written by Offplumb. Every key: docs/rig-file.md

[[riggers]]
name = "Bäckbord \"1\""
boom_tip = { up = "3.30 feet" }
line = { from = "wire-1x7-0.8mm" }
ball = { weight = "12.0 pounds", eye_to_centre = "6 cm" }
)");
  EXPECT_EQ(read["facts"]["name"], kUnnamedRig);
}

TEST(RigDocument, TellsTheFacts) {
  const Json facts = Read(Example("two-riggers"))["facts"];
  const auto file = ReadRigText(Example("two-riggers"), "t");
  ASSERT_TRUE(file);
  EXPECT_EQ(facts["name"], "Spindrift Sound, two riggers");
  EXPECT_EQ(facts["invented"], true);
  ASSERT_EQ(facts["riggers"].size(), 2u);
  const Json& rigger = facts["riggers"][1];
  const tackle::Rigger& read = file->rig.riggers[1];
  EXPECT_EQ(rigger["name"], "starboard");
  EXPECT_EQ(rigger["boom_tip"], Json({-0.6096, 1.2192, -1.00584}));
  EXPECT_EQ(rigger["ball"]["name"], read.ball.name);
  EXPECT_EQ(rigger["ball"]["mass_kg"], read.ball.mass_kg);
  EXPECT_EQ(rigger["line"]["name"], read.line.name);
  EXPECT_EQ(rigger["line"]["diameter_m"], 0.0005);
  EXPECT_EQ(rigger["line_on_reel_m"], 91.44);
  EXPECT_NEAR(rigger["largest_boom_angle_deg"].get<double>(), 65, 1e-12);
  ASSERT_EQ(rigger["clips"].size(), 2u);
  const Json& low = rigger["clips"][0];
  EXPECT_EQ(low["name"], "low");
  EXPECT_EQ(low["path"], "riggers[1].clips[0]");
  EXPECT_EQ(low["above_ball_m"], read.clips[0].above_ball_m);
  EXPECT_EQ(low["lure"], read.clips[0].trail.lure.name);
  EXPECT_EQ(low["flasher"], read.clips[0].trail.flasher->name);
  EXPECT_EQ(low["setback_m"], read.clips[0].trail.setback_m);
  EXPECT_EQ(low["leader_m"], read.clips[0].trail.leader_m);
  EXPECT_EQ(rigger["clips"][1]["flasher"], nullptr);
  EXPECT_EQ(rigger["clips"][1]["leader_m"], 0);
}

TEST(RigDocument, FactsFindTheirClipInTheDocument) {
  Json document = TwoRiggers();
  std::swap(document["riggers"][1]["clips"][0], document["riggers"][1]["clips"][1]);
  const Json answer = Write(document);
  ASSERT_FALSE(answer.contains("problem")) << answer;
  EXPECT_EQ(answer["document"]["riggers"][1]["clips"][0]["name"], "stacked");
  const Json& clips = answer["facts"]["riggers"][1]["clips"];
  EXPECT_EQ(clips[0]["name"], "low");
  EXPECT_EQ(clips[0]["path"], "riggers[1].clips[1]");
  EXPECT_EQ(clips[1]["path"], "riggers[1].clips[0]");
}

TEST(RigDocument, SaysHowFarABallMayBeDragged) {
  struct Case {
    Json ball;
    double mass, smallest, largest;
  };
  constexpr double kPound = 0.45359237;
  for (const Case& tested :
       {Case{{{"weight", "12 lb"}}, 12, 6, 20}, Case{{{"weight", "4 lb"}}, 4, 4, 20},
        Case{{{"weight", "30 lb"}}, 30, 6, 30}}) {
    Json document = TwoRiggers();
    document["riggers"][0]["ball"] = tested.ball;
    const Json ball = Write(document)["facts"]["riggers"][0]["ball"];
    EXPECT_NEAR(ball["mass_kg"].get<double>(), tested.mass * kPound, 1e-9);
    EXPECT_NEAR(ball["smallest_mass_kg"].get<double>(), tested.smallest * kPound, 1e-9);
    EXPECT_NEAR(ball["largest_mass_kg"].get<double>(), tested.largest * kPound, 1e-9);
  }
  // Of a ball of constants alone it is the lead of that weight.
  const Json engineer = Read(Example("engineer"))["facts"]["riggers"][0];
  const auto file = ReadRigText(Example("engineer"), "t");
  EXPECT_EQ(engineer["ball"]["mass_kg"], plan::BallMass_kg(file->rig.riggers[0].ball));
  EXPECT_GT(engineer["ball"]["mass_kg"], 5);
}

TEST(RigDocument, AnEditedFigureIsReadBack) {
  Json document = TwoRiggers();
  document["riggers"][1]["clips"][1]["setback"] = "25 ft";
  document["riggers"][1]["line"] = "wire-1x7-0.84mm";  // The short form of a part.
  document["riggers"][1]["largest_angle"] = "50 deg";
  document["riggers"][0]["line_on_reel"] = nullptr;
  document["riggers"][0]["clips"] = Json::array();
  const Json answer = Write(document);
  ASSERT_FALSE(answer.contains("problem")) << answer;
  const Json& facts = answer["facts"]["riggers"];
  EXPECT_NEAR(facts[1]["clips"][1]["setback_m"].get<double>(), 7.62, 1e-12);
  EXPECT_NEAR(facts[1]["line"]["diameter_m"].get<double>(), 0.84e-3, 1e-15);
  EXPECT_EQ(answer["document"]["riggers"][1]["line"], Json({{"from", "wire-1x7-0.84mm"}}));
  EXPECT_EQ(facts[0]["line_on_reel_m"], tackle::kLineOnReel_m);
  EXPECT_EQ(facts[0]["clips"].size(), 0u);
  EXPECT_FALSE(answer["document"]["riggers"][0].contains("line_on_reel"));
}

/// One slip in a form: where, what is put there (null takes the key away), what is said of it.
struct Slip {
  std::string_view where;
  std::string_view value;  ///< JSON.
  std::string_view path;
  std::string_view subject;
  std::string_view message;
};

void PrintTo(const Slip& slip, std::ostream* stream) { *stream << slip.where << slip.value; }

class RigDocumentSlip : public ::testing::TestWithParam<Slip> {};

TEST_P(RigDocumentSlip, NamesTheFieldAtFault) {
  const Slip& slip = GetParam();
  Json document = TwoRiggers();
  document[Pointer(std::string(slip.where))] = Json::parse(slip.value);
  const Json answer = Write(document);
  EXPECT_EQ(answer["question"], "rig_write");
  EXPECT_FALSE(answer.contains("toml"));
  const Json problem = answer["problem"];
  ASSERT_TRUE(problem.is_object()) << answer;
  EXPECT_EQ(problem["kind"], "bad_input");
  EXPECT_EQ(problem["path"], slip.path);
  EXPECT_EQ(problem["subject"], slip.subject);
  EXPECT_THAT(problem["message"].get<std::string>(), HasSubstr(std::string(slip.message)));
  EXPECT_NE(problem["remedy"], "");
  EXPECT_EQ(problem["line"], 0);
}

INSTANTIATE_TEST_SUITE_P(
    All, RigDocumentSlip,
    ::testing::Values(
        Slip{"/riggers/1/line_on_reel", "300", "riggers[1].line_on_reel",
             "rigger \"starboard\": line_on_reel", "300 has no unit"},
        Slip{"/riggers/1/line_on_reel", "\"9000 m\"", "riggers[1].line_on_reel",
             "rigger \"starboard\": line_on_reel", "\"9000 m\" is out of range: it must be from"},
        Slip{"/riggers/0/ball/weight", "\"12 lb\"", "riggers[0].ball.weight",
             "rigger \"port\": ball.weight", "\"from\" already says"},
        Slip{"/riggers/0/ball", "null", "riggers[0].ball", "rigger \"port\": ball",
             "\"ball\" is missing"},
        Slip{"/riggers/1/name", "\"\"", "riggers[1].name", "rigger 2: name", "\"name\" is missing"},
        Slip{"/riggers/1/name", "\"Port\"", "riggers[1].name", "rigger \"Port\": name",
             "Two riggers are called"},
        Slip{"/riggers/1/boom_tip/up", "\"-1 ft\"", "riggers[1].boom_tip.up",
             "rigger \"starboard\": boom_tip.up", "\"-1 ft\" is out of range"},
        Slip{"/riggers/1/line/normal_drag_coefficient", "99",
             "riggers[1].line.normal_drag_coefficient",
             "rigger \"starboard\": line.normal_drag_coefficient", "from 0.01 to 10"},
        Slip{"/riggers/1/line/strumming", "\"yes\"", "riggers[1].line.strumming",
             "rigger \"starboard\": line.strumming", "true or false"},
        Slip{"/riggers/1/counter_marks",
             R"([{"reads":"50 ft","measured":"49 ft"},{"reads":"9 ft","measured":"60 ft"}])",
             "riggers[1].counter_marks[1].reads", "rigger \"starboard\", counter mark 2: reads",
             "9 ft follows 50 ft"},
        Slip{"/riggers/1/counter_marks", R"([{"reads":"5 ft","measured":"5 ft"}, null])",
             "riggers[1].counter_marks[1]", "riggers[1].counter_marks[1]", "holds null"},
        Slip{"/riggers/1/clips/1/setback", "\"2 furlongs\"", "riggers[1].clips[1].setback",
             "rigger \"starboard\", clip \"stacked\": setback", "not a unit of length"},
        // The clips stand as they are sent, though the second is now the lowest.
        Slip{"/riggers/1/clips/1",
             R"({"above_ball":"1 ft","rod_tip":{"up":"2 m"},"fishing_line":"nylon-0.5mm",
                 "setback":"1 mile","lure":"hoochie"})",
             "riggers[1].clips[1].setback", "rigger \"starboard\", clip 2: setback",
             "not a unit of length"},
        Slip{"/riggers/1/clips/0/flasher/pull", "\"1 lb\"", "riggers[1].clips[0].flasher.pull",
             "rigger \"starboard\", clip \"low\": flasher.pull", "not a pull at a speed"},
        Slip{"/riggers/1/clips/1/lure", "\"hoochee\"", "riggers[1].clips[1].lure.from",
             "rigger \"starboard\", clip \"stacked\": lure.from", "no lure \"hoochee\""},
        Slip{"/riggers/1/clips/1/lures", "\"hoochie\"", "riggers[1].clips[1].lures",
             "rigger \"starboard\", clip \"stacked\": lures", "There is no key \"lures\" here"},
        Slip{"/riggers/1/clips", "{}", "riggers[1].clips", "rigger \"starboard\": clips",
             "one bracket"},
        Slip{"/riggers", "[]", "riggers", "riggers", "There are 0 riggers"},
        Slip{"/riggers/1", "\"x\"", "riggers[1]", "rigger 2", "must be a table"},
        Slip{"/water", "{\"temperature\":\"60 C\",\"salinity\":\"30 psu\"}", "water.temperature",
             "water.temperature", "from 0 C to 40 C"},
        Slip{"/a: [b]. c", "7", "a: [b]. c", "a: [b]. c", "There is no key"},
        // Refused before it is read as a rig: the path is that of the line.
        Slip{"/riggers/1/odd", "[1.5,1.5,1.5,1.5,1.5,1.5,1.5,1.5,1.5,1.5,1.5,1.5,1.5]",
             "riggers[1].odd", "file", "more than 12 dots"}));

TEST(RigDocument, AFaultInATextHasItsLineAndKey) {
  std::string text = Example("one-rigger");
  text.replace(text.find("\"20 ft\""), 7, "\"20\"");
  const Json answer = Read(text);
  EXPECT_EQ(answer["question"], "rig_read");
  const Json& problem = answer["problem"];
  EXPECT_EQ(problem["path"], "riggers[0].clips[0].setback");
  EXPECT_EQ(problem["line"], ReadRigText(text, "t").error().line);
  EXPECT_EQ(problem["message"], ReadRigText(text, "t").error().message);
  EXPECT_GT(problem["line"], 10);

  const Json broken = Read("name = \"x\"\nriggers = [ \n")["problem"];
  EXPECT_EQ(broken["path"], nullptr);
  EXPECT_GT(broken["line"], 0);
}

TEST(RigDocument, RefusesAHugeText) {
  const Json problem = Read("# " + std::string(kLargestTextFile_bytes, 'x'))["problem"];
  EXPECT_THAT(problem["message"].get<std::string>(), HasSubstr("1000002 bytes; at most 1000000"));
}

TEST(RigDocument, TextsOfAnyLettersComeBack) {
  Json document = TwoRiggers();
  const std::string name = "a\"b\\c\td\x7F\x01 \xE2\x80\x9Cquoted\xE2\x80\x9D [x] # }";
  document["name"] = name;
  document["riggers"][1]["name"] = name;
  const Json answer = Write(document);
  ASSERT_FALSE(answer.contains("problem")) << answer;
  EXPECT_EQ(answer["document"]["name"], name);
  EXPECT_EQ(answer["facts"]["name"], name);
  EXPECT_EQ(answer["facts"]["riggers"][1]["name"], name);
}

}  // namespace
}  // namespace offplumb::ports
