#include "answers/questions/phrases.h"

#include <cmath>

#include <fmt/format.h>

#include "engine/constants.h"

namespace offplumb::answers {
namespace {

std::string Bearing(double angle_rad) { return fmt::format("{:.4g} deg", angle_rad * 180.0 / kPi); }

/// "0.6 kn toward 200".
std::string Stream(const water::Vector2d& velocity_mps, DisplayUnits units) {
  const bool metric = units == DisplayUnits::kMetric;
  const double speed_mps = velocity_mps.norm();
  if (speed_mps == 0) return "none";
  const double turns = std::atan2(velocity_mps.y(), velocity_mps.x()) / (2 * kPi) + 1;
  const double degrees = std::round(360 * (turns - std::floor(turns)));
  return fmt::format(
      "{} toward {:.0f}",
      FormatQuantity(speed_mps, Shown::kSpeed, metric ? units : DisplayUnits::kFeetKnots),
      degrees < 360 ? degrees : 0);
}

/// "at the surface", "at 150 ft"; with layers "from 150 ft".
std::string DepthWords(const water::Current& current, std::size_t i, DisplayUnits units) {
  const double depth_m = current.points[i].depth_m;
  if (depth_m == 0) return "at the surface";
  return fmt::format("{} {}", current.shape == water::CurrentShape::kSteps ? "from" : "at",
                     FormatQuantity(depth_m, Shown::kDepth, units));
}

/// Every point of a short current, the first and last of a long one.
std::string Profile(const water::Current& current, DisplayUnits units) {
  constexpr std::size_t kMostTold = 4;
  const std::size_t last = current.points.size() - 1;
  std::string text;
  for (std::size_t i = 0; i <= last; ++i) {
    if (last >= kMostTold && i == 1) {
      text += ", changing down to";
      i = last;
    } else if (i > 0) {
      text += ",";
    }
    text += fmt::format(" {} {}", Stream(current.points[i].velocity_mps, units),
                        DepthWords(current, i, units));
  }
  return text;
}

}  // namespace

std::string Echo(double si, Shown shown, DisplayUnits units) {
  return fmt::format("{:.4g} {}", InShownUnit(si, shown, units), ShownUnit(shown, units));
}

std::string Way(const plan::Conditions& conditions, bool with_speed, DisplayUnits units) {
  const std::string speed =
      with_speed ? Echo(conditions.speed_mps, Shown::kSpeed, units) + " " : std::string();
  if (conditions.speed_kind == plan::SpeedKind::kThroughWater) {
    const std::string text = speed + "through the water";
    if (!VariesWithDepth(conditions.current)) return text;
    return fmt::format("{}, heading {}", text, Bearing(conditions.heading_rad));
  }
  if (conditions.current.points.empty()) return speed + "over ground";
  return fmt::format("{}over ground on a course of {}, heading {}", speed,
                     Bearing(conditions.course_rad), Bearing(conditions.heading_rad));
}

std::string CurrentWords(const plan::Conditions& conditions, DisplayUnits units) {
  const water::Current& current = conditions.current;
  if (current.points.empty()) {
    const bool over_ground = conditions.speed_kind == plan::SpeedKind::kOverGround;
    return over_ground ? "the current taken as none" : "";
  }
  if (VariesWithDepth(current)) return "current" + Profile(current, units);
  return fmt::format("current {} at all depths",
                     Stream(current.points.front().velocity_mps, units));
}

std::string WayAndCurrent(const plan::Conditions& conditions, bool with_speed, DisplayUnits units) {
  const std::string current = CurrentWords(conditions, units);
  return Way(conditions, with_speed, units) + (current.empty() ? "" : ", " + current);
}

std::string CurrentSentences(const plan::Conditions& conditions, DisplayUnits units) {
  const bool over_ground = conditions.speed_kind == plan::SpeedKind::kOverGround;
  if (!over_ground && !VariesWithDepth(conditions.current)) return {};
  std::string words = CurrentWords(conditions, units) + ".";
  words[0] = words[0] == 't' ? 'T' : 'C';
  return words + (conditions.current.points.empty() ? "" : " This current only.");
}

std::string WaterWords(const water::Water& water) {
  const auto is = [&](const water::Water& usual) {
    return water.density_kg_per_m3 == usual.density_kg_per_m3;
  };
  if (is(water::UsualSaltWater())) return "salt water";
  if (is(water::UsualFreshWater())) return "fresh water";
  return fmt::format("water of {:.0f} kg/m3", water.density_kg_per_m3);
}

}  // namespace offplumb::answers
