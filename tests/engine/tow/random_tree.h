/// \file
/// Trees drawn at random, the same from a seed on every machine (no library distribution is used).
#pragma once

#include <algorithm>
#include <cstdint>
#include <random>
#include <vector>

#include "tests/engine/tow/tree_builders.h"

namespace offplumb::tow::testing {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double Between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  double LogBetween(double low, double high) {
    return low * std::exp(Between(0, 1) * std::log(high / low));
  }
  int Below(int n) { return static_cast<int>(engine_() % static_cast<std::uint64_t>(n)); }
  bool Chance(double part) { return Between(0, 1) < part; }

 private:
  std::mt19937_64 engine_;
};

/// White's Reynolds number term for a line whose level was stated at 1.2 m/s, as tow::Resolve makes
/// it.
inline void GiveWhiteShape(LineLoads& line, double diameter_m) {
  constexpr double kViscosity_m2_per_s = 1.35e-6;
  const double re_ref = 1.2 * diameter_m / kViscosity_m2_per_s;
  const double nu_over_d = kViscosity_m2_per_s / diameter_m;
  line.normal_linear /= 1.0 + 10.0 / std::cbrt(re_ref * re_ref);
  line.normal_cbrt = line.normal_linear * 10.0 * std::cbrt(nu_over_d * nu_over_d);
}

struct CurrentRange {
  int fewest_points;
  int most_points;
  double fastest_mps;
  double least_layer_m;
  double most_layer_m;
};

inline water::Current RandomCurrent(Dice& dice, const CurrentRange& range,
                                    water::CurrentShape shape) {
  water::Current current;
  current.shape = shape;
  const int points = range.fewest_points + dice.Below(range.most_points - range.fewest_points + 1);
  double depth_m = 0;
  for (int i = 0; i < points; ++i) {
    const double speed = dice.Between(0, range.fastest_mps);
    const double toward = dice.Between(0, 2 * kPi);
    current.points.push_back(
        {depth_m, speed * water::Vector2d(std::cos(toward), std::sin(toward))});
    depth_m += dice.Between(range.least_layer_m, range.most_layer_m);
  }
  return current;
}

/// One of uniform, steps and linear; `through_water` or over ground with leeway.
inline water::Flow RandomFlow(Dice& dice, double speed_mps, const CurrentRange& range,
                              bool through_water) {
  const int kind = dice.Below(3);
  if (kind == 0) return water::Flow::Uniform(speed_mps);
  const auto shape = kind == 1 ? water::CurrentShape::kSteps : water::CurrentShape::kLinear;
  const water::Current current = RandomCurrent(dice, range, shape);
  const double heading = dice.Between(0, 2 * kPi);
  if (through_water) return water::FlowThroughWater(speed_mps, heading, current);
  return water::FlowOverGround(speed_mps, heading + dice.Between(-0.4, 0.4), heading, current);
}

/// True if the stream jumps anywhere; a body just at a jump has no one place.
inline bool HasSteps(const water::Flow& flow) {
  const auto& layers = flow.layers();
  for (std::size_t i = 1; i < layers.size(); ++i) {
    const double edge = layers[i].top_m;
    const double above = edge - layers[i - 1].top_m;
    const double dx = layers[i].vx - layers[i - 1].vx - layers[i - 1].gx * above;
    const double dy = layers[i].vy - layers[i - 1].vy - layers[i - 1].gy * above;
    if (std::hypot(dx, dy) > 1e-9) return true;
  }
  return false;
}

inline LineLoads RandomNylon(Dice& dice, double diameter_m, double stiffness_N) {
  const double d2 = diameter_m * diameter_m;
  LineLoads line =
      MakeLine({diameter_m, dice.Between(0.95, 1.6), 0.01, 886 * d2, 8793 * d2, stiffness_N});
  if (dice.Chance(0.5)) GiveWhiteShape(line, diameter_m);
  return line;
}

