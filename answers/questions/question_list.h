/// \file
/// The questions there are: one list from which names, summaries and messages are made.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "engine/problem.h"

namespace offplumb::answers {

/// X(name, what a person types, what it answers)
#define OFFPLUMB_QUESTIONS(X)                                                           \
  X(kDepth, "depth", "At this count and speed: where are the ball and the lures?")      \
  X(kCount, "count", "What count puts the ball or the lure at a depth, or what would?") \
  X(kCard, "card", "A sheet of depths over counts and speeds, to tape by the rigger.")  \
  X(kCompare, "compare", "Rigs side by side: how deep, with what load, and what buys more?")

enum class Question {
#define OFFPLUMB_ENTRY(name, word, summary) name,
  OFFPLUMB_QUESTIONS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

/// One question of the list.
struct QuestionEntry {
  Question question;
  std::string_view word;     ///< As it is typed, and the value of "question" in JSON.
  std::string_view summary;  ///< One sentence.
};

/// \return every question, in the order of the list.
[[nodiscard]] std::span<const QuestionEntry> Questions();

/// \return the entry of a question.
[[nodiscard]] const QuestionEntry& EntryOf(Question question);

/// \return the question of this word; a problem with the nearest one and the whole list if there is
/// none.
[[nodiscard]] Expected<Question> FindQuestion(std::string_view word);

}  // namespace offplumb::answers
