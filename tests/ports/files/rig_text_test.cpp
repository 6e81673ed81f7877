#include "ports/files/rig_text.h"

#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ports/files/rig_rules.h"
#include "ports/files/text_file.h"
#include "tests/ports/files/ask_rig.h"

namespace offplumb::ports {
namespace {

using Kind = TomlValue::Kind;

WrittenRig WriteJson(std::string_view json) {
  const auto document = testing::DocumentOfText(json);
  EXPECT_TRUE(document) << json;
  return WriteRig(CanonicalRig(document.value_or(TomlValue())));
}

constexpr std::string_view kHead = "# Written by Offplumb. Every key: docs/rig-file.md\n\n";

TEST(RigText, WritesWhatTheManualShows) {
  const WrittenRig written = WriteJson(R"({
    "riggers": [{"clips": [{"lure": "hoochie", "setback": "20 ft", "above_ball": "4 ft"},
                           {"above_ball": "9 ft"}],
                 "counter_marks": [{"measured": "49 ft", "reads": "50 ft"}],
                 "ball": {"shape": "sphere", "weight": "12 lb"},
                 "boom_tip": {"up": "3 ft", "aft": "2 ft"},
                 "name": "port"},
                {"name": "starboard"}],
    "name": "My boat", "water": {"viscosity": "1 mm2/s", "density": "1025 kg/m3"}})");
  EXPECT_EQ(written.text, std::string(kHead) + R"(name = "My boat"
water = { density = "1025 kg/m3", viscosity = "1 mm2/s" }

[[riggers]]
name = "port"
boom_tip = { aft = "2 ft", up = "3 ft" }
ball = { weight = "12 lb", shape = "sphere" }
counter_marks = [
  { reads = "50 ft", measured = "49 ft" },
]

[[riggers.clips]]
above_ball = "4 ft"
setback = "20 ft"
lure = { from = "hoochie" }

[[riggers.clips]]
above_ball = "9 ft"

[[riggers]]
name = "starboard"
)");
  EXPECT_EQ(written.PathAt(0), "");
  EXPECT_EQ(written.PathAt(1), "");
  EXPECT_EQ(written.PathAt(3), "name");
  EXPECT_EQ(written.PathAt(6), "riggers[0]");
  EXPECT_EQ(written.PathAt(10), "riggers[0].counter_marks");
  EXPECT_EQ(written.PathAt(11), "riggers[0].counter_marks[0]");
  EXPECT_EQ(written.PathAt(14), "riggers[0].clips[0]");
  EXPECT_EQ(written.PathAt(17), "riggers[0].clips[0].lure");
  EXPECT_EQ(written.PathAt(20), "riggers[0].clips[1].above_ball");
  EXPECT_EQ(written.PathAt(23), "riggers[1].name");
  EXPECT_EQ(written.PathAt(24), "");
}

TEST(RigText, WritesWhatNoRigHas) {
  // All of it is for the reader to refuse, so it must arrive there.
  EXPECT_EQ(WriteJson(R"({"riggers": [], "odd key": {"a": [1, "x"]}, "": {}})").text,
            std::string(kHead) + "riggers = []\n\"odd key\" = { a = [ 1, \"x\" ] }\n\"\" = {}\n");
  EXPECT_EQ(WriteJson(R"({"riggers": [1, {"name": "a"}], "x": false})").text,
            std::string(kHead) + "riggers = [ 1, { name = \"a\" } ]\nx = false\n");
  EXPECT_EQ(WriteJson(R"({"riggers": [{}]})").text, std::string(kHead) + "[[riggers]]\n");
  EXPECT_EQ(WriteJson(R"({"riggers": [{"clips": {"lure": "x"}, "qqq": 1}]})").text,
            std::string(kHead) + "[[riggers]]\nclips = { lure = { from = \"x\" } }\nqqq = 1\n");
  // A list of tables under a key that has no heading.
  EXPECT_EQ(WriteJson(R"({"clips": [{"lure": "x"}]})").text,
            std::string(kHead) + "clips = [\n  { lure = \"x\" },\n]\n");
}

TEST(RigText, ReadsBackEveryLetter) {
  std::string all;
  for (int c = 1; c < 0x80; ++c) all += static_cast<char>(c);
  for (const std::string_view more :
       {"\xC2\x80", "\xC2\x9F", "\xC3\xA9", "\xEF\xB7\xBF", "\xEF\xBF\xBF", "\xEF\xBB\xBF",
        "\xE2\x80\x9C", "\xE2\x80\xA8", "\xED\x9F\xBF", "\xEE\x80\x80", "\xF0\x9F\x90\x9F",
        "\xF4\x8F\xBF\xBF", "\\u0041", "\"\"\"", "'''", "#", "}"}) {
    all += more;
  }
  all += '\0';
  TomlValue document;
  document.keys = {"name", all};
  document.items.resize(2);
  for (TomlValue& item : document.items) {
    item.kind = Kind::kText;
    item.text = all;
  }
  const auto parsed = ParseToml(WriteRig(document).text, "t");
  ASSERT_TRUE(parsed) << parsed.error().message;
  EXPECT_EQ(parsed->Find("name")->text, all);
  ASSERT_NE(parsed->Find(all), nullptr);
  EXPECT_EQ(parsed->Find(all)->text, all);
}

TEST(RigText, ReadsBackEveryNumber) {
  for (const double number :
       {0.0, -0.0, 1.0, 1.2, 0.1, 1.0 / 3, 1e-7, 5e-324, 1e15, 1e16, 1e17, 123456789012345678.0,
        9007199254740993.0, -9223372036854775808.0, 1.7976931348623157e308}) {
    TomlValue document;
    document.keys = {"n"};
    document.items.resize(1);
    document.items[0].kind = Kind::kNumber;
    document.items[0].number = number;
    const auto parsed = ParseToml(WriteRig(document).text, "t");
    ASSERT_TRUE(parsed) << number;
    EXPECT_EQ(parsed->Find("n")->number, number);
    EXPECT_EQ(std::signbit(parsed->Find("n")->number), std::signbit(number));
  }
}

/// The keys of a manual's table, in its order: the words in code marks that start its rows.
std::vector<std::string> KeysOfTable(const std::string& manual, const std::string& heading) {
  std::vector<std::string> keys;
  std::size_t at = manual.find("| key |", manual.find(heading));
  while (at < manual.size() && manual[at] == '|') {
    const std::string row = manual.substr(at, manual.find('\n', at) - at);
    if (row.rfind("| `", 0) == 0) keys.push_back(row.substr(3, row.find('`', 3) - 3));
    at += row.size() + 1;
  }
  return keys;
}

TEST(RigText, KeepsTheOrderOfTheManual) {
  const auto manual = ReadTextFile(std::string(OFFPLUMB_SOURCE_DIR) + "/docs/rig-file.md");
  ASSERT_TRUE(manual);
  const std::pair<std::string, Keys> tables[] = {
      {"### The file", rig_rules::kRigKeys}, {"### A rigger", rig_rules::kRiggerKeys},
      {"### A clip", rig_rules::kClipKeys},  {"### Lines", rig_rules::kLineKeys},
      {"### Balls", rig_rules::kBallKeys},
  };
  for (const auto& [heading, keys] : tables) {
    EXPECT_THAT(KeysOfTable(*manual, heading), ::testing::ElementsAreArray(keys)) << heading;
  }
}

}  // namespace
}  // namespace offplumb::ports
