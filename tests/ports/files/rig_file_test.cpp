#include "ports/files/rig_file.h"

#include <cmath>
#include <filesystem>
#include <fstream>
#include <string>
#include <utility>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "answers/units/unit_table.h"
#include "engine/tackle/catalogue.h"
#include "engine/tow/loads.h"
#include "ports/files/rig_rules.h"
#include "ports/files/text_file.h"

namespace offplumb::ports {
namespace {

using testing::HasSubstr;

/// A sound rig of one rigger and one clip. The tests below break one line of it at a time.
constexpr std::string_view kRig = R"(name = "Test rig"
[water]
temperature = "10 C"
salinity = "30 psu"
[[riggers]]
name = "port"
boom_tip = { aft = "2 ft", port = "4 ft", up = "3 ft" }
line = { from = "wire-7x7-0.8mm" }
line_on_reel = "300 ft"
largest_angle = "60 deg"
ball = { from = "ball-sphere-12lb" }
counter_marks = [ { reads = "50 ft", measured = "47 ft" }, { reads = "100 ft", measured = "96 ft" } ]
[[riggers.clips]]
name = "low"
above_ball = "4 ft"
rod_tip = { ahead = "1 ft", port = "5 ft", up = "6 ft" }
rod_tip_tension = "3 lb"
fishing_line = { kind = "nylon", diameter = "0.55 mm" }
setback = "20 ft"
flasher = { from = "flasher-rotating-11in" }
leader = "42 in"
leader_line = "nylon-0.7mm"
lure = "hoochie"
)";

std::string With(std::string_view old_text, std::string_view new_text) {
  std::string rig(kRig);
  const std::size_t at = rig.find(old_text);
  EXPECT_NE(at, std::string::npos) << "the test's own text is wrong: " << old_text;
  return rig.replace(at, old_text.size(), new_text);
}

constexpr double kFoot = 0.3048;

TEST(RigFile, ReadsEveryPartInSi) {
  const auto file = ReadRigText(kRig, "test.toml");
  ASSERT_TRUE(file) << file.error().message;
  const tackle::Rig& rig = file->rig;
  EXPECT_EQ(rig.name, "Test rig");
  EXPECT_NEAR(rig.water->density_kg_per_m3, 1023.05, 0.01);  // EOS-80 at 10 C, 30
  ASSERT_EQ(rig.riggers.size(), 1u);
  const tackle::Rigger& rigger = rig.riggers[0];
  EXPECT_NEAR((rigger.boom_tip_m - tackle::Vector3d(-2, -4, -3) * kFoot).norm(), 0, 1e-12);
  EXPECT_DOUBLE_EQ(rigger.line.diameter_m, 0.8 / 1000);
  EXPECT_FALSE(rigger.line.constant_drag);
  EXPECT_DOUBLE_EQ(rigger.line_on_reel_m, 300 * kFoot);
  EXPECT_NEAR(rigger.largest_boom_angle_rad, std::acos(0.5), 1e-12);  // 60 degrees
  EXPECT_DOUBLE_EQ(rigger.ball.mass_kg, 12 * 0.45359237);
  ASSERT_EQ(rigger.marks.size(), 2u);
  EXPECT_DOUBLE_EQ(rigger.marks[1].measured_m, 96 * kFoot);
  ASSERT_EQ(rigger.clips.size(), 1u);
  const tackle::Clip& clip = rigger.clips[0];
  EXPECT_NEAR((clip.rod_tip_m - tackle::Vector3d(1, -5, -6) * kFoot).norm(), 0, 1e-12);
  EXPECT_NEAR(clip.rod_tip_tension_N, 13.3447, 1e-4);  // 3 lbf
  EXPECT_EQ(clip.fishing_line.kind, tackle::LineKind::kNylon);
  EXPECT_EQ(clip.trail.setback_line.name, clip.fishing_line.name);
  ASSERT_TRUE(clip.trail.flasher);
  EXPECT_DOUBLE_EQ(clip.trail.leader_m, 42 * 0.0254);
  EXPECT_EQ(clip.trail.lure.name, "hoochie, 4 in");
}

TEST(RigFile, TellsWhereThingsStand) {
  const auto file = ReadRigText(kRig, "test.toml");
  ASSERT_TRUE(file);
  EXPECT_EQ(file->LineOf("riggers[0].line_on_reel"), 9);
  EXPECT_EQ(file->LineOf("riggers[0].clips[0].setback"), 19);
  // What is not written stands where the part that lacks it stands.
  EXPECT_EQ(file->LineOf("riggers[0].clips[0].lure.weight"), 23);
  EXPECT_EQ(file->LineOf("nonsense"), 0);
}

TEST(RigFile, LeavesOutWhatHasADefault) {
  const auto file =
      ReadRigText(With("line_on_reel = \"300 ft\"\nlargest_angle = \"60 deg\"\n", ""), "t");
  ASSERT_TRUE(file) << file.error().message;
  EXPECT_DOUBLE_EQ(file->rig.riggers[0].line_on_reel_m, 400 * kFoot);
  EXPECT_NEAR(file->rig.riggers[0].largest_boom_angle_rad, 65 * std::acos(-1.0) / 180, 1e-12);
}

TEST(RigFile, SortsClipsFromTheLowestUp) {
  const std::string second = R"(
[[riggers.clips]]
name = "lowest"
above_ball = "0.5 m"
rod_tip = { up = "2 m" }
fishing_line = "nylon-0.55mm"
setback = "3 m"
lure = "spoon-small"
)";
  const auto file = ReadRigText(std::string(kRig) + second, "t");
  ASSERT_TRUE(file) << file.error().message;
  EXPECT_EQ(file->rig.riggers[0].clips[0].name, "lowest");
  EXPECT_EQ(file->rig.riggers[0].clips[1].name, "low");
  EXPECT_EQ(file->LineOf("riggers[0].clips[0].name"), 26);
  EXPECT_EQ(file->LineOf("riggers[0].clips[1].name"), 14);
  EXPECT_FALSE(file->rig.riggers[0].clips[0].trail.flasher);
}

