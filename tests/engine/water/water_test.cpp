// Ranges and plain sense of the water's properties; the published values are in tests/validation.
#include "engine/water/water.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace offplumb::water {
namespace {

TEST(Water, SaltIsDenserAndColdIsMoreViscous) {
  for (double t = 0; t < 40; t += 5) {
    EXPECT_GT(Density_kg_per_m3(t, 35), Density_kg_per_m3(t, 10));
    EXPECT_GT(DynamicViscosity_Pa_s(t, 30), DynamicViscosity_Pa_s(t + 5, 30));
    EXPECT_GT(DynamicViscosity_Pa_s(t, 30), DynamicViscosity_Pa_s(t, 0));
  }
}

TEST(Water, FreshWaterIsDensestNearFourDegrees) {
  // The maximum density of pure water is at 3.98 C; the fit must have it within a tenth of a
  // degree.
  const double top = Density_kg_per_m3(3.98, 0);
  EXPECT_GT(top, Density_kg_per_m3(3.88, 0));
  EXPECT_GT(top, Density_kg_per_m3(4.08, 0));
}

TEST(Water, MakesBothPropertiesOfOneWater) {
  const Expected<Water> made = MakeWater(12, 25);
  ASSERT_TRUE(made.has_value());
  EXPECT_EQ(made->density_kg_per_m3, Density_kg_per_m3(12, 25));
  EXPECT_EQ(made->kinematic_viscosity_m2_per_s,
            DynamicViscosity_Pa_s(12, 25) / Density_kg_per_m3(12, 25));
}

TEST(Water, RefusesWhatIsNoWater) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (double t : {-0.1, 40.1, nan}) {
    const Expected<Water> made = MakeWater(t, 30);
    ASSERT_FALSE(made.has_value());
    EXPECT_EQ(made.error().subject, "water temperature");
    EXPECT_NE(made.error().message.find("between 0 and 40 C"), std::string::npos);
  }
  for (double s : {-0.1, 42.1, nan}) {
    const Expected<Water> made = MakeWater(10, s);
    ASSERT_FALSE(made.has_value());
    EXPECT_EQ(made.error().subject, "salinity");
    EXPECT_NE(made.error().message.find("42 g/kg"), std::string::npos);
  }
}

TEST(Water, TakesTheEndsOfItsRanges) {
  EXPECT_TRUE(MakeWater(0, 0).has_value());
  EXPECT_TRUE(MakeWater(40, 42).has_value());
}

TEST(Water, UsualWatersAreTheNamedOnes) {
  EXPECT_EQ(UsualSaltWater().density_kg_per_m3, Density_kg_per_m3(10, 30));
  EXPECT_EQ(UsualFreshWater().density_kg_per_m3, Density_kg_per_m3(10, 0));
}

}  // namespace
}  // namespace offplumb::water
