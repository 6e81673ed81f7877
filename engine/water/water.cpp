#include "engine/water/water.h"

#include <cmath>
#include <string>

namespace offplumb::water {
namespace {

constexpr double kLargestTemperature_C = 40.0;
constexpr double kLargestSalinity_g_per_kg = 42.0;

/// Horner's rule, coefficients from the constant upward.
template <int N>
double Polynomial(const double (&c)[N], double x) {
  double sum = c[N - 1];
  for (int i = N - 2; i >= 0; --i) sum = sum * x + c[i];
  return sum;
}

bool Within(double value, double low, double high) { return value >= low && value <= high; }

}  // namespace

double Density_kg_per_m3(double temperature_C, double salinity_g_per_kg) {
  // Millero and Poisson (1981): pure water, then the terms in S, S^1.5 and S^2.
  static constexpr double kPure[] = {999.842594,  6.793952e-2,  -9.095290e-3,
                                     1.001685e-4, -1.120083e-6, 6.536332e-9};
  static constexpr double kA[] = {8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9};
  static constexpr double kB[] = {-5.72466e-3, 1.0227e-4, -1.6546e-6};
  constexpr double kC = 4.8314e-4;
  const double t = temperature_C;
  const double s = salinity_g_per_kg;
  return Polynomial(kPure, t) + s * (Polynomial(kA, t) + Polynomial(kB, t) * std::sqrt(s) + kC * s);
}

double DynamicViscosity_Pa_s(double temperature_C, double salinity_g_per_kg) {
  const double t = temperature_C;
  const double s = salinity_g_per_kg / 1000.0;  // The correlation wants kg/kg.
  // Sharqawy et al. (2010) eq. (23), pure water.
  const double pure = 4.2844e-5 + 1.0 / (0.157 * (t + 64.993) * (t + 64.993) - 91.296);
  // Their eq. (22), the salt.
  const double a = 1.541 + 1.998e-2 * t - 9.52e-5 * t * t;
  const double b = 7.974 - 7.561e-2 * t + 4.724e-4 * t * t;
  return pure * (1.0 + a * s + b * s * s);
}

Expected<Water> MakeWater(double temperature_C, double salinity_g_per_kg) {
  // Written so that NaN fails.
  if (!Within(temperature_C, 0.0, kLargestTemperature_C)) {
    return BadInput("water temperature", "The water temperature is " +
                                             std::to_string(temperature_C) +
                                             " C; it must lie between 0 and 40 C.");
  }
  if (!Within(salinity_g_per_kg, 0.0, kLargestSalinity_g_per_kg)) {
    return BadInput("salinity", "The salinity is " + std::to_string(salinity_g_per_kg) +
                                    " g/kg; it must lie between 0 (fresh) and 42 g/kg.");
  }
  const double density = Density_kg_per_m3(temperature_C, salinity_g_per_kg);
  return Water{density, DynamicViscosity_Pa_s(temperature_C, salinity_g_per_kg) / density};
}

Water UsualSaltWater() { return *MakeWater(kSaltTemperature_C, kSaltSalinity_g_per_kg); }

Water UsualFreshWater() { return *MakeWater(kFreshTemperature_C, 0.0); }

}  // namespace offplumb::water