inline TrailLoads RandomTradeTrail(Dice& dice) {
  const auto nylon = [&dice](double low, double high) {
    const double d = dice.Between(low, high);
    return RandomNylon(dice, d, 2e9 * d * d);
  };
  TrailLoads trail;
  trail.setback = nylon(0.35e-3, 0.6e-3);
  trail.setback_m = dice.LogBetween(2, 40);
  trail.has_flasher = dice.Chance(0.6);
  if (trail.has_flasher) {
    trail.flasher = MakeBody(dice.Between(0.1, 0.6), dice.Between(0.004, 0.02));
    trail.leader = nylon(0.4e-3, 0.8e-3);
    trail.leader_m = dice.Between(0.6, 2.2);
  }
  trail.lure = MakeBody(dice.Between(0.02, 0.4), dice.LogBetween(0.0003, 0.003));
  return trail;
}

inline LineLoads RandomTradeMainLine(Dice& dice) {
  const bool wire = dice.Chance(0.5);
  const double d = wire ? dice.Between(0.7e-3, 1.0e-3) : dice.Between(0.4e-3, 0.8e-3);
  const double size = d * d / 0.64e-6;
  LineLoads line =
      wire
          ? MakeLine(
                {d, dice.Between(0.95, 1.75), 0.01, 0.02674 * size, 0.0307 * size, 74e3 * size})
          : MakeLine({d, dice.Between(0.95, 1.6), 0.01, -0.0002, 0.003, dice.LogBetween(5e3, 2e4)});
  if (dice.Chance(0.5)) GiveWhiteShape(line, d);
  return line;
}

/// A tree within the ranges that are common practice: 6 to 20 lb, 1.5 to 4 mph, 20 to 250 ft, up to
/// three clips, rods of 6 to 16 N. Some ask more than the rods or the ball can hold.
inline TreeProblem RandomTradeTree(std::uint64_t seed) {
  Dice dice(seed);
  TreeProblem problem;
  const double boom_height_m = dice.Between(0.3, 1.5);
  const double count_m = dice.Between(20, 250) * kFoot_m;
  problem.line_m = count_m + boom_height_m;
  problem.boom_tip_m = {dice.Between(-0.5, 0.5), dice.Between(-2, 2), -boom_height_m};
  problem.flow = RandomFlow(dice, dice.Between(1.5, 4) * kMph_mps,
                            {2, 4, 0.5, 0.1 * count_m, 0.6 * count_m}, true);
  problem.line = RandomTradeMainLine(dice);
  const double pounds = dice.Between(6, 20);
  const double area_m2 = 0.00348 * std::cbrt(pounds * pounds / 144) * dice.Between(0.4, 1.3);
  problem.ball = MakeBody(4.046 * pounds, area_m2);
  problem.eye_to_centre_m = 0.05;
  const int clips = dice.Below(4);
  double above_ball_m = 1.2;
  for (int i = 0; i < clips && above_ball_m < 0.8 * count_m; ++i) {
    ClipLoads clip;
    clip.above_ball_m = above_ball_m;
    above_ball_m += dice.Between(3, 9);
    clip.rod_tip_m = {dice.Between(0, 1.5), problem.boom_tip_m.y() + dice.Between(-1.5, 1.5),
                      -dice.Between(1.5, 2.5)};
    clip.rod_tip_tension_N = dice.Between(6, 16);
    const double d = dice.Between(0.35e-3, 0.6e-3);
    clip.fishing_line = RandomNylon(dice, d, 2e9 * d * d);
    clip.trail = RandomTradeTrail(dice);
    problem.clips.push_back(clip);
  }
  return problem;
}

inline LineLoads RandomWideLine(Dice& dice, bool heavy) {
  const double d = dice.Between(0.0003, 0.0008);
  const double weight = heavy ? dice.LogBetween(0.002, 0.05) : dice.Between(-0.0002, 0.0012);
  const double stiffness = dice.Chance(0.5) ? dice.LogBetween(200, 5000) : INFINITY;
  LineLoads line = MakeLine({d, dice.Between(0.9, 1.8), dice.Between(0, 0.03), weight,
                             dice.Between(0.001, 0.006), stiffness});
  if (dice.Chance(0.5)) GiveWhiteShape(line, d);
  return line;
}

