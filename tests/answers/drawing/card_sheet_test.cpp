#include "answers/drawing/card_sheet.h"

#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/answers/drawing/drawn_rigs.h"
#include "tests/answers/drawing/sheet_check.h"

namespace offplumb::answers {
namespace {

using testing::IsEmpty;

CardSheetFacts Facts() {
  CardSheetFacts facts;
  facts.rig_name = "A sound that nobody has seen";
  facts.date = "2 June 2025";
  facts.water = "salt, 10 °C, 30 g/kg";
  return facts;
}

/// Counts and speeds that start with `first` and grow by `step`.
std::vector<double> Series(double first, double step, int count) {
  std::vector<double> values;
  for (int i = 0; i < count; ++i) values.push_back(first + step * i);
  return values;
}

plan::Card RealCard(const tackle::Rigger& rigger, int counts, int speeds,
                    const learn::Ensemble* ensemble) {
  return plan::MakeCard(rigger, StillWater(2), Series(1.5 * kMph_mps, 0.25 * kMph_mps, speeds),
                        Series(30 * kFoot_m, 24 * kFoot_m, counts), ensemble);
}

tackle::Rigger RiggerWithClips(int clips) {
  if (clips == 2) return StackedRigger("starboard");
  tackle::Rigger rigger = OneClipRigger("port");
  if (clips == 0) rigger.clips.clear();
  return rigger;
}

/// Height of the digits of a count's or cell's bold figure: the smallest on the sheet.
double SmallestBoldDigits_mm(const Drawing& drawing) {
  double smallest_mm = 1e9;
  for (const Text& text : drawing.texts) {
    const bool figure =
        text.bold && text.text.find_first_not_of("0123456789.") == std::string::npos;
    if (figure) smallest_mm = std::min(smallest_mm, text.size_mm * kDigitHeight);
  }
  return smallest_mm;
}

class CardSheet : public testing::TestWithParam<int> {};

TEST_P(CardSheet, NoTextOverlapsIsCutOrLeavesA4OrLetter) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(4);
  const tackle::Rigger rigger = RiggerWithClips(GetParam());
  for (const auto& size : {std::pair{12, 7}, {3, 2}, {1, 1}}) {
    for (const learn::Ensemble* bands : {&ensemble, static_cast<const learn::Ensemble*>(nullptr)}) {
      const plan::Card card = RealCard(rigger, size.first, size.second, bands);
      for (const DisplayUnits units : {DisplayUnits::kFeet, DisplayUnits::kMetric}) {
        const auto drawing = MakeCardSheet(card, rigger, Facts(), units);
        ASSERT_TRUE(drawing) << drawing.error().message;
        EXPECT_THAT(FaultsOf(*drawing, 5), IsEmpty());
        // Letter's shorter long side takes 8.8 mm off each end of A4; 6 mm more a printer cannot
        // reach.
        const bool upright = drawing->height_mm > drawing->width_mm;
        for (const Text& text : drawing->texts) {
          for (const Point& corner : BoxOf(text)) {
            const double along_mm = upright ? corner.y_mm : corner.x_mm;
            EXPECT_GE(along_mm, 8.8 + 6) << text.text;
            EXPECT_LE(along_mm, 297 - 8.8 - 6) << text.text;
          }
        }
      }
    }
  }
}

TEST_P(CardSheet, TwelveCountsAndSevenSpeedsReadAtArmsLength) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(4);
  const tackle::Rigger rigger = RiggerWithClips(GetParam());
  const plan::Card card = RealCard(rigger, 12, 7, &ensemble);
  const auto drawing = MakeCardSheet(card, rigger, Facts(), DisplayUnits::kFeet);
  ASSERT_TRUE(drawing);
  // Counts, speeds and depths, the lures' as bold as the ball's.
  EXPECT_GE(SmallestBoldDigits_mm(*drawing), 4.5);
}

