#include "ports/files/toml_slip.h"

#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "ports/files/toml_document.h"

namespace offplumb::ports {
namespace {

struct Slip {
  std::string_view text;
  int line;
  std::string_view written;
  std::string_view advice;
};

/// All are told through the reader: the line is what the library says, or one we find from it.
TEST(TomlSlip, IsToldInTheWordsOfTheFile) {
  for (const Slip& slip : {
           Slip{"a = 1\nsetback = 20 ft\n", 2, "setback = 20 ft",
                R"(Put the value in quotes: setback = "20 ft".)"},
           Slip{"setback = 20 ft   # clip to flasher\n", 1, "setback = 20 ft",
                R"(Put the value in quotes: setback = "20 ft".)"},
           Slip{"name = Sea Wren", 1, "name = Sea Wren",
                R"(Put the value in quotes: name = "Sea Wren".)"},
           Slip{"name = port\r\n", 1, "name = port", R"(Put the value in quotes: name = "port".)"},
           Slip{"line = 0.8mm\n", 1, "line = 0.8mm", R"(Put the value in quotes: line = "0.8mm".)"},
           Slip{"setback = \"20\" ft\n", 1, "setback = \"20\" ft",
                R"(Put the value in quotes: setback = "20 ft".)"},
           Slip{"setback = 20 ft\"\n", 1, "setback = 20 ft\"",
                R"(Put the value in quotes: setback = "20 ft".)"},
           Slip{"setback = \"20 ft\nb = 1\n", 1, "setback = \"20 ft",
                R"(The closing quote is missing: setback = "20 ft".)"},
           Slip{"tip = { aft = 2 ft, up = \"3 ft\" }\n", 1, "aft = 2 ft",
                R"(Put the value in quotes: aft = "2 ft".)"},
           Slip{"tip = { aft = \"2 ft, up = \"3 ft\" }\n", 1, "aft = \"2 ft",
                R"(The closing quote is missing: aft = "2 ft".)"},
           Slip{"lure = { from = \"hoochie }\nb = 1\n", 1, "from = \"hoochie",
                R"(The closing quote is missing: from = "hoochie".)"},
           Slip{"lure = { from = \"hoochie\"\nb = 1\n", 1, "lure = { from = \"hoochie\"",
                "The closing } is missing at the end of the line."},
           Slip{"lure = { from = \"hoochie\"   # none\n[[riggers]]\n", 1,
                "lure = { from = \"hoochie\"", "The closing } is missing at the end of the line."},
           Slip{"lure = from = \"hoochie\" }\n", 1, "lure = from = \"hoochie\" }",
                R"(The opening { is missing: lure = { from = "hoochie" }.)"},
           Slip{"setback \"20 ft\"\n", 1, "setback \"20 ft\"",
                R"(The equals sign is missing: setback = "20 ft".)"},
           Slip{"invented = yes\n", 1, "invented = yes",
                "Write true or false, in small letters and without quotes: invented = true."},
           Slip{"invented = False\n", 1, "invented = False",
                "Write true or false, in small letters and without quotes: invented = false."},
           Slip{"[[riggers]]\n[[riggers.clips]]\n[riggers.clips]\n", 3, "[riggers.clips]",
                "Write two brackets on each side: [[riggers.clips]]."},
           Slip{"[[riggers]\nname = \"port\"\n", 1, "[[riggers]",
                "Write two brackets on each side: [[riggers]]."},
           Slip{"[[riggers]]\n[riggers] # two\n", 2, "[riggers]",
                "Write two brackets on each side: [[riggers]]."},
           Slip{"marks = [\n  { a = \"1 m\" },\n\n[[riggers]]\nname = \"port\"\n", 1, "marks = [",
                "The closing ] of this list is missing."},
           Slip{"marks = [\n  { a = \"1 m\" }\nname = \"port\"\n", 1, "marks = [",
                "The closing ] of this list is missing."},
       }) {
    const auto top = ParseToml(slip.text, "t.toml");
    ASSERT_FALSE(top) << slip.text;
    EXPECT_EQ(top.error().line, slip.line) << slip.text;
    EXPECT_EQ(top.error().subject, slip.written) << slip.text;
    EXPECT_EQ(top.error().message, slip.advice) << slip.text;
    EXPECT_EQ(top.error().file, "t.toml");
  }
}

TEST(TomlSlip, FindsNoneInSoundLines) {
  for (const std::string_view line :
       {"a = 1", "a = -1.5e3 # 20 ft", "a = true", "day = 2026-01-02 10:00:00", "a.b = \"c\"",
        "name = \"Sea = { Wren\" # it's a remark", "p = { up = '3 ft', on = false } # {", "[water]",
        "[[riggers]]", "[[riggers.clips]]  # one", "list = [", "  { a = \"x, y\" },", "]", "",
        "# setback = 20 ft"}) {
    const auto slip = FindSlip(line, 1);
    EXPECT_FALSE(slip) << line << ": " << slip->advice;
  }
}

TEST(TomlSlip, HoldsOutAgainstOddTextsAndLines) {
  for (const std::string_view text :
       {"",      "\n",       "=",        "a =",          "a = \"", "a = '",    "\"",
        "{",     "}",        "[",        "[[",           "]",      "a = \"\\", "a = ,",
        "a = {", "[riggers", "riggers]", "a = \xff\xfe", "# \"",   "a \""}) {
    for (const int line : {-1, 0, 1, 2, 1000}) {
      const auto slip = FindSlip(text, line);
      EXPECT_TRUE(!slip || !slip->advice.empty()) << text;
    }
  }
}

}  // namespace
}  // namespace offplumb::ports
