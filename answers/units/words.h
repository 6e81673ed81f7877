/// \file
/// Small things done with words: comparing, trimming, listing.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace offplumb::answers {

/// \return whether two words are the same but for capitals (of the 26 plain letters).
[[nodiscard]] bool SameWord(std::string_view a, std::string_view b);

/// \return the text without blanks and tabs around it.
[[nodiscard]] std::string_view Trim(std::string_view text);

/// \return "a, b or c" (conjunction "or").
[[nodiscard]] std::string JoinWords(const std::vector<std::string_view>& words,
                                    std::string_view conjunction);

/// \return what a person wrote, in quotes, fit for a message: no control characters, at most 60
/// bytes.
[[nodiscard]] std::string Quoted(std::string_view text);

}  // namespace offplumb::answers
