#include <cstdio>
#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include "apps/cli/ask.h"
#include "apps/cli/json_lines.h"

namespace {

using offplumb::cli::Said;

/// Nothing is thrown for an ordinary failure: what arrives here is a fault of ours, or no memory.
Said RunGuarded(const std::vector<std::string>& words) {
  try {
    return offplumb::cli::Run(words);
  } catch (const std::exception& error) {
    return {offplumb::cli::kFault, "",
            std::string("offplumb: A fault of ours: ") + error.what() +
                ". Please report what was typed and the files.\n"};
  }
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> words(argv + 1, argv + argc);
  if (!words.empty() && words[0] == offplumb::cli::kAskWord) {
    std::ios::sync_with_stdio(false);
    return offplumb::cli::AskInLines({words.begin() + 1, words.end()}, std::cin, std::cout,
                                     std::cerr);
  }
  const Said said = RunGuarded(words);
  std::fputs(said.message.c_str(), stderr);
  std::fwrite(said.answer.data(), 1, said.answer.size(), stdout);
  if (std::fflush(stdout) != 0) {
    std::fputs("offplumb: standard output: The answer cannot be written. Is the disk full?\n",
               stderr);
    return offplumb::cli::kBadInput;
  }
  return said.exit_code;
}
