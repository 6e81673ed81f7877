/// \file
/// Rigs and water of the plan's tests, made from the catalogue.
#pragma once

#include <cmath>

#include "engine/constants.h"
#include "engine/plan/conditions.h"
#include "engine/plan/depth.h"
#include "engine/tackle/catalogue.h"

namespace offplumb::plan::testing {

inline constexpr double kFoot_m = 0.3048;
inline constexpr double kMph_mps = 0.44704;
inline constexpr double kPound_kg = 0.45359237;
inline constexpr double kDegree = kPi / 180.0;

/// What two ways to the same tree may differ by: the solver's miss (1e-9 of the line, here 100 m at
/// most) times the condition of the tree, of order 10.
inline constexpr double kSolver_m = 1e-6;

/// Wire and a 12 lb ball, nothing else, from a boom 1 m up.
inline tackle::Rigger BareRigger() {
  tackle::Rigger rigger;
  rigger.name = "bare";
  rigger.boom_tip_m = {0, 0, -1};
  rigger.line = tackle::MakeLine("wire-1x7-0.8mm").value();
  rigger.ball = tackle::MakeBall("ball-sphere-12lb").value();
  rigger.line_on_reel_m = tackle::kLineOnReel_m;
  rigger.largest_boom_angle_rad = tackle::kLargestBoomAngle_rad;
  return rigger;
}

/// Clip 4 ft above the ball; 20 ft of setback, a big flasher, 42 in of leader and a hoochie.
inline tackle::Clip UsualClip() {
  tackle::Clip clip;
  clip.above_ball_m = 4 * kFoot_m;
  clip.rod_tip_m = {0.6, -0.3, -2};
  clip.rod_tip_tension_N = tackle::kRodTipTension_N;
  clip.fishing_line = tackle::MakeLine("nylon-0.55mm").value();
  clip.trail.setback_m = 20 * kFoot_m;
  clip.trail.setback_line = clip.fishing_line;
  clip.trail.flasher = tackle::MakeFlasher("flasher-rotating-11in").value();
  clip.trail.leader_m = 3.5 * kFoot_m;
  clip.trail.leader_line = tackle::MakeLine("nylon-0.7mm").value();
  clip.trail.lure = tackle::MakeLure("hoochie").value();
  return clip;
}

inline tackle::Rigger UsualRigger() {
  tackle::Rigger rigger = BareRigger();
  rigger.name = "port";
  rigger.boom_tip_m = {-0.6, -1.2, -1};
  rigger.clips = {UsualClip()};
  rigger.clips[0].rod_tip_m = {0.3, -1.5, -2};
  return rigger;
}

/// Braid, 15 lb, and a second clip 20 ft above the first with a plug and no flasher.
inline tackle::Rigger StackedRigger() {
  tackle::Rigger rigger = UsualRigger();
  rigger.name = "stacked";
  rigger.line = tackle::MakeLine("braid-0.5mm").value();
  rigger.ball = tackle::MakeBall("ball-finned-15lb").value();
  tackle::Clip upper = UsualClip();
  upper.above_ball_m = 24 * kFoot_m;
  upper.rod_tip_m = {1.8, -1.8, -2.1};
  upper.fishing_line = tackle::MakeLine("braid-0.4mm").value();
  upper.trail.setback_m = 30 * kFoot_m;
  upper.trail.setback_line = upper.fishing_line;
  upper.trail.flasher.reset();
  upper.trail.leader_m = 0;
  upper.trail.lure = tackle::MakeLure("plug-small").value();
  rigger.clips.push_back(upper);
  return rigger;
}

/// Usual salt water, speed through it, bow north.
inline Conditions Trolling(double speed_mph) {
  Conditions conditions;
  conditions.water = water::UsualSaltWater();
  conditions.speed_mps = speed_mph * kMph_mps;
  return conditions;
}

/// One current from the surface down, another below a depth.
inline water::Current TwoLayers(const water::Vector2d& upper_mps, double depth_m,
                                const water::Vector2d& lower_mps) {
  return {water::CurrentShape::kSteps, {{0, upper_mps}, {depth_m, lower_mps}}};
}

inline water::Current OneLayer(const water::Vector2d& velocity_mps) {
  return {water::CurrentShape::kSteps, {{0, velocity_mps}}};
}

inline RiggerDepth DepthsOf(const tackle::Rigger& rigger, const Conditions& conditions,
                            double count_m, const learn::Ensemble* ensemble = nullptr) {
  return FindDepths(rigger, conditions, count_m, ensemble).value();
}

inline double BallDepth_m(const tackle::Rigger& rigger, const Conditions& conditions,
                          double count_m) {
  return DepthsOf(rigger, conditions, count_m).figures.ball_depth_m.median;
}

}  // namespace offplumb::plan::testing
