#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "answers/drawing/boat.h"
#include "answers/drawing/shapes.h"
#include "answers/drawing/side_view_parts.h"
#include "answers/drawing/text_box.h"

namespace offplumb::answers {
namespace {

constexpr double kBorder_mm = 5;
constexpr double kHeadingSize_mm = 6;
constexpr double kLineSize_mm = 3.8;
constexpr double kLineStep_mm = 5.2;
constexpr double kSpeedSize_mm = 6;
constexpr double kFoot_mm = 17;
constexpr double kNoteSize_mm = 3.4;
constexpr double kNoteStep_mm = 4.4;

std::string Note(DisplayUnits units, bool bands) {
  return fmt::format(
      "Where the gear hangs at a steady speed and heading, drawn to one scale. The boat is an "
      "invented one of {}; ball, clip, flasher and lure are drawn larger than they are.{} The "
      "bottom is not known here. Not for navigation.",
      FormatQuantity(kBoatLength_m, Shown::kDepth, units),
      bands ? " Shaded: the depth lies there nine times in ten." : "");
}

double Left_mm() { return kBorder_mm + kSheetMargin_mm - 3; }
double Right_mm(const Drawing& drawing) { return drawing.width_mm - Left_mm(); }

void AddText(std::string words, const Point& place, double size_mm, Anchor anchor, bool bold,
             Drawing& drawing) {
  drawing.texts.push_back(
      Text{std::move(words), place, size_mm, anchor, bold, 0, Role::kInk, false});
}

/// \return how far down the words reach.
double AddHeading(const SideViewOptions& options, double width_mm, Drawing& drawing) {
  double y_mm = kBorder_mm + 2 + kHeadingSize_mm;
  for (std::size_t i = 0; i < options.title_lines.size(); ++i) {
    const bool heading = i == 0;
    const double size_mm = heading ? kHeadingSize_mm : kLineSize_mm;
    for (const std::string& line : WrapText(options.title_lines[i], size_mm, heading, width_mm)) {
      AddText(FitText(line, size_mm, heading, width_mm), {Left_mm(), y_mm}, size_mm, Anchor::kStart,
              heading, drawing);
      y_mm += heading ? kHeadingSize_mm : kLineStep_mm;
    }
  }
  return y_mm - kLineStep_mm;
}

double AddSpeed(const SideViewOptions& options, double width_mm, Drawing& drawing) {
  double y_mm = kBorder_mm + 2 + kHeadingSize_mm;
  for (const std::string& line : WrapText(options.speed_text, kSpeedSize_mm, true, width_mm)) {
    AddText(FitText(line, kSpeedSize_mm, true, width_mm), {Right_mm(drawing), y_mm}, kSpeedSize_mm,
            Anchor::kEnd, true, drawing);
    y_mm += kSpeedSize_mm * 1.25;
  }
  return y_mm - kSpeedSize_mm * 1.25;
}

/// A round length that takes up to a fifth of the sheet, in the units shown.
double BarLength(double per_unit_mm, double most_mm) {
  double best = 0;
  for (double decade = 0.1; decade < 1e4; decade *= 10) {
    for (const double step : {1.0, 2.0, 5.0}) {
      if (step * decade * per_unit_mm <= most_mm) best = std::max(best, step * decade);
    }
  }
  return best;
}

void AddScaleBar(DisplayUnits units, const SideLayout& layout, double y_mm, Drawing& drawing) {
  const bool metric = units == DisplayUnits::kMetric;
  const double per_unit_mm = layout.frame.mm_per_m * (metric ? 1.0 : 0.3048);
  const double length = BarLength(per_unit_mm, 0.16 * drawing.width_mm);
  const double bar_mm = length * per_unit_mm;
  const double x_mm = Left_mm();
  AddArea(Rectangle({x_mm, y_mm - 1.2}, {x_mm + bar_mm / 2, y_mm}), Role::kInk, drawing);
  AddLine({{x_mm, y_mm - 1.2},
           {x_mm + bar_mm, y_mm - 1.2},
           {x_mm + bar_mm, y_mm},
           {x_mm, y_mm},
           {x_mm, y_mm - 1.2}},
          Pen{0.2, Role::kInk, false}, drawing);
  AddText(fmt::format("{:g} {}, scale 1 to {:g}", length, metric ? "m" : "ft", layout.scale),
          {x_mm + bar_mm + 2.5, y_mm + 0.4}, kLineSize_mm, Anchor::kStart, false, drawing);
}

}  // namespace

Region AddTitle(const SideViewOptions& options, Drawing& drawing) {
  std::vector<Point> border = Rectangle(
      {kBorder_mm, kBorder_mm}, {drawing.width_mm - kBorder_mm, drawing.height_mm - kBorder_mm});
  border.push_back(border.front());
  AddLine(std::move(border), Pen{0.3, Role::kInk, false}, drawing);
  const double width_mm = Right_mm(drawing) - Left_mm();
  const double speed_mm =
      std::min(0.45 * width_mm, TextWidth_mm(options.speed_text, kSpeedSize_mm, true) + 0.1);
  const double heading_foot_mm = AddHeading(options, width_mm - speed_mm - 6, drawing);
  const double speed_foot_mm = AddSpeed(options, speed_mm, drawing);
  return {{Left_mm(), std::max(heading_foot_mm, speed_foot_mm) + 3},
          {Right_mm(drawing), drawing.height_mm - kBorder_mm - kFoot_mm}};
}

void AddFoot(DisplayUnits units, const SideLayout& layout, bool bands, Drawing& drawing) {
  const double foot_mm = drawing.height_mm - kBorder_mm;
  const std::vector<std::string> notes =
      WrapText(Note(units, bands), kNoteSize_mm, false, Right_mm(drawing) - Left_mm());
  double y_mm = foot_mm - 2.4 - kNoteStep_mm * (static_cast<double>(notes.size()) - 1);
  AddScaleBar(units, layout, y_mm - 5.5, drawing);
  for (const std::string& note : notes) {
    AddText(note, {Left_mm(), y_mm}, kNoteSize_mm, Anchor::kStart, false, drawing);
    y_mm += kNoteStep_mm;
  }
}

}  // namespace offplumb::answers
