#include "engine/plan/conditions.h"

#include <cmath>
#include <string>

#include <fmt/format.h>

#include "engine/tow/loads.h"

namespace offplumb::plan {
namespace {

using learn::Draw;
using learn::Input;

double LineFactor(const tackle::Line& line, const Draw& draw) {
  Input input{};
  return learn::DragInput(line, input) ? draw[input] : 1.0;
}

double TackleFactor(const tackle::Body& body, const Draw& draw) {
  Input input{};
  return learn::DragInput(body, input) ? draw[input] : 1.0;
}

double BallFactor(const tackle::Body& ball, const Draw& draw) {
  return ball.drag_source == tackle::DragSource::kStated ? 1.0 : draw[Input::kBallDrag];
}

tow::TrailLoads MakeTrail(const tackle::Trail& trail, const water::Water& water, const Draw& draw) {
  tow::TrailLoads loads;
  loads.setback = tow::Resolve(trail.setback_line, water, LineFactor(trail.setback_line, draw));
  loads.setback_m = trail.setback_m;
  loads.has_flasher = trail.flasher.has_value();
  if (trail.flasher) {
    loads.flasher = tow::Resolve(*trail.flasher, water, TackleFactor(*trail.flasher, draw));
    loads.leader = tow::Resolve(trail.leader_line, water, LineFactor(trail.leader_line, draw));
    loads.leader_m = trail.leader_m;
  }
  loads.lure = tow::Resolve(trail.lure, water, TackleFactor(trail.lure, draw));
  return loads;
}

tow::ClipLoads MakeClip(const tackle::Clip& clip, const water::Water& water, const Draw& draw) {
  tow::ClipLoads loads;
  loads.above_ball_m = clip.above_ball_m;
  loads.trail = MakeTrail(clip.trail, water, draw);
  loads.fishing_line = tow::Resolve(clip.fishing_line, water, LineFactor(clip.fishing_line, draw));
  loads.rod_tip_m = clip.rod_tip_m;
  loads.rod_tip_tension_N = clip.rod_tip_tension_N * draw[Input::kRodTension];
  return loads;
}

}  // namespace

Input SpeedInput(const Conditions& conditions) {
  const bool unknown_current =
      conditions.speed_kind == SpeedKind::kOverGround && conditions.current.points.empty();
  return unknown_current ? Input::kGroundSpeed : Input::kLogSpeed;
}

water::Flow FlowOf(const Conditions& conditions, const Draw& draw) {
  // A faster boat meets the water with more of it from ahead.
  const Eigen::Vector2d added(-draw[SpeedInput(conditions)], 0);
  if (conditions.speed_kind == SpeedKind::kOverGround) {
    return water::FlowOverGround(conditions.speed_mps, conditions.course_rad,
                                 conditions.heading_rad, conditions.current)
        .Plus(added);
  }
  return water::FlowThroughWater(conditions.speed_mps, conditions.heading_rad, conditions.current)
      .Plus(added);
}

Expected<void> CheckConditions(const Conditions& conditions) {
  if (!(conditions.speed_mps >= 0 && conditions.speed_mps <= kLargestSpeed_mps)) {
    return BadInput(
        "speed",
        fmt::format("The speed is {:.4g} m/s ({:.3g} mph); it must lie between 0 and 10 mph "
                    "(8.7 kn, 4.47 m/s).",
                    conditions.speed_mps, conditions.speed_mps / 0.44704),
        "Give the speed at which you troll, for example --speed \"2.7 mph\".");
  }
  if (!std::isfinite(conditions.heading_rad) || !std::isfinite(conditions.course_rad)) {
    return BadInput("heading", "A heading or course is not a number.",
                    "Give it in degrees from true north, for example --heading \"350 deg\".");
  }
  if (!(conditions.water.density_kg_per_m3 > 0 &&
        conditions.water.kinematic_viscosity_m2_per_s > 0)) {
    return BadInput("water", "The water's density and viscosity must be numbers above 0.",
                    "Give --water salt or --water fresh.");
  }
  auto current = water::CheckCurrent(conditions.current);
  if (!current) return tl::unexpected<Problem>(current.error());
  return {};
}

Expected<void> CheckRigger(const tackle::Rigger& rigger) {
  const std::string where = "rigger \"" + rigger.name + "\"";
  if (rigger.boom_tip_m.z() > 0) {
    return BadInput(where, "The boom tip is under water.", "Give its height above the water.");
  }
  const water::Water water = water::UsualSaltWater();
  if (!(tow::Resolve(rigger.ball, water, 1.0).weight_in_water_N > 0)) {
    return BadInput(where, "The ball floats: its weight in water is not above zero.",
                    "Check the ball's weight and what it is made of.");
  }
  double below_m = -1;
  for (const tackle::Clip& clip : rigger.clips) {
    if (!(clip.above_ball_m >= 0 && clip.above_ball_m > below_m)) {
      return BadInput(where, "Two clips sit at the same height above the ball, or one below it.",
                      "Give each clip its own height above the ball.");
    }
    below_m = clip.above_ball_m;
  }
  return {};
}

Expected<void> CheckCount(const tackle::Rigger& rigger, double count_m) {
  if (!(count_m >= 0 && count_m <= kLargestCount_m)) {
    return BadInput("count",
                    fmt::format("The count is {:.6g} m ({:.6g} ft); it must lie between 0 and "
                                "{:.0f} m.",
                                count_m, count_m / 0.3048, kLargestCount_m),
                    "Give what the counter reads, for example --count \"100 ft\".");
  }
  const double out_m = tackle::MeasuredCount_m(rigger.marks, count_m);
  if (out_m > rigger.line_on_reel_m * (1 + 1e-9)) {
    return BadInput(
        "count",
        fmt::format(
            "A count of {:.0f} ft ({:.1f} m) is more than the {:.0f} ft of line on the reel "
            "of rigger \"{}\".",
            count_m / 0.3048, count_m, rigger.line_on_reel_m / 0.3048, rigger.name),
        "Ask for less, or give the reel's line with line_on_reel in the rig file.");
  }
  for (const tackle::Clip& clip : rigger.clips) {
    if (clip.above_ball_m >= out_m) {
      return tl::unexpected<Problem>(Problem{
          ProblemKind::kCannotBeDone,
          "count",
          fmt::format(
              "At a count of {:.1f} ft the clip {:.1f} ft above the ball of rigger \"{}\" is "
              "above the water.",
              count_m / 0.3048, clip.above_ball_m / 0.3048, rigger.name),
          fmt::format("Let out more than {:.1f} ft.", clip.above_ball_m / 0.3048),
          {},
          0});
    }
  }
  return {};
}

tow::TreeProblem MakeProblem(const tackle::Rigger& rigger, const Conditions& conditions,
                             double count_m, const Draw& draw) {
  tow::TreeProblem problem;
  problem.flow = FlowOf(conditions, draw);
  problem.boom_tip_m = rigger.boom_tip_m;
  problem.line = tow::Resolve(rigger.line, conditions.water, LineFactor(rigger.line, draw));
  problem.ball = tow::Resolve(rigger.ball, conditions.water, BallFactor(rigger.ball, draw));
  problem.eye_to_centre_m = rigger.ball.eye_to_centre_m;
  for (const tackle::Clip& clip : rigger.clips) {
    problem.clips.push_back(MakeClip(clip, conditions.water, draw));
  }
  SetCount(rigger, count_m, draw, problem);
  return problem;
}

void SetCount(const tackle::Rigger& rigger, double count_m, const Draw& draw,
              tow::TreeProblem& problem) {
  const double out_m = tackle::MeasuredCount_m(rigger.marks, count_m) * draw[Input::kCounter];
  problem.line_m = out_m - rigger.boom_tip_m.z();
}

Problem ProblemOf(tow::SteadyStatus status, const tackle::Rigger& rigger) {
  const auto cannot = [&](std::string remedy) {
    return Problem{ProblemKind::kCannotBeDone,
                   "rigger \"" + rigger.name + "\"",
                   std::string(tow::Describe(status)),
                   std::move(remedy),
                   {},
                   0};
  };
  switch (status) {
    case tow::SteadyStatus::kMainLineSlack:
      return cannot("Use a heavier ball, fewer rods on it, or a lower rod_tip_tension.");
    case tow::SteadyStatus::kFishingLineSlack:
      return cannot("Give a higher rod_tip_tension, or go slower.");
    case tow::SteadyStatus::kClipAboveWater:
      return cannot("Let out more line, or set the clip nearer to the ball.");
    case tow::SteadyStatus::kBallAtSurface:
      return cannot("Let out more line, slow down, or use a heavier ball.");
    case tow::SteadyStatus::kLureAtSurface:
      return cannot("Let out more line, or take a lure that sinks.");
    default:
      return cannot("Go slower, load the rods harder (rod_tip_tension), or use a heavier ball.");
  }
}

}  // namespace offplumb::plan
