// Whatever is typed or stands in a file: one clear message, the right exit code, within a second.

#include <filesystem>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/apps/program.h"

namespace offplumb::cli {
namespace {

using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

/// A sound rig; each test breaks one thing in it.
const std::string kRig = R"(name = "Test rig"
[[riggers]]
name = "port"
boom_tip = { aft = "2 ft", port = "4 ft", up = "3 ft" }
line = { from = "wire-7x7-0.8mm" }
ball = { from = "ball-sphere-12lb" }
[[riggers.clips]]
above_ball = "4 ft"
rod_tip = { ahead = "1 ft", port = "5 ft", up = "6 ft" }
fishing_line = { from = "nylon-0.55mm" }
setback = "20 ft"
flasher = { from = "flasher-rotating-11in" }
leader = "42 in"
leader_line = { from = "nylon-0.7mm" }
lure = { from = "hoochie" }
)";

std::string With(const std::string& old_text, const std::string& new_text) {
  std::string rig = kRig;
  const std::size_t at = rig.find(old_text);
  EXPECT_NE(at, std::string::npos) << "the test's own text is wrong: " << old_text;
  return rig.replace(at, old_text.size(), new_text);
}

/// One message of one line, nothing on standard output, no more than a second.
void ExpectRefused(const Heard& heard, int exit_code, const std::vector<std::string>& saying) {
  EXPECT_EQ(heard.exit_code, exit_code) << heard.err << heard.out;
  EXPECT_EQ(heard.out, "");
  EXPECT_THAT(heard.err, AllOf(StartsWith("offplumb: "), EndsWith("\n")));
  EXPECT_EQ(heard.err.find('\n'), heard.err.size() - 1) << heard.err;
  EXPECT_LT(heard.seconds, 1.0);
  for (const std::string& part : saying) EXPECT_THAT(heard.err, HasSubstr(part));
}

Heard AskDepth(const std::string& rig, const std::string& count = "100 ft",
               const std::string& speed = "2.5 mph", std::vector<std::string> more = {}) {
  std::vector<std::string> words{"depth", "--rig", rig, "--count", count, "--speed", speed};
  words.insert(words.end(), more.begin(), more.end());
  return Hear(words);
}

class BadRig : public testing::Test {
 protected:
  void Refused(const std::string& text, const std::vector<std::string>& saying, int exit_code = 2) {
    const std::string path = folder_.Write("rig.toml", text);
    ExpectRefused(AskDepth(path), exit_code, saying);
    ExpectRefused(AskDepth(path, "100 ft", "2.5 mph", {"--json"}), exit_code, saying);
  }

