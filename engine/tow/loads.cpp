#include "engine/tow/loads.h"

#include <cmath>

#include "engine/constants.h"
#include "engine/tackle/drag_law.h"

namespace offplumb::tow {
namespace {

double SolidArea_m2(const tackle::Line& line) {
  return line.solid_fraction * kPi / 4 * line.diameter_m * line.diameter_m;
}

double WeightInWater_N(const tackle::Body& body, double water_density) {
  if (body.weight_in_water_N) return *body.weight_in_water_N;
  return body.mass_kg * kGravity_mps2 * (1.0 - water_density / body.density_kg_per_m3);
}

/// 1/2 rho CdA, or 1/2 rho A of a sphere.
double DragPerQ(const tackle::Body& body, double water_density) {
  if (body.pull) return body.pull->force_N / (body.pull->speed_mps * body.pull->speed_mps);
  if (body.sphere_diameter_m > 0) {
    return 0.5 * water_density * kPi / 4 * body.sphere_diameter_m * body.sphere_diameter_m;
  }
  return 0.5 * water_density * body.drag_area_m2;
}

}  // namespace

double WeightInAir_N_per_m(const tackle::Line& line) {
  return SolidArea_m2(line) * line.solid_density_kg_per_m3 * kGravity_mps2;
}

double WeightInWater_N_per_m(const tackle::Line& line, double water_density_kg_per_m3) {
  // The gaps between strands fill with water and weigh nothing in it.
  return SolidArea_m2(line) * (line.solid_density_kg_per_m3 - water_density_kg_per_m3) *
         kGravity_mps2;
}

double Stiffness_N(const tackle::Line& line) {
  return line.stiffness_N ? *line.stiffness_N : line.modulus_Pa * SolidArea_m2(line);
}

LineLoads Resolve(const tackle::Line& line, const water::Water& water, double factor) {
  LineLoads loads;
  loads.weight_in_water_N_per_m =
      line.weight_in_water_N_per_m.value_or(WeightInWater_N_per_m(line, water.density_kg_per_m3));
  loads.weight_in_air_N_per_m = line.weight_in_air_N_per_m.value_or(WeightInAir_N_per_m(line));
  loads.compliance_per_N = 1.0 / Stiffness_N(line);

  const double half_rho_d = 0.5 * water.density_kg_per_m3 * line.diameter_m;
  const double re_ref =
      tackle::kReferenceSpeed_mps * line.diameter_m / water.kinematic_viscosity_m2_per_s;
  double level = factor * line.normal_drag_coefficient;
  if (line.strumming) level *= tackle::StrummingFactor(re_ref);
  if (line.constant_drag) {
    loads.normal_linear = half_rho_d * level;
  } else {
    loads.normal_linear = half_rho_d * level / tackle::WhiteCylinder(re_ref);
    // 10 Re^(-2/3) = 10 (nu/d)^(2/3) |Wn|^(-2/3).
    const double nu_over_d = water.kinematic_viscosity_m2_per_s / line.diameter_m;
    loads.normal_cbrt = loads.normal_linear * 10.0 * std::cbrt(nu_over_d * nu_over_d);
  }
  loads.tangential = half_rho_d * kPi * line.tangential_drag_coefficient;
  return loads;
}

BodyLoads Resolve(const tackle::Body& body, const water::Water& water, double factor) {
  BodyLoads loads;
  loads.weight_in_water_N = WeightInWater_N(body, water.density_kg_per_m3);
  loads.drag_per_q_kg_per_m = factor * DragPerQ(body, water.density_kg_per_m3);
  loads.lift_per_q_kg_per_m = 0.5 * water.density_kg_per_m3 * body.lift_area_m2;
  loads.side_per_q_kg_per_m = 0.5 * water.density_kg_per_m3 * body.side_area_m2;
  if (body.sphere_diameter_m > 0 && !body.pull) {
    loads.reynolds_per_mps = body.sphere_diameter_m / water.kinematic_viscosity_m2_per_s;
  }
  return loads;
}

Vector3d Load(const BodyLoads& body, double vx, double vy) {
  const double speed = std::sqrt(vx * vx + vy * vy);
  double drag = body.drag_per_q_kg_per_m * speed;
  if (body.reynolds_per_mps > 0 && speed > 0) {
    drag *= tackle::HaiderLevenspielSphere(speed * body.reynolds_per_mps);
  }
  // The body swims against the stream, so the right of its way is (vy, -vx)/speed.
  const double side = body.side_per_q_kg_per_m * speed;
  return {drag * vx + side * vy, drag * vy - side * vx,
          body.weight_in_water_N - body.lift_per_q_kg_per_m * speed * speed};
}

}  // namespace offplumb::tow
