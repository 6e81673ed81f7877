// What the program says when all is well, and when the answer is "no, because".

#include <algorithm>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/apps/program.h"

namespace offplumb::cli {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

const std::string kRig = "examples/rigs/one-rigger.toml";

Heard Answered(const std::vector<std::string>& words, int exit_code = 0) {
  Heard heard = Hear(words);
  EXPECT_EQ(heard.exit_code, exit_code) << heard.err;
  EXPECT_EQ(heard.err, "");
  EXPECT_NE(heard.out, "");
  return heard;
}

/// The words of the one example of a help text.
std::vector<std::string> ExampleOf(const std::string& help) {
  const std::size_t heading = help.find("\nExample");
  const std::size_t start = help.find("\n  offplumb ", heading);
  EXPECT_NE(start, std::string::npos) << help;
  const std::size_t end = help.find('\n', start + 1);
  auto words = SplitCommand(help.substr(start + 1, end - start - 1));
  words.erase(words.begin());
  return words;
}

TEST(Help, OfEveryQuestionHasAnExampleThatRuns) {
  for (const char* question : {"depth", "count", "card", "compare"}) {
    SCOPED_TRACE(question);
    const Heard help = Answered({question, "--help"});
    const auto example = ExampleOf(help.out);
    ASSERT_FALSE(example.empty());
    EXPECT_EQ(example[0], question);
    (void)Answered(example);
    EXPECT_EQ(Answered({"help", question}).out, help.out);
  }
}

TEST(Help, OverviewNamesEveryQuestion) {
  const Heard help = Answered({"--help"});
  for (const char* question : {"depth", "count", "card", "compare"}) {
    EXPECT_THAT(help.out, HasSubstr(std::string("\n  ") + question + " "));
  }
}

// The command lines at the top of the example files are documentation; a person copies them.
TEST(Help, CommandLinesInTheExampleFilesRun) {
  const std::vector<std::string> files{"rigs/engineer.toml",           "rigs/engineer-layers.toml",
                                       "rigs/engineer-tree-1.toml",    "rigs/engineer-tree-2.toml",
                                       "rigs/one-rigger.toml",         "rigs/two-riggers.toml",
                                       "currents/spindrift-sound.toml"};
  for (const std::string& file : files) {
    SCOPED_TRACE(file);
    const std::string text = ReadWhole(std::string(OFFPLUMB_SOURCE_DIR "/examples/") + file);
    int commands = 0;
    for (std::size_t at = text.find("./run "); at != std::string::npos;
         at = text.find("./run ", at + 1)) {
      std::string line = text.substr(at, text.find('\n', at) - at);
      if (line.back() == '\\') {
        const std::size_t next = text.find("--", at + line.size());
        line.back() = ' ';
        line += text.substr(next, text.find('\n', next) - next);
      }
      auto words = SplitCommand(line);
      words.erase(words.begin());
      (void)Answered(words);
      ++commands;
    }
    EXPECT_GT(commands, 0);
  }
}

TEST(Help, TheManualNamesEveryFlagThatHelpNames) {
  const std::string manual = ReadWhole(OFFPLUMB_SOURCE_DIR "/docs/command-line.md");
  std::size_t flags = 0;
  for (const char* question : {"depth", "count", "card", "compare"}) {
    const std::string help = Answered({question, "--help"}).out;
    for (std::size_t at = help.find("\n  --"); at != std::string::npos;
         at = help.find("\n  --", at + 1)) {
      const std::string flag = help.substr(at + 3, help.find(' ', at + 3) - at - 3);
      EXPECT_THAT(manual, HasSubstr("`" + flag)) << question;
      ++flags;
    }
  }
  EXPECT_GT(flags, 40u);
}

TEST(Version, IsTold) { EXPECT_THAT(Answered({"--version"}).out, StartsWith("offplumb 0.")); }

TEST(Depth, TextHasUnitsBandsAndCautions) {
  const Heard heard =
      Answered({"depth", "--rig", kRig, "--count", "100 ft", "--speed", "2.75 mph"});
  EXPECT_THAT(heard.out, AllOf(HasSubstr("2.75 mph through the water"), HasSubstr("port: the ball"),
                               HasSubstr(" ft, "), HasSubstr(" to "), HasSubstr(" lb"),
                               HasSubstr("hangs on most"), HasSubstr("invented"),
                               HasSubstr("Not for navigation"), HasSubstr("hangs up")));
  EXPECT_THAT(heard.out, AllOf(Not(HasSubstr("\033")), Not(HasSubstr("nan"))));
}

TEST(Depth, UnitsAreThoseChosen) {
  const std::vector<std::string> words{"depth",  "--rig",   kRig,       "--count",
                                       "100 ft", "--speed", "2.75 mph", "--units"};
  const auto in = [&](const char* units) {
    auto chosen = words;
    chosen.emplace_back(units);
    return Answered(chosen).out;
  };
  EXPECT_THAT(in("metric"), AllOf(HasSubstr("30.48 m on the counter"), HasSubstr(" m/s"),
                                  HasSubstr(" N"), Not(HasSubstr(" ft "))));
  EXPECT_THAT(in("knots"), AllOf(HasSubstr("100 ft on the counter"), HasSubstr("2.39 kn"),
                                 Not(HasSubstr("mph"))));
}

TEST(Depth, OneRiggerOfTwo) {
  const std::vector<std::string> words{"depth",   "--rig",  "examples/rigs/two-riggers.toml",
                                       "--count", "100 ft", "--speed",
                                       "2.5 mph"};
  EXPECT_THAT(Answered(words).out, AllOf(HasSubstr("port: "), HasSubstr("starboard: ")));
  auto one = words;
  one.insert(one.end(), {"--rigger", "Starboard"});
  EXPECT_THAT(Answered(one).out, AllOf(Not(HasSubstr("port: the")), HasSubstr("starboard: "),
                                       HasSubstr("stacked lure")));
}

TEST(Depth, SpeedOverGroundAloneSaysThatTheCurrentIsUnknown) {
  const Heard heard =
      Answered({"depth", "--rig", kRig, "--count", "100 ft", "--speed", "2.5 kn", "--over-ground"});
  EXPECT_THAT(heard.out, AllOf(HasSubstr("current is taken as none"), HasSubstr("0.3 kn")));
}

TEST(Depth, TheHeadTellsTheCurrent) {
  const auto head = [](std::vector<std::string> more) {
    std::vector<std::string> words{"depth",   "--rig", kRig,      "--count", "100 ft",
                                   "--speed", "2 kn",  "--bands", "off"};
    words.insert(words.end(), more.begin(), more.end());
    const std::string out = Answered(words).out;
    std::string text = out.substr(0, out.find("\n\n"));
    // It is broken between words, the next line set in.
    for (std::size_t at = text.find("\n  "); at != std::string::npos; at = text.find("\n  ")) {
      text.replace(at, 3, " ");
    }
    return text;
  };
  EXPECT_THAT(head({"--over-ground"}), HasSubstr("over ground, the current taken as none"));
  EXPECT_THAT(head({"--current", "0.4 kn toward 200"}),
              HasSubstr("current 0.4 kn toward 200 at all depths"));
  const TestFolder folder;
  const std::string current = folder.Write("c.toml", R"(shape = "linear"
points = [
  { depth = "0 ft", speed = "0.6 kn", toward = "200 deg" },
  { depth = "150 ft", speed = "0.1 kn", toward = "230 deg" },
]
)");
  EXPECT_THAT(head({"--heading", "0", "--current", current}),
              HasSubstr("current 0.6 kn toward 200 at the surface, 0.1 kn toward 230 at 150 ft"));
}

TEST(Depth, AtRestTheBallHangsDownAndTheLureBelowIt) {
  const Heard heard = Answered({"depth", "--rig", "examples/rigs/engineer.toml", "--count", "50 m",
                                "--speed", "0 mph", "--bands", "off", "--units", "metric"});
  EXPECT_THAT(heard.out, HasSubstr("line: the ball at 50.0 m"));
  const Heard whole = Answered({"depth", "--rig", kRig, "--count", "100 ft", "--speed", "0 mph"});
  EXPECT_THAT(whole.out, HasSubstr("the water stands still"));
}

TEST(Depth, ACountOfNothingLeavesTheBallAtTheSurface) {
  const Heard heard = Answered(
      {"depth", "--rig", "examples/rigs/engineer.toml", "--count", "0 ft", "--speed", "2 mph"});
  EXPECT_THAT(heard.out, HasSubstr("line: the ball at 0 ft"));
}

TEST(Count, AClipStandsForItsLure) {
  const Heard heard =
      Answered({"count", "--rig", "examples/rigs/two-riggers.toml", "--rigger", "starboard",
                "--clip", "stacked", "--depth", "80 ft", "--speed", "2.5 mph", "--bands", "off"});
  EXPECT_THAT(heard.out,
              AllOf(HasSubstr("The stacked lure at 80 ft"), HasSubstr("There the ball is at"),
                    HasSubstr("low lure at"), HasSubstr("mind the bottom")));
}

TEST(Count, OutOfReachIsAnAnswerWithRemediesAndExitCode1) {
  const std::vector<std::string> words{"count",  "--rig",   kRig,      "--depth",
                                       "300 ft", "--speed", "2.75 mph"};
  const Heard heard = Answered(words, 1);
  EXPECT_THAT(heard.out, AllOf(HasSubstr("no count puts the ball at 300 ft"),
                               HasSubstr("What would get there"), HasSubstr("a speed of "),
                               HasSubstr("The deepest the ball goes")));
  auto json = words;
  json.emplace_back("--json");
  EXPECT_THAT(Answered(json, 1).out,
              AllOf(HasSubstr("\"reachable\": false"), HasSubstr("\"count_m\": null")));
}

// The remedies that are named do get there: asked again with each, the depth is reached.
TEST(Count, AnsweredWithinReachOnceARemedyIsTaken) {
  const Heard slower =
      Answered({"count", "--rig", kRig, "--depth", "300 ft", "--speed", "2.75 mph"}, 1);
  const std::size_t at = slower.out.find("- a speed of ") + std::string("- a speed of ").size();
  const std::string speed = slower.out.substr(at, slower.out.find('\n', at) - at);
  (void)Answered({"count", "--rig", kRig, "--depth", "300 ft", "--speed", speed, "--bands", "off"});
}

TEST(Card, HasTwelveCountsAndSevenSpeedsUnlessToldOtherwise) {
  const Heard heard = Answered({"card", "--rig", kRig, "--bands", "off"});
  EXPECT_THAT(heard.out, AllOf(HasSubstr("\n20 ft "), HasSubstr("\n240 ft "), HasSubstr("2 mph"),
                               HasSubstr("3.2 mph"), HasSubstr("port: depth of the ball"),
                               HasSubstr("port: depth of the lure")));
}

TEST(Card, CsvHasOneLineACell) {
  const TestFolder folder;
  (void)Answered({"card", "--rig", kRig, "--csv", folder.Path("card.csv")});
  const std::string csv = ReadWhole(folder.Path("card.csv"));
  EXPECT_THAT(csv, StartsWith("rigger,part,speed_mph,count_ft,depth_ft,depth_low_ft,depth_high_ft,"
                              "leans_too_far\r\nport,ball,2.000,20.000,"));
  EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 1 + 2 * 12 * 7);
}

