/// \file
/// The word a person most likely meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace offplumb::tackle {

/// \return the nearest of some words to one that is not among them, by the letters to change; empty
/// when none is near enough to be a slip of the finger. A word with other numbers in it is never
/// near: "16 lb" is no slip for "15 lb".
[[nodiscard]] std::string NearestWord(std::string_view word,
                                      const std::vector<std::string>& candidates);

}  // namespace offplumb::tackle
