/// \file
/// The questions there are: one list from which names, summaries and messages are made.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "engine/problem.h"

namespace offplumb::answers {

/// X(name, its word in JSON, what a person types, what it answers)
#define OFFPLUMB_QUESTIONS(X)                                                                    \
  X(kDepth, "depth", "depth", "At this count and speed: where are the ball and the lures?")      \
  X(kCount, "count", "count", "What count puts the ball or the lure at a depth, or what would?") \
  X(kCard, "card", "card", "A sheet of depths over counts and speeds, to tape by the rigger.")   \
  X(kCompare, "compare", "compare",                                                              \
    "Rigs side by side: how deep, with what load, and what buys more?")                          \
  X(kTwoWay, "two_way", "two-way",                                                               \
    "Out on one heading and back on the reverse: the current, and how far the log is off.")

enum class Question {
#define OFFPLUMB_ENTRY(name, word, typed, summary) name,
  OFFPLUMB_QUESTIONS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

/// One question of the list.
struct QuestionEntry {
  Question question;
  std::string_view word;     ///< The value of "question" in JSON.
  std::string_view typed;    ///< As a person types it: the same but for a dash.
  std::string_view summary;  ///< One sentence.
};

/// \return every question, in the order of the list.
[[nodiscard]] std::span<const QuestionEntry> Questions();

/// \return the entry of a question.
[[nodiscard]] const QuestionEntry& EntryOf(Question question);

/// \return the question of this word, of JSON or as typed; a problem with the nearest one and the
/// whole list if there is none.
[[nodiscard]] Expected<Question> FindQuestion(std::string_view word);

}  // namespace offplumb::answers
