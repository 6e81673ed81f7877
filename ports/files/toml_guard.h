/// \file
/// What a file must not hold before the TOML library sees it.
#pragma once

#include <optional>
#include <string_view>

#include "engine/problem.h"

namespace offplumb::ports {

/// Looks a text through, line by line, for what no file of ours needs and what would only lead the
/// library or the person astray: keys of very many words, texts over several lines, letters beyond
/// ASCII (curly quotes) outside quotes and remarks. Empty and binary texts are refused here too.
/// \return the first such problem, with its line.
[[nodiscard]] std::optional<Problem> FindUnreadable(std::string_view text,
                                                    std::string_view file_name);

}  // namespace offplumb::ports
