/// \file
/// Rigs made in code for the tests of the questions.
#pragma once

#include <string>

#include "answers/questions/setting.h"
#include "engine/tackle/catalogue.h"
#include "engine/tackle/rig.h"

namespace offplumb::answers {

/// A clip with flasher and hoochie, 1.2 m above the ball. \param name may be empty.
inline tackle::Clip TestClip(const std::string& name, double above_ball_m) {
  tackle::Clip clip;
  clip.name = name;
  clip.above_ball_m = above_ball_m;
  clip.trail.setback_m = 6;
  clip.trail.setback_line = *tackle::MakeLine("nylon-0.55mm");
  clip.trail.flasher = *tackle::MakeFlasher("flasher-rotating-11in");
  clip.trail.leader_m = 1.1;
  clip.trail.leader_line = *tackle::MakeLine("nylon-0.7mm");
  clip.trail.lure = *tackle::MakeLure("hoochie");
  clip.fishing_line = clip.trail.setback_line;
  clip.rod_tip_m = {0.5, -1.5, -2};
  clip.rod_tip_tension_N = tackle::kRodTipTension_N;
  return clip;
}

/// A rigger with a 12 lb ball on 0.8 mm wire and no clip.
inline tackle::Rigger TestRigger(const std::string& name) {
  tackle::Rigger rigger;
  rigger.name = name;
  rigger.boom_tip_m = {-0.5, -1.2, -1};
  rigger.line = *tackle::MakeLine("wire-1x7-0.8mm");
  rigger.ball = *tackle::MakeBall("ball-sphere-12lb");
  rigger.line_on_reel_m = tackle::kLineOnReel_m;
  rigger.largest_boom_angle_rad = tackle::kLargestBoomAngle_rad;
  return rigger;
}

/// Two riggers: "port" with a flasher, "starboard" with a stacked clip.
inline tackle::Rig TestRig() {
  tackle::Rig rig;
  rig.name = "Test rig";
  rig.riggers = {TestRigger("port"), TestRigger("starboard")};
  rig.riggers[0].clips = {TestClip("", 1.2)};
  rig.riggers[1].clips = {TestClip("low", 1.2), TestClip("stacked", 6)};
  rig.riggers[1].clips[1].trail.flasher.reset();
  rig.riggers[1].clips[1].trail.leader_m = 0;
  return rig;
}

inline Sea TestSea(double speed_mps) {
  Sea sea;
  sea.speed_mps = speed_mps;
  return sea;
}

}  // namespace offplumb::answers
