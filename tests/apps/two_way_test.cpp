// What the program says to a two-way run, and to one that is typed wrong.

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
using testing::Not;
using testing::StartsWith;

std::vector<std::string> RunWith(std::vector<std::string> more = {}) {
  std::vector<std::string> words{"two-way", "--out", "3.1 mph toward 40", "--back",
                                 "2.3 mph toward 222"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

std::string Answered(const std::vector<std::string>& words) {
  const Heard heard = Hear(words);
  EXPECT_EQ(heard.exit_code, 0) << heard.err;
  EXPECT_EQ(heard.err, "");
  return heard.out;
}

void ExpectRefused(const std::vector<std::string>& words, int exit_code,
                   const std::vector<std::string>& saying) {
  const Heard heard = Hear(words);
  EXPECT_EQ(heard.exit_code, exit_code) << heard.err << heard.out;
  EXPECT_EQ(heard.out, "");
  EXPECT_THAT(heard.err, AllOf(StartsWith("offplumb: "), EndsWith("\n")));
  EXPECT_EQ(heard.err.find('\n'), heard.err.size() - 1) << heard.err;
  for (const std::string& part : saying) EXPECT_THAT(heard.err, HasSubstr(part));
}

TEST(TwoWay, TellsCurrentSpeedAndLogInUnits) {
  const std::string out = Answered(RunWith({"--log", "2.9 mph", "--held", "90 s"}));
  EXPECT_THAT(out, AllOf(HasSubstr("3.1 mph toward 40 out, 2.3 mph toward 222 back, 90 s each"),
                         HasSubstr("The current: 0.3 kn, 0.2 to 0.5; toward 34 deg, "),
                         HasSubstr("2.7 mph, 2.6 to 2.8"), HasSubstr("the log reads too high by"),
                         HasSubstr("multiply its reading by"), HasSubstr("Keep a lookout")));
  EXPECT_THAT(out, AllOf(Not(HasSubstr("nan")), Not(HasSubstr("\033"))));
}

TEST(TwoWay, UnitsAreThoseChosen) {
  EXPECT_THAT(Answered(RunWith({"--units", "metric"})),
              AllOf(HasSubstr(" m/s, "), Not(HasSubstr(" kn")), Not(HasSubstr(" mph"))));
  EXPECT_THAT(Answered(RunWith({"--units", "knots"})), Not(HasSubstr(" mph")));
}

// What it offers to type is taken by another question.
TEST(TwoWay, OffersACurrentThatCanBeTyped) {
  const std::string out = Answered(RunWith());
  const std::string before = "--current \"";
  const std::size_t at = out.find(before);
  ASSERT_NE(at, std::string::npos);
  const std::size_t start = at + before.size();
  const std::string current = out.substr(start, out.find('"', start) - start);
  EXPECT_THAT(Answered({"depth", "--rig", "examples/rigs/one-rigger.toml", "--count", "100 ft",
                        "--speed", "3.1 mph", "--over-ground", "--course", "40", "--bands", "off",
                        "--current", current}),
              HasSubstr("toward 34 at all depths"));
}

TEST(TwoWay, OffersNoCurrentThatMayBeNone) {
  const std::string out =
      Answered({"two-way", "--out", "2.7 mph toward 40", "--back", "2.7 mph toward 220"});
  EXPECT_THAT(out, AllOf(HasSubstr("The current may be none"), Not(HasSubstr("--current"))));
}

TEST(TwoWay, TakesOneValueForBothLegsOrTwo) {
  EXPECT_EQ(Answered(RunWith({"--log", "2.9 mph", "--json"})),
            Answered(RunWith({"--log", "2.9 mph, 2.9 mph", "--json"})));
  const std::string json =
      Answered(RunWith({"--held", "70 s, 2 min", "--spread", "0.1 m/s, 0.05 m/s", "--headings",
                        "38, 219 deg", "--json"}));
  EXPECT_THAT(json, AllOf(HasSubstr("\"question\": \"two_way\""), HasSubstr("\"seconds\": 70.0"),
                          HasSubstr("\"seconds\": 120.0"), HasSubstr("\"spread_mps\": 0.05\n"),
                          HasSubstr("\"heading_deg\": 38.0"), HasSubstr("\"log\": null"),
                          HasSubstr("\"turn_from\": \"headings\"")));
}

TEST(TwoWay, TellsTheCompassErrorOnceHeadingsAreRead) {
  EXPECT_THAT(Answered(RunWith({"--headings", "60, 240"})),
              AllOf(HasSubstr("the compass reads too high by"), HasSubstr("magnetic")));
  EXPECT_THAT(Answered(RunWith()), Not(HasSubstr("the compass reads")));
}

TEST(TwoWay, WritesCsv) {
  const TestFolder folder;
  (void)Answered(RunWith({"--log", "2.9 mph", "--csv", folder.Path("run.csv")}));
  const std::string csv = ReadWhole(folder.Path("run.csv"));
  EXPECT_THAT(csv, StartsWith("quantity,unit,median,low,high\r\ncurrent,mph,0.4"));
  EXPECT_THAT(csv,
              AllOf(HasSubstr("\r\nlog factor,,0.9"), HasSubstr("\r\nthrough the water,mph,")));
}

TEST(TwoWay, RefusesWhatIsTypedWrong) {
  ExpectRefused({"two-way", "--out", "3.1 mph toward 40"}, 2, {"--back", "is missing"});
  ExpectRefused({"two-way", "--out", "3.1 mph", "--back", "2.3 mph toward 222"}, 2,
                {"--out", "which way", "3.1 mph toward 40"});
  ExpectRefused({"two-way", "--out", "3.1 toward 40", "--back", "2.3 mph toward 222"}, 2,
                {"--out", "has no unit"});
  ExpectRefused({"two-way", "--out", "3.1 mph toward north", "--back", "2.3 mph toward 222"}, 2,
                {"--out", "north"});
  ExpectRefused({"two-way", "--out", "31 mph toward 40", "--back", "2.3 mph toward 222"}, 2,
                {"--out", "out of range", "20 mph"});
  ExpectRefused(RunWith({"--held", "15 s"}), 2, {"--held", "20 s"});
  ExpectRefused(RunWith({"--log", "2 mph, 3 mph, 4 mph"}), 2, {"--log", "3 values"});
  ExpectRefused(RunWith({"--headings", "38"}), 2, {"--headings", "38, 219"});
  ExpectRefused(RunWith({"--headings", "38, 219, 4"}), 2, {"--headings", "no pair"});
  ExpectRefused(RunWith({"--headings", "38, 250"}), 2, {"headings", "32 deg from opposite"});
  ExpectRefused(RunWith({"--rig", "examples/rigs/one-rigger.toml"}), 2,
                {"--rig", "not with two-way"});
}

TEST(TwoWay, RefusesLegsThatAreNoTwoWayRun) {
  ExpectRefused({"two-way", "--out", "2.7 mph toward 40", "--back", "2.6 mph toward 42"}, 2,
                {"nearly one"});
  ExpectRefused({"two-way", "--out", "2.7 mph toward 40", "--back", "2.6 mph toward 100"}, 2,
                {"same way over ground"});
  ExpectRefused(RunWith({"--spread", "4 mph", "--held", "20 s"}), 1, {"scatters too much"});
}

TEST(TwoWay, HelpNamesItsFlagsAsTheManualDoesAndItsExampleRuns) {
  const std::string help = Answered({"two-way", "--help"});
  EXPECT_EQ(Answered({"help", "two-way"}), help);
  EXPECT_THAT(Answered({"--help"}), HasSubstr("\n  two-way "));
  const std::string manual = ReadWhole(OFFPLUMB_SOURCE_DIR "/docs/command-line.md");
  int flags = 0;
  for (std::size_t at = help.find("\n  --"); at != std::string::npos;
       at = help.find("\n  --", at + 1)) {
    const std::string flag = help.substr(at + 3, help.find(' ', at + 3) - at - 3);
    EXPECT_THAT(manual, HasSubstr("`" + flag)) << flag;
    ++flags;
  }
  EXPECT_EQ(flags, 10);
  const std::size_t start = help.find("\n  offplumb ", help.find("\nExample"));
  ASSERT_NE(start, std::string::npos);
  auto words = SplitCommand(help.substr(start + 1, help.find('\n', start + 1) - start - 1));
  words.erase(words.begin());
  EXPECT_THAT(Answered(words), HasSubstr("The current: "));
}

}  // namespace
}  // namespace offplumb::cli
