#include "answers/units/quantity.h"

#include <cmath>
#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace offplumb::answers {
namespace {

using testing::HasSubstr;

/// A quantity as written, its dimension, and its SI value to the digits NIST SP 811 (2008) appendix
/// B.8 prints.
struct Case {
  std::string_view written;
  Dimension dimension;
  double si;
  double tolerance;  ///< Half a unit of the last printed digit; 0: exact but for one rounding.
};

class NistValues : public testing::TestWithParam<Case> {};

TEST_P(NistValues, AreReproduced) {
  const auto value = ParseQuantity(GetParam().written, GetParam().dimension, "x");
  ASSERT_TRUE(value) << value.error().message;
  if (GetParam().tolerance > 0) {
    EXPECT_NEAR(*value, GetParam().si, GetParam().tolerance) << GetParam().written;
  } else {
    EXPECT_DOUBLE_EQ(*value, GetParam().si) << GetParam().written;
  }
}

INSTANTIATE_TEST_SUITE_P(
    B8, NistValues,
    testing::Values(
        Case{"1 ft", Dimension::kLength, 0.3048, 0}, Case{"1 in", Dimension::kLength, 0.0254, 0},
        Case{"1 yd", Dimension::kLength, 0.9144, 0},
        Case{"1 fathom", Dimension::kLength, 1.8288, 0}, Case{"1 nmi", Dimension::kLength, 1852, 0},
        Case{"1 lb", Dimension::kMass, 0.45359237, 0},
        Case{"1 oz", Dimension::kMass, 2.834952e-2, 5e-9},
        Case{"1 lb", Dimension::kForce, 4.448222, 5e-7},
        Case{"1 ozf", Dimension::kForce, 0.2780139, 5e-8},
        Case{"1 kgf", Dimension::kForce, 9.80665, 0}, Case{"1 mph", Dimension::kSpeed, 0.44704, 0},
        Case{"1 kn", Dimension::kSpeed, 0.5144444, 5e-8},
        Case{"1 km/h", Dimension::kSpeed, 0.2777778, 5e-8},
        Case{"1 ft/s", Dimension::kSpeed, 0.3048, 0},
        Case{"1 deg", Dimension::kAngle, 1.745329e-2, 5e-9},
        Case{"1 in2", Dimension::kArea, 6.4516e-4, 0},
        Case{"1 ft2", Dimension::kArea, 9.290304e-2, 0},
        Case{"1 lb/ft", Dimension::kForcePerLength, 14.59390, 5e-6},
        Case{"1 lb/ft3", Dimension::kDensity, 16.01846, 5e-6},
        Case{"1 g/cm3", Dimension::kDensity, 1000, 0},
        Case{"1 cSt", Dimension::kViscosity, 1e-6, 0},
        Case{"1 psi", Dimension::kPressure, 6894.757, 5e-4},
        Case{"50 F", Dimension::kTemperature, 10, 0},
        Case{"32 F", Dimension::kTemperature, 0, 1e-14}, Case{"1 h", Dimension::kTime, 3600, 0}));

INSTANTIATE_TEST_SUITE_P(AsPeopleWriteThem, NistValues,
                         testing::Values(Case{"100 ft", Dimension::kLength, 30.48, 0},
                                         Case{"100ft", Dimension::kLength, 30.48, 0},
                                         Case{"  100   FEET ", Dimension::kLength, 30.48, 0},
                                         Case{"100'", Dimension::kLength, 30.48, 0},
                                         Case{"0.8 mm", Dimension::kLength, 0.0008, 0},
                                         Case{".8mm", Dimension::kLength, 0.0008, 0},
                                         Case{"-2 ft", Dimension::kLength, -0.6096, 0},
                                         Case{"+2. ft", Dimension::kLength, 0.6096, 0},
                                         Case{"2.7 mph", Dimension::kSpeed, 1.207008, 0},
                                         Case{"15 N", Dimension::kForce, 15, 0},
                                         Case{"55 kN", Dimension::kForce, 55000, 0},
                                         Case{"1.2 kg", Dimension::kForce, 11.76798, 0},
                                         Case{"0.0267 N/m", Dimension::kForcePerLength, 0.0267, 0},
                                         Case{"0.0035 m2", Dimension::kArea, 0.0035, 0},
                                         Case{"0.0035 m\xC2\xB2", Dimension::kArea, 0.0035, 0},
                                         Case{"1025 kg/m3", Dimension::kDensity, 1025, 0},
                                         Case{"1.35e-6 m2/s", Dimension::kViscosity, 1.35e-6, 0},
                                         Case{"10 C", Dimension::kTemperature, 10, 0},
                                         Case{"10\xC2\xB0"
                                              "C",
                                              Dimension::kTemperature, 10, 0},
                                         Case{"65 deg", Dimension::kAngle, 1.1344640137963142, 0},
                                         Case{"30 psu", Dimension::kSalinity, 30, 0},
                                         Case{"193 GPa", Dimension::kPressure, 193e9, 0},
                                         Case{"1E3 m", Dimension::kLength, 1000, 0}));

TEST(Quantity, APoundIsMassOrForceAsAsked) {
  EXPECT_DOUBLE_EQ(*ParseQuantity("12 lb", Dimension::kMass, "ball"), 5.44310844);
  EXPECT_DOUBLE_EQ(*ParseQuantity("12 lb", Dimension::kForce, "pull"), 5.44310844 * 9.80665);
}

TEST(Quantity, EveryNameAndAliasReadsAsItsUnit) {
  for (const Unit& unit : Units()) {
    std::string names(unit.name);
    if (!unit.aliases.empty()) names.append(" ").append(unit.aliases);
    for (std::size_t start = 0; start <= names.size();) {
      const std::size_t end = std::min(names.find(' ', start), names.size());
      const std::string name = names.substr(start, end - start);
      EXPECT_EQ(FindUnit(unit.dimension, name), &unit) << name;
      start = end + 1;
    }
    EXPECT_FALSE(unit.source.empty()) << unit.name;
  }
}

TEST(Quantity, RefusesABareNumberAndSaysWhichUnitsWouldDo) {
  const auto value = ParseQuantity("2.7", Dimension::kSpeed, "speed");
  ASSERT_FALSE(value);
  EXPECT_EQ(value.error().kind, ProblemKind::kBadInput);
  EXPECT_EQ(value.error().subject, "speed");
  EXPECT_EQ(value.error().message, "\"2.7\" has no unit.");
  EXPECT_EQ(value.error().remedy, "Write one after the number: mph, kn, m/s, km/h or ft/s.");
}

TEST(Quantity, RefusesAUnitOfAnotherDimension) {
  const auto value = ParseQuantity("2.7 ft", Dimension::kSpeed, "speed");
  ASSERT_FALSE(value);
  EXPECT_EQ(value.error().message, "\"2.7 ft\": \"ft\" is not a unit of speed.");
}

TEST(Quantity, RefusesWhatIsNoDecimalNumber) {
  for (const std::string_view text :
       {"",       " ",       "ft",       "nan m",    "inf m",      "-inf m", "0x10 m", "1,5 m",
        "1..5 m", "--1 m",   "1e m",     "e5 m",     ". m",        "1 m m",  "1 m x",  "1 2 m",
        "1 m;",   "1e999 m", "-1e999 m", "1e308 km", "\xff\xfe m", "1 \xff"}) {
    EXPECT_FALSE(ParseQuantity(text, Dimension::kLength, "x")) << text;
  }
  EXPECT_FALSE(ParseQuantity(std::string_view("1\0m", 3), Dimension::kLength, "x"));
}

TEST(Quantity, SaysWhatToDoAboutAComma) {
  const auto value = ParseQuantity("1,5 m", Dimension::kLength, "x");
  ASSERT_FALSE(value);
  EXPECT_THAT(value.error().remedy, HasSubstr("point, not a comma"));
}

TEST(Quantity, QuotesAtMostSixtyBytesOfNonsense) {
  const auto value =
      ParseQuantity(std::string(100000, 'x') + "\n\x1b[31m", Dimension::kLength, "x");
  ASSERT_FALSE(value);
  EXPECT_LT(value.error().message.size(), 120u);
  EXPECT_EQ(value.error().message.find('\x1b'), std::string::npos);
}

TEST(Quantity, TellsTheRangeInTheUnitThatWasWritten) {
  const auto value = ParseQuantityWithin("20 mph", Dimension::kSpeed, {0, 5.14444444444}, "speed");
  ASSERT_FALSE(value);
  EXPECT_EQ(value.error().message,
            "\"20 mph\" is out of range: it must be from 0 mph to 11.51 mph.");
  EXPECT_TRUE(ParseQuantityWithin("0 mph", Dimension::kSpeed, {0, 5}, "speed"));
}

TEST(Quantity, ANumberThatIsNotOneIsOutOfEveryRange) {
  EXPECT_FALSE(CheckRange(std::nan(""), {-1e300, 1e300}, "nan m", Dimension::kLength, "x"));
}

TEST(Number, IsReadWithoutAUnit) {
  EXPECT_DOUBLE_EQ(*ParseNumber(" 1.25 ", "coefficient"), 1.25);
  for (const std::string_view text : {"", "1.2 m", "nan", "inf", "1.2.3", "0x1"}) {
    EXPECT_FALSE(ParseNumber(text, "coefficient")) << text;
  }
}

TEST(Pull, IsAForceAtASpeed) {
  const auto pull = ParsePull("2.1 lb at 2.5 mph", "pull");
  ASSERT_TRUE(pull) << pull.error().message;
  EXPECT_DOUBLE_EQ(pull->force_N, 2.1 * 0.45359237 * 9.80665);
  EXPECT_DOUBLE_EQ(pull->speed_mps, 2.5 * 0.44704);
}

TEST(Pull, MustBeWholeAndPositive) {
  for (const std::string_view text :
       {"2.1 lb", "2.1 lb at", "2.1 at 2.5", "0 lb at 2 mph", "2 lb at 0 mph", "-1 lb at 2 mph",
        "2 lb at 2 lb", "at 2 mph", "2 mph at 2 lb"}) {
    EXPECT_FALSE(ParsePull(text, "pull")) << text;
  }
}

TEST(UnitNames, ListsADimensionsUnits) {
  EXPECT_EQ(UnitNames(Dimension::kAngle), "deg or rad");
  EXPECT_EQ(UnitNames(Dimension::kSalinity), "g/kg or psu");
}

}  // namespace
}  // namespace offplumb::answers