TEST(RigFile, AStatedConstantReplacesCatalogueAndLaw) {
  const auto file = ReadRigText(With("{ from = \"wire-7x7-0.8mm\" }",
                                     "{ from = \"wire-7x7\", diameter = \"0.84 mm\", "
                                     "normal_drag_coefficient = 1.4, weight_in_water = "
                                     "\"0.03 N/m\", stiffness = \"none\" }"),
                                "t");
  ASSERT_TRUE(file) << file.error().message;
  const tackle::Line& line = file->rig.riggers[0].line;
  EXPECT_DOUBLE_EQ(line.diameter_m, 0.84e-3);
  EXPECT_DOUBLE_EQ(line.normal_drag_coefficient, 1.4);
  EXPECT_TRUE(line.constant_drag);
  EXPECT_DOUBLE_EQ(*line.weight_in_water_N_per_m, 0.03);
  EXPECT_FALSE(line.weight_in_air_N_per_m);
  EXPECT_TRUE(std::isinf(*line.stiffness_N));
}

TEST(RigFile, AStatedDragAreaTakesTheSphereLawAway) {
  const auto file = ReadRigText(With("{ from = \"ball-sphere-12lb\" }",
                                     "{ from = \"ball-sphere-12lb\", drag_area = \"35 cm2\" }"),
                                "t");
  ASSERT_TRUE(file) << file.error().message;
  const tackle::Body& ball = file->rig.riggers[0].ball;
  EXPECT_EQ(ball.drag_source, tackle::DragSource::kStated);
  EXPECT_EQ(ball.sphere_diameter_m, 0);
  EXPECT_DOUBLE_EQ(ball.drag_area_m2, 0.0035);
  EXPECT_GT(ball.eye_to_centre_m, 0.04);  // Still a 12 lb sphere below its eye.
}

TEST(RigFile, ALineOfConstantsDoesNotStretch) {
  const auto file = ReadRigText(With("{ from = \"wire-7x7-0.8mm\" }",
                                     "{ diameter = \"0.8 mm\", normal_drag_coefficient = 1.2, "
                                     "tangential_drag_coefficient = 0, "
                                     "weight_in_water = \"0 N/m\", weight_in_air = \"0 N/m\" }"),
                                "t");
  ASSERT_TRUE(file) << file.error().message;
  const auto loads = tow::Resolve(file->rig.riggers[0].line, *file->rig.water, 1);
  EXPECT_EQ(loads.compliance_per_N, 0);
  EXPECT_EQ(loads.normal_cbrt, 0);
  EXPECT_EQ(loads.weight_in_water_N_per_m, 0);
}

TEST(RigFile, TakesTheLureOffTheFlashersPull) {
  const auto file =
      ReadRigText(With("flasher = { from = \"flasher-rotating-11in\" }",
                       "flasher = { from = \"flasher-rotating-11in\", pull = \"6 N at 1.2 m/s\" }"),
                  "t");
  ASSERT_TRUE(file) << file.error().message;
  const tackle::Trail& trail = file->rig.riggers[0].clips[0].trail;
  const double lure_N =
      0.5 * file->rig.water->density_kg_per_m3 * trail.lure.drag_area_m2 * 1.2 * 1.2;
  EXPECT_EQ(trail.flasher->drag_source, tackle::DragSource::kPull);
  EXPECT_NEAR(trail.flasher->pull->force_N, 6 - lure_N, 1e-12);
  EXPECT_DOUBLE_EQ(trail.flasher->pull->speed_mps, 1.2);
}