  TestFolder folder_;
};

TEST_F(BadRig, TheUnbrokenRigIsAnswered) {
  const Heard heard = AskDepth(folder_.Write("rig.toml", kRig));
  EXPECT_EQ(heard.exit_code, 0) << heard.err;
}

TEST_F(BadRig, UnknownKeyNamesTheNearest) {
  Refused(With("setback =", "setbak ="), {"rig.toml:11: ", "setbak", "setback"});
}

TEST_F(BadRig, MissingUnit) {
  Refused(With("\"20 ft\"", "\"20\""), {"rig.toml:11: ", "setback", "\"20\" has no unit", "ft"});
}

TEST_F(BadRig, BareNumber) {
  Refused(With("\"20 ft\"", "20"), {"rig.toml:11: ", "setback", "\"20 ft\""});
}

TEST_F(BadRig, WrongUnit) {
  Refused(With("\"20 ft\"", "\"20 lb\""), {"rig.toml:11: ", "setback", "not a unit of length"});
}

TEST_F(BadRig, ZeroDiameter) {
  Refused(With("{ from = \"wire-7x7-0.8mm\" }", "{ from = \"wire-7x7\", diameter = \"0 mm\" }"),
          {"rig.toml:5: ", "diameter", "out of range", "0.05 mm"});
}

TEST_F(BadRig, NegativeDiameter) {
  Refused(With("{ from = \"wire-7x7-0.8mm\" }", "{ from = \"wire-7x7\", diameter = \"-1 mm\" }"),
          {"rig.toml:5: ", "diameter", "-1 mm", "out of range"});
}

TEST_F(BadRig, BuoyantBall) {
  Refused(With("{ from = \"ball-sphere-12lb\" }",
               "{ weight_in_water = \"-3 lb\", drag_area = \"0.004 m2\" }"),
          {"rig.toml:6: ", "floats"});
}

TEST_F(BadRig, NotANumber) {
  Refused(With("\"20 ft\"", "\"nan ft\""), {"rig.toml:11: ", "setback"});
  Refused(With("\"20 ft\"", "nan"), {"rig.toml:11: ", "setback"});
}

TEST_F(BadRig, DuplicateRiggerNames) {
  Refused(kRig + kRig.substr(kRig.find("[[riggers]]")), {"rig.toml:17: ", "Two riggers", "port"});
}

TEST_F(BadRig, DuplicateKey) {
  Refused(With("setback = \"20 ft\"", "setback = \"20 ft\"\nsetback = \"21 ft\""),
          {"rig.toml:12: ", "setback"});
}

TEST_F(BadRig, BrokenFile) { Refused(With("name = \"port\"", "name = \"po"), {"rig.toml:3: "}); }

TEST_F(BadRig, EmptyFile) { Refused("", {"rig.toml", "empty"}); }

TEST_F(BadRig, BinaryFile) {
  Refused(std::string("\x7f"
                      "ELF\x02\x01\x01\x00\x00\x80\xff\xfe",
                      12),
          {"rig.toml"});
}

TEST_F(BadRig, AFileOf100MB) {
  const std::string path = folder_.Write("rig.toml", kRig);
  std::filesystem::resize_file(path, 100'000'000);
  ExpectRefused(AskDepth(path), 2, {"rig.toml", "100000000 bytes"});
}

// A lure that lifts more than the ball weighs: the main line cannot be tight.
TEST_F(BadRig, SlackMainLine) {
  Refused(With("fishing_line =", "rod_tip_tension = \"30 lb\"\nfishing_line ="),
          {"rig.toml:2: ", "port", "slack", "heavier ball"}, 1);
}

TEST(BadFile, MissingFileAndFolder) {
  ExpectRefused(AskDepth("no-such-rig.toml"), 2, {"no-such-rig.toml", "no such file"});
  ExpectRefused(AskDepth("examples"), 2, {"examples", "folder"});
  ExpectRefused(AskDepth("examples/rigs/one-rigger.toml", "100 ft", "2.5 mph",
                         {"--current", "no-such-current.toml"}),
                2, {"no-such-current.toml"});
}

TEST(BadFlag, SpeedOutOfRange) {
  ExpectRefused(AskDepth("examples/rigs/one-rigger.toml", "100 ft", "20 mph"), 2,
                {"--speed", "\"20 mph\"", "from 0 mph to 10 mph"});
  ExpectRefused(AskDepth("examples/rigs/one-rigger.toml", "100 ft", "-1 mph"), 2, {"--speed"});
}

TEST(BadFlag, CountOutOfRange) {
  ExpectRefused(AskDepth("examples/rigs/one-rigger.toml", "10 km"), 2,
                {"--count", "\"10 km\"", "from 0 km to 1 km"});
  ExpectRefused(AskDepth("examples/rigs/one-rigger.toml", "500 ft"), 2,
                {"count", "500 ft", "400 ft", "line_on_reel"});
}

TEST(BadFlag, NumbersThatAreNone) {
  for (const char* count : {"nan ft", "inf ft", "1e999 ft", "0x10 ft", "ft", "", "100", "100 lb",
                            "100 ft 3", "1,5 ft"}) {
    SCOPED_TRACE(count);
    ExpectRefused(AskDepth("examples/rigs/one-rigger.toml", count), 2, {"--count"});
  }
}

TEST(BadFlag, AClipAboveTheWaterCannotBeDone) {
  ExpectRefused(AskDepth("examples/rigs/one-rigger.toml", "3 ft"), 1,
                {"count", "clip", "above the water", "Let out more"});
}

TEST(BadFlag, MissingOnes) {
  const std::string rig = "examples/rigs/one-rigger.toml";
  ExpectRefused(Hear({"depth", "--count", "100 ft", "--speed", "2 mph"}), 2, {"--rig", "missing"});
  ExpectRefused(Hear({"depth", "--rig", rig, "--speed", "2 mph"}), 2, {"--count", "missing"});
  ExpectRefused(Hear({"depth", "--rig", rig, "--count", "100 ft"}), 2, {"speed", "--speed"});
  ExpectRefused(Hear({"count", "--rig", rig, "--speed", "2 mph"}), 2, {"--depth", "missing"});
}

TEST(BadFlag, DirectionsThatAreNeeded) {
  const std::string rig = "examples/rigs/one-rigger.toml";
  const std::string current = "examples/currents/spindrift-sound.toml";
  ExpectRefused(AskDepth(rig, "100 ft", "2 kn", {"--current", current}), 2,
                {"heading", "--heading"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 kn", {"--over-ground", "--current", current}), 2,
                {"course", "--course"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 kn", {"--course", "20"}), 2,
                {"course", "--over-ground"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 kn", {"--heading", "400"}), 2, {"--heading", "range"});
}

TEST(BadFlag, UnknownRepeatedOrMisplaced) {
  const std::string rig = "examples/rigs/one-rigger.toml";
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--currnt", "x"}), 2,
                {"--currnt", "Did you mean --current?"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--count", "90 ft"}), 2, {"--count", "2 times"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--depth", "90 ft"}), 2,
                {"--depth", "goes with count"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--bands", "maybe"}), 2,
                {"--bands", "on or off"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--units", "cubits"}), 2, {"units", "metric"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--water", "muddy"}), 2, {"water", "fresh"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--rigger", "prot"}), 2,
                {"rigger", "Did you mean \"port\"?"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--csv"}), 2, {"--csv", "needs a value"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"stray"}), 2, {"\"stray\""});
  ExpectRefused(Hear({"depth", "my-rig.toml", "--count", "100 ft"}), 2, {"--rig my-rig.toml"});
  ExpectRefused(Hear({"depth", "--rig", rig, "--count", "100", "ft", "--speed", "2 mph"}), 2,
                {"\"ft\"", "quotes"});
}

TEST(BadFlag, ACurrentThatDoesNotSayWhichWay) {
  const auto ask = [](const char* current) {
    return AskDepth("examples/rigs/one-rigger.toml", "100 ft", "2 kn", {"--current", current});
  };
  ExpectRefused(ask("0.4 kn"), 2, {"--current", "\"0.4 kn toward 200\"", "where it goes to"});
  // From the south-south-west is toward the north-north-east.
  ExpectRefused(ask("0.4 kn from 200"), 2, {"\"0.4 kn toward 20\""});
  ExpectRefused(ask("0.4 kn toward N"), 2, {"\"N\"", "Write degrees: north is 0, east 90."});
}

TEST(BadFlag, AClipForTheBall) {
  ExpectRefused(Hear({"count", "--rig", "examples/rigs/two-riggers.toml", "--depth", "90 ft",
                      "--speed", "2 mph", "--of", "ball", "--clip", "low"}),
                2, {"clip", "--of lure"});
}

TEST(BadFlag, ListsOfTheCard) {
  const auto card = [](const char* flag, const char* list) {
    return Hear({"card", "--rig", "examples/rigs/one-rigger.toml", flag, list});
  };
  ExpectRefused(card("--counts", "20 ft to 100 ft"), 2, {"--counts", "no step"});
  ExpectRefused(card("--counts", "20 ft to 100 ft by 0 ft"), 2, {"--counts"});
  ExpectRefused(card("--counts", "20 ft to 100 ft by 0.001 ft"), 2, {"--counts"});
  ExpectRefused(card("--counts", "100 ft, 20 ft"), 2, {"counts", "increase"});
  ExpectRefused(card("--counts", "20 ft,"), 2, {"--counts"});
  ExpectRefused(card("--speeds", "2 mph, 20 mph"), 2, {"--speeds", "20 mph"});
  ExpectRefused(card("--counts", "1 ft to 400 ft by 1 ft"), 2, {"counts", "at most"});
}

TEST(BadQuestion, UnknownNamesTheNearestAndTheList) {
  ExpectRefused(Hear({"deepth"}), 2, {"\"deepth\"", "Did you mean depth?", "card", "compare"});
  ExpectRefused(Hear({"--rig"}), 2, {"depth, count, card, compare or two-way"});
  ExpectRefused(Hear({}), 2, {"depth, count, card, compare or two-way"});
}

TEST(BadOutput, IsFoundBeforeAnythingIsWritten) {
  const TestFolder folder;
  const std::string rig = folder.Write("rig.toml", kRig);
  const std::string before = ReadWhole(rig);
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--csv", folder.Path("none/depth.csv")}), 2,
                {"none/depth.csv", "cannot be written"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--csv", folder.Path("")}), 2, {"folder"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph", {"--csv", rig}), 2, {"written over"});
  ExpectRefused(AskDepth(rig, "100 ft", "2 mph",
                         {"--csv", folder.Path("a.csv"), "--draw", folder.Path("a.gif")}),
                2, {"--draw", ".svg"});
  EXPECT_EQ(ReadWhole(rig), before);
  EXPECT_FALSE(std::filesystem::exists(folder.Path("a.csv")));
}

// A name from a file must not reach the terminal as a command to it.
TEST(BadOutput, ControlCharactersOfNamesAreNotShown) {
  const TestFolder folder;
  const std::string rig =
      folder.Write("rig.toml", With("name = \"Test rig\"", "name = \"a\\u001b[31mb\\u009bc\""));
  const Heard heard = AskDepth(rig);
  EXPECT_EQ(heard.out.find('\033'), std::string::npos);
  EXPECT_EQ(heard.out.find("\xC2\x9B"), std::string::npos);
}

}  // namespace
}  // namespace offplumb::cli
