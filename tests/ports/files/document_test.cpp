#include "ports/files/document.h"

#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ports/files/ask_rig.h"

namespace offplumb::ports {
namespace {

using ::testing::HasSubstr;
using Kind = TomlValue::Kind;

TEST(Document, GivesTheValuesOfEveryKind) {
  const auto document = testing::DocumentOfText(
      R"({"text":"a\nb é","whole":-3,"number":1.25,"yes":true,"list":[1,{"x":"y"}],"table":{}})");
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

TEST(Document, LeavesOutNullAndEmptyTexts) {
  const auto document =
      testing::DocumentOfText(R"({"a":null,"b":"","c":{"d":null},"e":[""],"f":" "})");
  ASSERT_TRUE(document);
  EXPECT_EQ(document->Find("a"), nullptr);
  EXPECT_EQ(document->Find("b"), nullptr);
  EXPECT_TRUE(document->Find("c")->keys.empty());
  // In a list nothing is left out: what stands behind it would be counted wrongly.
  EXPECT_EQ(document->Find("e")->items.size(), 1u);
  EXPECT_EQ(document->Find("f")->text, " ");
}

TEST(Document, RefusesNullInAList) {
  const auto document = testing::DocumentOfText(R"({"a":[{"b":[1,null]}]})");
  ASSERT_FALSE(document);
  const DocumentProblem& problem = document.error();
  EXPECT_EQ(problem.path, "a[0].b[1]");
  EXPECT_EQ(problem.problem.subject, problem.path);
  EXPECT_EQ(problem.problem.kind, ProblemKind::kBadInput);
  EXPECT_THAT(problem.problem.message, HasSubstr("holds null"));
}

TEST(Document, GoesBackToTheSameJson) {
  const auto json = answers::ParseJsonObject(R"({"a":"x","b":[1.5,true,{"c":[]}],"d":{"e":"y"}})");
  ASSERT_TRUE(json);
  answers::JsonWriter before, after;
  answers::WriteJson("it", *json, before);
  answers::WriteJson("it", JsonOf(*DocumentOf(*json)), after);
  EXPECT_EQ(before.Take(), after.Take());
}

std::string Repeated(std::string_view text, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += text;
  return out;
}

TEST(Document, HoldsItsLimits) {
  // The table itself is the first level.
  const auto nested = [](std::size_t deep) {
    return "{\"a\":" + Repeated("[", deep - 1) + Repeated("]", deep - 1) + "}";
  };
  EXPECT_TRUE(testing::DocumentOfText(nested(kDeepestDocument)));
  const auto too_deep = testing::DocumentOfText(nested(kDeepestDocument + 1));
  ASSERT_FALSE(too_deep);
  EXPECT_THAT(too_deep.error().problem.message, HasSubstr("more than 16 deep"));
  EXPECT_EQ(too_deep.error().path.substr(0, 4), "a[0]");

  const auto list = [](std::size_t items) {
    return "{\"a\":[0" + Repeated(",0", items - 1) + "]}";
  };
  EXPECT_TRUE(testing::DocumentOfText(list(kMostDocumentItems)));
  EXPECT_FALSE(testing::DocumentOfText(list(kMostDocumentItems + 1)));

  const auto table = [](std::size_t items) {
    std::string text = "{\"k\":{";
    for (std::size_t i = 0; i < items; ++i) {
      text += (i > 0 ? ",\"k" : "\"k") + std::to_string(i) + "\":null";
    }
    return text + "}}";
  };
  EXPECT_TRUE(testing::DocumentOfText(table(kMostDocumentItems)));
  const auto crowd = testing::DocumentOfText(table(kMostDocumentItems + 1));
  ASSERT_FALSE(crowd);
  EXPECT_THAT(crowd.error().problem.message, HasSubstr("more than 1000 items"));
}

}  // namespace
}  // namespace offplumb::ports