TEST(RigFile, TakesALuresPullOffTheFlashersAtItsOwnSpeed) {
  std::string text =
      With("flasher = { from = \"flasher-rotating-11in\" }",
           "flasher = { from = \"flasher-rotating-11in\", pull = \"6 N at 1.2 m/s\" }");
  text.replace(text.find("lure = \"hoochie\""), 16,
               "lure = { from = \"hoochie\", pull = \"0.5 N at 0.6 m/s\" }");
  const auto file = ReadRigText(text, "t");
  ASSERT_TRUE(file) << file.error().message;
  // Pulls go as speed squared: 0.5 N at 0.6 m/s is 2 N at 1.2 m/s.
  EXPECT_NEAR(file->rig.riggers[0].clips[0].trail.flasher->pull->force_N, 4, 1e-12);
}

TEST(RigFile, AKilogramOfPullIsAKilogramOfForce) {
  const auto file =
      ReadRigText(With("\"hoochie\"", "{ from = \"hoochie\", pull = \"0.1 kg at 1 m/s\" }"), "t");
  ASSERT_TRUE(file) << file.error().message;
  EXPECT_DOUBLE_EQ(file->rig.riggers[0].clips[0].trail.lure.pull->force_N, 0.1 * 9.80665);
}

TEST(RigFile, CountsClipsWithoutANameFromOneAsTheyAreWritten) {
  const std::string second =
      "[[riggers.clips]]\nabove_ball = \"1 ft\"\nrod_tip = { up = \"2 m\" }\nfishing_line = "
      "\"nylon-0.55mm\"\nsetback = \"0 m\"\nlure = \"hoochie\"\n";
  const auto file = ReadRigText(std::string(kRig) + second, "t");
  ASSERT_FALSE(file);
  EXPECT_EQ(file.error().subject, "rigger \"port\", clip 2: setback");
  EXPECT_EQ(file.error().line, 28);
}

TEST(RigFile, TellsTheUsualReelWhereNoneIsWritten) {
  std::string rig = With("above_ball = \"4 ft\"", "above_ball = \"401 ft\"");
  rig.replace(rig.find("line_on_reel = \"300 ft\"\n"), 24, "");
  const auto file = ReadRigText(rig, "t");
  ASSERT_FALSE(file);
  EXPECT_EQ(file.error().message,
            "The clip is 401 ft above the ball; the reel holds 400 ft of line.");
}

/// One way to break the rig: what is changed, and what the message must hold.
struct Broken {
  std::string_view name;
  std::string_view old_text;
  std::string_view new_text;
  int line;
  std::string_view subject;
  std::string_view message;
  std::string_view remedy;
};

void PrintTo(const Broken& broken, std::ostream* stream) { *stream << broken.name; }

class BrokenRigFile : public testing::TestWithParam<Broken> {};

TEST_P(BrokenRigFile, IsRefusedWithOneClearMessage) {
  const Broken& broken = GetParam();
  const auto file = ReadRigText(With(broken.old_text, broken.new_text), "my.toml");
  ASSERT_FALSE(file);
  const Problem& problem = file.error();
  EXPECT_EQ(problem.kind, ProblemKind::kBadInput);
  EXPECT_EQ(problem.file, "my.toml");
  EXPECT_EQ(problem.line, broken.line) << problem.message;
  EXPECT_EQ(problem.subject, broken.subject);
  EXPECT_THAT(problem.message, HasSubstr(std::string(broken.message)));
  EXPECT_THAT(problem.remedy, HasSubstr(std::string(broken.remedy)));
}

constexpr std::string_view kLineText = "{ from = \"wire-7x7-0.8mm\" }";
constexpr std::string_view kBallText = "{ from = \"ball-sphere-12lb\" }";
constexpr std::string_view kBoomText = "{ aft = \"2 ft\", port = \"4 ft\", up = \"3 ft\" }";
constexpr std::string_view kRodText = "{ ahead = \"1 ft\", port = \"5 ft\", up = \"6 ft\" }";
constexpr std::string_view kClipText =
    "[[riggers.clips]]\nabove_ball = \"4.01 ft\"\nrod_tip = { up = \"2 m\" }\nfishing_line = "
    "\"nylon-0.55mm\"\nsetback = \"3 m\"\nlure = \"hoochie\"\n[[riggers.clips]]\n";

