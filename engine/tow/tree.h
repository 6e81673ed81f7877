/// \file
/// The steady shape of a whole line tree: main line, ball, clips, fishing lines and what trails
/// behind.
///
/// Frame: x ahead, y to starboard, z down; origin on the waterline at the centre of the stern. SI.
///
/// Model. Each line obeys d(T t)/ds + f = 0, dr/ds = t, with f the loads of loads.h below the
/// surface and the weight in air above it; T is the effective tension (wall tension plus outside
/// pressure times area), so buoyancy sits in the weights. At a clip the forces of the fishing line
/// and of the trail join the main line. Derivation, variables and mesh: docs/method.md section 3.
/// Not modelled: bending stiffness, the knot of a clip, thinning under stretch, waves, vertical
/// currents.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include <Eigen/Core>

#include "engine/tow/loads.h"
#include "engine/water/current.h"

namespace offplumb::tow {

/// Why a solution stopped. One list: the enum and its texts are made from it.
/// X(name, sentence)
#define OFFPLUMB_STEADY_STATUS(X)                                                                  \
  X(kConverged, "Solved.")                                                                         \
  X(kMainLineSlack,                                                                                \
    "The main line goes slack: the rods and the lift of the tackle hold up all of the "            \
    "ball.")                                                                                       \
  X(kFishingLineSlack,                                                                             \
    "A fishing line goes slack: the tension at its rod tip cannot hold it against its weight and " \
    "the water.")                                                                                  \
  X(kClipAboveWater, "A clip is above the water at this count.")                                   \
  X(kBallAtSurface, "The ball does not stay under water at this count and speed.")                 \
  X(kLureAtSurface, "A lure or flasher comes up to the surface.")                                  \
  X(kNotConverged, "No steady shape was found: the gear is about to give way somewhere.")

enum class SteadyStatus {
#define OFFPLUMB_ENTRY(name, text) name,
  OFFPLUMB_STEADY_STATUS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

/// \return the sentence of a status, for a person.
[[nodiscard]] std::string_view Describe(SteadyStatus status);

/// What trails aft of a clip, in a given water.
struct TrailLoads {
  LineLoads setback;
  double setback_m = 0;  ///< Unstretched, > 0.
  bool has_flasher = false;
  BodyLoads flasher;
  LineLoads leader;
  double leader_m = 0;  ///< Unstretched, > 0 with a flasher.
  BodyLoads lure;
};

/// A clip, in a given water.
struct ClipLoads {
  double above_ball_m = 0;  ///< Along the unstretched main line, increasing from clip to clip.
  TrailLoads trail;
  LineLoads fishing_line;
  Vector3d rod_tip_m = Vector3d::Zero();  ///< z < 0.
  double rod_tip_tension_N = 0;           ///< > 0.
};

/// One tree, everything known but its shape. Plain value.
struct TreeProblem {
  water::Flow flow = water::Flow::Uniform(0);
  Vector3d boom_tip_m = Vector3d::Zero();  ///< z <= 0.
  LineLoads line;
  double line_m = 0;  ///< Unstretched, boom tip to the ball's eye; more than the boom's height.
  BodyLoads ball;
  double eye_to_centre_m = 0;
  std::vector<ClipLoads> clips;  ///< From the lowest up.
};

/// The forces and places at one clip.
struct ClipState {
  Vector3d clip_m = Vector3d::Zero();
  Vector3d trail_force_N = Vector3d::Zero();         ///< Of the trail on the clip (aft).
  Vector3d fishing_line_force_N = Vector3d::Zero();  ///< Of the fishing line on the clip (up).
  double fishing_line_m = 0;                         ///< Path from clip to rod tip, stretched.
  double fishing_line_unstretched_m = 0;
  Eigen::Vector2d rod_log_slope = Eigen::Vector2d::Zero();  ///< At the rod tip: see fishing_line.h.
  Vector3d flasher_m = Vector3d::Zero();                    ///< At the lure where there is none.
  Vector3d lure_m = Vector3d::Zero();
  double lure_water_speed_mps = 0;
};

/// A solved tree.
struct SteadyTree {
  SteadyStatus status = SteadyStatus::kNotConverged;
  int passes = 0;                      ///< Through the tree.
  double residual_m = -1;              ///< Norm of all misses; -1 if not solved.
  Vector3d eye_m = Vector3d::Zero();   ///< The ball's eye: end of the line.
  Vector3d ball_m = Vector3d::Zero();  ///< The ball's centre.
  double ball_water_speed_mps = 0;
  double tension_ball_N = 0;
  double tension_boom_N = 0;
  double angle_boom_rad = 0;  ///< Of the line at the boom tip, from the vertical.
  double stretched_m = 0;     ///< Length of the main line under tension.
  std::vector<ClipState> clips;

  [[nodiscard]] bool usable() const { return status == SteadyStatus::kConverged; }
};

/// The lines as points, from the rod or boom down and aft, for drawing.
struct TreeShape {
  struct OfClip {
    std::vector<Vector3d> fishing_line;  ///< Rod tip to clip.
    std::vector<Vector3d> setback;       ///< Clip to flasher (or lure).
    std::vector<Vector3d> leader;        ///< Flasher to lure; empty without a flasher.
  };
  std::vector<Vector3d> main_line;  ///< Boom tip to the ball's eye.
  std::vector<OfClip> clips;
};

}  // namespace offplumb::tow
