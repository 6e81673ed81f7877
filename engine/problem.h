/// \file
/// What a public function returns instead of an answer: one plain value that says what is wrong and
/// what to do.
#pragma once

#include <string>

#include <tl/expected.hpp>

namespace offplumb {

/// Whose move it is next. The program's exit code follows from it.
enum class ProblemKind {
  kBadInput,      ///< The person must change what they gave (exit 2).
  kCannotBeDone,  ///< The question is sound and its answer is "no, because" (exit 1).
  kFault,         ///< A fault of ours: please report it (exit 3).
};

/// One problem in words. `message` is a whole sentence; `remedy` says what to type or do next.
struct Problem {
  ProblemKind kind = ProblemKind::kFault;
  std::string
      subject;  ///< The thing at fault, as the person calls it: "speed", "rigger \"port\": ball".
  std::string message;  ///< What is wrong, with the value and the allowed range.
  std::string remedy;   ///< What to do about it. May be empty.
  std::string file;     ///< Where the input came from; empty if not from a file.
  int line = 0;         ///< 1-based line in `file`; 0 if unknown.
};

/// An answer or a problem.
template <typename T>
using Expected = tl::expected<T, Problem>;

/// Shorthand for returning a bad-input problem.
/// \param subject what is at fault; \param message the sentence; \param remedy what to do.
inline tl::unexpected<Problem> BadInput(std::string subject, std::string message,
                                        std::string remedy = {}) {
  return tl::unexpected<Problem>(Problem{
      ProblemKind::kBadInput, std::move(subject), std::move(message), std::move(remedy), {}, 0});
}

}  // namespace offplumb
