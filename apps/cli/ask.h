/// \file
/// One run of the program: from words typed to what is said and the exit code.
#pragma once

#include <string>
#include <vector>

#include "engine/problem.h"

namespace offplumb::cli {

/// Exit codes. 0 answered, 1 answered "cannot be done, because", 2 bad input, 3 a fault of ours.
enum ExitCode { kAnswered = 0, kCannotBeDone = 1, kBadInput = 2, kFault = 3 };

/// \return the exit code of a problem of this kind.
[[nodiscard]] int ExitCodeOf(ProblemKind kind);

/// What a run says.
struct Said {
  int exit_code = kAnswered;
  std::string answer;   ///< For standard output; empty when there is none.
  std::string message;  ///< For standard error; empty when all is well.
};

/// Runs the program. Reads and writes the files that are asked for; shows a progress bar on
/// standard error; writes nothing to standard output itself.
/// \param words what was typed after the program's name.
[[nodiscard]] Said Run(const std::vector<std::string>& words);

/// \return a problem in one line, as it is printed: "offplumb: FILE:LINE: subject: what is wrong
/// What to do."
[[nodiscard]] std::string MessageOf(const Problem& problem);

}  // namespace offplumb::cli
