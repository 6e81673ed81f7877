/// \file
/// What was typed after the server's name.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "engine/problem.h"

namespace offplumb::server {

struct Options {
  enum class Wish { kServe, kHelp, kVersion };

  Wish wish = Wish::kServe;
  std::optional<std::uint16_t> port;  ///< Nothing: the usual one or the next free; 0: any free one.
  std::string address = "127.0.0.1";  ///< As `ReadAddress` gives it.
  bool browser = true;                ///< May open one.
};

/// \param words as the shell hands them over, without the program's name.
/// \return a problem for an unknown option (with the nearest), one without its value or given
/// twice, a port outside 0 to 65535, a text that is no address.
[[nodiscard]] Expected<Options> ReadOptions(const std::vector<std::string>& words);

/// \return what the program is and its options, in plain words.
[[nodiscard]] std::string HelpText();

}  // namespace offplumb::server
