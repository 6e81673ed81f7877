/// \file
/// Reading a small text file whole.
#pragma once

#include <cstddef>
#include <string>

#include "engine/problem.h"

namespace offplumb::ports {

/// The largest text file that is read. A rig of six riggers takes about 10 kB.
inline constexpr std::size_t kLargestTextFile_bytes = 1'000'000;

/// \return the file's text; a problem when it is missing, a folder, not readable or larger than the
/// limit (found before it is read).
[[nodiscard]] Expected<std::string> ReadTextFile(const std::string& path);

}  // namespace offplumb::ports
