/// \file
/// Answers as drawings in files.
#pragma once

#include <string>
#include <type_traits>
#include <vector>

#include "answers/questions/card.h"
#include "answers/questions/depth.h"
#include "engine/problem.h"

namespace offplumb::cli {

/// Whether an answer can be drawn. The flag --draw goes with the same questions (flags.cpp).
template <typename Answer>
inline constexpr bool kDraws =
    std::is_same_v<Answer, answers::DepthAnswer> || std::is_same_v<Answer, answers::CardAnswer>;

/// \return the files that are drawn when `path` is asked for: that one; for a card of several
/// riggers, since a sheet holds one, further ones beside it: card.pdf, card-2.pdf, card-3.pdf.
[[nodiscard]] std::vector<std::string> DrawnFiles(const std::string& path, std::size_t sheets);

/// Draws an answer into the files of DrawnFiles, in the format of their ending.
/// \return a problem that names the file.
[[nodiscard]] Expected<void> Draw(const answers::DepthAnswer& answer, const std::string& path);
[[nodiscard]] Expected<void> Draw(const answers::CardAnswer& answer, const std::string& path);

}  // namespace offplumb::cli
