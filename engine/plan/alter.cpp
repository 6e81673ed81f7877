#include "engine/plan/alter.h"

#include <cmath>

#include "engine/constants.h"
#include "engine/plan/defaults.h"

namespace offplumb::plan {

double BallMass_kg(const tackle::Body& ball) {
  if (ball.mass_kg > 0) return ball.mass_kg;
  return ball.weight_in_water_N.value_or(0) / (kGravity_mps2 * kLeadInWater);
}

tackle::Body ScaledBall(tackle::Body ball, double factor) {
  const double length = std::cbrt(factor);
  ball.mass_kg *= factor;
  if (ball.weight_in_water_N) *ball.weight_in_water_N *= factor;
  if (ball.pull) ball.pull->force_N *= length * length;
  ball.drag_area_m2 *= length * length;
  ball.lift_area_m2 *= length * length;
  ball.side_area_m2 *= length * length;
  ball.sphere_diameter_m *= length;
  ball.eye_to_centre_m *= length;
  return ball;
}

tackle::Line ScaledLine(tackle::Line line, double factor) {
  const double area = factor * factor;
  line.diameter_m *= factor;
  if (line.weight_in_water_N_per_m) *line.weight_in_water_N_per_m *= area;
  if (line.weight_in_air_N_per_m) *line.weight_in_air_N_per_m *= area;
  if (line.stiffness_N) *line.stiffness_N *= area;
  return line;
}

tackle::Rigger WithoutFlashers(tackle::Rigger rigger) {
  for (tackle::Clip& clip : rigger.clips) {
    clip.trail.flasher.reset();
    clip.trail.leader_m = 0;
  }
  return rigger;
}

}  // namespace offplumb::plan
