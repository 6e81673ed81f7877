#include "answers/questions/question_list.h"

#include <array>
#include <cstddef>
#include <vector>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::answers {
namespace {

constexpr auto kQuestions = std::to_array<QuestionEntry>({
#define OFFPLUMB_ENTRY(name, word, typed, summary) {Question::name, word, typed, summary},
    OFFPLUMB_QUESTIONS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
});

std::vector<std::string> Words() {
  std::vector<std::string> words;
  for (const QuestionEntry& entry : kQuestions) words.emplace_back(entry.typed);
  return words;
}

}  // namespace

std::span<const QuestionEntry> Questions() { return kQuestions; }

const QuestionEntry& EntryOf(Question question) {
  return kQuestions[static_cast<std::size_t>(question)];
}

Expected<Question> FindQuestion(std::string_view word) {
  for (const QuestionEntry& entry : kQuestions) {
    if (entry.word == word || entry.typed == word) return entry.question;
  }
  const std::vector<std::string> words = Words();
  const std::string nearest = tackle::NearestWord(word, words);
  const std::vector<std::string_view> views(words.begin(), words.end());
  const std::string meant =
      nearest.empty() ? std::string() : fmt::format(" Did you mean {}?", nearest);
  return BadInput(
      "question", fmt::format("{} is not a question.{}", Quoted(word), meant),
      fmt::format("Ask {}; offplumb --help says what each answers.", JoinWords(views, "or")));
}

}  // namespace offplumb::answers
