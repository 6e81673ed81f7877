// Drag laws against published values, and against each other where their sources say how far they
// may be apart.
#include "engine/tackle/drag_law.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/constants.h"

namespace offplumb::tackle {
namespace {

/// Half of the last of four printed decimals.
constexpr double kFourDecimals = 5.1e-5;

TEST(Morrison2013, PublishedValueAtReynolds200) {
  // The value in the documentation tests of an open library of fluid correlations (after T. Barati
  // et al., 2014).
  EXPECT_NEAR(MorrisonSphere(200), 0.767731559965325, 1e-13);
}

TEST(Morrison2013, Table) {
  // Evaluated independently in Python. The drag crisis shows at 3e5: the first exponent is -7.94,
  // the second -8, and exchanging them moves the last two figures.
  for (const auto& [re, cd] :
       {std::pair(1e4, 0.3936), std::pair(5e4, 0.4066), std::pair(1e5, 0.4247),
        std::pair(1.5e5, 0.4354), std::pair(2e5, 0.4120), std::pair(3e5, 0.1680)}) {
    EXPECT_NEAR(MorrisonSphere(re), cd, kFourDecimals) << re;
  }
  EXPECT_NEAR(MorrisonSphere(1e5), 0.424677, 1e-6);
}

TEST(HaiderLevenspiel1989, PublishedValueAtReynolds200) {
  // From the same library's documentation tests.
  EXPECT_NEAR(HaiderLevenspielSphere(200), 0.7959551680, 1e-9);
}

TEST(HaiderLevenspiel1989, Table) {
  for (const auto& [re, cd] :
       {std::pair(1e4, 0.4204), std::pair(5e4, 0.4681), std::pair(1e5, 0.4715),
        std::pair(1.5e5, 0.4703), std::pair(2e5, 0.4686)}) {
    EXPECT_NEAR(HaiderLevenspielSphere(re), cd, kFourDecimals) << re;
  }
}

/// The law of R. Clift and W. H. Gauvin with the constants of that library, as a third opinion.
double CliftGauvin(double re) {
  return 24 / re * (1 + 0.152 * std::pow(re, 0.677)) + 0.417 / (1 + 5070 * std::pow(re, -0.94));
}

TEST(HaiderLevenspiel1989, AgreesWithCliftAndGauvin) {
  // Both are fits to the same measurements with a stated scatter of some 5 %; over the balls of the
  // trade, Re 4e4 to 1.6e5, the two fits are within 3 %.
  EXPECT_NEAR(CliftGauvin(200), 0.7905400398, 1e-9);
  for (double re = 4e4; re < 1.6e5; re *= 1.1) {
    EXPECT_NEAR(HaiderLevenspielSphere(re) / CliftGauvin(re), 1, 0.03) << re;
  }
}

TEST(HaiderLevenspiel1989, StokesLawWhenSlow) {
  // Cd = 24/Re as Re goes to 0; at 1e-3 the next term is 0.1806 Re^0.6459 = 0.2 %.
  EXPECT_NEAR(HaiderLevenspielSphere(1e-3) * 1e-3 / 24, 1, 0.0022);
}

struct Cylinder {
  double re, white, sucker_brauer;
};

TEST(White1991AndSuckerBrauer1975, Table) {
  // Evaluated independently in Python; three printed decimals.
  constexpr Cylinder kRows[] = {{100, 1.464, 1.449},
                                {400, 1.184, 1.160},
                                {700, 1.127, 1.036},
                                {1000, 1.100, 0.963},
                                {1800, 1.068, 0.904}};
  for (const Cylinder& row : kRows) {
    EXPECT_NEAR(WhiteCylinder(row.re), row.white, 5.1e-4) << row.re;
    EXPECT_NEAR(SuckerBrauerCylinder(row.re), row.sucker_brauer, 5.1e-4) << row.re;
  }
}

TEST(White1991AndSuckerBrauer1975, TwoFitsOfOneCylinder) {
  // White's fit is stated good to 10 % of the data; Sucker and Brauer follow the dip near Re 2000,
  // where White lies up to a fifth above. Either way the difference is inside the 5 to 95 % band
  // taken for wire (0.95 to 1.75).
  for (double re = 100; re < 2000; re *= 1.2) {
    const double ratio = WhiteCylinder(re) / SuckerBrauerCylinder(re);
    EXPECT_GT(ratio, 0.95) << re;
    EXPECT_LT(ratio, 1.20) << re;
  }
}

TEST(GovardhanWilliamson2006AndVandiver1983, StrummingOfAThinLine) {
  // Amplitude at zero damping log10(0.41 Re^0.36): 0.63 at Re 650 and 0.66 at Re 790 (two printed
  // decimals). With the span's rms of a standing wave (half the peak) Vandiver's factor is 1.78 at
  // 0.64.
  const auto amplitude = [](double re) {
    return std::pow((StrummingFactor(re) - 1) / 1.043, 1 / 0.65);
  };
  EXPECT_NEAR(amplitude(650), 0.63, 0.0051);
  EXPECT_NEAR(amplitude(790), 0.66, 0.0051);
  EXPECT_NEAR(StrummingFactor(700), 1.78, 0.0051);
}

TEST(GovardhanWilliamson2006AndVandiver1983, HeldAtTheEndsOfTheMeasurements) {
  EXPECT_EQ(StrummingFactor(100), StrummingFactor(500));
  EXPECT_EQ(StrummingFactor(1e5), StrummingFactor(33000));
  EXPECT_LT(StrummingFactor(500), StrummingFactor(33000));
}

TEST(Hoerner1965, PlatesFromSquareToLong) {
  // Square plate about 1.17 in many handbooks (from memory), 1.14 by the formula; 10:1 plate 1.29
  // (1.302 here).
  EXPECT_NEAR(PlateBroadside(1), 1.17, 0.04);
  EXPECT_NEAR(PlateBroadside(10), 1.29, 0.02);
  EXPECT_EQ(PlateBroadside(4), PlateBroadside(0.25));
}

TEST(Rayleigh1876, InclinedPlate) {
  // Edge-on no drag; square to the stream the broadside plate; between them it rises. At a small
  // angle the shape is (pi/2) alpha^2 over that of 90 degrees, 2 pi/(4 + pi).
  EXPECT_EQ(InclinedPlateDrag(0, 3), 0);
  EXPECT_NEAR(InclinedPlateDrag(kPi / 2, 3), PlateBroadside(3), 1e-12);
  double before = 0;
  for (double a = 0.05; a < kPi / 2; a += 0.05) {
    EXPECT_GT(InclinedPlateDrag(a, 3), before);
    before = InclinedPlateDrag(a, 3);
  }
  const double small = 1e-4;
  EXPECT_NEAR(InclinedPlateDrag(small, 3) / (small * small),
              PlateBroadside(3) * (kPi / 2) * (4 + kPi) / (2 * kPi), 1e-3);
}

}  // namespace
}  // namespace offplumb::tackle