INSTANTIATE_TEST_SUITE_P(
    All, BrokenRigFile,
    testing::Values(
        Broken{"UnknownTopKey", "name = \"Test rig\"", "nmae = \"Test rig\"", 1, "nmae",
               "no key \"nmae\"", "Did you mean \"name\"?"},
        Broken{"UnknownRiggerKey", "line_on_reel", "line_on_real", 9,
               "rigger \"port\": line_on_real", "no key \"line_on_real\"",
               "Did you mean \"line_on_reel\"?"},
        Broken{"UnknownNestedKey", "setback", "setbak", 19, "rigger \"port\", clip \"low\": setbak",
               "no key \"setbak\"", "Did you mean \"setback\"?"},
        Broken{"UnlikeAnyKey", "largest_angle", "qqq", 10, "rigger \"port\": qqq", "no key \"qqq\"",
               "Allowed here: name, boom_tip"},
        Broken{"NumberWithoutUnit", "\"300 ft\"", "300", 9, "rigger \"port\": line_on_reel",
               "300 has no unit", "Units: ft, in, m"},
        Broken{"TextWithoutUnit", "\"300 ft\"", "\"300\"", 9, "rigger \"port\": line_on_reel",
               "\"300\" has no unit", "ft, in, m"},
        Broken{"WrongUnit", "\"300 ft\"", "\"300 lb\"", 9, "rigger \"port\": line_on_reel",
               "\"lb\" is not a unit of length", "ft, in, m"},
        Broken{"WordForNumber", "\"300 ft\"", "\"long\"", 9, "rigger \"port\": line_on_reel",
               "does not start with a number", "ft, in, m"},
        Broken{"NanText", "\"300 ft\"", "\"nan ft\"", 9, "rigger \"port\": line_on_reel",
               "does not start with a number", "ft"},
        Broken{"NanNumber", kLineText,
               "{ from = \"wire-7x7-0.8mm\", normal_drag_coefficient = nan }", 8,
               "rigger \"port\": line.normal_drag_coefficient", "nan is out of range", "Correct"},
        Broken{"InfiniteNumber", kLineText,
               "{ from = \"wire-7x7-0.8mm\", normal_drag_coefficient = inf }", 8,
               "rigger \"port\": line.normal_drag_coefficient", "from 0.01 to 10", "Correct"},
        // 2026-11-25: a whole number that no double holds was told as one that was not written.
        Broken{"HugeWholeNumber", kLineText,
               "{ from = \"wire-7x7-0.8mm\", normal_drag_coefficient = 9223372036854775807 }", 8,
               "rigger \"port\": line.normal_drag_coefficient",
               "9.223372036854776e+18 is out of range", "Correct"},
        Broken{"Overflow", "\"300 ft\"", "\"1e999 ft\"", 9, "rigger \"port\": line_on_reel",
               "too large", "ft"},
        Broken{"ZeroDiameter", kLineText, "{ kind = \"wire\", diameter = \"0 mm\" }", 8,
               "rigger \"port\": line.diameter",
               "\"0 mm\" is out of range: it must be from 0.05 mm to 5 mm", "Correct"},
        Broken{"NegativeDiameter", kLineText, "{ kind = \"wire\", diameter = \"-0.8 mm\" }", 8,
               "rigger \"port\": line.diameter", "out of range", "Correct"},
        Broken{"NoDiameter", kLineText, "{ kind = \"wire\" }", 8, "rigger \"port\": line.diameter",
               "\"diameter\" is missing", "diameter = \"0.8 mm\""},
        Broken{"UnknownLine", kLineText, "{ from = \"wyre-7x7-0.8mm\" }", 8,
               "rigger \"port\": line.from", "no line \"wyre-7x7-0.8mm\"",
               "Did you mean \"wire-7x7-0.8mm\"?"},
        Broken{"UnknownKind", kLineText, "{ kind = \"rope\", diameter = \"2 mm\" }", 8,
               "rigger \"port\": line.kind", "\"rope\" is not a kind of line", "\"braid\""},
        Broken{"FromAndKind", kLineText, "{ from = \"wire-7x7-0.8mm\", kind = \"wire\" }", 8,
               "rigger \"port\": line.kind", "not by both", "Leave one"},
        Broken{"TooFewConstants", kLineText,
               "{ diameter = \"0.8 mm\", normal_drag_coefficient = 1.2 }", 8,
               "rigger \"port\": line.tangential_drag_coefficient", "must state all its constants",
               "from ="},
        Broken{"LineIsANumber", kLineText, "7", 8, "rigger \"port\": line",
               "is a number; it must be a table", "braces"},
        Broken{"NoLine", "line = { from = \"wire-7x7-0.8mm\" }\n", "", 5, "rigger \"port\": line",
               "\"line\" is missing", "wire-1x7-0.8mm"},
        Broken{"QuotedCoefficient", kLineText,
               "{ from = \"wire-7x7-0.8mm\", normal_drag_coefficient = \"1.2\" }", 8,
               "rigger \"port\": line.normal_drag_coefficient", "is a text; it must be a number",
               "without quotes"},
        Broken{"NegativeStiffness", kLineText,
               "{ from = \"wire-7x7-0.8mm\", stiffness = \"-5 kN\" }", 8,
               "rigger \"port\": line.stiffness", "out of range", "Correct"},
        Broken{"UnknownBall", kBallText, "{ from = \"ball-sphere-13lb\" }", 11,
               "rigger \"port\": ball.from", "No ball of 13 lb",
               "ball = { weight = \"13 lb\", shape = \"sphere\" }"},
        Broken{"BuoyantBall", kBallText, "{ weight_in_water = \"-5 N\", drag_area = \"0.004 m2\" }",
               11, "rigger \"port\": ball.weight_in_water", "The ball floats", "12 lb lead"},
        Broken{"WeightlessBall", kBallText,
               "{ weight_in_water = \"0 N\", drag_area = \"0.004 m2\" }", 11,
               "rigger \"port\": ball.weight_in_water", "from 0.5 N to 1000 N", "12 lb lead"},
        Broken{"WoodenBall", kBallText, "{ weight = \"12 lb\", density = \"700 kg/m3\" }", 11,
               "rigger \"port\": ball.density", "The ball floats", "Lead has 11340"},
        Broken{"BallWithoutWeight", kBallText, "{ shape = \"sphere\" }", 11,
               "rigger \"port\": ball.weight", "A ball needs", "ball-sphere-12lb"},
        Broken{"BallWithoutDrag", kBallText, "{ weight_in_water = \"50 N\" }", 11,
               "rigger \"port\": ball.drag_area", "A ball needs", "ball-sphere-12lb"},
        Broken{"UnknownShape", kBallText, "{ weight = \"12 lb\", shape = \"cube\" }", 11,
               "rigger \"port\": ball.shape", "\"cube\" is not a shape", "\"finned\""},
        Broken{"HeavyBall", kBallText, "{ weight = \"1200 lb\" }", 11,
               "rigger \"port\": ball.weight", "it must be from 0.2205 lb to 220.5 lb", "Correct"},
        Broken{"FromAndWeight", kBallText, "{ from = \"ball-sphere-12lb\", weight = \"12 lb\" }",
               11, "rigger \"port\": ball.weight", "already says", "Leave"},
        Broken{"NegativeDragArea", kBallText, "{ weight = \"12 lb\", drag_area = \"-1 cm2\" }", 11,
               "rigger \"port\": ball.drag_area", "out of range", "Correct"},
        Broken{
            "BoomUnderWater", kBoomText, "{ aft = \"2 ft\", up = \"-1 ft\" }", 7,
            "rigger \"port\": boom_tip.up",
            "The boom tip must be above the water: \"-1 ft\" is out of range: it must be from 0 ft",
            "waterline"},
        Broken{"BoomWithoutHeight", kBoomText, "{ aft = \"2 ft\" }", 7,
               "rigger \"port\": boom_tip.up", "\"up\" is missing", "up = \"3 ft\""},
        Broken{"BothSides", kBoomText, "{ starboard = \"4 ft\", port = \"4 ft\", up = \"3 ft\" }",
               7, "rigger \"port\": boom_tip.port", "not both", "Leave one"},
        Broken{"NoBoom", "boom_tip = { aft = \"2 ft\", port = \"4 ft\", up = \"3 ft\" }\n", "", 5,
               "rigger \"port\": boom_tip", "\"boom_tip\" is missing", "middle of the stern"},
        Broken{"RodTipUnderWater", kRodText, "{ up = \"-6 ft\" }", 16,
               "rigger \"port\", clip \"low\": rod_tip.up",
               "The rod tip must be above the water: \"-6 ft\" is out", "positive"},
        Broken{"NoRodTension", "\"3 lb\"", "\"0 lb\"", 17,
               "rigger \"port\", clip \"low\": rod_tip_tension", "out of range", "Correct"},
        Broken{"AngleOf90", "\"60 deg\"", "\"90 deg\"", 10, "rigger \"port\": largest_angle",
               "from 1 deg to 89 deg", "Correct"},
        Broken{"MarksFallBack", "{ reads = \"100 ft\"", "{ reads = \"40 ft\"", 12,
               "rigger \"port\", counter mark 2: reads", "40 ft follows 50 ft", "shortest"},
        Broken{"MarksMeasureBack", "measured = \"96 ft\"", "measured = \"47 ft\"", 12,
               "rigger \"port\", counter mark 2: measured", "47 ft follows 47 ft", "shortest"},
        Broken{"LeaderWithoutFlasher", "flasher = { from = \"flasher-rotating-11in\" }\n", "", 20,
               "rigger \"port\", clip \"low\": leader", "no flasher", "setback"},
        Broken{"FlasherWithoutLeader", "leader = \"42 in\"\n", "", 13,
               "rigger \"port\", clip \"low\": leader", "\"leader\" is missing", "42 in"},
        Broken{"NoLure", "lure = \"hoochie\"\n", "", 13, "rigger \"port\", clip \"low\": lure",
               "\"lure\" is missing", "no-lure"},
        Broken{"UnknownLure", "\"hoochie\"", "\"hoochee\"", 23,
               "rigger \"port\", clip \"low\": lure.from", "no lure \"hoochee\"",
               "Did you mean \"hoochie\"?"},
        Broken{"LureWithoutDrag", "\"hoochie\"", "{ weight_in_water = \"0.2 N\" }", 23,
               "rigger \"port\", clip \"low\": lure.drag_area",
               "needs \"from\", \"drag_area\" or \"pull\"", "at 2.5 mph"},
        Broken{"LureWithoutWeight", "\"hoochie\"", "{ drag_area = \"4 cm2\" }", 23,
               "rigger \"port\", clip \"low\": lure.weight_in_water", "weight_in_water", "0.3 N"},
        Broken{"PullWithoutSpeed", "\"hoochie\"", "{ from = \"hoochie\", pull = \"0.2 lb\" }", 23,
               "rigger \"port\", clip \"low\": lure.pull", "not a pull at a speed", "at 2.5 mph"},
        Broken{"PullAndArea", "\"hoochie\"",
               "{ from = \"hoochie\", pull = \"0.2 lb at 2 mph\", drag_area = \"4 cm2\" }", 23,
               "rigger \"port\", clip \"low\": lure.pull", "say the same thing", "Leave one"},
        Broken{"FlasherPullsLessThanItsLure", "{ from = \"flasher-rotating-11in\" }",
               "{ from = \"flasher-rotating-11in\", pull = \"0.1 N at 1.2 m/s\" }", 20,
               "rigger \"port\", clip \"low\": flasher.pull", "the lure alone pulls 0.29 N",
               "lure's own pull"},
        Broken{"ZeroSetback", "\"20 ft\"", "\"0 ft\"", 19, "rigger \"port\", clip \"low\": setback",
               "out of range", "Correct"},
        Broken{"ClipBeyondTheReel", "above_ball = \"4 ft\"", "above_ball = \"301 ft\"", 15,
               "rigger \"port\", clip \"low\": above_ball",
               "The clip is 301 ft above the ball; the reel holds 300 ft", "lower"},
        Broken{"TwoClipsInOnePlace", "[[riggers.clips]]\n", kClipText, 14,
               "rigger \"port\", clip 1: above_ball", "same place, 4.01 ft above the ball", "1 cm"},
        Broken{"NoRiggerName", "name = \"port\"\n", "", 5, "rigger 1: name", "\"name\" is missing",
               "port"},
        Broken{"EmptyRiggerName", "name = \"port\"", "name = \" \"", 6, "rigger 1: name",
               "is empty", "quotes"},
        Broken{"HalfTheWater", "salinity = \"30 psu\"\n", "", 2, "water.salinity", "is missing",
               "0 psu"},
        Broken{"BothWaters", "salinity = \"30 psu\"", "density = \"1025 kg/m3\"", 4,
               "water.density", "not by both", "Leave two"},
        Broken{"HotWater", "\"10 C\"", "\"60 C\"", 3, "water.temperature", "from 0 C to 40 C",
               "Correct"},
        Broken{"BrokenToml", "largest_angle = \"60 deg\"", "largest_angle = \"60 deg", 10,
               "largest_angle = \"60 deg",
               "The closing quote is missing: largest_angle = \"60 deg\".", ""},
        Broken{"HeadingOfOneBracket", "[[riggers.clips]]", "[riggers.clips]", 13,
               "rigger \"port\": clips", "one bracket",
               "Write two brackets on each side: [[riggers.clips]]."},
        Broken{"FirstHeadingOfOneBracket", "[[riggers]]", "[riggers]", 5, "riggers", "one bracket",
               "Write two brackets on each side: [[riggers]]."},
        Broken{"TwiceTheKey", "largest_angle = \"60 deg\"", "line_on_reel = \"60 ft\"", 10, "file",
               "redefine", "Correct the line"},
        Broken{"AbsurdKey", "largest_angle", "a.a.a.a.a.a.a.a.a.a.a.a.a.a.a", 10, "file",
               "more than 12 dots", "several lines"}),
    [](const testing::TestParamInfo<Broken>& tested) { return std::string(tested.param.name); });

