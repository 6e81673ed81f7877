// A drawing as JSON holds all its lines and texts.

#include "answers/questions/json_sheet.h"

#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace offplumb::answers {
namespace {

using nlohmann::json;

json Written(const Expected<Drawing>& drawing) {
  JsonWriter writer;
  WriteSheet(drawing, writer);
  return json::parse(writer.Take());
}

TEST(SheetJson, HoldsEveryPropertyOfLinesAndTexts) {
  Drawing drawing;
  drawing.title = "Sheet";
  drawing.width_mm = 210;
  drawing.height_mm = 297;
  drawing.lines.push_back({{{1, 2}, {3.00049, -4}}, 0.3, Role::kAccent, true, false, true});
  Text text;
  text.text = "88 ft";
  text.place = {10, 20.12345};
  text.size_mm = 4.5;
  text.anchor = Anchor::kMiddle;
  text.bold = true;
  text.rotation_rad = 1.5707963267948966;
  text.role = Role::kFaint;
  text.halo = true;
  drawing.texts.push_back(text);
  const json sheet = Written(drawing).at("sheet");
  EXPECT_EQ(sheet, json::parse(R"({"title": "Sheet", "width_mm": 210.0, "height_mm": 297.0,
    "lines": [{"points": [[1.0, 2.0], [3.0, -4.0]], "width_mm": 0.3, "role": "accent",
               "closed": true, "filled": false, "dashed": true}],
    "texts": [{"text": "88 ft", "x_mm": 10.0, "y_mm": 20.123, "size_mm": 4.5, "anchor": "middle",
               "bold": true, "rotation_deg": 90.0, "role": "faint", "halo": true}]})"));
}

TEST(SheetJson, KnowsEveryRole) {
  Drawing drawing;
  for (const Role role :
       {Role::kPaper, Role::kInk, Role::kAccent, Role::kFaint, Role::kBand, Role::kWater}) {
    drawing.lines.push_back({{{0, 0}, {1, 1}}, 0.25, role, false, false, false});
  }
  std::vector<std::string> roles;
  const json answer = Written(drawing);
  for (const json& line : answer.at("sheet").at("lines")) roles.push_back(line.at("role"));
  EXPECT_EQ(roles, (std::vector<std::string>{"paper", "ink", "accent", "faint", "band", "water"}));
}

TEST(SheetJson, ASheetThatCannotBeSetSaysWhy) {
  const json answer = Written(BadInput("drawing", "The sheet is too small.", "Take a larger one."));
  EXPECT_TRUE(answer.at("sheet").is_null());
  EXPECT_EQ(answer.at("sheet_problem").at("kind"), "bad_input");
  EXPECT_EQ(answer.at("sheet_problem").at("message"), "The sheet is too small.");
}

}  // namespace
}  // namespace offplumb::answers
