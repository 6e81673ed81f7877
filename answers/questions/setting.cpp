#include "answers/questions/setting.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "engine/plan/alter.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::answers {
namespace {

Problem NoSuchRigger(const RigChoice& choice) {
  std::vector<std::string> names;
  for (const tackle::Rigger& rigger : choice.rig.riggers) names.push_back(rigger.name);
  const std::string nearest = tackle::NearestWord(choice.rigger, names);
  const std::vector<std::string_view> views(names.begin(), names.end());
  const std::string meant =
      nearest.empty() ? std::string() : fmt::format(" Did you mean {}?", Quoted(nearest));
  return {ProblemKind::kBadInput,
          "rigger",
          fmt::format("The rig has no rigger {}.{}", Quoted(choice.rigger), meant),
          fmt::format("Its riggers: {}.", JoinWords(views, "and")),
          {},
          0};
}

Expected<void> CheckDirections(const Sea& sea) {
  const bool over_ground = sea.speed_kind == plan::SpeedKind::kOverGround;
  if (over_ground && !sea.course_rad && !sea.current.points.empty()) {
    return BadInput("course", "The speed is over ground and a current is given, but no course.",
                    "Give the way the boat goes over ground: --course \"20 deg\".");
  }
  if (!over_ground && sea.course_rad) {
    return BadInput("course", "A course goes with a speed over ground.",
                    "Add --over-ground, or give the way the bow points with --heading.");
  }
  if (!over_ground && !sea.heading_rad && VariesWithDepth(sea.current)) {
    return BadInput("heading", "A current that changes with depth is given, but no heading.",
                    "Give the way the bow points: --heading \"20 deg\".");
  }
  return {};
}

Expected<std::vector<tackle::Rigger>> Named(const RigChoice& choice) {
  if (choice.rigger.empty()) return choice.rig.riggers;
  for (const tackle::Rigger& rigger : choice.rig.riggers) {
    if (SameWord(rigger.name, choice.rigger)) return std::vector<tackle::Rigger>{rigger};
  }
  return tl::unexpected<Problem>(NoSuchRigger(choice));
}

/// Puts a ball of another mass on a rigger.
Expected<void> ChangeBall(double mass_kg, tackle::Rigger& rigger) {
  const double present_kg = plan::BallMass_kg(rigger.ball);
  if (!(present_kg > 0)) {
    return BadInput("rigger \"" + rigger.name + "\"",
                    "Its ball has no mass of its own that could be changed.",
                    "Check the ball's weight and what it is made of.");
  }
  if (mass_kg != present_kg) rigger.ball = plan::ScaledBall(rigger.ball, mass_kg / present_kg);
  return {};
}

}  // namespace

bool SameWater(const water::Water& a, const water::Water& b) {
  return a.density_kg_per_m3 == b.density_kg_per_m3 &&
         a.kinematic_viscosity_m2_per_s == b.kinematic_viscosity_m2_per_s;
}

water::Water WaterOf(const Sea& sea, const tackle::Rig& rig) {
  return sea.water ? *sea.water : rig.water.value_or(water::UsualSaltWater());
}

bool VariesWithDepth(const water::Current& current) {
  const auto& points = current.points;
  return std::any_of(points.begin(), points.end(), [&](const water::CurrentPoint& point) {
    return point.velocity_mps != points.front().velocity_mps;
  });
}

Expected<std::vector<tackle::Rigger>> ChooseRiggers(const RigChoice& choice) {
  auto riggers = Named(choice);
  if (!riggers || !choice.ball_mass_kg) return riggers;
  const double mass_kg = *choice.ball_mass_kg;
  if (!(mass_kg >= kBallMass.low && mass_kg <= kBallMass.high)) {
    return BadInput("ball",
                    fmt::format("A ball of {:.4g} kg is asked for; it must weigh {:.4g} to {:.4g} "
                                "kg.",
                                mass_kg, kBallMass.low, kBallMass.high),
                    "Give what the ball weighs in air.");
  }
  for (tackle::Rigger& rigger : *riggers) {
    const auto changed = ChangeBall(mass_kg, rigger);
    if (!changed) return tl::unexpected<Problem>(changed.error());
  }
  return riggers;
}

Expected<Setting> MakeSetting(const RigChoice& choice, const Sea& sea) {
  auto riggers = ChooseRiggers(choice);
  if (!riggers) return tl::unexpected<Problem>(riggers.error());
  auto conditions = MakeConditions(sea, choice.rig);
  if (!conditions) return tl::unexpected<Problem>(conditions.error());
  return Setting{std::move(*riggers), std::move(*conditions)};
}

Expected<plan::Conditions> MakeConditions(const Sea& sea, const tackle::Rig& rig) {
  if (!sea.speed_mps) {
    return BadInput("speed", "The boat's speed is missing.",
                    "Give the speed through the water: --speed \"2.7 mph\". If all you have is the "
                    "ground speed, add --over-ground.");
  }
  const auto directions = CheckDirections(sea);
  if (!directions) return tl::unexpected<Problem>(directions.error());
  plan::Conditions conditions;
  conditions.water = WaterOf(sea, rig);
  conditions.speed_kind = sea.speed_kind;
  conditions.speed_mps = *sea.speed_mps;
  conditions.course_rad = sea.course_rad.value_or(sea.heading_rad.value_or(0));
  conditions.heading_rad = sea.heading_rad.value_or(conditions.course_rad);
  conditions.current = sea.current;
  const auto checked = plan::CheckConditions(conditions);
  if (!checked) return tl::unexpected<Problem>(checked.error());
  return conditions;
}

std::optional<learn::Ensemble> MakeEnsemble(const Wanted& wanted) {
  if (!wanted.bands) return std::nullopt;
  return learn::PriorEnsemble(wanted.draws);
}

}  // namespace offplumb::answers
