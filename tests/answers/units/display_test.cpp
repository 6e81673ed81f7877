#include "answers/units/display.h"

#include <cmath>

#include <gtest/gtest.h>

namespace offplumb::answers {
namespace {

constexpr double kFoot = 0.3048;

TEST(Display, WritesEachQuantityWithItsUnitAndFewDigits) {
  const auto feet = DisplayUnits::kFeet;
  EXPECT_EQ(FormatQuantity(88.4 * kFoot, Shown::kDepth, feet), "88 ft");
  EXPECT_EQ(FormatQuantity(3.5 * kFoot, Shown::kLength, feet), "3.5 ft");
  EXPECT_EQ(FormatQuantity(0.0008, Shown::kDiameter, feet), "0.80 mm");
  EXPECT_EQ(FormatQuantity(1.2, Shown::kSpeed, feet), "2.7 mph");
  EXPECT_EQ(FormatQuantity(9.35, Shown::kForce, feet), "2.1 lb");
  EXPECT_EQ(FormatQuantity(170, Shown::kForce, feet), "38 lb");
  EXPECT_EQ(FormatQuantity(5.44310844, Shown::kMass, feet), "12.0 lb");
  EXPECT_EQ(FormatQuantity(0.7, Shown::kAngle, feet), "40 deg");
  EXPECT_EQ(FormatQuantity(12.4, Shown::kTime, feet), "12 s");
}

TEST(Display, FollowsTheChoiceOfUnits) {
  EXPECT_EQ(FormatQuantity(26.88, Shown::kDepth, DisplayUnits::kMetric), "26.9 m");
  EXPECT_EQ(FormatQuantity(1.2, Shown::kSpeed, DisplayUnits::kMetric), "1.20 m/s");
  EXPECT_EQ(FormatQuantity(1.2, Shown::kSpeed, DisplayUnits::kFeetKnots), "2.3 kn");
  EXPECT_EQ(FormatQuantity(48.6, Shown::kForce, DisplayUnits::kMetric), "49 N");
}

TEST(Display, ReadsTheChoiceOfUnits) {
  EXPECT_EQ(*ParseDisplayUnits("feet"), DisplayUnits::kFeet);
  EXPECT_EQ(*ParseDisplayUnits("Knots"), DisplayUnits::kFeetKnots);
  EXPECT_EQ(*ParseDisplayUnits(" metric "), DisplayUnits::kMetric);
  EXPECT_FALSE(ParseDisplayUnits("imperial"));
}

TEST(Display, NeverWritesMinusZeroOrNan) {
  EXPECT_EQ(FormatNumber(-0.01, Shown::kDepth, DisplayUnits::kFeet), "0");
  EXPECT_EQ(FormatNumber(-0.001, Shown::kDepth, DisplayUnits::kMetric), "0.0");
  EXPECT_EQ(FormatNumber(-1, Shown::kDepth, DisplayUnits::kMetric), "-1.0");
  EXPECT_EQ(FormatNumber(std::nan(""), Shown::kDepth, DisplayUnits::kMetric), "-");
  EXPECT_EQ(FormatNumber(INFINITY, Shown::kDepth, DisplayUnits::kMetric), "-");
}

TEST(Band, IsWrittenInWords) {
  const Band band{88 * kFoot, 84 * kFoot, 91 * kFoot};
  EXPECT_EQ(FormatBand(band, Shown::kDepth, DisplayUnits::kFeet), "88 ft, 84 to 91");
}

TEST(Band, WithoutWidthIsOneValue) {
  const Band band{88 * kFoot, 88 * kFoot, 88 * kFoot};
  EXPECT_EQ(FormatBand(band, Shown::kDepth, DisplayUnits::kFeet), "88 ft");
}

TEST(Band, HasOneCountOfDigits) {
  // The median decides: 9.6 lb is shown to a tenth, and so are its ends.
  const double pound = 4.4482216152605;
  EXPECT_EQ(
      FormatBand({9.6 * pound, 8.2 * pound, 11.1 * pound}, Shown::kForce, DisplayUnits::kFeet),
      "9.6 lb, 8.2 to 11.1");
}

TEST(Band, SaysGiveOrTakeOnlyWhenItsSidesAreNearlyAlike) {
  const auto units = DisplayUnits::kFeet;
  EXPECT_EQ(GiveOrTake({88 * kFoot, 85 * kFoot, 91 * kFoot}, Shown::kDepth, units),
            "give or take 3");
  // Sides 4 and 3.3: they differ by 0.175 of the longer.
  EXPECT_EQ(GiveOrTake({88 * kFoot, 84 * kFoot, 91.3 * kFoot}, Shown::kDepth, units),
            "give or take 4");
  // Sides 4 and 3: by a quarter.
  EXPECT_FALSE(GiveOrTake({88 * kFoot, 84 * kFoot, 91 * kFoot}, Shown::kDepth, units));
  EXPECT_EQ(GiveOrTake({88 * kFoot, 87.9 * kFoot, 88.1 * kFoot}, Shown::kDepth, units),
            "give or take less than 1");
  EXPECT_EQ(GiveOrTake({20, 19.99, 20.01}, Shown::kDepth, DisplayUnits::kMetric),
            "give or take less than 0.1");
}

}  // namespace
}  // namespace offplumb::answers
