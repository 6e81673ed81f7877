#include "engine/tackle/catalogue.h"

#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "engine/constants.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::tackle {
namespace {

using testing::HasSubstr;

constexpr double kPound_kg = 0.45359237;

template <typename Make>
void ExpectAllAreMade(const std::vector<CatalogueEntry>& entries, Make make) {
  EXPECT_FALSE(entries.empty());
  for (const CatalogueEntry& entry : entries) {
    const auto made = make(entry.id);
    ASSERT_TRUE(made) << entry.id;
    EXPECT_EQ(made->name, entry.name);
  }
}

TEST(Catalogue, MakesEverythingItLists) {
  ExpectAllAreMade(CatalogueLines(), [](const std::string& id) { return MakeLine(id); });
  ExpectAllAreMade(CatalogueBalls(), [](const std::string& id) { return MakeBall(id); });
  ExpectAllAreMade(CatalogueFlashers(), [](const std::string& id) { return MakeFlasher(id); });
  ExpectAllAreMade(CatalogueLures(), [](const std::string& id) { return MakeLure(id); });
}

TEST(Catalogue, RefusesWhatItDoesNotHold) {
  const auto line = MakeLine("wyre-7x7-0.84mm");
  ASSERT_FALSE(line);
  EXPECT_EQ(line.error().kind, ProblemKind::kBadInput);
  EXPECT_THAT(line.error().remedy, HasSubstr("Did you mean \"wire-7x7-0.84mm\"?"));
  for (const char* id :
       {"", "-", "wire-7x7", "wire-7x7-", "wire-7x7-mm", "wire-7x7-0mm", "wire-7x7--1mm",
        "wire-7x7-0.8", "wire-7x7-nanmm", "wire-7x7-9mm", "wire-7x7-1.2.3mm"}) {
    EXPECT_FALSE(MakeLine(id)) << id;
  }
  EXPECT_FALSE(MakeBall("ball-sphere-13lb"));
  EXPECT_FALSE(MakeFlasher("hoochie"));
  EXPECT_FALSE(MakeLure("flasher-rotating-8in"));
}

TEST(Catalogue, NeverSuggestsAnotherNumber) {
  for (const char* id : {"wire-7x8-0.8mm", "wire-0.8mm", "wire"}) {
    EXPECT_THAT(MakeLine(id).error().remedy, HasSubstr("Write one of: ")) << id;
  }
  EXPECT_THAT(MakeBall("ball-round-16lb").error().remedy, HasSubstr("Write one of: "));
  EXPECT_THAT(MakeBall("ball-finned-12").error().remedy, HasSubstr("mean \"ball-finned-12lb\"?"));
  EXPECT_THAT(MakeFlasher("flasher-rotating-10in").error().remedy, HasSubstr("Write one of: "));
  EXPECT_THAT(MakeLure("hoochee").error().remedy, HasSubstr("Did you mean \"hoochie\"?"));
}

TEST(Catalogue, ABallOfAnotherWeightIsToBeStated) {
  const Problem pounds = MakeBall("ball-finned-16lb").error();
  EXPECT_EQ(pounds.message, "No ball of 16 lb in the catalogue.");
  EXPECT_EQ(pounds.remedy, "Write ball = { weight = \"16 lb\", shape = \"finned\" }.");
  const Problem kilograms = MakeBall("ball-sphere-5.5kg").error();
  EXPECT_EQ(kilograms.remedy, "Write ball = { weight = \"5.5 kg\", shape = \"sphere\" }.");
}

struct OddLine {
  const char* id;
  const char* message;
  const char* remedy;
};

TEST(Catalogue, SaysWhatIsOddAboutADiameter) {
  for (const OddLine& odd :
       {OddLine{"braid-0.55", "\"braid-0.55\" has no unit.", "Write \"braid-0.55mm\"."},
        OddLine{"braid-0,55", "\"braid-0,55\" has no unit.", "Write \"braid-0.55mm\"."},
        OddLine{"braid-0,55mm", "\"braid-0,55mm\" has a blank or a comma in its diameter.",
                "Write \"braid-0.55mm\"."},
        OddLine{"wire-7x7-0.84 mm", "\"wire-7x7-0.84 mm\" has a blank or a comma in its diameter.",
                "Write \"wire-7x7-0.84mm\"."},
        OddLine{"braid", "\"braid\" has no diameter.",
                "Write \"braid-0.5mm\": any from 0.05 to 5 mm."},
        OddLine{"wire-1x7-", "\"wire-1x7-\" has no diameter.",
                "Write \"wire-1x7-0.8mm\": any from 0.05 to 5 mm."},
        OddLine{"nylon-9mm", "\"nylon-9mm\" has no diameter from 0.05 to 5 mm.",
                "Write \"nylon-0.55mm\": any from 0.05 to 5 mm."}}) {
    const auto line = MakeLine(odd.id);
    ASSERT_FALSE(line) << odd.id;
    EXPECT_EQ(line.error().message, odd.message);
    EXPECT_EQ(line.error().remedy, odd.remedy);
  }
}

TEST(CatalogueLine, ComesInAnyDiameter) {
  EXPECT_DOUBLE_EQ(MakeLine("wire-7x7-0.84mm")->diameter_m, 0.84e-3);
  EXPECT_DOUBLE_EQ(MakeLine("wire-7x7", 0.00084)->diameter_m, 0.84e-3);
  EXPECT_DOUBLE_EQ(MakeLine("wire-7x7-0.6mm", 0.00084)->diameter_m, 0.84e-3);
  EXPECT_EQ(MakeLine(LineKind::kWire, 0.0008).name, MakeLine("wire-1x7-0.8mm")->name);
}

TEST(CatalogueLine, LevelsAreThePriorsMedians) {
  EXPECT_DOUBLE_EQ(MakeLine(LineKind::kWire, 1e-3).normal_drag_coefficient, 1.25);
  EXPECT_DOUBLE_EQ(MakeLine(LineKind::kBraid, 1e-3).normal_drag_coefficient, 1.2);
  EXPECT_DOUBLE_EQ(MakeLine(LineKind::kNylon, 1e-3).normal_drag_coefficient, 1.2);
  EXPECT_DOUBLE_EQ(MakeLine(LineKind::kFluorocarbon, 1e-3).normal_drag_coefficient, 1.2);
}

/// 12 lb of lead at 11340 kg/m3 is 4.800e-4 m3: a sphere of 97.1 mm.
TEST(CatalogueBall, ASphereFollowsFromItsWeight) {
  const Body ball = *MakeBall("ball-sphere-12lb");
  EXPECT_DOUBLE_EQ(ball.mass_kg, 12 * kPound_kg);
  EXPECT_NEAR(ball.sphere_diameter_m, 0.0971, 0.00005);
  EXPECT_DOUBLE_EQ(ball.eye_to_centre_m, ball.sphere_diameter_m / 2);
  EXPECT_EQ(ball.name, "12 lb lead ball");
}

TEST(CatalogueBall, HoldsItsVolumeInEveryShape) {
  const double volume = 12 * kPound_kg / kLeadDensity_kg_per_m3;
  // Finned: spheroid of height 2 e, three times as long. Flat: disc of diameter 2 e, a quarter as
  // thick.
  const double e_finned = MakeBall("ball-finned-12lb")->eye_to_centre_m;
  EXPECT_NEAR(kPi / 6 * 3 * std::pow(2 * e_finned, 3), volume, 1e-12);
  const double e_flat = MakeBall("ball-flat-12lb")->eye_to_centre_m;
  EXPECT_NEAR(kPi / 4 * std::pow(2 * e_flat, 3) / 4, volume, 1e-12);
}

/// On the same weight the shaped castings drag less than a sphere at 0.47: that is what they are
/// bought for.
TEST(CatalogueBall, ShapedOnesDragLessThanASphere) {
  const Body sphere = *MakeBall("ball-sphere-12lb");
  const double sphere_area = 0.47 * kPi / 4 * sphere.sphere_diameter_m * sphere.sphere_diameter_m;
  for (const char* id : {"ball-finned-12lb", "ball-flat-12lb"}) {
    const Body ball = *MakeBall(id);
    EXPECT_EQ(ball.sphere_diameter_m, 0) << id;
    EXPECT_GT(ball.drag_area_m2, 0.1 * sphere_area) << id;
    EXPECT_LT(ball.drag_area_m2, 0.6 * sphere_area) << id;
  }
}

/// Guessed pulls at 1.23 m/s (774 Pa in the sea), from the notes on coefficients: 11 in rotating 3
/// to 10 N, middle 6; 8 in 1.5 to 4.5 N; spoon or plug 0.3 to 1.0 N; bait less.
TEST(CatalogueTackle, PullsWithinTheGuessedRanges) {
  constexpr double kPressure_Pa = 774;
  const auto pull = [](const Body& body) { return body.drag_area_m2 * kPressure_Pa; };
  EXPECT_NEAR(pull(*MakeFlasher("flasher-rotating-11in")), 6.0, 0.3);
  EXPECT_GT(pull(*MakeFlasher("flasher-rotating-8in")), 1.5);
  EXPECT_LT(pull(*MakeFlasher("flasher-rotating-8in")), 4.5);
  EXPECT_LT(pull(*MakeFlasher("dodger-swaying-8in")), pull(*MakeFlasher("flasher-rotating-8in")));
  for (const char* id : {"spoon-small", "spoon-large", "plug-small", "plug-large", "hoochie"}) {
    EXPECT_GE(pull(*MakeLure(id)), 0.3) << id;
    EXPECT_LE(pull(*MakeLure(id)), 1.01) << id;
  }
  EXPECT_LT(pull(*MakeLure("bait-whole")), 0.3);
  EXPECT_LT(pull(*MakeLure("no-lure")), 0.05);
}

TEST(NearestWord, FindsTheSlipOfAFinger) {
  EXPECT_EQ(NearestWord("setbak", {"leader", "setback", "lure"}), "setback");
  EXPECT_EQ(NearestWord("hoochee", {"hoochie", "no-lure"}), "hoochie");
  EXPECT_EQ(NearestWord("zzz", {"leader", "setback"}), "");
  EXPECT_EQ(NearestWord("", {"leader"}), "");
  EXPECT_EQ(NearestWord("x", {}), "");
  EXPECT_EQ(NearestWord("ball-16lb", {"ball-15lb", "bell-16lb"}), "bell-16lb");
  EXPECT_EQ(NearestWord(std::string(100000, 'a'), {"leader"}), "");
}

}  // namespace
}  // namespace offplumb::tackle