TEST(Card, DrawsOneSheetForEachRigger) {
  const TestFolder folder;
  const Heard heard = Hear({"card", "--rig", "examples/rigs/two-riggers.toml", "--bands", "off",
                            "--draw", folder.Path("card.pdf")});
  EXPECT_EQ(heard.exit_code, 0) << heard.err;
  EXPECT_THAT(heard.err, HasSubstr("card-2.pdf"));
  EXPECT_THAT(ReadWhole(folder.Path("card.pdf")), StartsWith("%PDF-"));
  EXPECT_THAT(ReadWhole(folder.Path("card-2.pdf")), StartsWith("%PDF-"));
}

TEST(Compare, PutsRigsSideBySide) {
  const Heard heard = Answered({"compare", "--rig", kRig, "--rig", "examples/rigs/two-riggers.toml",
                                "--speed", "2.5 mph", "--counts", "50 ft, 100 ft"});
  EXPECT_THAT(heard.out,
              AllOf(HasSubstr("A  Spindrift Sound, one rigger"),
                    HasSubstr("C  Spindrift Sound, two riggers: starboard"),
                    HasSubstr("a ball 1 lb heavier"), HasSubstr("Pull of the line at the boom")));
}

TEST(Compare, TellsRigsOfOneNameApart) {
  const TestFolder folder;
  const std::string copy =
      folder.Write("copy.toml", ReadWhole(std::string(OFFPLUMB_SOURCE_DIR "/") + kRig));
  const Heard heard = Answered({"compare", "--rig", kRig, "--rig", copy, "--speed", "2.5 mph"});
  EXPECT_THAT(heard.out, AllOf(HasSubstr("(" + kRig + ")"), HasSubstr("copy.toml)")));
}

