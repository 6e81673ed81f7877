/// \file
/// The printed card: one sheet of depths over counts and speeds, to be laminated and taped by the
/// rigger.
#pragma once

#include <string>
#include <vector>

#include "answers/drawing/drawing.h"
#include "answers/units/display.h"
#include "engine/plan/card.h"
#include "engine/problem.h"
#include "engine/tackle/rig.h"

namespace offplumb::answers {

/// \return what stands at the foot of every card: hang-up, cold water and work alone, and what the
/// figures do not know. It defers to local rules and the maker's instructions.
[[nodiscard]] std::vector<std::string> CardCautions();

/// What a card says beside its figures.
struct CardSheetFacts {
  std::string rig_name;
  std::string date;   ///< As it is to be printed.
  std::string water;  ///< "salt water, 10 C".
  std::string speed_words = "through the water";
  /// The current the figures were made for, as whole sentences: "Current 0.6 kn toward 200° at the
  /// surface, 0.1 kn toward 230° at 150 ft. This current only." Empty when speeds are through the
  /// water at every depth and no current is in the figures; the foot then says so.
  std::string current;
  std::vector<std::string> cautions = CardCautions();
};

/// Sets a card on one A4 sheet whose margins also fit US Letter, upright or on its side, and with
/// ball and lure beside or below each other, whichever reads best. With 12 counts and 7 speeds
/// (feet, no current in the head) digits are at least 4.5 mm high, those of bands 2.8 mm with one
/// lure and 2 mm with two. A cell that has no place, or leans beyond the rig's largest angle, is
/// a dash.
///
/// To be painted black on white.
/// \param rigger the card's. \return a problem when the card is empty or has so many counts or
/// speeds that its digits would be under 2.5 mm high.
[[nodiscard]] Expected<Drawing> MakeCardSheet(const plan::Card& card, const tackle::Rigger& rigger,
                                              const CardSheetFacts& facts, DisplayUnits units);

}  // namespace offplumb::answers
