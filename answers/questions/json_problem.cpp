#include "answers/questions/json_problem.h"

namespace offplumb::answers {
namespace {

const char* KindId(ProblemKind kind) {
  switch (kind) {
    case ProblemKind::kBadInput:
      return "bad_input";
    case ProblemKind::kCannotBeDone:
      return "cannot_be_done";
    case ProblemKind::kFault:
      break;
  }
  return "fault";
}

}  // namespace

void WriteProblem(std::string_view key, const Problem& problem, std::string_view path,
                  JsonWriter& json) {
  json.Object(key);
  json.Text("kind", KindId(problem.kind));
  json.Text("subject", problem.subject);
  json.Text("message", problem.message);
  json.Text("remedy", problem.remedy);
  json.Whole("line", problem.line);
  json.TextOrNull("path", path);
  json.End();
}

}  // namespace offplumb::answers
