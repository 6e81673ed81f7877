#include "apps/cli/ask.h"

#include <type_traits>

#include <fmt/format.h>

#include "answers/questions/json.h"
#include "apps/cli/arguments.h"
#include "apps/cli/csv.h"
#include "apps/cli/draw.h"
#include "apps/cli/help.h"
#include "apps/cli/outputs.h"
#include "apps/cli/requests.h"
#include "apps/cli/show.h"
#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

using answers::Question;

Said Failed(const Problem& problem) { return {ExitCodeOf(problem.kind), "", MessageOf(problem)}; }

template <typename Answer>
int CodeOf(const Answer& answer) {
  if constexpr (std::is_same_v<Answer, answers::CountAnswer>) {
    return answer.reachable() ? kAnswered : kCannotBeDone;
  }
  return kAnswered;
}

/// Writes the files that are asked for beside the answer.
template <typename Answer>
Expected<void> WriteOutputs(const Arguments& arguments, const Answer& answer) {
  if (const auto path = arguments.Value("csv")) {
    auto written = WriteFile(*path, Csv(answer));
    if (!written) return written;
  }
  if constexpr (kDraws<Answer>) {
    if (const auto path = arguments.Value("draw")) return Draw(answer, *path);
  }
  return {};
}

/// How many sheets a request draws: a card has one for each rigger meant.
template <typename Request>
std::size_t SheetsOf(const Request& request) {
  if constexpr (std::is_same_v<Request, answers::CardRequest>) {
    return request.rig.rigger.empty() ? request.rig.rig.riggers.size() : 1;
  }
  return 1;
}

template <typename Request>
std::vector<std::string> DrawnFilesOf(const Arguments& arguments, const Request& request) {
  const auto path = arguments.Value("draw");
  if (!path) return {};
  return DrawnFiles(*path, SheetsOf(request));
}

/// Says where the sheets are when there are more than the one that was named.
std::string MessageOn(const std::vector<std::string>& drawings) {
  if (drawings.size() < 2) return {};
  std::string text = "offplumb: One sheet for each rigger:";
  for (const std::string& file : drawings) text += " " + file;
  return Render(text, false) + "\n";
}

template <typename Answer>
Said Say(const Arguments& arguments, const Answer& answer) {
  const auto written = WriteOutputs(arguments, answer);
  if (!written) return Failed(written.error());
  if (arguments.Has("json")) return {CodeOf(answer), ToJson(answer), ""};
  const Screen screen = StandardOutput();
  return {CodeOf(answer), Render(Show(answer, screen.width), screen.colour), ""};
}

template <typename Request>
Said Ask(const Arguments& arguments, const Expected<Asked<Request>>& asked) {
  if (!asked) return Failed(asked.error());
  std::vector<std::string> inputs;
  for (const auto& rig : asked->rigs) inputs.push_back(rig.file);
  if (const auto current = arguments.Value("current")) inputs.push_back(*current);
  const auto drawings = DrawnFilesOf(arguments, asked->request);
  const auto writable = CheckOutputs(arguments, inputs, drawings);
  if (!writable) return Failed(writable.error());
  ProgressBar bar;
  const auto answer = answers::Answer(asked->request, [&bar](double done) { bar.Show(done); });
  if (!answer) {
    Problem problem = answer.error();
    Locate(asked->rigs, problem);
    return Failed(problem);
  }
  Said said = Say(arguments, *answer);
  if (said.message.empty()) said.message = MessageOn(drawings);
  return said;
}

Said AskQuestion(const Arguments& arguments) {
  switch (*arguments.question) {
    case Question::kDepth:
      return Ask(arguments, ReadDepthRequest(arguments));
    case Question::kCount:
      return Ask(arguments, ReadCountRequest(arguments));
    case Question::kCard:
      return Ask(arguments, ReadCardRequest(arguments));
    case Question::kCompare:
      return Ask(arguments, ReadCompareRequest(arguments));
    case Question::kTwoWay:
      return Ask(arguments, ReadTwoWayRequest(arguments));
  }
  return {kFault, "", "offplumb: question: No answer is known for it.\n"};
}

std::string Help(const Arguments& arguments) {
  return arguments.question ? HelpOn(*arguments.question) : HelpOverview();
}

}  // namespace

int ExitCodeOf(ProblemKind kind) {
  switch (kind) {
    case ProblemKind::kBadInput:
      return kBadInput;
    case ProblemKind::kCannotBeDone:
      return kCannotBeDone;
    case ProblemKind::kFault:
      break;
  }
  return kFault;
}

Said Run(const std::vector<std::string>& words) {
  const auto arguments = ParseArguments(words);
  if (!arguments) return Failed(arguments.error());
  switch (arguments->wish) {
    case Arguments::Wish::kHelp:
      return {kAnswered, Help(*arguments), ""};
    case Arguments::Wish::kVersion:
      return {kAnswered, "offplumb " OFFPLUMB_VERSION "\n", ""};
    case Arguments::Wish::kAnswer:
      break;
  }
  return AskQuestion(*arguments);
}

std::string MessageOf(const Problem& problem) {
  std::string text = "offplumb: ";
  if (!problem.file.empty()) {
    text += problem.file + (problem.line > 0 ? fmt::format(":{}", problem.line) : "") + ": ";
  }
  if (!problem.subject.empty() && problem.subject != problem.file) text += problem.subject + ": ";
  text += problem.message;
  if (!problem.remedy.empty()) text += " " + problem.remedy;
  return Render(text, false) + "\n";
}

}  // namespace offplumb::cli
