#include "ports/files/json_document.h"

#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace offplumb::ports {
namespace {

using ::testing::HasSubstr;
using Kind = TomlValue::Kind;

TEST(JsonDocument, GivesTheValuesOfEveryKind) {
  const auto document = ParseJson(
      R"({"text":"a\nb é","whole":-3,"number":1.25,"yes":true,"list":[1,{"x":"y"}],"table":{}})",
      "t");
  ASSERT_TRUE(document) << document.error().problem.message;
  EXPECT_EQ(document->kind, Kind::kTable);
  EXPECT_EQ(document->Find("text")->text, "a\nb \xC3\xA9");
  EXPECT_EQ(document->Find("whole")->number, -3);
  EXPECT_EQ(document->Find("number")->number, 1.25);
  EXPECT_TRUE(document->Find("yes")->flag);
  ASSERT_EQ(document->Find("list")->items.size(), 2u);
  EXPECT_EQ(document->Find("list")->items[1].Find("x")->text, "y");
  EXPECT_EQ(document->Find("table")->kind, Kind::kTable);
  EXPECT_EQ(document->keys.size(), 6u);
}

TEST(JsonDocument, LeavesOutNullAndEmptyTexts) {
  const auto document = ParseJson(R"({"a":null,"b":"","c":{"d":null},"e":[""],"f":" "})", "t");
  ASSERT_TRUE(document);
  EXPECT_EQ(document->Find("a"), nullptr);
  EXPECT_EQ(document->Find("b"), nullptr);
  EXPECT_TRUE(document->Find("c")->keys.empty());
  // In a list nothing is left out: what stands behind it would be counted wrongly.
  EXPECT_EQ(document->Find("e")->items.size(), 1u);
  EXPECT_EQ(document->Find("f")->text, " ");
}

/// What is no document, and what is said of it.
struct Refused {
  std::string_view json;
  std::string_view path;
  std::string_view message;
};

TEST(JsonDocument, RefusesWhatIsNoDocument) {
  for (const Refused& refused : {
           Refused{"", "", "not JSON"},
           Refused{"{", "", "not JSON"},
           Refused{R"({"a":1,})", "", "not JSON"},
           Refused{R"({"a":"b)", "", "not JSON"},
           Refused{"{\"a\":\"\xFF\"}", "", "not JSON"},
           Refused{R"({"a":NaN})", "", "not JSON"},
           Refused{R"({"a":"\ud800"})", "", "not JSON"},
           Refused{"{} {}", "", "not JSON"},
           Refused{"[]", "", "no JSON object"},
           Refused{"null", "", "no JSON object"},
           Refused{"7", "", "no JSON object"},
           Refused{"\"text\"", "", "no JSON object"},
           Refused{R"({"a":{"b":[1e999]}})", "a.b[0]", "too large"},
           Refused{R"({"a":[1,null]})", "a[1]", "holds null"},
           Refused{R"({"a":[{"b":1},{"b":1,"b":2}]})", "a[1].b", "\"b\" is there twice"},
           Refused{R"({"b":null,"b":2})", "b", "\"b\" is there twice"},
       }) {
    const auto document = ParseJson(refused.json, "document");
    ASSERT_FALSE(document) << refused.json;
    const JsonProblem& problem = document.error();
    EXPECT_EQ(problem.path, refused.path) << refused.json;
    EXPECT_EQ(problem.problem.subject, refused.path.empty() ? "document" : refused.path);
    EXPECT_EQ(problem.problem.kind, ProblemKind::kBadInput);
    EXPECT_THAT(problem.problem.message, HasSubstr(std::string(refused.message))) << refused.json;
  }
}

std::string Repeated(std::string_view text, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += text;
  return out;
}

TEST(JsonDocument, HoldsItsLimits) {
  // The table itself is the first level.
  const auto nested = [](std::size_t deep) {
    return "{\"a\":" + Repeated("[", deep - 1) + Repeated("]", deep - 1) + "}";
  };
  EXPECT_TRUE(ParseJson(nested(kDeepestJson), "t"));
  const auto too_deep = ParseJson(nested(kDeepestJson + 1), "t");
  ASSERT_FALSE(too_deep);
  EXPECT_THAT(too_deep.error().problem.message, HasSubstr("more than 16 deep"));
  EXPECT_EQ(too_deep.error().path.substr(0, 4), "a[0]");

  const auto list = [](std::size_t items) {
    return "{\"a\":[0" + Repeated(",0", items - 1) + "]}";
  };
  EXPECT_TRUE(ParseJson(list(kMostJsonItems), "t"));
  EXPECT_FALSE(ParseJson(list(kMostJsonItems + 1), "t"));

  const auto table = [](std::size_t items) {
    std::string text = "{\"k\":{";
    for (std::size_t i = 0; i < items; ++i) {
      text += (i > 0 ? ",\"k" : "\"k") + std::to_string(i) + "\":null";
    }
    return text + "}}";
  };
  EXPECT_TRUE(ParseJson(table(kMostJsonItems), "t"));
  const auto crowd = ParseJson(table(kMostJsonItems + 1), "t");
  ASSERT_FALSE(crowd);
  EXPECT_THAT(crowd.error().problem.message, HasSubstr("more than 1000 items"));

  const std::string blanks(kMostJsonBytes, ' ');
  const auto large = ParseJson(blanks + "{}", "t");
  ASSERT_FALSE(large);
  EXPECT_THAT(large.error().problem.message, HasSubstr("1000002 bytes; at most 1000000"));
  EXPECT_FALSE(ParseJson(Repeated("[", 900'000), "t"));
}

}  // namespace
}  // namespace offplumb::ports
