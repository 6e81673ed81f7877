#include "answers/questions/json_sheet.h"

#include <array>
#include <cmath>

#include "answers/questions/json_problem.h"
#include "answers/questions/json_values.h"

namespace offplumb::answers {
namespace {

constexpr auto kRoles = std::to_array<std::string_view>({
#define OFFPLUMB_ENTRY(name, id) id,
    OFFPLUMB_ROLES(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
});

constexpr auto kAnchors = std::to_array<std::string_view>({"start", "middle", "end"});

std::string_view RoleId(Role role) { return kRoles[static_cast<std::size_t>(role)]; }

/// To a thousandth of a millimetre, far below what can be seen; it keeps the text short. Adding 0
/// turns a "-0" into "0".
double Rounded(double mm) { return std::round(mm * 1000) / 1000 + 0.0; }

void WriteLine(const Polyline& line, JsonWriter& json) {
  json.ObjectItem();
  json.List("points");
  for (const Point& point : line.points) {
    json.ListItem();
    json.NumberItem(Rounded(point.x_mm));
    json.NumberItem(Rounded(point.y_mm));
    json.End();
  }
  json.End();
  json.Number("width_mm", line.width_mm);
  json.Text("role", RoleId(line.role));
  json.Flag("closed", line.closed);
  json.Flag("filled", line.filled);
  json.Flag("dashed", line.dashed);
  json.End();
}

void WriteText(const Text& text, JsonWriter& json) {
  json.ObjectItem();
  json.Text("text", text.text);
  json.Number("x_mm", Rounded(text.place.x_mm));
  json.Number("y_mm", Rounded(text.place.y_mm));
  json.Number("size_mm", Rounded(text.size_mm));
  json.Text("anchor", kAnchors[static_cast<std::size_t>(text.anchor)]);
  json.Flag("bold", text.bold);
  json.Number("rotation_deg", Rounded(Degrees(text.rotation_rad)));
  json.Text("role", RoleId(text.role));
  json.Flag("halo", text.halo);
  json.End();
}

}  // namespace

void WriteDrawing(std::string_view key, const Drawing& drawing, JsonWriter& json) {
  json.Object(key);
  json.Text("title", drawing.title);
  json.Number("width_mm", drawing.width_mm);
  json.Number("height_mm", drawing.height_mm);
  json.List("lines");
  for (const Polyline& line : drawing.lines) WriteLine(line, json);
  json.End();
  json.List("texts");
  for (const Text& text : drawing.texts) WriteText(text, json);
  json.End();
  json.End();
}

void WriteSheet(const Expected<Drawing>& drawing, JsonWriter& json) {
  if (drawing) return WriteDrawing("sheet", *drawing, json);
  json.Null("sheet");
  WriteProblem("sheet_problem", drawing.error(), {}, json);
}

}  // namespace offplumb::answers