TEST(RigFile, RefusesTwoRiggersOfOneName) {
  const std::string rig(kRig);
  std::string second = rig.substr(rig.find("[[riggers]]"));
  second.replace(second.find("\"port\""), 6, "\"Port\"");
  const auto file = ReadRigText(rig + second, "t");
  ASSERT_FALSE(file);
  EXPECT_THAT(file.error().message, HasSubstr("Two riggers are called \"Port\""));
  EXPECT_EQ(file.error().line, 25);
}

TEST(RigFile, RefusesTwoClipsOfOneName) {
  const std::string rig(kRig);
  std::string second = rig.substr(rig.find("[[riggers.clips]]"));
  second.replace(second.find("4 ft"), 4, "9 ft");
  const auto file = ReadRigText(rig + second, "t");
  ASSERT_FALSE(file);
  EXPECT_THAT(file.error().message, HasSubstr("Two clips are called \"low\""));
}

TEST(RigFile, RefusesNoneAndSevenRiggers) {
  const auto none = ReadRigText("name = \"bare\"\n", "t");
  ASSERT_FALSE(none);
  EXPECT_THAT(none.error().message, HasSubstr("There are 0 riggers; a rig must have from 1 to 6"));
  std::string seven;
  for (int i = 0; i < 7; ++i) seven += "[[riggers]]\nname = \"r" + std::to_string(i) + "\"\n";
  const auto many = ReadRigText(seven, "t");
  ASSERT_FALSE(many);
  EXPECT_THAT(many.error().message, HasSubstr("There are 7 riggers"));
}