TEST(Output, IsTheSameToTheByteWhenAskedAgain) {
  const std::vector<std::vector<std::string>> questions{
      {"depth", "--rig", kRig, "--count", "100 ft", "--speed", "2.75 mph", "--json"},
      {"count", "--rig", kRig, "--depth", "90 ft", "--speed", "2.75 mph", "--json"},
      {"card", "--rig", kRig, "--json"},
      {"compare", "--rig", kRig, "--speed", "2.5 mph", "--json"}};
  for (const auto& words : questions) {
    SCOPED_TRACE(words[0]);
    EXPECT_EQ(Answered(words).out, Answered(words).out);
  }
}

TEST(Output, DrawsTheSideViewInThreeFormats) {
  const TestFolder folder;
  const auto draw = [&](const std::string& name) {
    (void)Answered({"depth", "--rig", kRig, "--count", "100 ft", "--speed", "2.75 mph", "--draw",
                    folder.Path(name)});
    return ReadWhole(folder.Path(name));
  };
  EXPECT_THAT(draw("side.svg"), AllOf(StartsWith("<?xml"), HasSubstr("</svg>")));
  EXPECT_THAT(draw("side.pdf"), StartsWith("%PDF-"));
  EXPECT_THAT(draw("side.png"), StartsWith("\x89PNG"));
}

}  // namespace
}  // namespace offplumb::cli
