/// \file
/// What was typed: the question and its flags, known by name but not yet read.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "answers/questions/question_list.h"
#include "engine/problem.h"

namespace offplumb::cli {

struct Arguments {
  enum class Wish { kAnswer, kHelp, kVersion };

  Wish wish = Wish::kAnswer;
  std::optional<answers::Question> question;               ///< Always there for an answer.
  std::map<std::string, std::vector<std::string>> values;  ///< By flag; a switch has none.

  [[nodiscard]] bool Has(const std::string& flag) const { return values.count(flag) > 0; }
  /// \return the value of a flag; nothing when it was not given.
  [[nodiscard]] std::optional<std::string> Value(const std::string& flag) const;
};

/// \param words what was typed after the program's name.
/// \return a problem for an unknown question or flag (with the nearest), a flag without its value,
/// one that is given twice or does not go with the question.
[[nodiscard]] Expected<Arguments> ParseArguments(const std::vector<std::string>& words);

}  // namespace offplumb::cli
