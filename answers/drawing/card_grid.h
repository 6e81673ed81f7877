/// \file
/// How a card's table is laid out on its sheet. Not for use outside the card.
#pragma once

#include "answers/drawing/card_words.h"
#include "answers/drawing/label_placer.h"

namespace offplumb::answers {

/// Sizes of the table. All mm.
struct CardGrid {
  bool lines = false;  ///< Ball and lures below each other in a row; else side by side in a column.
  Region area;         ///< Of the whole table.
  double heading_mm = 0;       ///< Height of the speeds' row, names included.
  double count_width_mm = 0;   ///< Of the counts' column, with the names when `lines`.
  double column_mm = 0;        ///< Of one speed.
  double row_mm = 0;           ///< Of one count.
  double figure_size_mm = 0;   ///< Ems: of the depths, the lure's as large as the ball's.
  double range_size_mm = 0;    ///< 0 without bands.
  double figure_width_mm = 0;  ///< Of the widest figure, and of the widest end of a range.
  double end_width_mm = 0;
  std::size_t things = 1;  ///< Ball and lures.

  [[nodiscard]] double ColumnLeft(std::size_t speed) const {
    return area.top_left.x_mm + count_width_mm + column_mm * static_cast<double>(speed);
  }
  [[nodiscard]] double RowTop(std::size_t count) const {
    return area.top_left.y_mm + heading_mm + row_mm * static_cast<double>(count);
  }
};

/// Between ball and lure below each other in a row.
inline constexpr double kLineGap_mm = 0.45;
/// Between a figure and its range.
inline constexpr double kFigureToRange_mm = 0.7;
/// Height of a digit with the little that it stands over and under, over the em.
inline constexpr double kFigureHeight = 0.78;

/// Between the ends of a range that stand above each other, over their em.
inline constexpr double kEndGap = 0.18;

/// Lays the table out in an area with the largest figures that fit. \param lines as in CardGrid.
[[nodiscard]] CardGrid LayOutCard(const plan::Card& card, const tackle::Rigger& rigger,
                                  const Region& area, bool lines, DisplayUnits units);

/// \return how well a table can be read: 1 where depths and bands both have the height of digit
/// that is wanted of them, or more.
[[nodiscard]] double Legibility(const CardGrid& grid);

/// Draws the table.
void AddCardTable(const plan::Card& card, const tackle::Rigger& rigger, const CardGrid& grid,
                  DisplayUnits units, Drawing& drawing);

}  // namespace offplumb::answers
