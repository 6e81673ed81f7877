/// \file
/// Short ways to write lines, bodies and trees in tests, in the constants that physics texts use.
#pragma once

#include <cmath>

#include "engine/constants.h"
#include "engine/tow/steady_solver.h"

namespace offplumb::tow::testing {

/// Sea water of the published cases, kg/m3.
inline constexpr double kRho = 1025.0;
inline constexpr double kDegree = kPi / 180.0;
inline constexpr double kFoot_m = 0.3048;
inline constexpr double kMph_mps = 0.44704;

/// The constants of a line with the same drag coefficient at every speed.
struct LineConstants {
  double diameter_m = 0;
  double cn = 0;
  double cf = 0;
  double weight_N_per_m = 0;
  double weight_in_air_N_per_m = 0;
  double stiffness_N = INFINITY;
  double rho = kRho;
};

inline LineLoads MakeLine(const LineConstants& c) {
  LineLoads line;
  line.weight_in_water_N_per_m = c.weight_N_per_m;
  line.weight_in_air_N_per_m = c.weight_in_air_N_per_m;
  line.normal_linear = 0.5 * c.rho * c.diameter_m * c.cn;
  line.tangential = 0.5 * c.rho * kPi * c.diameter_m * c.cf;
  line.compliance_per_N = 1.0 / c.stiffness_N;
  return line;
}

inline BodyLoads MakeBody(double weight_N, double drag_area_m2, double rho = kRho) {
  BodyLoads body;
  body.weight_in_water_N = weight_N;
  body.drag_per_q_kg_per_m = 0.5 * rho * drag_area_m2;
  return body;
}

/// A ball on a line from the waterline, in a uniform stream.
inline TreeProblem MakeSingleLine(const LineLoads& line, double line_m, const BodyLoads& ball,
                                  double speed_mps) {
  TreeProblem problem;
  problem.flow = water::Flow::Uniform(speed_mps);
  problem.line = line;
  problem.line_m = line_m;
  problem.ball = ball;
  return problem;
}

/// The usual tree: wire, 12 lb, one clip with fishing line, flasher and lure. Numbers of case G1 of
/// tests/validation/whole_tree_reference_test.cpp.
inline TreeProblem MakeUsualTree() {
  const LineLoads nylon = MakeLine({0.00055, 1.2, 0.01, 0.000268, 0.00266});
  TreeProblem problem = MakeSingleLine(MakeLine({0.0008, 1.2, 0.01, 0.02674178, 0.0307}), 31.48,
                                       MakeBody(48.553868742234975, 0.003483463619), 1.2);
  problem.boom_tip_m = {0, 0, -1};
  ClipLoads clip;
  clip.above_ball_m = 1.2;
  clip.rod_tip_m = {0.6, 0, -2};
  clip.rod_tip_tension_N = 15;
  clip.fishing_line = nylon;
  clip.trail.setback = nylon;
  clip.trail.setback_m = 6;
  clip.trail.has_flasher = true;
  clip.trail.flasher = MakeBody(0.3, 0.0077);
  clip.trail.leader = MakeLine({0.0007, 1.2, 0.01, 0.00043, 0.0043});
  clip.trail.leader_m = 1.1;
  clip.trail.lure = MakeBody(0.15, 0.0008);
  problem.clips = {clip};
  return problem;
}

inline SteadyTree SolveTree(const TreeProblem& problem, SteadyOptions options = {}) {
  SteadySolver solver(options);
  SteadyTree tree;
  solver.Solve(problem, tree);
  return tree;
}

/// Fine enough that the closed forms are met to rounding and the solver's tolerance.
inline SteadyTree SolveFinely(const TreeProblem& problem) {
  return SolveTree(problem, {/*refine=*/4, /*tolerance=*/1e-12, /*max_passes=*/200});
}

}  // namespace offplumb::tow::testing
