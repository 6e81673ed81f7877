// The README shows the program's real output: what stands there is what comes out.
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "tests/apps/program.h"

namespace offplumb::cli {
namespace {

constexpr const char* kCommand =
    "--rig examples/rigs/one-rigger.toml --count \"100 ft\" --speed \"2.7 mph\"";

/// The indented block that follows a place in a text, without its indent and the blank lines
/// around.
std::string BlockAfter(const std::string& text, std::size_t place) {
  std::istringstream in(text.substr(text.find('\n', place) + 1));
  std::string block;
  for (std::string row; std::getline(in, row);) {
    if (!row.empty() && row.rfind("    ", 0) != 0) break;
    block += (row.empty() ? row : row.substr(4)) + "\n";
  }
  const std::size_t first = block.find_first_not_of('\n');
  return block.substr(first, block.find_last_not_of('\n') - first + 1) + "\n";
}

TEST(Readme, ShowsTheFirstAnswerAsTheProgramGivesIt) {
  const std::string text = ReadWhole(std::string(OFFPLUMB_SOURCE_DIR) + "/README.md");
  const std::size_t place = text.find(kCommand);
  ASSERT_NE(place, std::string::npos);
  const Heard heard = Hear(SplitCommand(std::string("depth ") + kCommand));
  EXPECT_EQ(heard.exit_code, 0);
  EXPECT_EQ(BlockAfter(text, place), heard.out);
}

}  // namespace
}  // namespace offplumb::cli
