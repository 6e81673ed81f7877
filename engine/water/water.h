/// \file
/// Density and viscosity of fresh and sea water at the surface.
#pragma once

#include "engine/problem.h"

namespace offplumb::water {

/// The two properties of water that a towed line feels. Plain value.
struct Water {
  double density_kg_per_m3 = 0;             ///< > 0.
  double kinematic_viscosity_m2_per_s = 0;  ///< > 0.
};

/// Usual sea water where salmon are trolled: 10 C and 30 g/kg. Common practice, no source.
inline constexpr double kSaltTemperature_C = 10.0;
inline constexpr double kSaltSalinity_g_per_kg = 30.0;
/// Usual fresh water: 10 C. Common practice, no source.
inline constexpr double kFreshTemperature_C = 10.0;

/// Density of water at one atmosphere.
///
/// \param temperature_C  in [0, 40].
/// \param salinity_g_per_kg  practical salinity, taken as g/kg, in [0, 42].
/// \return kg/m3. Standard error of the fit 0.0036 kg/m3.
/// Source: the international one-atmosphere equation of state of seawater (EOS-80), UNESCO
/// Technical Papers in Marine Science 36 (1981); F. J. Millero and A. Poisson, Deep-Sea Research
/// 28A (1981) 625, eqs. (1)-(6). Pressure is left out: 75 m of water adds 0.35 kg/m3, 0.03 %.
[[nodiscard]] double Density_kg_per_m3(double temperature_C, double salinity_g_per_kg);

/// Dynamic viscosity of water at one atmosphere.
///
/// \param temperature_C  in [0, 40].
/// \param salinity_g_per_kg  in [0, 42].
/// \return Pa s, within 1.5 % of the data behind the fit.
/// Source: M. H. Sharqawy, J. H. Lienhard, S. M. Zubair, Desalination and Water Treatment 16 (2010)
/// 354, eqs. (22)-(23); the ITTC procedure 7.5-02-01-03 prints values it reproduces to 0.025 %
/// (tests/validation/water_tables_test.cpp).
[[nodiscard]] double DynamicViscosity_Pa_s(double temperature_C, double salinity_g_per_kg);

/// Water of a temperature and salinity.
/// \return a problem when either is outside its range above or not a number.
[[nodiscard]] Expected<Water> MakeWater(double temperature_C, double salinity_g_per_kg);

/// \return the usual sea water named above.
[[nodiscard]] Water UsualSaltWater();
/// \return the usual fresh water named above.
[[nodiscard]] Water UsualFreshWater();

}  // namespace offplumb::water
