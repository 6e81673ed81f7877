/// \file
/// `offplumb ask`: requests as JSON, one a line, and their answers, one a line.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace offplumb::cli {

/// The word that asks for it.
inline constexpr const char* kAskWord = "ask";

/// Reads requests from a stream until it ends and answers each at once, so that another program can
/// keep this one running. Empty lines are passed over.
/// \param words what was typed after "ask": nothing, or "--help".
/// \return the exit code: the greatest of all answers' (see ExitCode).
[[nodiscard]] int AskInLines(const std::vector<std::string>& words, std::istream& in,
                             std::ostream& out, std::ostream& messages);

}  // namespace offplumb::cli
