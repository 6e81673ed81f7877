/// \file
/// Whether two rigs are the same in every figure and word, to the last bit.
#pragma once

#include <algorithm>
#include <optional>
#include <tuple>
#include <vector>

#include "engine/tackle/rig.h"

namespace offplumb::ports::testing {

// Declared before the templates that call them.
inline bool Same(const tackle::Line& a, const tackle::Line& b);
inline bool Same(const tackle::SpringScalePull& a, const tackle::SpringScalePull& b);
inline bool Same(const tackle::Body& a, const tackle::Body& b);
inline bool Same(const water::Water& a, const water::Water& b);
inline bool Same(const tackle::Clip& a, const tackle::Clip& b);
inline bool Same(const tackle::CounterMark& a, const tackle::CounterMark& b);
inline bool Same(const tackle::Rigger& a, const tackle::Rigger& b);

// Structured bindings, so that a member added to a struct and forgotten here does not compile.

inline bool Same(const tackle::Line& a, const tackle::Line& b) {
  const auto members = [](const tackle::Line& line) {
    const auto& [name, kind, diameter, solid, density, modulus, normal, constant, strumming,
                 tangential, in_water, in_air, stiffness] = line;
    return std::tie(name, kind, diameter, solid, density, modulus, normal, constant, strumming,
                    tangential, in_water, in_air, stiffness);
  };
  return members(a) == members(b);
}

inline bool Same(const tackle::SpringScalePull& a, const tackle::SpringScalePull& b) {
  const auto& [force, speed] = a;
  return std::tie(force, speed) == std::tie(b.force_N, b.speed_mps);
}

template <typename T>
bool Same(const std::optional<T>& a, const std::optional<T>& b) {
  return a.has_value() == b.has_value() && (!a || Same(*a, *b));
}

template <typename T>
bool Same(const std::vector<T>& a, const std::vector<T>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const T& x, const T& y) { return Same(x, y); });
}

inline bool Same(const tackle::Body& a, const tackle::Body& b) {
  const auto members = [](const tackle::Body& body) {
    const auto& [name, mass, density, weight, source, drag, sphere, lift, side, pull, eye] = body;
    (void)pull;
    return std::tie(name, mass, density, weight, source, drag, sphere, lift, side, eye);
  };
  return members(a) == members(b) && Same(a.pull, b.pull);
}

inline bool Same(const water::Water& a, const water::Water& b) {
  const auto& [density, viscosity] = a;
  return std::tie(density, viscosity) ==
         std::tie(b.density_kg_per_m3, b.kinematic_viscosity_m2_per_s);
}

inline bool Same(const tackle::Trail& a, const tackle::Trail& b) {
  const auto& [setback, setback_line, flasher, leader, leader_line, lure] = a;
  return setback == b.setback_m && Same(setback_line, b.setback_line) && Same(flasher, b.flasher) &&
         leader == b.leader_m && Same(leader_line, b.leader_line) && Same(lure, b.lure);
}

inline bool Same(const tackle::Clip& a, const tackle::Clip& b) {
  const auto& [name, above_ball, trail, fishing_line, rod_tip, tension] = a;
  return name == b.name && above_ball == b.above_ball_m && Same(trail, b.trail) &&
         Same(fishing_line, b.fishing_line) && rod_tip == b.rod_tip_m &&
         tension == b.rod_tip_tension_N;
}

inline bool Same(const tackle::CounterMark& a, const tackle::CounterMark& b) {
  const auto& [reads, measured] = a;
  return std::tie(reads, measured) == std::tie(b.reads_m, b.measured_m);
}

inline bool Same(const tackle::Rigger& a, const tackle::Rigger& b) {
  const auto& [name, boom_tip, line, ball, clips, marks, on_reel, largest_angle] = a;
  return name == b.name && boom_tip == b.boom_tip_m && Same(line, b.line) && Same(ball, b.ball) &&
         Same(clips, b.clips) && Same(marks, b.marks) && on_reel == b.line_on_reel_m &&
         largest_angle == b.largest_boom_angle_rad;
}

inline bool Same(const tackle::Rig& a, const tackle::Rig& b) {
  const auto& [name, riggers, water] = a;
  return name == b.name && Same(riggers, b.riggers) && Same(water, b.water);
}

}  // namespace offplumb::ports::testing
