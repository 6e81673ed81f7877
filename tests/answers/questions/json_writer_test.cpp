// The writer's text is that of the JSON library, letter by letter: the library is the yardstick.

#include "answers/questions/json_writer.h"

#include <limits>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace offplumb::answers {
namespace {

using Library = nlohmann::ordered_json;

/// One of everything.
std::string Sample(int indent) {
  JsonWriter json(indent);
  json.Number("number", 0.1);
  json.Whole("whole", -7);
  json.Flag("flag", true);
  json.Text("text", "a \"word\"\n\x01");
  json.Null("null");
  json.NumberOrNull("no number", std::nullopt);
  json.TextOrNull("no text", "");
  json.Numbers("numbers", {1, 2.5});
  json.Texts("texts", {"a", "b"});
  json.List("empty list");
  json.End();
  json.Object("empty object");
  json.End();
  json.List("list");
  json.ObjectItem();
  json.Text("k", "v");
  json.End();
  json.ListItem();
  json.NumberItem(3);
  json.TextItem("t");
  json.FlagItem(false);
  json.NullItem();
  json.End();
  json.End();
  json.Object("object");
  json.Flag("last", false);
  return json.Take();  // Ends what is open.
}

Library SampleValue() {
  return {{"number", 0.1},
          {"whole", -7},
          {"flag", true},
          {"text", "a \"word\"\n\x01"},
          {"null", nullptr},
          {"no number", nullptr},
          {"no text", nullptr},
          {"numbers", {1.0, 2.5}},
          {"texts", {"a", "b"}},
          {"empty list", Library::array()},
          {"empty object", Library::object()},
          {"list", {{{"k", "v"}}, Library::array({3.0, "t", false, nullptr})}},
          {"object", {{"last", false}}}};
}

TEST(JsonWriter, WritesWhatTheLibraryWrites) {
  EXPECT_EQ(Sample(0), SampleValue().dump());
  EXPECT_EQ(Sample(2), SampleValue().dump(2));
  EXPECT_EQ(JsonWriter().Take(), "{}");
}

std::string Written(double value) {
  JsonWriter json;
  json.Number("v", value);
  return json.Take();
}

TEST(JsonWriter, WritesNumbersThatReadBackTheSame) {
  for (const double value :
       {0.0, -0.0, 1.0, 0.1, 1.0 / 3, 1e-7, 5e-324, 1e22, 123456789.123, -2.5e-12,
        std::numeric_limits<double>::max(), std::numeric_limits<double>::min()}) {
    EXPECT_EQ(Written(value), Library({{"v", value}}).dump());
    EXPECT_EQ(Library::parse(Written(value)).at("v").get<double>(), value);
  }
  EXPECT_EQ(Written(std::numeric_limits<double>::infinity()), "{\"v\":null}");
  EXPECT_EQ(Written(std::numeric_limits<double>::quiet_NaN()), "{\"v\":null}");
}

std::string WrittenText(const std::string& text) {
  JsonWriter json;
  json.Text("v", text);
  return json.Take();
}

TEST(JsonWriter, KeepsTextThatIsUtf8) {
  for (const std::string text :
       {"plain", "\xC3\xA9", "\xE2\x82\xAC", "\xED\x9F\xBF", "\xEE\x80\x80", "\xF0\x9F\x90\x9F",
        "\xF4\x8F\xBF\xBF", "\x7F", "\b\f\r\t\\/"}) {
    EXPECT_EQ(WrittenText(text), Library({{"v", text}}).dump());
    EXPECT_EQ(Library::parse(WrittenText(text)).at("v"), text);
  }
}

TEST(JsonWriter, MendsTextThatIsNot) {
  const std::string mark = "\xEF\xBF\xBD";
  // Alone, cut short, too long for its letter, half of a pair of UTF-16, beyond the last letter.
  for (const std::string text : {"\x80", "\xFF", "\xC3", "\xE2\x82", "\xF0\x9F\x90", "\xC0\xAF",
                                 "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80"}) {
    const Library read = Library::parse(WrittenText("a" + text + "z"));
    const std::string mended = read.at("v");
    EXPECT_EQ(mended.front(), 'a');
    EXPECT_EQ(mended.back(), 'z');
    EXPECT_EQ(mended.substr(1, mark.size()), mark) << text;
  }
}

}  // namespace
}  // namespace offplumb::answers
