// `offplumb ask`: requests as JSON lines, answered one by one, and the exit codes.

#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "tests/apps/program.h"

namespace offplumb::cli {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

json Request(const std::string& question) {
  return {{"question", question},
          {"rig_toml", ReadWhole(OFFPLUMB_SOURCE_DIR "/examples/rigs/one-rigger.toml")},
          {"speed_mps", 1.2},
          {"bands", false}};
}

json With(json request, const std::string& key, const json& value) {
  request[key] = value;
  return request;
}

Heard HearLines(const std::string& lines) {
  const TestFolder folder;
  return Hear({"ask"}, folder.Write("requests.jsonl", lines));
}

/// \return what is said to these requests, each answer parsed.
std::vector<json> AnswersOf(const Heard& heard) {
  std::vector<json> answers;
  std::string rest = heard.out;
  while (!rest.empty()) {
    const std::size_t end = rest.find('\n');
    EXPECT_NE(end, std::string::npos) << "the last line does not end";
    answers.push_back(json::parse(rest.substr(0, end)));
    rest.erase(0, end + 1);
  }
  return answers;
}

TEST(AskLines, AnswersEachLineInItsOrderAndPassesOverEmptyOnes) {
  const std::string quantity =
      R"({"question": "quantity", "text": "90 ft", "dimension": "length"})";
  const std::string depth = With(Request("depth"), "count_m", 30).dump();
  const Heard heard = HearLines(quantity + "\n\n  \r\n" + depth + "\n{\"question\":\"about\"}");
  EXPECT_EQ(heard.exit_code, 0);
  EXPECT_EQ(heard.err, "");
  const auto answers = AnswersOf(heard);
  ASSERT_EQ(answers.size(), 3u);
  EXPECT_DOUBLE_EQ(answers[0].at("value").get<double>(), 27.432);
  EXPECT_EQ(answers[1].at("question"), "depth");
  EXPECT_EQ(answers[2].at("question"), "about");
}

TEST(AskLines, SaysWhatTheFlagsSay) {
  const auto answers = AnswersOf(HearLines(With(Request("depth"), "count_m", 30).dump() + "\n"));
  const Heard flags = Hear({"depth", "--rig", "examples/rigs/one-rigger.toml", "--count", "30 m",
                            "--speed", "1.2 m/s", "--bands", "off", "--json"});
  ASSERT_EQ(answers.size(), 1u);
  EXPECT_EQ(answers[0], json::parse(flags.out));
}

TEST(AskLines, KnowsTheVersionThatTheProgramTells) {
  const auto answers = AnswersOf(HearLines("{\"question\": \"about\"}\n"));
  ASSERT_EQ(answers.size(), 1u);
  EXPECT_EQ(Hear({"--version"}).out,
            "offplumb " + answers[0].at("version").get<std::string>() + "\n");
}

TEST(AskLines, EndsWithTheGreatestExitCode) {
  const std::string answered = With(Request("depth"), "count_m", 30).dump() + "\n";
  const std::string out_of_reach = With(Request("count"), "depth_m", 300).dump() + "\n";
  const std::string clip_in_air = With(Request("depth"), "count_m", 0.2).dump() + "\n";
  const std::string wrong = With(Request("depth"), "count_m", "30 m").dump() + "\n";
  EXPECT_EQ(HearLines(answered + answered).exit_code, 0);
  EXPECT_EQ(HearLines(out_of_reach + answered).exit_code, 1);
  EXPECT_EQ(HearLines(clip_in_air).exit_code, 1);
  EXPECT_EQ(HearLines(answered + wrong + out_of_reach).exit_code, 2);
  EXPECT_EQ(HearLines("not JSON\n").exit_code, 2);
  EXPECT_EQ(HearLines("").exit_code, 0) << "nothing asked";
}

TEST(AskLines, GoesOnAfterAProblem) {
  const std::string good = R"({"question": "quantity", "text": "1 m", "dimension": "length"})";
  const auto answers = AnswersOf(HearLines("{\n" + good + "\n"));
  ASSERT_EQ(answers.size(), 2u);
  EXPECT_EQ(answers[0].at("problem").at("kind"), "bad_input");
  EXPECT_EQ(answers[1].at("value"), 1);
}

TEST(AskLines, ReadsAndWritesRigFiles) {
  const json read_request = {{"question", "rig_read"}, {"rig_toml", Request("x").at("rig_toml")}};
  const auto read = AnswersOf(HearLines(read_request.dump() + "\n"));
  ASSERT_EQ(read.size(), 1u);
  const json write_request = {{"question", "rig_write"}, {"document", read[0].at("document")}};
  const auto written = AnswersOf(HearLines(write_request.dump() + "\n"));
  ASSERT_EQ(written.size(), 1u);
  EXPECT_EQ(written[0].at("toml"), read[0].at("toml"));
  const json broken = With(read_request, "rig_toml", "name = 3\n");
  const Heard refused = HearLines(broken.dump() + "\n");
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_EQ(AnswersOf(refused).at(0).at("problem").at("line"), 1);
}

TEST(AskLines, TakesNoWordsButHelp) {
  const Heard help = Hear({"ask", "--help"});
  EXPECT_EQ(help.exit_code, 0);
  EXPECT_THAT(help.out, AllOf(HasSubstr("docs/json.md"), HasSubstr("Exit codes")));
  const Heard refused = Hear({"ask", "--rig"});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_EQ(refused.out, "");
  EXPECT_THAT(refused.err, AllOf(StartsWith("offplumb: ask: \"--rig\""), EndsWith("\n")));
}

}  // namespace
}  // namespace offplumb::cli