TEST_P(CardSheet, HoldsEveryFigureOfTheCard) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(4);
  const tackle::Rigger rigger = RiggerWithClips(GetParam());
  const plan::Card card = RealCard(rigger, 12, 7, &ensemble);
  const auto drawing = MakeCardSheet(card, rigger, Facts(), DisplayUnits::kFeet);
  ASSERT_TRUE(drawing);
  for (const auto& column : card.cells) {
    for (const plan::CardCell& cell : column) {
      if (!cell.solved || cell.beyond_angle) continue;
      std::vector<plan::Band> bands = {cell.ball_depth_m};
      bands.insert(bands.end(), cell.lure_depth_m.begin(), cell.lure_depth_m.end());
      for (const plan::Band& band : bands) {
        const std::string words = FormatNumber(band.median, Shown::kDepth, DisplayUnits::kFeet);
        EXPECT_FALSE(TextsOf(*drawing, words).empty()) << words;
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Clips, CardSheet, testing::Values(0, 1, 2));

/// Height of the digits of the smallest end of a range, or of a range: figures that are not bold.
double SmallestRangeDigits_mm(const Drawing& drawing) {
  double smallest_mm = 1e9;
  for (const Text& text : drawing.texts) {
    const bool range = !text.bold && text.text.find_first_of("0123456789") == 0 &&
                       text.text.find_first_of(" ") == std::string::npos;
    if (range) smallest_mm = std::min(smallest_mm, text.size_mm * kDigitHeight);
  }
  return smallest_mm;
}

TEST(CardSheetSizes, ABandOfOneLureHasDigitsOfNearlyThreeMillimetres) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(4);
  for (const auto& wanted : {std::pair{1, 2.8}, {2, 2.0}}) {
    const tackle::Rigger rigger = RiggerWithClips(wanted.first);
    const auto drawing =
        MakeCardSheet(RealCard(rigger, 12, 7, &ensemble), rigger, Facts(), DisplayUnits::kFeet);
    ASSERT_TRUE(drawing);
    EXPECT_GE(SmallestRangeDigits_mm(*drawing), wanted.second);
    EXPECT_LT(SmallestRangeDigits_mm(*drawing), 12);
  }
}

/// Two counts by two speeds, by hand: each cell with its own figures.
plan::Card HandCard() {
  plan::Card card;
  card.rigger = "port";
  card.speeds_mps = {2.75 * kMph_mps, 3 * kMph_mps};
  card.counts_m = {100 * kFoot_m, 112.5 * kFoot_m};
  const auto cell = [](double ball_ft, double lure_ft) {
    plan::CardCell made;
    made.solved = true;
    made.ball_depth_m = {ball_ft * kFoot_m, (ball_ft - 4) * kFoot_m, (ball_ft + 3) * kFoot_m};
    made.lure_depth_m = {plan::Certain(lure_ft * kFoot_m)};
    return made;
  };
  card.cells = {{cell(88, 85), cell(99, 96)}, {cell(81, 78), cell(91, 87)}};
  return card;
}

TEST(CardSheetWords, WritesFiguresBandsAndHeadsAsTheyWereAsked) {
  const auto drawing =
      MakeCardSheet(HandCard(), OneClipRigger("port"), Facts(), DisplayUnits::kFeet);
  ASSERT_TRUE(drawing);
  for (const char* words : {"88", "84–91", "85", "100", "112.5", "2.75", "3.0", "2 June 2025"}) {
    EXPECT_EQ(TextsOf(*drawing, words).size(), 1U) << words;
  }
  EXPECT_THAT(TextsOf(*drawing, "–"), IsEmpty());
  // A column is one speed: its figures stand right of those of the slower speed.
  EXPECT_GT(TextsOf(*drawing, "81")[0].place.x_mm, TextsOf(*drawing, "85")[0].place.x_mm);
  EXPECT_EQ(TextsOf(*drawing, "81")[0].place.y_mm, TextsOf(*drawing, "88")[0].place.y_mm);
  EXPECT_GT(TextsOf(*drawing, "99")[0].place.y_mm, TextsOf(*drawing, "88")[0].place.y_mm);
}

TEST(CardSheetWords, ACellBeyondTheAngleOrWithoutAPlaceIsADashAndTheKeySaysWhy) {
  plan::Card card = HandCard();
  card.cells[1][1].beyond_angle = true;
  card.cells[1][0].solved = false;
  const auto drawing = MakeCardSheet(card, OneClipRigger("port"), Facts(), DisplayUnits::kFeet);
  ASSERT_TRUE(drawing);
  EXPECT_EQ(TextsOf(*drawing, "–").size(), 4U);  // Ball and lure of two cells.
  EXPECT_THAT(TextsOf(*drawing, "91"), IsEmpty());
  EXPECT_THAT(TextsOf(*drawing, "81"), IsEmpty());
  std::string all;
  for (const Text& text : drawing->texts) all += text.text + " ";
  EXPECT_NE(all.find("dash"), std::string::npos);
  EXPECT_NE(all.find("65°"), std::string::npos);
  EXPECT_NE(all.find("clip would be above the water"), std::string::npos);
}

TEST(CardSheetWords, TheCurrentStandsBoldInTheHeadAndTheFootNoLongerSaysThereIsNone) {
  const auto words = [](const CardSheetFacts& facts) {
    const auto drawing =
        MakeCardSheet(HandCard(), OneClipRigger("port"), facts, DisplayUnits::kFeet);
    EXPECT_TRUE(drawing);
    EXPECT_THAT(FaultsOf(*drawing, 5), IsEmpty());
    std::string all;
    for (const Text& text : drawing->texts) all += text.text + (text.bold ? "[bold] " : " ");
    return all;
  };
  CardSheetFacts facts = Facts();
  EXPECT_NE(words(facts).find("No current that changes"), std::string::npos);
  facts.current = "Current 0.6 kn toward 200° at the surface. This current only.";
  const std::string all = words(facts);
  EXPECT_NE(all.find(facts.current + "[bold]"), std::string::npos);
  EXPECT_EQ(all.find("No current that changes"), std::string::npos);
}

TEST(CardSheetWords, EveryCautionStandsOnTheSheet) {
  CardSheetFacts facts = Facts();
  facts.cautions.push_back("Invented: this one is asked for by the test alone.");
  const auto drawing = MakeCardSheet(HandCard(), OneClipRigger("port"), facts, DisplayUnits::kFeet);
  ASSERT_TRUE(drawing);
  std::string all;
  for (const Text& text : drawing->texts) all += text.text + " ";
  for (const char* words : {"Hung up:", "cut.", "Alone or cold water:", "lanyard",
                            "Not for "
                            "navigation:",
                            "Invented:"}) {
    EXPECT_NE(all.find(words), std::string::npos) << words;
  }
}

TEST(CardSheetProblems, AnEmptyCardAndOneTooFullToReadAreProblems) {
  const tackle::Rigger rigger = OneClipRigger("port");
  EXPECT_FALSE(MakeCardSheet(plan::Card{}, rigger, Facts(), DisplayUnits::kFeet));
  plan::Card full = HandCard();
  full.counts_m = Series(10, 1, 80);
  full.cells.assign(2, std::vector<plan::CardCell>(80, full.cells[0][0]));
  const auto drawing = MakeCardSheet(full, rigger, Facts(), DisplayUnits::kFeet);
  ASSERT_FALSE(drawing);
  EXPECT_EQ(drawing.error().kind, ProblemKind::kBadInput);
  EXPECT_NE(drawing.error().message.find("80 counts"), std::string::npos);
}

}  // namespace
}  // namespace offplumb::answers
