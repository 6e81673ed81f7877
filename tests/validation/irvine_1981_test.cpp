// The inextensible and the elastic catenary.
//
// H. M. Irvine, Cable Structures (1981), chapter 1 (from memory; the formula is in every handbook).
// A line of weight w per metre and length L with a pull H aft and V down at its foot, T(s)^2 = H^2
// + (V + w s)^2:
//     z = [hyp(H, V + w L) - hyp(H, V)]/w  (+ (V L + w L^2/2)/EA),
//     x = (H/w) [asinh((V + w L)/H) - asinh(V/H)]  (+ H L/EA).
// The line has no drag here; H is the ball's drag, V its weight. Exact, so what is allowed is the
// solver's tolerance and the mesh, which is laid out for drag, not for weight, and has few steps
// here: 1e-8 of the line; 1e-6 for the printed figures.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/engine/tow/tree_builders.h"

namespace offplumb::tow::testing {
namespace {

struct Catenary {
  double line_m, weight_N_per_m, aft_N, down_N, stiffness_N;

  [[nodiscard]] double Depth_m() const {
    const double top = down_N + weight_N_per_m * line_m;
    return (std::hypot(aft_N, top) - std::hypot(aft_N, down_N)) / weight_N_per_m +
           (down_N * line_m + weight_N_per_m * line_m * line_m / 2) / stiffness_N;
  }
  [[nodiscard]] double Trail_m() const {
    const double top = down_N + weight_N_per_m * line_m;
    return aft_N / weight_N_per_m * (std::asinh(top / aft_N) - std::asinh(down_N / aft_N)) +
           aft_N * line_m / stiffness_N;
  }
  [[nodiscard]] SteadyTree Solve() const {
    LineLoads line = MakeLine({0.0008, 0, 0, weight_N_per_m, weight_N_per_m, stiffness_N});
    // At 1 m/s a drag area of 2 H/rho pulls with H.
    return SolveFinely(MakeSingleLine(line, line_m, MakeBody(down_N, 2 * aft_N / kRho), 1.0));
  }
};

void ExpectCatenary(const Catenary& catenary, double depth_m, double trail_m, double top_N) {
  const SteadyTree tree = catenary.Solve();
  ASSERT_TRUE(tree.usable());
  EXPECT_NEAR(tree.ball_m.z(), catenary.Depth_m(), 1e-8 * catenary.line_m);
  EXPECT_NEAR(-tree.ball_m.x(), catenary.Trail_m(), 1e-8 * catenary.line_m);
  EXPECT_NEAR(tree.ball_m.z(), depth_m, 1e-6 * catenary.line_m);
  EXPECT_NEAR(-tree.ball_m.x(), trail_m, 1e-6 * catenary.line_m);
  EXPECT_NEAR(tree.tension_boom_N, top_N, 1e-6 * top_N);
}

TEST(Irvine, C1InextensibleCatenary) {
  ExpectCatenary({60, 0.03, 20, 40, INFINITY}, 53.8987, 26.3598, 46.3383);
}

TEST(Irvine, C2ElasticCatenary) {
  ExpectCatenary({100, 0.5, 30, 50, 60e3}, 92.3121, 38.1561, 104.4031);
}

TEST(Irvine, SoftLineCatenary) {
  // Nylon that stretches by 8 %: the elastic terms are then a twelfth of the answer.
  const Catenary catenary{50, 0.05, 15, 40, 594};
  const SteadyTree tree = catenary.Solve();
  ASSERT_TRUE(tree.usable());
  EXPECT_NEAR(tree.ball_m.z(), catenary.Depth_m(), 1e-8 * 50);
  EXPECT_NEAR(-tree.ball_m.x(), catenary.Trail_m(), 1e-8 * 50);
  EXPECT_GT(tree.stretched_m, 50 * 1.07);
}

}  // namespace
}  // namespace offplumb::tow::testing
