/// \file
/// Rigs to draw, made from the catalogue. Invented.
#pragma once

#include <string>

#include "engine/plan/conditions.h"
#include "engine/tackle/catalogue.h"
#include "engine/tackle/rig.h"
#include "engine/water/water.h"

namespace offplumb::answers {

inline constexpr double kFoot_m = 0.3048;
inline constexpr double kMph_mps = 0.44704;

inline tackle::Clip FlasherClip(std::string name, double above_ball_m) {
  tackle::Clip clip;
  clip.name = std::move(name);
  clip.above_ball_m = above_ball_m;
  clip.fishing_line = tackle::MakeLine(tackle::LineKind::kNylon, 0.00055);
  clip.rod_tip_m = {0.3, -1.5, -2.0};
  clip.rod_tip_tension_N = tackle::kRodTipTension_N;
  clip.trail.setback_m = 20 * kFoot_m;
  clip.trail.setback_line = clip.fishing_line;
  clip.trail.flasher = tackle::MakeFlasher("flasher-rotating-11in").value();
  clip.trail.leader_m = 3.5 * kFoot_m;
  clip.trail.leader_line = tackle::MakeLine(tackle::LineKind::kNylon, 0.0007);
  clip.trail.lure = tackle::MakeLure("hoochie").value();
  return clip;
}

/// One rigger with one clip: 12 lb on 0.8 mm wire.
inline tackle::Rigger OneClipRigger(std::string name) {
  tackle::Rigger rigger;
  rigger.name = std::move(name);
  rigger.boom_tip_m = {-0.6, -1.2, -1.0};
  rigger.line = tackle::MakeLine(tackle::LineKind::kWire, 0.0008);
  rigger.ball = tackle::MakeBall(tackle::BallShape::kSphere, 5.443);
  rigger.clips = {FlasherClip("", 4 * kFoot_m)};
  rigger.line_on_reel_m = tackle::kLineOnReel_m;
  rigger.largest_boom_angle_rad = tackle::kLargestBoomAngle_rad;
  return rigger;
}

/// The same with a stacked clip, 20 ft above the low one.
inline tackle::Rigger StackedRigger(std::string name) {
  tackle::Rigger rigger = OneClipRigger(std::move(name));
  rigger.ball = tackle::MakeBall(tackle::BallShape::kFinned, 6.8);
  rigger.clips.front().name = "low";
  rigger.clips.push_back(FlasherClip("stacked", 24 * kFoot_m));
  rigger.clips.back().trail.flasher.reset();
  rigger.clips.back().trail.leader_m = 0;
  rigger.clips.back().rod_tip_m = {1.8, 1.8, -2.1};
  return rigger;
}

inline plan::Conditions StillWater(double speed_mph) {
  plan::Conditions conditions;
  conditions.water = water::UsualSaltWater();
  conditions.speed_mps = speed_mph * kMph_mps;
  return conditions;
}

}  // namespace offplumb::answers
