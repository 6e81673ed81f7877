#include <array>
#include <limits>
#include <string>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "engine/tackle/catalogue.h"
#include "ports/files/rig_parts.h"
#include "ports/files/rig_rules.h"

namespace offplumb::ports {
namespace {

using tackle::Line;
using tackle::LineKind;

struct KindWord {
  std::string_view word;
  LineKind kind;
};

constexpr auto kKinds = std::to_array<KindWord>({{"wire", LineKind::kWire},
                                                 {"braid", LineKind::kBraid},
                                                 {"nylon", LineKind::kNylon},
                                                 {"fluorocarbon", LineKind::kFluorocarbon}});

/// What a line without `from` and `kind` must state; its stiffness may be left out.
constexpr auto kConstants = std::to_array<std::string_view>({"diameter", "normal_drag_coefficient",
                                                             "tangential_drag_coefficient",
                                                             "weight_in_water", "weight_in_air"});

constexpr std::string_view kDiameterExample = "diameter = \"0.8 mm\"";

/// The diameter; one that is missing or wrong has its problem noted and comes back as a stand-in.
double Diameter_m(const Fields& fields) {
  constexpr double kStandIn_m = 1e-3;
  const double diameter_m = fields.Required("diameter", rig_rules::kDiameter, kDiameterExample);
  return diameter_m > 0 ? diameter_m : kStandIn_m;
}

Line FromCatalogue(const Fields& fields) {
  const std::string id = fields.Text("from").value_or("");
  if (fields.Has("kind")) {
    fields.Fail("kind", "A line is described by \"from\" or by \"kind\", not by both.",
                "Leave one of the two out.");
  }
  const auto line =
      fields.Has("diameter") ? tackle::MakeLine(id, Diameter_m(fields)) : tackle::MakeLine(id);
  if (line) return *line;
  fields.Fail("from", line.error());
  return {};
}

Line OfKind(const Fields& fields) {
  const std::string word = fields.Text("kind").value_or("");
  for (const KindWord& kind : kKinds) {
    if (answers::SameWord(kind.word, answers::Trim(word))) {
      return tackle::MakeLine(kind.kind, Diameter_m(fields));
    }
  }
  fields.Fail("kind", fmt::format("{} is not a kind of line.", answers::Quoted(word)),
              "Write \"wire\", \"braid\", \"nylon\" or \"fluorocarbon\".");
  return {};
}

Line OfConstants(const Fields& fields, LineKind usual) {
  for (const std::string_view key : kConstants) {
    if (fields.Has(key)) continue;
    fields.Fail(key,
                fmt::format("A line without \"from\" and \"kind\" must state all its constants; "
                            "\"{}\" is missing.",
                            key),
                "Write it, or say what the line is: from = \"wire-1x7-0.8mm\".");
    return {};
  }
  Line line = tackle::MakeLine(usual, Diameter_m(fields));
  line.name = fmt::format("line of stated constants, {:.2f} mm", line.diameter_m * 1000);
  line.stiffness_N = std::numeric_limits<double>::infinity();
  return line;
}

Line Start(const Fields& fields, LineKind usual) {
  if (fields.Has("from")) return FromCatalogue(fields);
  if (fields.Has("kind")) return OfKind(fields);
  return OfConstants(fields, usual);
}

std::optional<double> Stiffness_N(const Fields& fields) {
  // The range check would refuse the word, so it is looked for first; a number goes on to say that
  // it has no unit.
  if (fields.IsWord("stiffness", "none")) return std::numeric_limits<double>::infinity();
  return fields.Quantity("stiffness", rig_rules::kStiffness);
}

void StateMaterial(const Fields& fields, Line& line) {
  if (const auto part = fields.Number("solid_fraction", rig_rules::kSolidFraction)) {
    line.solid_fraction = *part;
  }
  if (const auto density = fields.Quantity("density", rig_rules::kSolidDensity)) {
    line.solid_density_kg_per_m3 = *density;
  }
  if (const auto modulus = fields.Quantity("modulus", rig_rules::kModulus))
    line.modulus_Pa = *modulus;
}

void StateDrag(const Fields& fields, Line& line) {
  if (const auto normal = fields.Number("normal_drag_coefficient", rig_rules::kNormalDrag)) {
    line.normal_drag_coefficient = *normal;
    line.constant_drag = true;
  }
  if (const auto tangential =
          fields.Number("tangential_drag_coefficient", rig_rules::kTangentialDrag)) {
    line.tangential_drag_coefficient = *tangential;
  }
  line.strumming = fields.Flag("strumming").value_or(false);
}

}  // namespace

Line ReadLine(const Fields& fields, LineKind usual) {
  Line line = Start(fields, usual);
  StateMaterial(fields, line);
  StateDrag(fields, line);
  line.weight_in_water_N_per_m = fields.Quantity("weight_in_water", rig_rules::kLineWeightInWater);
  line.weight_in_air_N_per_m = fields.Quantity("weight_in_air", rig_rules::kLineWeightInAir);
  if (const auto stiffness = Stiffness_N(fields)) line.stiffness_N = *stiffness;
  if (const auto name = fields.Text("name")) line.name = *name;
  return line;
}

}  // namespace offplumb::ports
