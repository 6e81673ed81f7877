/// \file
/// One run of the server, from words typed to the exit code.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "apps/server/rules/asset.h"

namespace offplumb::server {

/// Exit codes, as of the command line. 0 ended as asked, 2 bad input, 3 a fault of ours.
enum ExitCode { kEnded = 0, kBadInput = 2, kFault = 3 };

/// Serves the page until SIGINT or SIGTERM. The page's address goes to standard output, everything
/// else to standard error; may open a browser.
/// \param words what was typed after the program's name.
[[nodiscard]] int Serve(const std::vector<std::string>& words, std::span<const Asset> page);

}  // namespace offplumb::server
