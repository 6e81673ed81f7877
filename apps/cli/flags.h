/// \file
/// The flags: one list from which parsing, help and messages are made.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "answers/questions/question_list.h"

namespace offplumb::cli {

/// One flag of the command line.
struct Flag {
  std::string_view name;       ///< Without its dashes.
  std::string_view value;      ///< What its value is, for help: "FILE". Empty: a switch.
  std::string_view questions;  ///< Typed words of the questions it goes with, separated by blanks.
  std::string_view words;      ///< What it says, for help.
  bool repeatable = false;     ///< May be given more than once.
};

/// \return every flag, in the order in which help shows them.
[[nodiscard]] std::span<const Flag> Flags();

/// \return whether a flag goes with a question.
[[nodiscard]] bool GoesWith(const Flag& flag, answers::Question question);

/// \return the words of the questions a flag goes with.
[[nodiscard]] std::vector<std::string_view> QuestionsOf(const Flag& flag);

/// \return the flag of this name; nullptr if there is none.
[[nodiscard]] const Flag* FindFlag(std::string_view name);

/// \return the names of a question's flags, with their dashes.
[[nodiscard]] std::vector<std::string> FlagNames(answers::Question question);

}  // namespace offplumb::cli
