// Density and viscosity against published check values.
#include <gtest/gtest.h>

#include "engine/water/water.h"

namespace offplumb::water {
namespace {

TEST(Unesco1981, OneAtmosphereEquationOfState) {
  // N. P. Fofonoff and R. C. Millard, UNESCO Technical Papers in Marine Science 44 (1983): five
  // printed decimals.
  EXPECT_NEAR(Density_kg_per_m3(5, 0), 999.96675, 5.1e-6);
  EXPECT_NEAR(Density_kg_per_m3(5, 35), 1027.67547, 5.1e-6);
  EXPECT_NEAR(Density_kg_per_m3(25, 35), 1023.34306, 5.1e-6);
}

TEST(Teos2010, AgreesWithTheNewerStandard) {
  // The toolbox of TEOS-10 at the surface, SR = S 35.16504/35 (run once; four printed decimals).
  // The two standards differ by 0.003 kg/m3 and practical salinity is not g/kg: 0.02 kg/m3 in all,
  // 0.002 %.
  EXPECT_NEAR(Density_kg_per_m3(15, 35), 1025.9756, 0.02);
  EXPECT_NEAR(Density_kg_per_m3(10, 30), 1023.0535, 0.02);
  EXPECT_NEAR(Density_kg_per_m3(10, 32), 1024.6130, 0.02);
  EXPECT_NEAR(Density_kg_per_m3(12, 25), 1018.8397, 0.02);
}

double Viscosity(double temperature_C, double salinity) {
  return DynamicViscosity_Pa_s(temperature_C, salinity) /
         Density_kg_per_m3(temperature_C, salinity);
}

TEST(Ittc2011, KinematicViscosity) {
  // ITTC Recommended Procedure 7.5-02-01-03, Fresh Water and Seawater Properties (2011): standard
  // sea water is 35.16504 g/kg. Its tables and the fit used here rest on the same formulas: 0.02 %,
  // and half of the last of five printed digits is 0.005 %.
  EXPECT_NEAR(Viscosity(15, 35.16504) / 1.1892e-6, 1, 2.5e-4);
  EXPECT_NEAR(Viscosity(19.2, 35.16504) / 1.0711e-6, 1, 2.5e-4);
  EXPECT_NEAR(Viscosity(18.5, 0) / 1.0411e-6, 1, 2.5e-4);
}

TEST(Ittc2011, Density) {
  EXPECT_NEAR(Density_kg_per_m3(15, 35.16504), 1026.02, 0.12);
  EXPECT_NEAR(Density_kg_per_m3(18.5, 0), 998.5048, 0.01);
}

TEST(LandoltBoernstein, AnotherPublishedFitOfViscosity) {
  // A published fit on chlorinity gives 1.1818e-6 at (35, 15 C) and 1.3440e-6 at (30, 10 C); it is
  // known to lie 0.6 % below ITTC. 1 % allowed.
  EXPECT_NEAR(Viscosity(15, 35) / 1.1818e-6, 1, 0.01);
  EXPECT_NEAR(Viscosity(10, 30) / 1.3440e-6, 1, 0.01);
}

}  // namespace
}  // namespace offplumb::water
