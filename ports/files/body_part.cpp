#include <string>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "engine/tackle/catalogue.h"
#include "ports/files/rig_parts.h"
#include "ports/files/rig_rules.h"

namespace offplumb::ports {
namespace {

using tackle::Body;
using tackle::DragSource;

constexpr std::string_view kBallExample =
    "ball = { from = \"ball-sphere-12lb\" }, or { weight = \"12 lb\", shape = \"sphere\" }.";

// Constants.

void StateConstants(const Fields& fields, const QuantityRule& weight_rule, Body& body) {
  if (const auto weight = fields.Quantity("weight_in_water", weight_rule)) {
    body.weight_in_water_N = *weight;
  }
  if (const auto area = fields.Quantity("drag_area", rig_rules::kDragArea)) {
    body.drag_area_m2 = *area;
    body.drag_source = DragSource::kStated;
    body.sphere_diameter_m = 0;
  }
  if (const auto lift = fields.Quantity("lift_area", rig_rules::kSideArea))
    body.lift_area_m2 = *lift;
  if (const auto side = fields.Quantity("side_area", rig_rules::kSideArea))
    body.side_area_m2 = *side;
  if (const auto name = fields.Text("name")) body.name = *name;
}

// Balls.

tackle::BallShape Shape(const Fields& fields) {
  const auto word = fields.Text("shape");
  if (!word) return tackle::BallShape::kSphere;
  const auto shape = tackle::FindBallShape(*word);
  if (!shape) {
    fields.Fail("shape", fmt::format("{} is not a shape of ball.", answers::Quoted(*word)),
                "Write \"sphere\", \"finned\" or \"flat\".");
  }
  return shape.value_or(tackle::BallShape::kSphere);
}

/// Lead unless stated. What would float has its problem noted and comes back as lead.
double BallDensity_kg_per_m3(const Fields& fields) {
  constexpr double kSinks_kg_per_m3 = 1200;
  const auto density = fields.Quantity("density", rig_rules::kBallDensity);
  if (!density) return tackle::kLeadDensity_kg_per_m3;
  if (*density >= kSinks_kg_per_m3) return *density;
  fields.Fail(
      "density",
      fmt::format(
          "The ball floats or hardly sinks: its density is {:.4g} kg/m3; it must be from {} "
          "to {:.0f} kg/m3.",
          *density, kSinks_kg_per_m3, rig_rules::kBallDensity.range.high),
      "Lead has 11340 kg/m3, iron 7200 kg/m3.");
  return tackle::kLeadDensity_kg_per_m3;
}

Body BallOfWeight(const Fields& fields) {
  const auto mass = fields.Quantity("weight", rig_rules::kBallMass);
  return tackle::MakeBall(Shape(fields), mass.value_or(1.0), BallDensity_kg_per_m3(fields));
}

Body BallFromCatalogue(const Fields& fields) {
  for (const std::string_view key : {"weight", "shape", "density"}) {
    if (!fields.Has(key)) continue;
    fields.Fail(key, fmt::format("\"from\" already says the ball's {}.", key),
                "Leave \"from\" out and write weight and shape, or leave this out.");
  }
  const auto ball = tackle::MakeBall(fields.Text("from").value_or(""));
  if (ball) return *ball;
  fields.Fail("from", ball.error());
  return {};
}

Body StartBall(const Fields& fields) {
  if (fields.Has("from")) return BallFromCatalogue(fields);
  if (fields.Has("weight")) return BallOfWeight(fields);
  if (!fields.Has("weight_in_water") || !fields.Has("drag_area")) {
    fields.Fail(
        fields.Has("weight_in_water") ? "drag_area" : "weight",
        "A ball needs \"from\", or \"weight\", or both \"weight_in_water\" and \"drag_area\".",
        fmt::format("Write, for example: {}", kBallExample));
  }
  for (const std::string_view key : {"shape", "density"}) {
    if (!fields.Has(key)) continue;
    fields.Fail(key, fmt::format("\"{}\" says nothing without \"weight\".", key),
                "Leave it out, or state the weight in air.");
  }
  Body ball;
  ball.name = "ball of stated constants";
  ball.density_kg_per_m3 = tackle::kLeadDensity_kg_per_m3;
  return ball;
}

void CheckThatItSinks(const Fields& fields, const Body& ball) {
  constexpr double kLeast_N = 0.5;
  if (!ball.weight_in_water_N) return;
  const auto weight = answers::CheckRange(
      *ball.weight_in_water_N, {kLeast_N, rig_rules::kBallWeightInWater.range.high},
      fields.Written("weight_in_water"), answers::Dimension::kForce, "weight_in_water");
  if (weight) return;
  fields.Fail("weight_in_water",
              fmt::format("The ball floats or hardly sinks: {}", weight.error().message),
              "A 12 lb lead ball weighs 48.6 N (10.9 lb) in the sea.");
}

// Flashers and lures.

void CheckWeightIsKnown(const Fields& fields) {
  if (fields.Has("from") || fields.Has("weight_in_water")) return;
  if (fields.Has("weight") && fields.Has("density")) return;
  fields.Fail(fields.Has("weight") ? "density" : "weight_in_water",
              "This needs \"from\", or \"weight_in_water\", or both \"weight\" and \"density\".",
              "A small weight matters little: weight_in_water = \"0.3 N\".");
}

void CheckDragIsKnown(const Fields& fields) {
  if (fields.Has("drag_area") && fields.Has("pull")) {
    fields.Fail("pull", "\"pull\" and \"drag_area\" say the same thing.", "Leave one of them out.");
  }
  if (fields.Has("from") || fields.Has("drag_area") || fields.Has("pull")) return;
  fields.Fail("drag_area", "This needs \"from\", \"drag_area\" or \"pull\".",
              "Write, for example: pull = \"2.1 lb at 2.5 mph\".");
}

template <typename MakeFunction>
Body StartPiece(const Fields& fields, MakeFunction make) {
  CheckWeightIsKnown(fields);
  CheckDragIsKnown(fields);
  Body body;
  if (const auto id = fields.Text("from")) {
    const Expected<Body> made = make(*id);
    if (made) body = *made;
    if (!made) fields.Fail("from", made.error());
  } else {
    body.name = "stated constants";
    body.density_kg_per_m3 = 1000;
  }
  if (const auto mass = fields.Quantity("weight", rig_rules::kPieceMass)) body.mass_kg = *mass;
  if (const auto density = fields.Quantity("density", rig_rules::kPieceDensity)) {
    body.density_kg_per_m3 = *density;
  }
  StateConstants(fields, rig_rules::kPieceWeightInWater, body);
  return body;
}

std::optional<tackle::SpringScalePull> Pull(const Fields& fields) {
  const auto text = fields.Text("pull");
  if (!text) return std::nullopt;
  const auto pull = answers::ParsePull(*text, "pull");
  if (pull) return *pull;
  fields.Fail("pull", pull.error());
  return std::nullopt;
}

void StatePull(const tackle::SpringScalePull& pull, Body& body) {
  body.pull = pull;
  body.drag_source = DragSource::kPull;
  body.drag_area_m2 = 0;
}

double DragAt_N(const Body& body, double speed_mps, double density_kg_per_m3) {
  if (body.pull) {
    const double ratio = speed_mps / body.pull->speed_mps;
    return body.pull->force_N * ratio * ratio;
  }
  return 0.5 * density_kg_per_m3 * body.drag_area_m2 * speed_mps * speed_mps;
}

}  // namespace

Body ReadBall(const Fields& fields) {
  Body ball = StartBall(fields);
  StateConstants(fields, rig_rules::kBallWeightInWater, ball);
  if (const auto eye = fields.Quantity("eye_to_centre", rig_rules::kEyeToCentre)) {
    ball.eye_to_centre_m = *eye;
  }
  CheckThatItSinks(fields, ball);
  return ball;
}

Body ReadLure(const Fields& fields) {
  Body lure = StartPiece(fields, [](std::string_view id) { return tackle::MakeLure(id); });
  if (const auto pull = Pull(fields)) StatePull(*pull, lure);
  return lure;
}

Body ReadFlasher(const Fields& fields, const Body& lure, double density_kg_per_m3) {
  Body flasher = StartPiece(fields, [](std::string_view id) { return tackle::MakeFlasher(id); });
  const auto pull = Pull(fields);
  if (!pull) return flasher;
  const double lure_N = DragAt_N(lure, pull->speed_mps, density_kg_per_m3);
  const double own_N = pull->force_N - lure_N;
  if (!(own_N > 0)) {
    fields.Fail(
        "pull",
        fmt::format(
            "The pull of flasher and lure together is {:.2f} N; the lure alone pulls {:.2f} "
            "N at that speed.",
            pull->force_N, lure_N),
        "Take the pull just ahead of the flasher, with leader and lure behind it; or take the "
        "lure's own pull too.");
    return flasher;
  }
  StatePull({own_N, pull->speed_mps}, flasher);
  return flasher;
}

}  // namespace offplumb::ports
