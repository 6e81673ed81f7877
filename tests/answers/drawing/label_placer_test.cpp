#include "answers/drawing/label_placer.h"

#include <gtest/gtest.h>

namespace offplumb::answers {
namespace {

const Region kSheet{{0, 0}, {100, 100}};

Text Word(double x_mm, double y_mm) {
  Text text;
  text.text = "88";
  text.place = {x_mm, y_mm};
  text.size_mm = 5;
  return text;
}

TEST(LabelPlacer, TakesTheFirstPlaceWhenItIsFree) {
  Drawing drawing;
  ASSERT_TRUE(AddWhereFree(InOrder({Word(20, 20), Word(40, 40)}), kSheet, true, drawing));
  EXPECT_EQ(drawing.texts.back().place.x_mm, 20);
}

TEST(LabelPlacer, NeverStandsOnAnotherText) {
  Drawing drawing;
  drawing.texts.push_back(Word(20, 20));
  ASSERT_TRUE(AddWhereFree(InOrder({Word(21, 21), Word(40, 40)}), kSheet, true, drawing));
  EXPECT_EQ(drawing.texts.back().place.x_mm, 40);
  EXPECT_FALSE(AddWhereFree(InOrder({Word(21, 21)}), kSheet, true, drawing));
  EXPECT_EQ(drawing.texts.size(), 2U);
}

TEST(LabelPlacer, PrefersALaterPlaceToStandingOnALine) {
  Drawing drawing;
  drawing.lines.push_back(Polyline{{{0, 18}, {100, 18}}});
  ASSERT_TRUE(AddWhereFree(InOrder({Word(20, 20), Word(20, 60)}), kSheet, true, drawing));
  EXPECT_EQ(drawing.texts.back().place.y_mm, 60);
  EXPECT_FALSE(AddWhereFree(InOrder({Word(60, 20)}), kSheet, false, drawing));
}

TEST(LabelPlacer, StaysWithinTheRegion) {
  Drawing drawing;
  EXPECT_FALSE(AddWhereFree(InOrder({Word(97, 50)}), kSheet, true, drawing));
  ASSERT_TRUE(AddWhereFree(WithSurroundings({Word(97, 50)}), kSheet, true, drawing));
  EXPECT_LE(BoxOf(drawing.texts.back())[1].x_mm, 100);
}

}  // namespace
}  // namespace offplumb::answers
