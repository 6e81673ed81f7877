// The order of Luther's method, measured, and the quadrature its header promises.
#include "engine/tow/luther6.h"

#include <gtest/gtest.h>

#include <cmath>

namespace offplumb::tow {
namespace {

/// y0' = y1, y1' = (1 - y0^2) y1 - y0: van der Pol's oscillator, nonlinear and without any
/// conserved quantity that could flatter a method.
State<2> VanDerPol(const State<2>& y) { return {y[1], (1 - y[0] * y[0]) * y[1] - y[0]}; }

double VanDerPolEnd(int steps) {
  State<2> y{2.0, 0.0};
  for (int i = 0; i < steps; ++i) y = Luther6Step(VanDerPol, y, 3.0 / steps);
  return y[0];
}

TEST(Luther6, GlobalErrorFallsBySixtyFourWhenTheStepIsHalved) {
  // A method of order six has a global error C h^6 (1 + O(h)): halving h divides it by 2^6 = 64.
  // The O(h) part itself halves: 0.4 allowed at 24 steps, half of it at 48. Rounding (1e-15) is far
  // below the smallest error (1e-10).
  const double exact = VanDerPolEnd(2000);
  const double coarse = std::abs(VanDerPolEnd(24) - exact);
  const double middle = std::abs(VanDerPolEnd(48) - exact);
  const double fine = std::abs(VanDerPolEnd(96) - exact);
  EXPECT_NEAR(std::log2(coarse / middle), 6.0, 0.4);
  EXPECT_NEAR(std::log2(middle / fine), 6.0, 0.2);
}

/// y0 = integral of x^n, y1 = x.
double Integral(int power) {
  const auto f = [power](const State<2>& y) { return State<2>{std::pow(y[1], power), 1.0}; };
  return Luther6Step(f, State<2>{0.0, 1.0}, 1.5)[0];
}

double ExactIntegral(int power) { return (std::pow(2.5, power + 1) - 1.0) / (power + 1); }

TEST(Luther6, IntegratesPolynomialsToDegreeSevenExactly) {
  // The end weights are those of the five-point Lobatto rule (Abramowitz and Stegun, 25.4.32),
  // exact to degree 2*5-3 = 7. Tolerance: rounding of some ten terms.
  for (int power = 0; power <= 7; ++power) {
    EXPECT_NEAR(Integral(power) / ExactIntegral(power), 1.0, 2e-14) << "x^" << power;
  }
}

TEST(Luther6, IsNotExactBeyondDegreeSeven) {
  // Guards the test above: the error constant of five-point Lobatto is -32 h^9/(9!!...) f^(8), not
  // zero.
  EXPECT_GT(std::abs(Integral(8) / ExactIntegral(8) - 1.0), 1e-8);
}

TEST(Luther6, StepsBackToWhereItCameFrom) {
  // One step forth and one back differ by the local error only, C h^7 with C of order 0.1 here:
  // 1e-10.
  const State<2> start{2.0, 0.3};
  const State<2> back = Luther6Step(VanDerPol, Luther6Step(VanDerPol, start, 0.05), -0.05);
  EXPECT_NEAR(back[0], start[0], 1e-9);
  EXPECT_NEAR(back[1], start[1], 1e-9);
}

}  // namespace
}  // namespace offplumb::tow
