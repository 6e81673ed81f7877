#include "ports/files/water_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace offplumb::ports {
namespace {

TEST(WaterText, KnowsSaltAndFresh) {
  EXPECT_EQ(ParseWater("salt")->density_kg_per_m3, water::UsualSaltWater().density_kg_per_m3);
  EXPECT_EQ(ParseWater(" Fresh ")->density_kg_per_m3, water::UsualFreshWater().density_kg_per_m3);
}

TEST(WaterText, ReadsTemperatureAndSalinity) {
  const water::Water expected = *water::MakeWater(10, 30);
  for (const char* text :
       {"10 C 30 psu", "10 C, 30 g/kg", "50 F 30 psu", "10C,30psu", "  10 C   30 psu "}) {
    const auto water = ParseWater(text);
    ASSERT_TRUE(water) << text << ": " << water.error().message;
    EXPECT_NEAR(water->density_kg_per_m3, expected.density_kg_per_m3, 1e-9) << text;
    EXPECT_NEAR(water->kinematic_viscosity_m2_per_s, expected.kinematic_viscosity_m2_per_s, 1e-15);
  }
}

TEST(WaterText, ReadsADensity) {
  const auto water = ParseWater("1025 kg/m3");
  ASSERT_TRUE(water);
  EXPECT_EQ(water->density_kg_per_m3, 1025);
  EXPECT_EQ(water->kinematic_viscosity_m2_per_s,
            water::UsualSaltWater().kinematic_viscosity_m2_per_s);
}

TEST(WaterText, RefusesTheRestAndSaysWhatWouldDo) {
  for (const char* text :
       {"", "brackish", "10", "10 C", "10 C 30", "30 psu 10 C", "10 C 30 psu 5", "90 C 30 psu",
        "10 C 99 psu", "nan C 30 psu", "5 kg/m3", "10 C -1 psu", "C psu", ","}) {
    const auto water = ParseWater(text);
    ASSERT_FALSE(water) << text;
    EXPECT_EQ(water.error().subject, "water") << text;
    EXPECT_FALSE(water.error().remedy.empty()) << text;
  }
}

}  // namespace
}  // namespace offplumb::ports
