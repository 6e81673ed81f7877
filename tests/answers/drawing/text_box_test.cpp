#include "answers/drawing/text_box.h"

#include <cmath>

#include <gtest/gtest.h>

namespace offplumb::answers {
namespace {

Text At(std::string words, double x_mm, double y_mm) {
  Text text;
  text.text = std::move(words);
  text.place = {x_mm, y_mm};
  text.size_mm = 10;
  return text;
}

TEST(TextBox, WidthFollowsTheFontsTable) {
  // A digit is 636/1000 of the em, bold 696/1000; a two-byte sign counts once.
  EXPECT_NEAR(TextWidth_mm("88", 10, false), 12.72, 1e-12);
  EXPECT_NEAR(TextWidth_mm("88", 10, true), 13.92, 1e-12);
  EXPECT_NEAR(TextWidth_mm("°", 10, false), 10.0, 1e-12);
}

TEST(TextBox, AnchorsMoveTheBoxSideways) {
  Text text = At("88", 50, 20);
  EXPECT_NEAR(BoxOf(text)[0].x_mm, 50, 1e-12);
  text.anchor = Anchor::kMiddle;
  EXPECT_NEAR(BoxOf(text)[0].x_mm, 50 - 6.36, 1e-12);
  text.anchor = Anchor::kEnd;
  EXPECT_NEAR(BoxOf(text)[1].x_mm, 50, 1e-12);
}

TEST(TextBox, OnlyTailsReachBelowTheBaseline) {
  EXPECT_NEAR(BoxOf(At("88", 0, 0))[2].y_mm, 0.2, 1e-12);
  EXPECT_NEAR(BoxOf(At("leg", 0, 0))[2].y_mm, 2.4, 1e-12);
}

TEST(TextBox, TurnedTextsOverlapOnlyWhereTheyMeet) {
  const TextBox level = BoxOf(At("88888888", 0, 0));  // 51 mm long.
  Text turned = At("88888888", 30, 3);
  turned.rotation_rad = 0.5;  // Runs away downwards from under the middle of the first.
  EXPECT_TRUE(Overlap(level, BoxOf(turned)));
  turned.place.y_mm = 12;
  EXPECT_FALSE(Overlap(level, BoxOf(turned)));
  // Their upright hulls overlap all the same: the test must be along the turned sides.
  turned.place = {-20, -8};
  turned.rotation_rad = 0.3;
  EXPECT_TRUE(Overlap(level, BoxOf(turned)));
}

TEST(TextBox, ATouchIsNoOverlapButTooLittleGapIs) {
  const TextBox a = BoxOf(At("88", 0, 0));
  const TextBox b = BoxOf(At("88", 12.72 + 0.5, 0));
  EXPECT_FALSE(Overlap(a, b));
  EXPECT_TRUE(Overlap(a, b, 0.6));
  EXPECT_FALSE(Overlap(a, b, 0.4));
}

TEST(WrapText, BreaksBetweenWordsAndKeepsThemAll) {
  const auto lines = WrapText("hung up: out of gear", 10, false, 60);
  ASSERT_GT(lines.size(), 1U);
  std::string joined;
  for (const std::string& line : lines) {
    EXPECT_LE(TextWidth_mm(line, 10, false), 60) << line;
    joined += (joined.empty() ? "" : " ") + line;
  }
  EXPECT_EQ(joined, "hung up: out of gear");
}

TEST(FitText, CutsBetweenLettersAndSaysSo) {
  EXPECT_EQ(FitText("port", 10, false, 100), "port");
  const std::string cut = FitText("°°°°°°°°°°", 10, false, 60);
  EXPECT_LE(TextWidth_mm(cut, 10, false), 60);
  EXPECT_EQ(cut, "°°°°°...");  // Ten em would be 100 mm; five and three dots are 59.5.
}

}  // namespace
}  // namespace offplumb::answers
