#include "bench/random_trees.h"

#include <algorithm>
#include <cmath>

#include "engine/constants.h"

namespace offplumb::bench {
namespace {

constexpr double kFoot_m = 0.3048;
constexpr double kInch_m = 0.0254;
constexpr double kPound_kg = 0.45359237;
constexpr double kPound_N = 4.4482216152605;
constexpr double kMph_mps = 0.44704;
constexpr double kKnot_mps = 1852.0 / 3600.0;
constexpr double kLead_kg_per_m3 = 11340.0;

/// A small generator of our own, so that the cases are the same with every standard library:
/// SplitMix64 (S. Vigna; G. L. Steele et al., OOPSLA 2014).
class Source {
 public:
  explicit Source(std::uint32_t seed) : state_(seed) {}
  /// Uniform in [low, high).
  double In(double low, double high) {
    return low + (high - low) * static_cast<double>(Next() >> 11) * 0x1.0p-53;
  }

 private:
  std::uint64_t Next() {
    state_ += 0x9e3779b97f4a7c15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31);
  }
  std::uint64_t state_;
};

tackle::Line DrawLine(Source& source, tackle::LineKind kind, double thin_m, double thick_m) {
  tackle::Line line;
  line.kind = kind;
  line.diameter_m = source.In(thin_m, thick_m);
  line.normal_drag_coefficient = source.In(0.95, 1.6);
  line.tangential_drag_coefficient = 0.01;
  switch (kind) {
    case tackle::LineKind::kWire:
      line.solid_fraction = 0.6;
      line.solid_density_kg_per_m3 = 8000;
      line.modulus_Pa = 90e9;
      break;
    case tackle::LineKind::kBraid:
      line.solid_fraction = 0.75;
      line.solid_density_kg_per_m3 = 970;
      line.modulus_Pa = 40e9;
      break;
    default:
      line.solid_density_kg_per_m3 = 1140;
      line.modulus_Pa = 2.5e9;
  }
  return line;
}

tackle::Body DrawBall(Source& source) {
  tackle::Body ball;
  ball.mass_kg = source.In(6, 20) * kPound_kg;
  ball.density_kg_per_m3 = kLead_kg_per_m3;
  ball.sphere_diameter_m = std::cbrt(6 * ball.mass_kg / (kPi * kLead_kg_per_m3));
  ball.eye_to_centre_m = ball.sphere_diameter_m / 2;
  return ball;
}

tackle::Body DrawTackle(Source& source, double least_m2, double most_m2, double most_N) {
  tackle::Body body;
  body.weight_in_water_N = source.In(0, most_N);
  body.drag_area_m2 = source.In(least_m2, most_m2);
  return body;
}

tackle::Clip DrawClip(Source& source, double above_ball_m, double ball_N) {
  tackle::Clip clip;
  clip.above_ball_m = above_ball_m;
  clip.trail.setback_m = source.In(5, 100) * kFoot_m;
  clip.trail.setback_line = DrawLine(source, tackle::LineKind::kNylon, 0.45e-3, 0.6e-3);
  clip.trail.leader_m = source.In(18, 84) * kInch_m;
  clip.trail.leader_line = DrawLine(source, tackle::LineKind::kNylon, 0.4e-3, 0.7e-3);
  clip.trail.flasher = DrawTackle(source, 0, 0.012, 0.5);
  clip.trail.lure = DrawTackle(source, 0.0002, 0.0015, 0.5);
  clip.fishing_line = clip.trail.setback_line;
  clip.rod_tip_m = {source.In(-1, 1), source.In(-2, 2), source.In(-3, -1)};
  clip.rod_tip_tension_N = std::min(source.In(2, 5) * kPound_N, 0.5 * ball_N);
  return clip;
}

water::Current DrawCurrent(Source& source) {
  water::Current current;
  current.shape = water::CurrentShape::kLinear;
  for (const double depth_m : {0.0, source.In(5, 30), source.In(35, 80)}) {
    const double speed = source.In(0, 0.8) * kKnot_mps;
    const double toward = source.In(0, 2 * kPi);
    current.points.push_back({depth_m, {speed * std::cos(toward), speed * std::sin(toward)}});
  }
  return current;
}

RandomCase DrawCase(Source& source, const RandomRanges& ranges) {
  RandomCase drawn;
  tackle::Rigger& rigger = drawn.rigger;
  rigger.boom_tip_m = {source.In(-0.5, 0.5), source.In(-2, 2), source.In(-1.5, -0.5)};
  rigger.line = source.In(0, 1) < 0.5 ? DrawLine(source, tackle::LineKind::kWire, 0.6e-3, 1.0e-3)
                                      : DrawLine(source, tackle::LineKind::kBraid, 0.5e-3, 0.7e-3);
  rigger.ball = DrawBall(source);
  const double ball_N = rigger.ball.mass_kg * kGravity_mps2 * 0.9;
  double above_m = source.In(0.5, 3);
  for (int i = 0; i < ranges.clips; ++i) {
    rigger.clips.push_back(DrawClip(source, above_m, ball_N / ranges.clips));
    above_m += source.In(3, 6);
  }
  rigger.line_on_reel_m = tackle::kLineOnReel_m;
  rigger.largest_boom_angle_rad = tackle::kLargestBoomAngle_rad;
  drawn.conditions.water = water::UsualSaltWater();
  drawn.conditions.speed_mps = source.In(1.5, 4) * kMph_mps;
  if (ranges.sheared) drawn.conditions.current = DrawCurrent(source);
  drawn.count_m = source.In(20, 250) * kFoot_m;
  return drawn;
}

}  // namespace

std::vector<RandomCase> DrawCases(int n, const RandomRanges& ranges, std::uint32_t seed) {
  Source source(seed);
  std::vector<RandomCase> cases;
  for (int i = 0; i < n; ++i) cases.push_back(DrawCase(source, ranges));
  return cases;
}

}  // namespace offplumb::bench
