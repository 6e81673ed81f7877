/// \file
/// Current against depth from a file or a phrase. Format: docs/current-file.md.
#pragma once

#include <string>
#include <string_view>

#include "engine/problem.h"
#include "engine/water/current.h"

namespace offplumb::ports {

/// Reads a current file's text. No file is touched.
/// \return the current, checked by water::CheckCurrent; else the first problem with file and line.
[[nodiscard]] Expected<water::Current> ReadCurrentText(std::string_view text,
                                                       std::string_view file_name);

/// Reads a current from a file of at most 1 MB.
[[nodiscard]] Expected<water::Current> ReadCurrentFile(const std::string& path);

/// Reads one current for all depths: "0.4 kn toward 200" or "0.4 kn toward 200 deg", degrees
/// clockwise from true north, the way the water goes.
[[nodiscard]] Expected<water::Current> ParseCurrent(std::string_view phrase);

/// Reads what a person gives for a current: a phrase with "toward" in it, else the path of a file.
[[nodiscard]] Expected<water::Current> ReadCurrent(const std::string& phrase_or_path);

}  // namespace offplumb::ports
