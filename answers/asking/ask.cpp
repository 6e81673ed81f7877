#include "answers/asking/ask.h"

#include <algorithm>
#include <array>
#include <exception>
#include <new>
#include <type_traits>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "answers/asking/about.h"
#include "answers/asking/json_value.h"
#include "answers/asking/quantity_question.h"
#include "answers/asking/requests.h"
#include "answers/questions/json.h"
#include "answers/questions/json_problem.h"
#include "answers/questions/question_list.h"
#include "answers/units/words.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::answers {
namespace {

/// What a page asks beside the questions, in one list. X(name, word)
#define OFFPLUMB_HELPERS(X) \
  X(kAbout, "about")        \
  X(kQuantity, "quantity")  \
  X(kRigRead, "rig_read")   \
  X(kRigWrite, "rig_write")

enum class Helper {
#define OFFPLUMB_ENTRY(name, word) name,
  OFFPLUMB_HELPERS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

constexpr auto kHelpers = std::to_array<std::string_view>({
#define OFFPLUMB_ENTRY(name, word) word,
    OFFPLUMB_HELPERS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
});

Reply Refuse(std::string_view question, const Problem& problem, const std::string& path = {}) {
  JsonWriter json;
  json.Text("question", question);
  WriteProblem("problem", problem, path, json);
  return {json.Take(), problem.kind};
}

Problem NoSuchQuestion(const std::string& word) {
  std::vector<std::string_view> words;
  for (const QuestionEntry& entry : Questions()) words.push_back(entry.word);
  words.insert(words.end(), kHelpers.begin(), kHelpers.end());
  const std::string nearest = tackle::NearestWord(word, {words.begin(), words.end()});
  const std::string meant =
      nearest.empty() ? std::string() : fmt::format(" Did you mean {}?", Quoted(nearest));
  return {ProblemKind::kBadInput,
          "question",
          fmt::format("{} is not a question.{}", Quoted(word), meant),
          fmt::format("Ask {}.", JoinWords(words, "or")),
          {},
          0};
}

/// Adds the line to a problem that lies in a rigger of these rigs. \return the rigger's key.
std::string Locate(const std::vector<RigText>& rigs, Problem& problem) {
  for (const RigText& text : rigs) {
    for (std::size_t i = 0; i < text.rig.riggers.size(); ++i) {
      if (problem.subject != "rigger \"" + text.rig.riggers[i].name + "\"") continue;
      if (problem.line == 0 && i < text.rigger_lines.size()) problem.line = text.rigger_lines[i];
      return fmt::format("riggers[{}]", i);
    }
  }
  return {};
}

template <typename Request>
Reply ReplyOn(std::string_view question, const Expected<Asked<Request>>& asked) {
  if (!asked) return Refuse(question, asked.error());
  const auto answer = Answer(asked->request);
  if (!answer) {
    Problem problem = answer.error();
    const std::string path = Locate(asked->rigs, problem);
    return Refuse(question, problem, path);
  }
  Reply reply{ToJson(*answer, JsonLayout::kOneLine), std::nullopt};
  if constexpr (std::is_same_v<Request, CountRequest>) {
    if (!answer->reachable()) reply.problem = ProblemKind::kCannotBeDone;
  }
  return reply;
}

Reply ReplyToQuestion(const QuestionEntry& entry, const JsonValue& json, const RigTexts& texts) {
  switch (entry.question) {
    case Question::kDepth:
      return ReplyOn(entry.word, ReadDepthRequest(json, texts));
    case Question::kCount:
      return ReplyOn(entry.word, ReadCountRequest(json, texts));
    case Question::kCard:
      return ReplyOn(entry.word, ReadCardRequest(json, texts));
    case Question::kCompare:
      return ReplyOn(entry.word, ReadCompareRequest(json, texts));
    case Question::kTwoWay:
      return ReplyOn(entry.word, ReadTwoWayRequest(json));
  }
  return Refuse(entry.word, NoSuchQuestion(std::string(entry.word)));
}

Reply ReplyRigRead(const RequestFields& fields, const std::optional<Problem>& first,
                   const RigTexts& texts) {
  fields.CheckKeys(std::to_array<std::string_view>({"question", "rig_toml"}),
                   "a request for rig_read");
  fields.Require("rig_toml", "The rig", "\"the text of a rig file\"");
  const auto toml = fields.Text("rig_toml");
  return first ? Refuse("rig_read", *first) : texts.describe(toml.value_or(""));
}

Reply ReplyRigWrite(const JsonValue& json, const RequestFields& fields,
                    const std::optional<Problem>& first, const RigTexts& texts) {
  fields.CheckKeys(std::to_array<std::string_view>({"question", "document"}),
                   "a request for rig_write");
  fields.Require("document", "The rig's document", "{\"name\": \"My rig\", \"riggers\": [...]}");
  const bool there = fields.Object("document").has_value();
  return first || !there ? Refuse("rig_write", first.value_or(Problem{}))
                         : texts.write(*json.Find("document"));
}

Reply ReplyToHelper(Helper helper, const JsonValue& json, const RigTexts& texts) {
  std::optional<Problem> first;
  const RequestFields fields(json, {}, first);
  if (helper == Helper::kRigRead) return ReplyRigRead(fields, first, texts);
  if (helper == Helper::kRigWrite) return ReplyRigWrite(json, fields, first, texts);
  if (helper == Helper::kQuantity) {
    auto read = QuantityJson(json);
    return read ? Reply{std::move(*read), std::nullopt} : Refuse("quantity", read.error());
  }
  fields.CheckKeys(std::to_array<std::string_view>({"question"}), "a request for about");
  return first ? Refuse("about", *first) : Reply{AboutJson(), std::nullopt};
}

/// \param question gets the question's word as soon as it is known.
Reply ReplyUnguarded(std::string_view request_json, const RigTexts& texts, std::string& question) {
  const auto json = ParseJsonObject(request_json);
  if (!json) return Refuse("", json.error());
  std::optional<Problem> first;
  const RequestFields fields(*json, {}, first);
  fields.Require("question", "The question", "\"depth\"");
  question = fields.Text("question").value_or("");
  if (first) return Refuse(question, *first);
  for (const QuestionEntry& entry : Questions()) {
    if (entry.word == question) return ReplyToQuestion(entry, *json, texts);
  }
  for (std::size_t i = 0; i < kHelpers.size(); ++i) {
    if (kHelpers[i] == question) return ReplyToHelper(static_cast<Helper>(i), *json, texts);
  }
  return Refuse(question, NoSuchQuestion(question));
}

Reply Fault(const std::string& question, const char* what) {
  return Refuse(question, {ProblemKind::kFault,
                           "offplumb",
                           fmt::format("A fault of ours: {}.", what),
                           "Please report the request.",
                           {},
                           0});
}

}  // namespace

Reply ReplyTo(std::string_view request_json, const RigTexts& texts) {
  std::string question;
  try {
    return ReplyUnguarded(request_json, texts, question);
  } catch (const std::bad_alloc&) {
    return Fault(question, "the memory does not suffice");
  } catch (const std::exception& error) {
    return Fault(question, error.what());
  }
}

}  // namespace offplumb::answers
