/// \file
/// What to mind on the water, in plain words, for each question.
#pragma once

#include <string>
#include <vector>

#include "answers/questions/question_list.h"

namespace offplumb::answers {

/// \return the cautions that stand beside an answer: whole sentences, never empty.
[[nodiscard]] std::vector<std::string> CautionsFor(Question question);

}  // namespace offplumb::answers
