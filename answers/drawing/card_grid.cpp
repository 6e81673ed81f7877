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
constexpr double kRangeOverFigure = 0.6;  // No range larger than that.
constexpr double kLeastRangeOverFigure = 0.38;
constexpr double kPad_mm = 0.85;  // Around what stands in a cell.
// Read at arm's length, and a band by one who bends to it. Judgement.
constexpr double kWantedFigure_mm = 4.5;
constexpr double kWantedRange_mm = 2.8;

/// Widest texts of the table, at an em of 1 mm.
struct Widths {
  double figure = 0;
  double end = 0;    ///< Of one end of a range.
  double range = 0;  ///< Of a range in words.
};

void AddWidths(const CellWords& words, Widths& widths) {
  widths.figure = std::max(widths.figure, TextWidth_mm(words.figure, 1, true));
  widths.end =
      std::max({widths.end, TextWidth_mm(words.low, 1, false), TextWidth_mm(words.high, 1, false)});
  if (words.low.empty()) return;
  widths.range = std::max(widths.range, TextWidth_mm(ShortRange(words), 1, false));
}

Widths MeasureTexts(const plan::Card& card, std::size_t things, DisplayUnits units) {
  Widths widths;
  for (const auto& column : card.cells) {
    for (const plan::CardCell& cell : column) {
      for (std::size_t thing = 0; thing < things; ++thing) {
        AddWidths(WordsOf(cell, thing, units), widths);
      }
    }
  }
  return widths;
}

/// Largest ems at which figure and range stand below each other in a part of a column.
void SetFigureAboveRange(const Widths& widths, double width_mm, CardGrid& grid) {
  const double high_mm = grid.row_mm - 2 * kPad_mm;
  grid.figure_size_mm = std::min(
      {(width_mm - 2 * kPad_mm) / widths.figure, kLargestFigure_mm, high_mm / kFigureHeight});
  if (!(widths.range > 0)) return;
  // Twice the room around a range, since the next one has digits of the same height beside it.
  const double widest_mm = (width_mm - 4 * kPad_mm) / widths.range;
  const double both_mm = (high_mm - kFigureToRange_mm) / kFigureHeight;
  grid.figure_size_mm = std::min({grid.figure_size_mm, widest_mm / kLeastRangeOverFigure,
                                  both_mm / (1 + kLeastRangeOverFigure)});
  // The range takes what is left: as large as it may be, or as wide as the cell.
  const double beside_mm = both_mm / (1 + kRangeOverFigure);
  grid.figure_size_mm = std::min(grid.figure_size_mm, std::max(beside_mm, both_mm - widest_mm));
  grid.range_size_mm = std::min(widest_mm, kRangeOverFigure * grid.figure_size_mm);
}

/// Largest ems at which each figure has the two ends of its range beside it, and all stand below
/// each other in a row.
void SetFigureBesideRange(const Widths& widths, CardGrid& grid) {
  const double things = static_cast<double>(grid.things);
  const double wide = widths.figure + widths.end * kRangeOverFigure;
  grid.figure_size_mm =
      std::min({(grid.column_mm - 2 * kPad_mm - kFigureToRange_mm) / wide, kLargestFigure_mm,
                (grid.row_mm - (things + 1) * kLineGap_mm) / (kFigureHeight * things)});
  if (!(widths.range > 0)) return;
  const double ends_mm = grid.row_mm / things - kLineGap_mm;
  grid.range_size_mm =
      std::min(kRangeOverFigure * grid.figure_size_mm, ends_mm / (2 * kFigureHeight + kEndGap));
}

double NamesWidth_mm(const tackle::Rigger& rigger) {
  double width_mm = 0;
  for (const std::string& name : ThingNames(rigger)) {
    width_mm = std::max(width_mm, TextWidth_mm(name, kNameSize_mm, true));
  }
  return width_mm + kNameWidth_mm;
}

}  // namespace

CardGrid LayOutCard(const plan::Card& card, const tackle::Rigger& rigger, const Region& area,
                    bool lines, DisplayUnits units) {
  CardGrid grid;
  grid.area = area;
  grid.things = 1 + rigger.clips.size();
  grid.lines = lines;
  grid.heading_mm = kSpeedsHeight_mm + (grid.lines ? 0 : kNamesHeight_mm);
  grid.count_width_mm = kCountWidth_mm + (grid.lines ? NamesWidth_mm(rigger) : 0);
  grid.column_mm = (area.bottom_right.x_mm - area.top_left.x_mm - grid.count_width_mm) /
                   static_cast<double>(card.speeds_mps.size());
  grid.row_mm = (area.bottom_right.y_mm - area.top_left.y_mm - grid.heading_mm) /
                static_cast<double>(card.counts_m.size());
  const Widths widths = MeasureTexts(card, grid.things, units);
  if (lines) {
    SetFigureBesideRange(widths, grid);
  } else {
    SetFigureAboveRange(widths, grid.column_mm / static_cast<double>(grid.things), grid);
  }
  grid.figure_width_mm = widths.figure * grid.figure_size_mm;
  grid.end_width_mm = widths.end * grid.range_size_mm;
  return grid;
}

double Legibility(const CardGrid& grid) {
  const double figure = grid.figure_size_mm * kDigitHeight / kWantedFigure_mm;
  if (!(grid.range_size_mm > 0)) return figure;
  return std::min(figure, grid.range_size_mm * kDigitHeight / kWantedRange_mm);
}

}  // namespace offplumb::answers
