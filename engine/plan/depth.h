/// \file
/// Count to depths: where the ball and the lures of a rigger are, with bands.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/learn/prior.h"
#include "engine/plan/band.h"
#include "engine/plan/conditions.h"
#include "engine/tackle/rig.h"
#include "engine/tow/steady_solver.h"

namespace offplumb::plan {

/// What is told of one clip and the lure behind it. T is double, or Band. SI; trail aft and side to
/// starboard of the rigger's boom tip.
template <typename T>
struct ClipFigures {
  T clip_depth_m{};
  T clip_trail_m{};
  T clip_side_m{};
  T leader_pull_N{};   ///< Tension just aft of the clip.
  T line_pull_N{};     ///< Tension of the fishing line just above it.
  T clip_net_N{};      ///< Size of the sum of both.
  T fishing_line_m{};  ///< Path from clip to rod tip, stretched.
  T lure_depth_m{};
  T lure_trail_m{};
  T lure_side_m{};
  T lure_water_speed_mps{};
};

/// What is told of one rigger.
template <typename T>
struct RiggerFigures {
  T ball_depth_m{};
  T ball_trail_m{};
  T ball_side_m{};
  T ball_water_speed_mps{};
  T tension_boom_N{};
  T tension_ball_N{};
  T angle_boom_rad{};
  T length_m{};  ///< Of the main line from boom tip to the ball's eye, stretched.
  std::vector<ClipFigures<T>> clips;
};

/// \return pointers to every figure, always in the same order: one list for bands, sums and tests.
template <typename T>
std::vector<T*> Fields(RiggerFigures<T>& figures) {
  std::vector<T*> fields{&figures.ball_depth_m,   &figures.ball_trail_m,
                         &figures.ball_side_m,    &figures.ball_water_speed_mps,
                         &figures.tension_boom_N, &figures.tension_ball_N,
                         &figures.angle_boom_rad, &figures.length_m};
  for (ClipFigures<T>& clip : figures.clips) {
    for (T* field : {&clip.clip_depth_m, &clip.clip_trail_m, &clip.clip_side_m, &clip.leader_pull_N,
                     &clip.line_pull_N, &clip.clip_net_N, &clip.fishing_line_m, &clip.lure_depth_m,
                     &clip.lure_trail_m, &clip.lure_side_m, &clip.lure_water_speed_mps}) {
      fields.push_back(field);
    }
  }
  return fields;
}

/// \return the figures of a usable solution. \param boom_tip_m the rigger's.
[[nodiscard]] RiggerFigures<double> FiguresOf(const tow::SteadyTree& tree,
                                              const Eigen::Vector3d& boom_tip_m);

/// The answer for one rigger.
struct RiggerDepth {
  std::string name;
  double count_m = 0;
  RiggerFigures<Band> figures;
  tow::TreeShape shape;    ///< Of the median, for drawing.
  tow::SteadyTree median;  ///< The solution at the medians.
  std::optional<learn::Input>
      dominant;      ///< What contributes most to the ball's band; none without bands.
  int members = 0;   ///< Draws in the band.
  int unusable = 0;  ///< Draws for which no steady shape exists.
};

/// Where everything is at a count.
/// \param count_m as the counter reads it, checked by the caller (CheckCount).
/// \param ensemble null: no bands. \return a problem when the median has no steady shape.
[[nodiscard]] Expected<RiggerDepth> FindDepths(const tackle::Rigger& rigger,
                                               const Conditions& conditions, double count_m,
                                               const learn::Ensemble* ensemble);

/// \return the inputs that a rigger's answer depends on.
[[nodiscard]] std::vector<learn::Input> InputsOf(const tackle::Rigger& rigger,
                                                 const Conditions& conditions);

}  // namespace offplumb::plan
