/// \file
/// The words of a card. Not for use outside it.
#pragma once

#include <string>
#include <vector>

#include "answers/drawing/card_sheet.h"

namespace offplumb::answers {

/// What stands in a cell for one thing: the ball, or one lure.
struct CellWords {
  std::string figure;  ///< A dash when the cell has no answer.
  std::string low;     ///< Empty without a band, as is `high`.
  std::string high;
};

/// \param thing 0 is the ball; above it the lures, from the lowest clip up.
[[nodiscard]] CellWords WordsOf(const plan::CardCell& cell, std::size_t thing, DisplayUnits units);

/// \return a range as it stands in a cell, where every millimetre is wanted: "84–91".
[[nodiscard]] std::string ShortRange(const CellWords& words);

/// \return whether any cell is a dash; whether any has a band.
[[nodiscard]] bool HasDashes(const plan::Card& card);
[[nodiscard]] bool HasBands(const plan::Card& card);

/// \return "ball", "lure"; with several clips their names.
[[nodiscard]] std::vector<std::string> ThingNames(const tackle::Rigger& rigger);

/// \return a speed or count as it heads its column or row: with as many digits as it was asked
/// with.
[[nodiscard]] std::string HeadNumber(double si, Shown shown, DisplayUnits units);

/// \return the rig in sentences: line and ball, then each clip.
[[nodiscard]] std::vector<std::string> RigWords(const tackle::Rigger& rigger, DisplayUnits units);

/// \return how to read the card.
[[nodiscard]] std::string KeyWords(const plan::Card& card, const tackle::Rigger& rigger,
                                   const CardSheetFacts& facts, DisplayUnits units);

}  // namespace offplumb::answers
