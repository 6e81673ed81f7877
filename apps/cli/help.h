/// \file
/// Help in plain words.
#pragma once

#include <string>

#include "answers/questions/question_list.h"

namespace offplumb::cli {

/// \return what the program is and which questions it answers.
[[nodiscard]] std::string HelpOverview();

/// \return what a question answers, its flags, what its words mean, and one example that runs in
/// the source folder.
[[nodiscard]] std::string HelpOn(answers::Question question);

}  // namespace offplumb::cli