TEST(RigFile, RefusesRiggersThatAreNoList) {
  const auto file = ReadRigText("[riggers]\nname = \"port\"\n", "t");
  ASSERT_FALSE(file);
  EXPECT_THAT(file.error().remedy, HasSubstr("two brackets on each side: [[riggers]]"));
  EXPECT_EQ(file.error().line, 1);
}

TEST(RigFile, RefusesEmptyAndBinaryText) {
  for (const std::string_view text : {"", " \n\t\r\n", "\xEF\xBB\xBF"}) {
    EXPECT_FALSE(ReadRigText(text, "t")) << text;
  }
  const auto binary = ReadRigText(std::string_view("ab\n\0\1\2", 6), "t");
  ASSERT_FALSE(binary);
  EXPECT_THAT(binary.error().message, HasSubstr("not a text file"));
  EXPECT_EQ(binary.error().line, 2);
  EXPECT_FALSE(ReadRigText("name = \"\xff\xfe\"\n", "t"));  // Not UTF-8.
}

TEST(RigFile, SurvivesTheDeepestNestingItLetsThrough) {
  // 12 dots a line and 254 brackets: what the guard and the library's own limit still allow.
  std::string key = "a";
  for (int i = 0; i < 12; ++i) key += ".a";
  std::string text = key + "=";
  for (int i = 0; i < 126; ++i) text += "[\n{" + key + "=";
  text += "1";
  for (int i = 0; i < 126; ++i) text += "}\n]";
  EXPECT_FALSE(ReadRigText(text, "t"));
}

