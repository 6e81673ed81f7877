#include "answers/drawing/card_grid.h"

#include <algorithm>

#include "answers/drawing/text_box.h"

namespace offplumb::answers {
namespace {

constexpr double kSpeedsHeight_mm = 9;
constexpr double kNamesHeight_mm = 5.5;
constexpr double kCountWidth_mm = 17;
constexpr double kNameWidth_mm = 1.5;  // Around the names beside the counts.
constexpr double kNameSize_mm = 3.2;
constexpr double kLargestFigure_mm = 12;  // Em.
constexpr double kRangeOverFigure = 0.42;
constexpr double kLeastRangeOverFigure = 0.38;  // Where that much room is missing.
constexpr double kPad_mm = 0.85;                // Around what stands in a cell.
constexpr double kLureOverBall = 0.87;          // Of figures below each other.

/// Widest texts of the table, at an em of 1 mm.
struct Widths {
  double figure = 0;
  double end = 0;    ///< Of one end of a range.
  double range = 0;  ///< Of a range in words.
};

void AddWidths(const CellWords& words, bool bold, Widths& widths) {
  widths.figure = std::max(widths.figure, TextWidth_mm(words.figure, 1, bold));
  widths.end =
      std::max({widths.end, TextWidth_mm(words.low, 1, false), TextWidth_mm(words.high, 1, false)});
  if (words.low.empty()) return;
  widths.range = std::max(widths.range, TextWidth_mm(words.low + " to " + words.high, 1, false));
}

Widths MeasureTexts(const plan::Card& card, std::size_t things, DisplayUnits units) {
  Widths widths;
  for (const auto& column : card.cells) {
    for (const plan::CardCell& cell : column) {
      for (std::size_t thing = 0; thing < things; ++thing) {
        AddWidths(WordsOf(cell, thing, units), thing == 0, widths);
      }
    }
  }
  return widths;
}

double RangeRoom_mm(double width_mm) { return width_mm - 4 * kPad_mm; }

/// Largest em at which figure and range stand below each other in a part of a column.
double FigureAboveRange(const Widths& widths, double width_mm, double row_mm) {
  double size_mm = (width_mm - 2 * kPad_mm) / widths.figure;
  if (widths.range > 0) {
    size_mm = std::min(size_mm, RangeRoom_mm(width_mm) / (widths.range * kLeastRangeOverFigure));
  }
  const double ems = kFigureHeight * (widths.range > 0 ? 1 + kRangeOverFigure : 1);
  return std::min(size_mm, (row_mm - 2 * kPad_mm - kFigureToRange_mm) / ems);
}

/// Largest em at which each figure has the two ends of its range beside it, and all stand below
/// each other in a row.
double FigureBesideRange(const Widths& widths, double width_mm, double row_mm, double things) {
  const double wide = widths.figure + widths.end * kRangeOverFigure;
  const double high = kFigureHeight * (1 + (things - 1) * kLureOverBall);
  return std::min((width_mm - 2 * kPad_mm - kFigureToRange_mm) / wide,
                  (row_mm - (things + 1) * kLineGap_mm) / high);
}

double NamesWidth_mm(const tackle::Rigger& rigger) {
  double width_mm = 0;
  for (const std::string& name : ThingNames(rigger)) {
    width_mm = std::max(width_mm, TextWidth_mm(name, kNameSize_mm, false));
  }
  return width_mm + kNameWidth_mm;
}

}  // namespace

CardGrid LayOutCard(const plan::Card& card, const tackle::Rigger& rigger, const Region& area,
                    DisplayUnits units) {
  CardGrid grid;
  grid.area = area;
  grid.things = 1 + rigger.clips.size();
  grid.lines = grid.things > 2;
  grid.heading_mm = kSpeedsHeight_mm + (grid.lines ? 0 : kNamesHeight_mm);
  grid.count_width_mm = kCountWidth_mm + (grid.lines ? NamesWidth_mm(rigger) : 0);
  grid.column_mm = (area.bottom_right.x_mm - area.top_left.x_mm - grid.count_width_mm) /
                   static_cast<double>(card.speeds_mps.size());
  grid.row_mm = (area.bottom_right.y_mm - area.top_left.y_mm - grid.heading_mm) /
                static_cast<double>(card.counts_m.size());
  const Widths widths = MeasureTexts(card, grid.things, units);
  const double things = static_cast<double>(grid.things);
  const double size_mm = grid.lines
                             ? FigureBesideRange(widths, grid.column_mm, grid.row_mm, things)
                             : FigureAboveRange(widths, grid.column_mm / things, grid.row_mm);
  grid.figure_size_mm = std::min(size_mm, kLargestFigure_mm);
  grid.lure_size_mm = grid.figure_size_mm * (grid.lines ? kLureOverBall : 1);
  grid.range_size_mm = grid.figure_size_mm * kRangeOverFigure;
  grid.figure_width_mm = widths.figure * grid.figure_size_mm;
  grid.end_width_mm = widths.end * grid.range_size_mm;
  if (!grid.lines && widths.range > 0) {
    grid.range_size_mm =
        std::min(grid.range_size_mm, RangeRoom_mm(grid.column_mm / things) / widths.range);
  }
  return grid;
}

}  // namespace offplumb::answers