inline TrailLoads RandomWideTrail(Dice& dice) {
  TrailLoads trail;
  trail.setback = RandomWideLine(dice, dice.Chance(0.15));
  trail.setback_m = dice.LogBetween(1, 60);
  trail.has_flasher = dice.Chance(0.5);
  if (trail.has_flasher) {
    trail.flasher = MakeBody(dice.Between(-0.5, 2), dice.Between(0, 0.02));
    if (dice.Chance(0.3)) trail.flasher.lift_per_q_kg_per_m = dice.Between(-1.5, 1.5);
    if (dice.Chance(0.3)) trail.flasher.side_per_q_kg_per_m = dice.Between(-1, 1);
    trail.leader = RandomWideLine(dice, dice.Chance(0.1));
    trail.leader_m = dice.Between(0.3, 3);
  }
  // Negative weight: a buoyant lure.
  trail.lure = MakeBody(dice.Between(-0.5, 1), dice.LogBetween(0.0001, 0.005));
  if (dice.Chance(0.2)) trail.lure.lift_per_q_kg_per_m = dice.Between(-1, 1);
  return trail;
}

/// A tree far outside the trade: 0 to 6 m/s, 3 to 300 m, reversing currents, rods of 1 to 60 N,
/// heavy or buoyant trails, lift and side force, up to four clips. Many have no steady shape.
inline TreeProblem RandomWideTree(std::uint64_t seed) {
  Dice dice(seed);
  TreeProblem problem;
  problem.line_m = dice.LogBetween(3, 300);
  problem.boom_tip_m = {dice.Between(-1, 1), dice.Between(-2, 2),
                        -dice.Between(0, std::min(2.0, 0.3 * problem.line_m))};
  const double speed = dice.Between(0, dice.Chance(0.5) ? 2.5 : 6);
  problem.flow = RandomFlow(dice, speed, {1, 5, 2, 0.05 * problem.line_m, 0.6 * problem.line_m},
                            dice.Chance(0.5));
  const double d = dice.Between(0.0004, 0.0015);
  const double stiffness = dice.Chance(0.6) ? dice.LogBetween(1e3, 1e5) : INFINITY;
  problem.line = MakeLine({d, dice.Between(0.9, 2.5), dice.Between(0, 0.05),
                           dice.Between(-0.002, 0.05), dice.Between(0.001, 0.06), stiffness});
  if (dice.Chance(0.5)) GiveWhiteShape(problem.line, d);
  problem.ball = MakeBody(dice.LogBetween(10, 130), dice.LogBetween(0.001, 0.01));
  if (dice.Chance(0.2)) problem.ball.side_per_q_kg_per_m = dice.Between(-1, 1);
  if (dice.Chance(0.2)) problem.ball.lift_per_q_kg_per_m = dice.Between(-1, 1);
  problem.eye_to_centre_m = dice.Between(0, 0.1);
  std::vector<double> heights_m(static_cast<std::size_t>(dice.Below(5)));
  for (double& height : heights_m) height = dice.Between(0, 0.9) * problem.line_m;
  std::sort(heights_m.begin(), heights_m.end());
  for (double height : heights_m) {
    ClipLoads clip;
    clip.above_ball_m = height;
    clip.rod_tip_m = {dice.Between(-1, 3), dice.Between(-3, 3), -dice.Between(0.5, 3)};
    clip.rod_tip_tension_N = dice.LogBetween(1, 60);
    clip.fishing_line = RandomWideLine(dice, dice.Chance(0.1));
    clip.trail = RandomWideTrail(dice);
    problem.clips.push_back(clip);
  }
  return problem;
}

}  // namespace offplumb::tow::testing
