/// \file
/// The files an answer is written to: looked at before anything is computed.
#pragma once

#include <string>
#include <vector>

#include "apps/cli/arguments.h"
#include "engine/problem.h"

namespace offplumb::cli {

/// \param inputs files that were read: none of them is written over.
/// \param drawings the files to be drawn; may be none.
/// \return a problem when one of these, or the file of --csv, cannot be written or is one of the
/// inputs, or the drawing's ending is unknown. No file is changed or left behind.
[[nodiscard]] Expected<void> CheckOutputs(const Arguments& arguments,
                                          const std::vector<std::string>& inputs,
                                          const std::vector<std::string>& drawings);

/// Writes a text file; an older one is replaced. \return a problem that names it.
[[nodiscard]] Expected<void> WriteFile(const std::string& path, const std::string& text);

}  // namespace offplumb::cli
