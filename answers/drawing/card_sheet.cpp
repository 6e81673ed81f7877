#include "answers/drawing/card_sheet.h"

#include <algorithm>

#include <fmt/format.h>

#include "answers/drawing/card_grid.h"
#include "answers/drawing/card_words.h"
#include "answers/drawing/text_box.h"

namespace offplumb::answers {
namespace {

// A4, with margins that also fit US Letter (215.9 by 279.4 mm) printed at full size about the same
// centre: 8.8 mm of A4's longer side are off that sheet at each end.
constexpr double kLongSide_mm = 297;
constexpr double kShortSide_mm = 210;
constexpr double kLongMargin_mm = 15;
constexpr double kShortMargin_mm = 9;

constexpr double kHeadingSize_mm = 6;
constexpr double kHeadingBaseline_mm = 5;
constexpr double kRigSize_mm = 3.6;
constexpr double kRigStep_mm = 4.8;
constexpr double kCurrentSize_mm = 3.6;
constexpr double kSmallSize_mm = 3.1;
constexpr double kSmallStep_mm = 3.9;
constexpr double kAroundTable_mm = 2;
constexpr double kSmallestDigits_mm = 2.5;

/// A sheet with its words set, and the table that fits into what they leave.
struct Sheet {
  Drawing drawing;
  CardGrid grid;
};

void Add(std::string words, const Point& place, double size_mm, Anchor anchor, bool bold,
         Drawing& drawing) {
  if (words.empty()) return;
  drawing.texts.push_back(
      Text{std::move(words), place, size_mm, anchor, bold, 0, Role::kInk, false});
}

/// \return how far down the words reach.
double AddHead(const tackle::Rigger& rigger, const CardSheetFacts& facts, DisplayUnits units,
               const Region& inner, Drawing& drawing) {
  const double right_mm = inner.bottom_right.x_mm;
  const double width_mm = right_mm - inner.top_left.x_mm;
  double y_mm = inner.top_left.y_mm + kHeadingBaseline_mm;
  const double corner_mm = std::max(TextWidth_mm(facts.date, kRigSize_mm, false),
                                    TextWidth_mm(facts.water, kRigSize_mm, false));
  Add(FitText(facts.rig_name + ": " + rigger.name, kHeadingSize_mm, true, width_mm - corner_mm - 5),
      {inner.top_left.x_mm, y_mm}, kHeadingSize_mm, Anchor::kStart, true, drawing);
  Add(facts.date, {right_mm, y_mm - kRigStep_mm / 2 + 0.3}, kRigSize_mm, Anchor::kEnd, false,
      drawing);
  Add(facts.water, {right_mm, y_mm + kRigStep_mm / 2 + 0.3}, kRigSize_mm, Anchor::kEnd, false,
      drawing);
  y_mm += 2.8;
  for (const std::string& line : WrapText(facts.current, kCurrentSize_mm, true, width_mm)) {
    y_mm += kRigStep_mm;
    Add(FitText(line, kCurrentSize_mm, true, width_mm), {right_mm, y_mm}, kCurrentSize_mm,
        Anchor::kEnd, true, drawing);
  }
  for (const std::string& sentence : RigWords(rigger, units)) {
    for (const std::string& line : WrapText(sentence, kRigSize_mm, false, width_mm)) {
      y_mm += kRigStep_mm;
      Add(FitText(line, kRigSize_mm, false, width_mm), {inner.top_left.x_mm, y_mm}, kRigSize_mm,
          Anchor::kStart, false, drawing);
    }
  }
  return y_mm + 0.25 * kRigSize_mm;
}

/// A line of the foot. What a sentence is about comes first, in bold.
struct FootLine {
  std::string about;
  std::string rest;
};

/// Breaks a sentence; "Hung up: ..." is about being hung up.
void AddSentence(const std::string& sentence, double width_mm, std::vector<FootLine>& lines) {
  const std::size_t colon = sentence.find(':');
  const std::size_t about = colon == std::string::npos ? 0 : colon + 1;
  const std::string lead = sentence.substr(0, about);
  const double longer_mm =
      TextWidth_mm(lead, kSmallSize_mm, true) - TextWidth_mm(lead, kSmallSize_mm, false);
  bool first = true;
  for (const std::string& line : WrapText(sentence, kSmallSize_mm, false, width_mm - longer_mm)) {
    const std::string fitted = FitText(line, kSmallSize_mm, false, width_mm - longer_mm);
    const bool leads = first && about > 0 && about <= fitted.size();
    lines.push_back(leads ? FootLine{lead, fitted.substr(about)} : FootLine{"", fitted});
    first = false;
  }
}

/// Writes lines upwards from the foot. \return where they begin.
double AddFootLines(const std::vector<FootLine>& lines, const Region& inner, Drawing& drawing) {
  double y_mm = inner.bottom_right.y_mm - 0.25 * kSmallSize_mm -
                kSmallStep_mm * (static_cast<double>(lines.size()) - 1);
  const double top_mm = y_mm - 0.8 * kSmallSize_mm;
  for (const FootLine& line : lines) {
    const double left_mm = inner.top_left.x_mm;
    if (!line.about.empty()) {
      Add(line.about, {left_mm, y_mm}, kSmallSize_mm, Anchor::kStart, true, drawing);
    }
    Add(line.rest, {left_mm + TextWidth_mm(line.about, kSmallSize_mm, true), y_mm}, kSmallSize_mm,
        Anchor::kStart, false, drawing);
    y_mm += kSmallStep_mm;
  }
  return top_mm;
}

std::vector<FootLine> FootLines(const plan::Card& card, const tackle::Rigger& rigger,
                                const CardSheetFacts& facts, DisplayUnits units, double width_mm) {
  std::vector<FootLine> lines;
  AddSentence(KeyWords(card, rigger, facts, units), width_mm, lines);
  for (const std::string& caution : facts.cautions) AddSentence(caution, width_mm, lines);
  return lines;
}

Sheet MakeSheet(const plan::Card& card, const tackle::Rigger& rigger, const CardSheetFacts& facts,
                DisplayUnits units, bool upright, bool lines) {
  Sheet sheet;
  Drawing& drawing = sheet.drawing;
  drawing.title = facts.rig_name + ": " + rigger.name;
  drawing.width_mm = upright ? kShortSide_mm : kLongSide_mm;
  drawing.height_mm = upright ? kLongSide_mm : kShortSide_mm;
  const double side_mm = upright ? kShortMargin_mm : kLongMargin_mm;
  const double end_mm = upright ? kLongMargin_mm : kShortMargin_mm;
  const Region inner{{side_mm, end_mm}, {drawing.width_mm - side_mm, drawing.height_mm - end_mm}};
  const double head_mm = AddHead(rigger, facts, units, inner, drawing);
  const double foot_mm = AddFootLines(
      FootLines(card, rigger, facts, units, drawing.width_mm - 2 * side_mm), inner, drawing);
  const Region table{{side_mm, head_mm + kAroundTable_mm},
                     {drawing.width_mm - side_mm, foot_mm - kAroundTable_mm}};
  sheet.grid = LayOutCard(card, rigger, table, lines, units);
  return sheet;
}

/// Of the sheet on its side and upright, with ball and lures beside or below each other, the one
/// that reads best.
Sheet BestSheet(const plan::Card& card, const tackle::Rigger& rigger, const CardSheetFacts& facts,
                DisplayUnits units) {
  const bool may_be_beside = rigger.clips.size() < 2;
  Sheet best = MakeSheet(card, rigger, facts, units, false, !may_be_beside);
  const auto take_if_better = [&](bool upright, bool lines) {
    Sheet other = MakeSheet(card, rigger, facts, units, upright, lines);
    if (Legibility(other.grid) > Legibility(best.grid)) best = std::move(other);
  };
  take_if_better(true, !may_be_beside);
  if (rigger.clips.size() == 1) {
    take_if_better(false, true);
    take_if_better(true, true);
  }
  return best;
}

}  // namespace

Expected<Drawing> MakeCardSheet(const plan::Card& card, const tackle::Rigger& rigger,
                                const CardSheetFacts& facts, DisplayUnits units) {
  if (card.counts_m.empty() || card.speeds_mps.empty()) {
    return BadInput("card", "The card has no counts or no speeds.", "Give at least one of each.");
  }
  Sheet sheet = BestSheet(card, rigger, facts, units);
  if (!(sheet.grid.figure_size_mm * kDigitHeight >= kSmallestDigits_mm)) {
    return BadInput("card",
                    fmt::format("{} counts and {} speeds do not fit on one sheet in figures that "
                                "can be read.",
                                card.counts_m.size(), card.speeds_mps.size()),
                    "Ask for fewer: 12 counts and 7 speeds fit well.");
  }
  AddCardTable(card, rigger, sheet.grid, units, sheet.drawing);
  return std::move(sheet.drawing);
}

}  // namespace offplumb::answers
