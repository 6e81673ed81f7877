#include "answers/questions/sheets.h"

#include <fmt/format.h>

#include "answers/drawing/card_sheet.h"
#include "answers/drawing/side_view.h"
#include "answers/questions/phrases.h"

namespace offplumb::answers {

Expected<Drawing> SideViewOf(const DepthAnswer& answer) {
  const DisplayUnits units = answer.request.wanted.units;
  SideViewOptions options;
  options.title_lines = {
      answer.request.rig.rig.name,
      fmt::format("{} on the counter", Echo(answer.request.count_m, Shown::kDepth, units))};
  options.speed_text = Way(answer.conditions, true, units);
  return MakeSideView(answer.rigged, answer.riggers, units, options);
}

Expected<Drawing> CardSheetOf(const CardAnswer& answer, std::size_t i, const std::string& date) {
  const DisplayUnits units = answer.request.wanted.units;
  CardSheetFacts facts;
  facts.rig_name = answer.request.rig.rig.name;
  facts.date = date;
  facts.water = WaterWords(answer.conditions.water);
  facts.speed_words = Way(answer.conditions, false, units);
  facts.current = CurrentSentences(answer.conditions, units);
  return MakeCardSheet(answer.cards[i], answer.rigged[i], facts, units);
}

}  // namespace offplumb::answers
