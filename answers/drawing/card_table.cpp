#include <algorithm>

#include "answers/drawing/card_grid.h"
#include "answers/drawing/shapes.h"
#include "answers/drawing/text_box.h"

namespace offplumb::answers {
namespace {

constexpr double kSpeedSize_mm = 7.5;
constexpr double kUnitSize_mm = 3.3;
constexpr double kNameSize_mm = 3.2;
constexpr double kCountOverFigure = 1.2;
constexpr double kHeadingBaseline_mm = 7.2;
constexpr double kNamesBaseline_mm = 12.6;

void Add(std::string words, const Point& place, double size_mm, Anchor anchor, bool bold,
         Drawing& drawing) {
  drawing.texts.push_back(
      Text{std::move(words), place, size_mm, anchor, bold, 0, Role::kInk, false});
}

/// The baseline that sets digits in the middle of a height.
double Centred_mm(double middle_mm, double size_mm) {
  return middle_mm + kDigitHeight * size_mm / 2;
}

void AddStripes(const plan::Card& card, const CardGrid& grid, Drawing& drawing) {
  for (std::size_t row = 1; row < card.counts_m.size(); row += 2) {
    AddArea(Rectangle({grid.area.top_left.x_mm, grid.RowTop(row)},
                      {grid.area.bottom_right.x_mm, grid.RowTop(row + 1)}),
            Role::kBand, drawing);
  }
}

void AddRules(const plan::Card& card, const CardGrid& grid, Drawing& drawing) {
  const double left_mm = grid.area.top_left.x_mm;
  const double right_mm = grid.area.bottom_right.x_mm;
  const double top_mm = grid.area.top_left.y_mm;
  const double foot_mm = grid.RowTop(card.counts_m.size());
  const double head_mm = grid.RowTop(0);
  const Pen heavy{0.5, Role::kInk, false};
  for (const double y_mm : {top_mm, head_mm, foot_mm}) {
    AddLine({{left_mm, y_mm}, {right_mm, y_mm}}, heavy, drawing);
  }
  for (std::size_t speed = 0; speed <= card.speeds_mps.size(); ++speed) {
    const double x_mm = grid.ColumnLeft(speed);
    AddLine({{x_mm, top_mm}, {x_mm, foot_mm}}, Pen{0.3, Role::kInk, false}, drawing);
  }
  AddLine({{left_mm, top_mm}, {left_mm, foot_mm}}, Pen{0.3, Role::kInk, false}, drawing);
  if (grid.lines) return;
  // Between ball and lure.
  const double part_mm = grid.column_mm / static_cast<double>(grid.things);
  for (std::size_t speed = 0; speed < card.speeds_mps.size(); ++speed) {
    for (std::size_t thing = 1; thing < grid.things; ++thing) {
      const double x_mm = grid.ColumnLeft(speed) + part_mm * static_cast<double>(thing);
      AddLine({{x_mm, head_mm}, {x_mm, foot_mm}}, Pen{0.15, Role::kFaint, false}, drawing);
    }
  }
}

/// The em at which all speeds fit their columns.
double SpeedSize_mm(const plan::Card& card, const CardGrid& grid, DisplayUnits units) {
  double size_mm = kSpeedSize_mm;
  for (const double speed_mps : card.speeds_mps) {
    const std::string number = HeadNumber(speed_mps, Shown::kSpeed, units);
    size_mm = std::min(size_mm, (grid.column_mm - 3) / TextWidth_mm(number, 1, true));
  }
  return size_mm;
}

/// The units of rows and columns, in the corner between them.
void AddUnits(const CardGrid& grid, DisplayUnits units, Drawing& drawing) {
  const double top_mm = grid.area.top_left.y_mm;
  const double count_mm = top_mm + (grid.lines ? kHeadingBaseline_mm : kNamesBaseline_mm);
  Add("count, " + std::string(ShownUnit(Shown::kDepth, units)),
      {grid.area.top_left.x_mm + 1.2, count_mm}, kUnitSize_mm, Anchor::kStart, false, drawing);
  Add(std::string(ShownUnit(Shown::kSpeed, units)),
      {grid.ColumnLeft(0) - 1.2, top_mm + kHeadingBaseline_mm}, kUnitSize_mm, Anchor::kEnd, false,
      drawing);
}

void AddSpeeds(const plan::Card& card, const CardGrid& grid, DisplayUnits units, Drawing& drawing) {
  const double size_mm = SpeedSize_mm(card, grid, units);
  for (std::size_t i = 0; i < card.speeds_mps.size(); ++i) {
    Add(HeadNumber(card.speeds_mps[i], Shown::kSpeed, units),
        {grid.ColumnLeft(i) + grid.column_mm / 2, grid.area.top_left.y_mm + kHeadingBaseline_mm},
        size_mm, Anchor::kMiddle, true, drawing);
  }
  AddUnits(grid, units, drawing);
}

void AddNamesAbove(const plan::Card& card, const tackle::Rigger& rigger, const CardGrid& grid,
                   Drawing& drawing) {
  const std::vector<std::string> names = ThingNames(rigger);
  const double part_mm = grid.column_mm / static_cast<double>(names.size());
  for (std::size_t speed = 0; speed < card.speeds_mps.size(); ++speed) {
    for (std::size_t thing = 0; thing < names.size(); ++thing) {
      Add(names[thing],
          {grid.ColumnLeft(speed) + part_mm * (static_cast<double>(thing) + 0.5),
           grid.area.top_left.y_mm + kNamesBaseline_mm},
          kNameSize_mm, Anchor::kMiddle, true, drawing);
    }
  }
}

/// The middle of one of the figures that stand below each other in a row.
double LineMiddle_mm(const CardGrid& grid, std::size_t row, std::size_t thing) {
  const double things = static_cast<double>(grid.things);
  return grid.RowTop(row) + grid.row_mm * (static_cast<double>(thing) + 0.5) / things;
}

/// The em at which all counts fit their column.
double CountSize_mm(const plan::Card& card, const tackle::Rigger& rigger, const CardGrid& grid,
                    DisplayUnits units) {
  double names_mm = 0;
  for (const std::string& name : ThingNames(rigger)) {
    names_mm = std::max(names_mm, TextWidth_mm(name, kNameSize_mm, true));
  }
  const double room_mm = grid.count_width_mm - 2.5 - (grid.lines ? names_mm + 1.5 : 0);
  double size_mm = std::min(kCountOverFigure * grid.figure_size_mm, grid.row_mm * 0.9);
  for (const double count_m : card.counts_m) {
    const std::string number = HeadNumber(count_m, Shown::kDepth, units);
    size_mm = std::min(size_mm, room_mm / TextWidth_mm(number, 1, true));
  }
  return size_mm;
}

void AddCounts(const plan::Card& card, const tackle::Rigger& rigger, const CardGrid& grid,
               DisplayUnits units, Drawing& drawing) {
  const std::vector<std::string> names = ThingNames(rigger);
  const double size_mm = CountSize_mm(card, rigger, grid, units);
  for (std::size_t row = 0; row < card.counts_m.size(); ++row) {
    Add(HeadNumber(card.counts_m[row], Shown::kDepth, units),
        {grid.area.top_left.x_mm + 1.5, Centred_mm(grid.RowTop(row) + grid.row_mm / 2, size_mm)},
        size_mm, Anchor::kStart, true, drawing);
    for (std::size_t thing = 0; grid.lines && thing < names.size(); ++thing) {
      Add(names[thing],
          {grid.ColumnLeft(0) - 1.2, Centred_mm(LineMiddle_mm(grid, row, thing), kNameSize_mm)},
          kNameSize_mm, Anchor::kEnd, true, drawing);
    }
  }
}

/// Figure above its range, in one part of a column.
void AddAbove(const CellWords& words, const Point& middle, const CardGrid& grid, Drawing& drawing) {
  const double figure_mm = kFigureHeight * grid.figure_size_mm;
  if (words.low.empty()) {
    Add(words.figure, {middle.x_mm, Centred_mm(middle.y_mm, grid.figure_size_mm)},
        grid.figure_size_mm, Anchor::kMiddle, true, drawing);
    return;
  }
  const double block_mm = figure_mm + kFigureToRange_mm + kFigureHeight * grid.range_size_mm;
  const double top_mm = middle.y_mm - block_mm / 2;
  Add(words.figure, {middle.x_mm, top_mm + 0.76 * grid.figure_size_mm}, grid.figure_size_mm,
      Anchor::kMiddle, true, drawing);
  Add(ShortRange(words),
      {middle.x_mm, top_mm + figure_mm + kFigureToRange_mm + 0.76 * grid.range_size_mm},
      grid.range_size_mm, Anchor::kMiddle, false, drawing);
}

/// Figure with the ends of its range beside it: the shallow one above the deep one.
void AddBeside(const CellWords& words, double left_mm, double middle_mm, const CardGrid& grid,
               Drawing& drawing) {
  const double size_mm = grid.figure_size_mm;
  const double block_mm = grid.figure_width_mm + kFigureToRange_mm + grid.end_width_mm;
  const double figure_end_mm = left_mm + (grid.column_mm - block_mm) / 2 + grid.figure_width_mm;
  const double range_mm = figure_end_mm + kFigureToRange_mm;
  Add(words.figure, {figure_end_mm, Centred_mm(middle_mm, size_mm)}, size_mm, Anchor::kEnd, true,
      drawing);
  if (words.low.empty()) return;
  Add(words.low, {range_mm, middle_mm - kEndGap / 2 * grid.range_size_mm}, grid.range_size_mm,
      Anchor::kStart, false, drawing);
  Add(words.high,
      {range_mm, middle_mm + kEndGap / 2 * grid.range_size_mm + kDigitHeight * grid.range_size_mm},
      grid.range_size_mm, Anchor::kStart, false, drawing);
}

void AddCell(const plan::CardCell& cell, std::size_t speed, std::size_t row, const CardGrid& grid,
             DisplayUnits units, Drawing& drawing) {
  const double part_mm = grid.column_mm / static_cast<double>(grid.things);
  for (std::size_t thing = 0; thing < grid.things; ++thing) {
    const CellWords words = WordsOf(cell, thing, units);
    if (grid.lines) {
      AddBeside(words, grid.ColumnLeft(speed), LineMiddle_mm(grid, row, thing), grid, drawing);
    } else {
      AddAbove(words,
               {grid.ColumnLeft(speed) + part_mm * (static_cast<double>(thing) + 0.5),
                grid.RowTop(row) + grid.row_mm / 2},
               grid, drawing);
    }
  }
}

}  // namespace

void AddCardTable(const plan::Card& card, const tackle::Rigger& rigger, const CardGrid& grid,
                  DisplayUnits units, Drawing& drawing) {
  AddStripes(card, grid, drawing);
  AddRules(card, grid, drawing);
  AddSpeeds(card, grid, units, drawing);
  if (!grid.lines) AddNamesAbove(card, rigger, grid, drawing);
  AddCounts(card, rigger, grid, units, drawing);
  for (std::size_t speed = 0; speed < card.cells.size(); ++speed) {
    for (std::size_t row = 0; row < card.cells[speed].size(); ++row) {
      AddCell(card.cells[speed][row], speed, row, grid, units, drawing);
    }
  }
}

}  // namespace offplumb::answers
