// docs/coefficients.md says what the engine's lists say, and the lists hold every default.
#include <cmath>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "tests/tools/coefficients_page.h"

namespace offplumb::tools {
namespace {

const std::filesystem::path kSource = OFFPLUMB_SOURCE_DIR;

std::string TextOf(const std::filesystem::path& file) {
  std::stringstream text;
  text << std::ifstream(file, std::ios::binary).rdbuf();
  return text.str();
}

std::vector<tackle::Coefficient> All() {
  std::vector<tackle::Coefficient> all;
  for (const Section& section : Sections()) {
    all.insert(all.end(), section.coefficients.begin(), section.coefficients.end());
  }
  return all;
}

/// The name that a row of the list gives to a constant of the code: the row may say more around it.
std::set<std::string> NamedConstants() {
  std::set<std::string> names;
  const std::regex constant(R"(\bk[A-Z]\w*)");
  for (const tackle::Coefficient& c : All()) {
    for (std::sregex_iterator it(c.name.begin(), c.name.end(), constant), end; it != end; ++it) {
      names.insert(it->str());
    }
  }
  return names;
}

/// Every number with a name in a text: `inline constexpr double kName`, int and size_t as well.
std::set<std::string> DefaultsOf(const std::string& code) {
  std::set<std::string> names;
  const std::regex named(R"(inline\s+constexpr\s+(?:double|float|int|std::size_t)\s+(k\w+))");
  for (std::sregex_iterator it(code.begin(), code.end(), named), end; it != end; ++it) {
    names.insert((*it)[1]);
  }
  return names;
}

/// Mathematics, and the length of the prior's own list.
bool IsNoDefault(const std::string& name) { return name == "kPi" || name == "kInputs"; }

TEST(CoefficientsPage, IsTheCommittedOne) {
  const std::string committed = TextOf(kSource / "docs" / "coefficients.md");
  ASSERT_FALSE(committed.empty()) << "docs/coefficients.md cannot be read";
  std::istringstream want(CoefficientsPage());
  std::istringstream have(committed);
  std::string a, b;
  for (int line = 1; std::getline(want, a); ++line) {
    ASSERT_TRUE(std::getline(have, b)) << "docs/coefficients.md ends before line " << line;
    ASSERT_EQ(b, a) << "docs/coefficients.md line " << line
                    << " is out of date: build the target coefficients_page";
  }
  EXPECT_EQ(committed, CoefficientsPage()) << "docs/coefficients.md holds more than the lists";
}

TEST(CoefficientsPage, GivesEveryEntryASourceOrAMark) {
  std::set<std::string> names;
  for (const tackle::Coefficient& c : All()) {
    EXPECT_FALSE(tackle::MarkText(c.mark).empty()) << c.name << " has no mark";
    if (c.mark == tackle::Mark::kPublished || c.mark == tackle::Mark::kWorkedOut ||
        c.mark == tackle::Mark::kJudgement) {
      EXPECT_GT(c.source.size(), 5u)
          << c.name << " is " << tackle::MarkText(c.mark) << " but does not say by whom or how";
    }
    EXPECT_FALSE(c.unit.empty()) << c.name;
    EXPECT_TRUE(std::isfinite(c.value)) << c.name;
    EXPECT_EQ(c.name.find('|'), std::string::npos) << c.name << " would break the table";
    EXPECT_EQ(c.source.find('|'), std::string::npos) << c.name << " would break the table";
    EXPECT_TRUE(names.insert(c.name).second) << c.name << " is listed twice";
  }
}

TEST(CoefficientsPage, HoldsEveryDefaultOfTheEnginesHeaders) {
  const std::set<std::string> listed = NamedConstants();
  int found = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(kSource / "engine")) {
    if (entry.path().extension() != ".h") continue;
    // The catalogue's figures go into the list row by row, each with its own source.
    if (entry.path().filename() == "catalogue_data.h") continue;
    for (const std::string& name : DefaultsOf(TextOf(entry.path()))) {
      if (IsNoDefault(name)) continue;
      ++found;
      EXPECT_TRUE(listed.count(name)) << name << " of " << entry.path().filename()
                                      << " is in no list of coefficients: add it to its room's "
                                         "Coefficients() with its source or mark";
    }
  }
  // The scan sees something: 8 of water and tackle, 1 of tow, 2 of learn, 13 of plan when written.
  EXPECT_GE(found, 24);
}

TEST(CoefficientsPage, ScanSeesANewDefault) {
  EXPECT_EQ(DefaultsOf("/// Depth.\ninline constexpr double kDepth_m = 3;\n"),
            std::set<std::string>{"kDepth_m"});
  EXPECT_EQ(DefaultsOf("inline constexpr int kMost = 3;"), std::set<std::string>{"kMost"});
  EXPECT_EQ(NamedConstants().count("kNotThere"), 0u);
}

}  // namespace
}  // namespace offplumb::tools
