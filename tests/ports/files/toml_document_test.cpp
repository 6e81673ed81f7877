#include "ports/files/toml_document.h"

#include <cmath>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace offplumb::ports {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using Kind = TomlValue::Kind;

TEST(TomlDocument, KeepsKindsValuesAndLines) {
  const auto top = ParseToml(
      "text = \"a\\u00e9\"\nwhole = -3\npart = 1.5\nodd = nan\nflag = true\nday = 2026-01-02\n"
      "list = [\n  1,\n  \"two\",\n]\n[table]\nkey = { inner = 'x' }\n[[many]]\n[[many]]\nlast = "
      "false\n",
      "t");
  ASSERT_TRUE(top) << top.error().message;
  EXPECT_THAT(top->keys,
              ElementsAre("text", "whole", "part", "odd", "flag", "day", "list", "table", "many"));
  EXPECT_EQ(top->Find("text")->text, "a\xC3\xA9");
  EXPECT_EQ(top->Find("whole")->number, -3);
  EXPECT_EQ(top->Find("part")->number, 1.5);
  EXPECT_TRUE(std::isnan(top->Find("odd")->number));
  EXPECT_TRUE(top->Find("flag")->flag);
  EXPECT_EQ(top->Find("day")->kind, Kind::kDate);
  EXPECT_EQ(top->Find("list")->items[1].line, 9);
  EXPECT_EQ(top->Find("table")->line, 11);
  EXPECT_EQ(top->Find("table")->Find("key")->Find("inner")->text, "x");
  EXPECT_EQ(top->Find("many")->items[1].line, 14);
  EXPECT_EQ(top->Find("many")->items[1].Find("last")->line, 15);
  EXPECT_EQ(top->Find("nothing"), nullptr);
}

TEST(TomlDocument, TakesLettersOfAnyLanguageInQuotesAndRemarks) {
  const auto top =
      ParseToml("\xEF\xBB\xBFname = \"Caf\xC3\xA9 \xEF\xB9\xBF\" # \xC3\x9C\xEF\xB9\xBF\r\n", "t");
  ASSERT_TRUE(top) << top.error().message;
  EXPECT_EQ(top->Find("name")->text, "Caf\xC3\xA9 \xEF\xB9\xBF");
}

struct Broken {
  std::string_view text;
  int line;
  std::string_view message;
};

TEST(TomlDocument, RefusesWhatIsBrokenWithItsLine) {
  // The first four stopped the library itself when its own assertions stood.
  for (const Broken& broken :
       {Broken{"[[[[", 1, "not TOML"}, Broken{"a = 1\n[[", 2, "not TOML"},
        Broken{"\xEF\xB9\xBF", 1, "not plain ASCII"}, Broken{"S=0':\xEF\xB9\xBF:0", 1, "in quotes"},
        Broken{"a = \xE2\x80\x9Cx\xE2\x80\x9D", 1, "curly"},
        Broken{"\n\na = \"x", 3, "closing quote"}, Broken{"a = 1\na = 2", 2, "redefine"},
        Broken{"a = \"\"\"x\n\"\"\"", 1, "triple quotes"},
        Broken{"a = '''x'''", 1, "triple quotes"},
        Broken{"x = 'y'\na.b.c.d.e.f.g.h.i.j.k.l.m.n = 1", 2, "12 dots"},
        Broken{" \r\n\t", 0, "empty"}, Broken{"", 0, "empty"}, Broken{"\xEF\xBB\xBF", 0, "empty"},
        Broken{"\xff\xfe"
               "a",
               1, "not plain ASCII"},
        Broken{"a = \"\xff\"", 1, "not TOML"}, Broken{"= 1", 1, "not TOML"},
        Broken{"a", 1, "not TOML"}, Broken{"a = 08", 1, "not TOML"}}) {
    const auto top = ParseToml(broken.text, "t.toml");
    ASSERT_FALSE(top) << broken.text;
    EXPECT_THAT(top.error().message, HasSubstr(std::string(broken.message))) << broken.text;
    EXPECT_EQ(top.error().line, broken.line) << broken.text;
    EXPECT_EQ(top.error().file, "t.toml");
    EXPECT_FALSE(top.error().subject.empty());
  }
}

TEST(TomlDocument, DotsInQuotesAndRemarksAreNoKeys) {
  EXPECT_TRUE(ParseToml("a = \"..............\" # ..............\nb = '..............'\n", "t"));
  EXPECT_TRUE(ParseToml("a = \"\\\"..............\" # it's a remark\n", "t"));
}

}  // namespace
}  // namespace offplumb::ports
