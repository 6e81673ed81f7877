// Heavy lines with friction, solved once in arc length by SciPy's DOP853 (rtol 1e-11), the ball's
// depth found by shooting. Cases H1 to B1 of the reference notes: lead of 11340 kg/m3, sphere with
// Cd 0.47, 0.8 mm wire of 0.02674178 N/m, Cf 0.01, sea of 1025 kg/m3, g 9.80665. Six printed
// digits: 1e-5 of each figure, 1e-5 rad.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/tackle/drag_law.h"
#include "tests/engine/tow/tree_builders.h"

namespace offplumb::tow::testing {
namespace {

constexpr double kLead = 11340;
constexpr double kWire_N_per_m = 0.02674178;
constexpr double kPound_kg = 0.45359237;

double SphereArea_m2(double pounds) {
  const double volume = pounds * kPound_kg / kLead;
  const double diameter = std::cbrt(6 * volume / kPi);
  return kPi / 4 * diameter * diameter;
}

BodyLoads LeadSphere(double pounds, double cd, double rho = kRho) {
  const double weight = pounds * kPound_kg * kGravity_mps2 * (1 - rho / kLead);
  return MakeBody(weight, cd * SphereArea_m2(pounds), rho);
}

LineLoads Wire(double cn, double rho = kRho) {
  // The strand's weight follows the water's density: metal on 7/9 of the circle, 8000 kg/m3.
  const double weight = kWire_N_per_m * (8000 - rho) / (8000 - kRho);
  LineConstants constants{0.0008, cn, 0.01, weight};
  constants.rho = rho;
  return MakeLine(constants);
}

TreeProblem H1() {
  return MakeSingleLine(Wire(1.2), 100 * kFoot_m, LeadSphere(12, 0.47), 2.5 * kMph_mps);
}
TreeProblem H2() {
  return MakeSingleLine(Wire(1.8), 100 * kFoot_m, LeadSphere(12, 0.47), 3.0 * kMph_mps);
}

TreeProblem H8() {
  TreeProblem problem = H1();
  problem.line = Wire(1.2, 999.1);
  problem.ball = LeadSphere(12, 0.47, 999.1);
  return problem;
}

TreeProblem B1() {
  TreeProblem problem = H1();
  problem.line = MakeLine({0.0008, 1.2, 0.01, -0.0002});
  return problem;
}

struct Figures {
  double depth_m, trail_m, top_N, angle_deg;
};

void ExpectFigures(const TreeProblem& problem, const Figures& want) {
  const SteadyTree tree = SolveTree(problem);
  ASSERT_TRUE(tree.usable());
  EXPECT_NEAR(tree.ball_m.z(), want.depth_m, 1e-5 * want.depth_m);
  EXPECT_NEAR(-tree.ball_m.x(), want.trail_m, 1e-5 * want.trail_m);
  EXPECT_NEAR(tree.tension_boom_N, want.top_N, 1e-5 * want.top_N);
  EXPECT_NEAR(tree.angle_boom_rad / kDegree, want.angle_deg, 1e-5 * want.angle_deg);
}

TEST(Dop853Reference, H1TwelvePoundsAtTwoAndAHalfMph) {
  ExpectFigures(H1(), {29.5250, 6.8929, 49.4246, 22.9766});
}

TEST(Dop853Reference, H2StrummingAtThreeMph) {
  ExpectFigures(H2(), {27.2254, 12.4255, 49.5266, 41.3847});
}

TEST(Dop853Reference, H5DeepWaterOvertakesTheBoat) {
  TreeProblem problem = MakeSingleLine(Wire(1.5), 200 * kFoot_m, LeadSphere(15, 0.47), 0);
  problem.flow = water::Flow::FromLayers({{0, 25, -1.2, 0, 0, 0}, {25, INFINITY, 0.3, 0, 0, 0}});
  ExpectFigures(problem, {60.5608, 2.9400, 62.3264, 18.0652});
}

TEST(Dop853Reference, H8FreshWater) { ExpectFigures(H8(), {29.5735, 6.7170, 49.5458, 22.4048}); }

TEST(Dop853Reference, H9DragFollowsTheReynoldsNumber) {
  // Cn = 1.0 (1 + 10 Re^(-2/3)) on the normal velocity and Morrison's sphere, nu 1.35e-6. In a
  // uniform stream the ball's coefficient is one number, so a constant drag area stands for the
  // law.
  TreeProblem problem = MakeSingleLine(Wire(1.0), 100 * kFoot_m, LeadSphere(12, 0), 3.0 * kMph_mps);
  const double nu_over_d = 1.35e-6 / 0.0008;
  problem.line.normal_cbrt = problem.line.normal_linear * 10 * std::cbrt(nu_over_d * nu_over_d);
  const double area = SphereArea_m2(12);
  const double re = 3.0 * kMph_mps * std::sqrt(4 * area / kPi) / 1.35e-6;
  problem.ball = LeadSphere(12, tackle::MorrisonSphere(re));
  ExpectFigures(problem, {28.8681, 8.9139, 49.4837, 29.5789});
}

TEST(Dop853Reference, B1FloatingBraid) { ExpectFigures(B1(), {29.5035, 6.9594, 48.6297, 23.3294}); }

double Depth(const TreeProblem& problem) { return SolveTree(problem).ball_m.z(); }

TEST(Dop853Reference, DifferencesBetweenCases) {
  // Statements 13 to 15: four printed decimals, and a millimetre is what they ask for.
  TreeProblem finned = H2();
  finned.ball = LeadSphere(12, 0.15);
  EXPECT_NEAR(Depth(finned) - Depth(H2()), 0.3928, 1e-4);
  EXPECT_NEAR(Depth(H1()) - Depth(B1()), 0.0215, 1e-4);
  EXPECT_NEAR(Depth(H8()) - Depth(H1()), 0.0486, 1e-4);
}

TEST(Dop853Reference, StretchAddsWhatTensionOverStiffnessSays) {
  // Statement 23, its steady part: H2's wire of 74 kN stretches by T L/EA = 0.0204 m, and that is
  // about what the ball goes down: the rest of the shape does not change to first order. A tenth
  // for what it does change.
  TreeProblem problem = H2();
  problem.line.compliance_per_N = 1 / 74e3;
  const SteadyTree tree = SolveTree(problem);
  const double stretch = 49.1 * 30.48 / 74e3;
  EXPECT_NEAR(tree.stretched_m - 30.48, stretch, 0.01 * stretch);
  EXPECT_GT(tree.ball_m.z() - 27.2254, 0.6 * stretch);
  EXPECT_LT(tree.ball_m.z() - 27.2254, 1.0 * stretch);
}

}  // namespace
}  // namespace offplumb::tow::testing
