// Requests as text: what is read, and what is refused and where.

#include "answers/asking/json_value.h"

#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace offplumb::answers {
namespace {

using testing::HasSubstr;
using Kind = JsonValue::Kind;

TEST(ParseJsonObject, ReadsEveryKindOfValue) {
  const auto object = ParseJsonObject(
      R"({"n": -1.5e2, "i": 7, "t": "\u00e9\n", "f": false, "z": null, "l": [1, [2], {}]})");
  ASSERT_TRUE(object) << object.error().message;
  EXPECT_EQ(object->Find("n")->number, -150);
  EXPECT_EQ(object->Find("i")->number, 7);
  EXPECT_EQ(object->Find("t")->text, "\xC3\xA9\n");
  EXPECT_EQ(object->Find("f")->kind, Kind::kFlag);
  EXPECT_EQ(object->Find("z")->kind, Kind::kNull);
  ASSERT_EQ(object->Find("l")->items.size(), 3u);
  EXPECT_EQ(object->Find("l")->items[1].items[0].number, 2);
  EXPECT_EQ(object->Find("l")->items[2].kind, Kind::kObject);
  EXPECT_EQ(object->Find("none"), nullptr);
}

TEST(ParseJsonObject, PrintsWhatItRead) {
  const std::string text =
      R"({"b":1.5,"a":[true,null,"x",[0.1],{"k":"v"}],"o":{"z":{},"y":[]},"n":null})";
  const auto object = ParseJsonObject(text);
  ASSERT_TRUE(object);
  JsonWriter json;
  WriteJson("whole", *object, json);
  EXPECT_EQ(json.Take(), R"({"whole":)" + text + "}");
}

std::string Refusal(const std::string& text) {
  const auto object = ParseJsonObject(text);
  EXPECT_FALSE(object) << text;
  if (object) return {};
  EXPECT_EQ(object.error().kind, ProblemKind::kBadInput);
  EXPECT_EQ(object.error().subject, "request");
  return object.error().message;
}

TEST(ParseJsonObject, SaysWhereATextGoesWrong) {
  EXPECT_THAT(Refusal("{\"a\": 1,\n  \"b\" 2}"), HasSubstr("line 2, column 7"));
  EXPECT_THAT(Refusal(""), HasSubstr("line 1, column 1"));
  EXPECT_THAT(Refusal("{\"a\": \"\xff\"}"), HasSubstr("line 1, column 8"));
  EXPECT_THAT(Refusal("{} x"), HasSubstr("line 1, column 4"));
  EXPECT_THAT(Refusal("[1]"), HasSubstr("no object"));
  EXPECT_THAT(Refusal("{\"a\": 1e400}"), HasSubstr("too large"));
}

TEST(ParseJsonObject, RefusesAKeyThatIsThereTwice) {
  EXPECT_THAT(Refusal(R"({"count_m": 1, "count_m": 2})"), HasSubstr("\"count_m\" is there twice"));
  EXPECT_TRUE(ParseJsonObject(R"({"a": {"k": 1}, "b": {"k": 2}})"));
}

TEST(ParseJsonObject, HasBounds) {
  const auto nested = [](std::size_t lists) {
    return "{\"a\":" + std::string(lists, '[') + std::string(lists, ']') + "}";
  };
  EXPECT_TRUE(ParseJsonObject(nested(kDeepestJson - 1)));
  EXPECT_THAT(Refusal(nested(kDeepestJson)), HasSubstr("nested more than"));
  std::string many = "{\"a\":[0";
  for (std::size_t i = 0; i < kMostJsonValues; ++i) many += ",0";
  EXPECT_THAT(Refusal(many + "]}"), HasSubstr("more than"));
  EXPECT_THAT(Refusal("{\"a\":\"" + std::string(kLongestJson, 'x') + "\"}"), HasSubstr("bytes"));
}

}  // namespace
}  // namespace offplumb::answers
