#include "engine/tackle/drag_law.h"

#include <algorithm>
#include <cmath>

#include "engine/constants.h"

namespace offplumb::tackle {

double WhiteCylinder(double reynolds) { return 1.0 + 10.0 / std::cbrt(reynolds * reynolds); }

double SuckerBrauerCylinder(double reynolds) {
  const double re = reynolds;
  return 1.18 + 6.8 / std::pow(re, 0.89) + 1.96 / std::sqrt(re) -
         0.0004 * re / (1.0 + 3.64e-7 * re * re);
}

double HaiderLevenspielSphere(double reynolds) {
  const double re = reynolds;
  return 24.0 / re * (1.0 + 0.1806 * std::pow(re, 0.6459)) + 0.4251 / (1.0 + 6880.95 / re);
}

double MorrisonSphere(double reynolds) {
  const double re = reynolds;
  const double intermediate = 2.6 * (re / 5.0) / (1.0 + std::pow(re / 5.0, 1.52));
  // The first exponent is -7.94, the second -8.
  const double crisis = 0.411 * std::pow(re / 2.63e5, -7.94) / (1.0 + std::pow(re / 2.63e5, -8.0));
  return 24.0 / re + intermediate + crisis + std::pow(re, 0.80) / 461000.0;
}

double PlateBroadside(double aspect_ratio) {
  return 1.10 + 0.02 * (aspect_ratio + 1.0 / aspect_ratio);
}

double InclinedPlateDrag(double incidence_rad, double aspect_ratio) {
  const double s = std::sin(incidence_rad);
  const double rayleigh = 2.0 * kPi * s / (4.0 + kPi * s);
  const double rayleigh_broadside = 2.0 * kPi / (4.0 + kPi);
  return PlateBroadside(aspect_ratio) * rayleigh / rayleigh_broadside * s;
}

double StrummingFactor(double reynolds) {
  const double re = std::clamp(reynolds, 500.0, 33000.0);
  const double amplitude = std::log10(0.41 * std::pow(re, 0.36));  // A*/d
  const double two_rms = amplitude;                                // 2 * (A*/2)
  return 1.0 + 1.043 * std::pow(two_rms, 0.65);
}

}  // namespace offplumb::tackle