class RigFileOnDisk : public testing::Test {
 protected:
  RigFileOnDisk() { std::filesystem::create_directories(folder_); }
  ~RigFileOnDisk() override { std::filesystem::remove_all(folder_); }
  std::string Path(const std::string& name) const { return (folder_ / name).string(); }

  std::filesystem::path folder_ =
      std::filesystem::path(testing::TempDir()) /
      ("offplumb_rig_file_" +
       std::string(testing::UnitTest::GetInstance()->current_test_info()->name()));
};

TEST_F(RigFileOnDisk, ReadsAFile) {
  std::ofstream(Path("rig.toml")) << kRig;
  const auto file = ReadRigFile(Path("rig.toml"));
  ASSERT_TRUE(file) << file.error().message;
  EXPECT_EQ(file->file, Path("rig.toml"));
}

TEST_F(RigFileOnDisk, SaysWhatIsWrongWithThePath) {
  const auto missing = ReadRigFile(Path("none.toml"));
  ASSERT_FALSE(missing);
  EXPECT_THAT(missing.error().message, HasSubstr("no such file"));
  EXPECT_EQ(missing.error().file, Path("none.toml"));
  const auto folder = ReadRigFile(folder_.string());
  ASSERT_FALSE(folder);
  EXPECT_THAT(folder.error().message, HasSubstr("folder"));
  std::ofstream(Path("empty.toml")).flush();
  const auto empty = ReadRigFile(Path("empty.toml"));
  ASSERT_FALSE(empty);
  EXPECT_THAT(empty.error().message, HasSubstr("empty"));
}

TEST_F(RigFileOnDisk, RefusesAHugeFileByItsSize) {
  std::ofstream(Path("huge.toml")).flush();
  std::filesystem::resize_file(Path("huge.toml"), 100'000'000);  // Sparse: takes no room.
  const auto huge = ReadRigFile(Path("huge.toml"));
  ASSERT_FALSE(huge);
  EXPECT_THAT(huge.error().message, HasSubstr("100000000 bytes; at most 1000000"));
}

TEST_F(RigFileOnDisk, RefusesWhatIsNoPlainFile) {
  const auto device = ReadRigFile("/dev/zero");
  ASSERT_FALSE(device);
  EXPECT_THAT(device.error().message, HasSubstr("no plain file"));
}

TEST(RigFileExamples, AreReadAndSayThatTheyAreInvented) {
  const std::filesystem::path folder = std::filesystem::path(OFFPLUMB_SOURCE_DIR) / "examples/rigs";
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const auto file = ReadRigFile(entry.path().string());
    ASSERT_TRUE(file) << entry.path() << ":" << file.error().line << ": " << file.error().message;
    EXPECT_TRUE(file->invented) << entry.path();
    ++count;
  }
  EXPECT_GE(count, 6);
}

/// What an example is, its first line says.
TEST(RigFileExamples, EngineersCasesAreNamedOnTheirFirstLine) {
  for (const auto& [name, words] :
       {std::pair{"engineer", "A closed form: weightless line, pure normal drag (case W2 of "},
        std::pair{"engineer-layers", "A closed form: the same line in two layers (case W4 of "},
        std::pair{"engineer-tree-1", "(case G1 of "},
        std::pair{"engineer-tree-2", "(case G2 of "}}) {
    const auto text =
        ReadTextFile(fmt::format("{}/examples/rigs/{}.toml", OFFPLUMB_SOURCE_DIR, name));
    ASSERT_TRUE(text) << name;
    EXPECT_THAT(text->substr(0, text->find('\n')),
                testing::AllOf(HasSubstr(words), HasSubstr("docs/method.md section 10")));
  }
}

/// The engineer rig states every number of case W2 of the checks: no catalogue, no law.
TEST(RigFileExamples, TheEngineerRigIsTheClosedFormsCase) {
  const auto file = ReadRigFile(std::string(OFFPLUMB_SOURCE_DIR) + "/examples/rigs/engineer.toml");
  ASSERT_TRUE(file);
  const tackle::Rigger& rigger = file->rig.riggers[0];
  const auto line = tow::Resolve(rigger.line, *file->rig.water, 1);
  const auto ball = tow::Resolve(rigger.ball, *file->rig.water, 1);
  EXPECT_EQ(rigger.boom_tip_m, tackle::Vector3d::Zero());
  EXPECT_TRUE(rigger.clips.empty());
  EXPECT_DOUBLE_EQ(line.normal_linear, 0.5 * 1025 * 0.0008 * 1.2);
  EXPECT_EQ(line.normal_cbrt, 0);
  EXPECT_EQ(line.tangential, 0);
  EXPECT_EQ(line.compliance_per_N, 0);
  EXPECT_DOUBLE_EQ(ball.weight_in_water_N, 50);
  EXPECT_DOUBLE_EQ(ball.drag_per_q_kg_per_m, 0.5 * 1025 * 0.0040);
  EXPECT_EQ(rigger.ball.eye_to_centre_m, 0);
}

TEST(RigFileManual, NamesEveryKey) {
  const auto manual = ReadTextFile(std::string(OFFPLUMB_SOURCE_DIR) + "/docs/rig-file.md");
  ASSERT_TRUE(manual);
  const std::vector<Keys> tables{
      rig_rules::kRigKeys,   rig_rules::kWaterKeys, rig_rules::kRiggerKeys,
      rig_rules::kPlaceKeys, rig_rules::kMarkKeys,  rig_rules::kClipKeys,
      rig_rules::kLineKeys,  rig_rules::kBallKeys,  rig_rules::kPieceKeys};
  for (const Keys& keys : tables) {
    for (const std::string_view key : keys) {
      EXPECT_THAT(*manual, HasSubstr("`" + std::string(key) + "`"));
    }
  }
}

/// The line of the manual that speaks of something.
std::string LineAbout(const std::string& manual, const std::string& what) {
  const std::size_t at = manual.find(what);
  if (at == std::string::npos) return "";
  const std::size_t start = manual.rfind('\n', at) + 1;
  return manual.substr(start, manual.find('\n', at) - start);
}

std::string Grams(const tackle::Body& body) {
  return fmt::format("| {:.0f} g |", body.mass_kg * 1000);
}

TEST(RigFileManual, HoldsTheCataloguesFigures) {
  const auto manual = ReadTextFile(std::string(OFFPLUMB_SOURCE_DIR) + "/docs/rig-file.md");
  ASSERT_TRUE(manual);
  const std::string tables = manual->substr(manual->find("| flasher | size"));
  for (const auto& entry : tackle::CatalogueFlashers()) {
    const std::string area = fmt::format("{:.4f} m2", tackle::MakeFlasher(entry.id)->drag_area_m2);
    EXPECT_THAT(LineAbout(tables, "`" + entry.id + "`"), HasSubstr(area));
    EXPECT_THAT(LineAbout(tables, "`" + entry.id + "`"),
                HasSubstr(Grams(*tackle::MakeFlasher(entry.id))));
  }
  for (const auto& entry : tackle::CatalogueLures()) {
    const double area = tackle::MakeLure(entry.id)->drag_area_m2;
    const std::string written = fmt::format("{:.{}f}", area, area < 1e-4 ? 5 : 4);
    EXPECT_THAT(LineAbout(tables, "`" + entry.id + "`"), HasSubstr(written));
    EXPECT_THAT(LineAbout(tables, "`" + entry.id + "`"),
                HasSubstr(Grams(*tackle::MakeLure(entry.id))));
  }
}

TEST(RigFileManual, NamesEveryUnit) {
  const auto manual = ReadTextFile(std::string(OFFPLUMB_SOURCE_DIR) + "/docs/rig-file.md");
  ASSERT_TRUE(manual);
  const std::size_t start = manual->find("## Units");
  const std::string units = manual->substr(start, manual->find("## The keys") - start);
  for (const answers::Unit& unit : answers::Units()) {
    if (unit.dimension == answers::Dimension::kTime) continue;  // No key of a rig is a time.
    const std::string name(unit.name);
    EXPECT_TRUE(units.find(" " + name + ",") != std::string::npos ||
                units.find(" " + name + " |") != std::string::npos)
        << name;
  }
}

}  // namespace
}  // namespace offplumb::ports
