#include "engine/tackle/catalogue.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>

#include <fmt/format.h>

#include "engine/constants.h"
#include "engine/tackle/catalogue_data.h"
#include "engine/tackle/drag_law.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::tackle {
namespace {

struct ShapeWord {
  BallShape shape;
  std::string_view word;
  std::string_view name;
};

constexpr auto kShapeWords = std::to_array<ShapeWord>({
    {BallShape::kSphere, "sphere", "ball"},
    {BallShape::kFinned, "finned", "finned ball"},
    {BallShape::kFlat, "flat", "flat ball"},
});

const data::Construction* FindConstruction(std::string_view id) {
  for (const data::Construction& construction : data::kConstructions) {
    if (construction.id == id) return &construction;
  }
  return nullptr;
}

const data::Construction& UsualConstruction(LineKind kind) {
  // The first of each kind in the table is the usual one.
  return *std::find_if(data::kConstructions.begin(), data::kConstructions.end(),
                       [kind](const data::Construction& c) { return c.kind == kind; });
}

Line Build(const data::Construction& construction, double diameter_m) {
  Line line;
  line.name = fmt::format("{}, {:.2f} mm", construction.name, diameter_m * 1000);
  line.kind = construction.kind;
  line.diameter_m = diameter_m;
  line.solid_fraction = construction.solid_fraction.value;
  line.solid_density_kg_per_m3 = construction.solid_density.value;
  line.modulus_Pa = construction.modulus.value;
  line.normal_drag_coefficient = construction.normal_drag.value;
  line.tangential_drag_coefficient = construction.tangential_drag.value;
  return line;
}

std::string LineId(const data::Size& size) {
  return fmt::format("{}-{}mm", size.construction, size.diameter_mm);
}

/// The diameter of "0.84mm", m; 0 if the text is none or outside 0.05 to 5 mm.
double DiameterOf(std::string_view text) {
  constexpr std::string_view kUnit = "mm";
  if (text.size() <= kUnit.size() || text.substr(text.size() - kUnit.size()) != kUnit) return 0;
  const std::string number(text.substr(0, text.size() - kUnit.size()));
  if (number.find_first_not_of("0123456789.") != std::string::npos) return 0;
  char* end = nullptr;
  const double millimetres = std::strtod(number.c_str(), &end);
  const bool whole = end == number.c_str() + number.size();
  return whole && millimetres >= 0.05 && millimetres <= 5 ? millimetres / 1000 : 0;
}

/// "wire-7x7" and 0.84 mm of "wire-7x7-0.84mm"; no diameter when there is none.
struct LineIdParts {
  std::string_view construction;
  double diameter_m = 0;
};

LineIdParts SplitLineId(std::string_view id) {
  const std::size_t dash = id.rfind('-');
  if (dash == std::string_view::npos) return {id, 0};
  return {id.substr(0, dash), DiameterOf(id.substr(dash + 1))};
}

std::string BallId(const ShapeWord& shape, double pounds) {
  return fmt::format("ball-{}-{}lb", shape.word, pounds);
}

std::string_view ShapeName(BallShape shape) {
  return std::find_if(kShapeWords.begin(), kShapeWords.end(),
                      [shape](const ShapeWord& word) { return word.shape == shape; })
      ->name;
}

const data::Casting& CastingOf(BallShape shape) {
  return *std::find_if(data::kCastings.begin(), data::kCastings.end(),
                       [shape](const data::Casting& casting) { return casting.shape == shape; });
}

/// Sphere: pi/6 D^3 = volume; drag by the sphere law.
void SizeSphere(Body& ball, double volume_m3) {
  ball.sphere_diameter_m = std::cbrt(6 * volume_m3 / kPi);
  ball.eye_to_centre_m = ball.sphere_diameter_m / 2;
}

/// Prolate spheroid of length p D: pi/6 p D^3 = volume; frontal area pi/4 D^2.
void SizeFinned(Body& ball, double volume_m3) {
  const data::Casting& casting = CastingOf(BallShape::kFinned);
  const double height_m = std::cbrt(6 * volume_m3 / (kPi * casting.proportion.value));
  ball.drag_area_m2 = casting.drag_coefficient.value * kPi / 4 * height_m * height_m;
  ball.eye_to_centre_m = height_m / 2;
}

/// Disc of diameter p t: pi/4 (p t)^2 t = volume; edge area p t^2.
void SizeFlat(Body& ball, double volume_m3) {
  const data::Casting& casting = CastingOf(BallShape::kFlat);
  const double p = casting.proportion.value;
  const double thickness_m = std::cbrt(4 * volume_m3 / (kPi * p * p));
  ball.drag_area_m2 = casting.drag_coefficient.value * p * thickness_m * thickness_m;
  ball.eye_to_centre_m = p * thickness_m / 2;
}

Body BuildPlate(const data::Plate& plate) {
  Body body;
  body.name = plate.name;
  body.mass_kg = plate.mass.value;
  body.density_kg_per_m3 = plate.density.value;
  const double incidence_rad = plate.incidence_deg.value * kPi / 180;
  body.drag_area_m2 = plate.length.value * plate.width.value *
                      InclinedPlateDrag(incidence_rad, plate.length.value / plate.width.value);
  return body;
}

Body BuildPiece(const data::Piece& piece) {
  Body body;
  body.name = piece.name;
  body.mass_kg = piece.mass.value;
  body.density_kg_per_m3 = piece.density.value;
  body.drag_area_m2 = piece.drag_area.value;
  return body;
}

/// What a person wrote, fit for a message: bounded, and plain characters only.
std::string Printable(std::string_view id) {
  std::string text(id.substr(0, 60));
  for (char& c : text) {
    if (c < ' ' || c > '~') c = '?';
  }
  return text;
}

/// "The catalogue has no ball ..." with what to write instead. \param near what was meant, if
/// known.
tl::unexpected<Problem> NotInCatalogue(std::string_view what, std::string_view id,
                                       const std::vector<std::string>& ids,
                                       const std::string& near) {
  std::string choices = ids.front();
  for (std::size_t i = 1; i < ids.size(); ++i) choices += ", " + ids[i];
  return BadInput(std::string(what),
                  fmt::format("The catalogue has no {} \"{}\".", what, Printable(id)),
                  near.empty() ? fmt::format("Write one of: {}.", choices)
                               : fmt::format("Did you mean \"{}\"? All: {}.", near, choices));
}

std::vector<std::string> Ids(const std::vector<CatalogueEntry>& entries) {
  std::vector<std::string> ids;
  for (const CatalogueEntry& entry : entries) ids.push_back(entry.id);
  return ids;
}

tl::unexpected<Problem> NotInCatalogue(std::string_view what, std::string_view id,
                                       const std::vector<CatalogueEntry>& entries) {
  return NotInCatalogue(what, id, Ids(entries), NearestWord(id, Ids(entries)));
}

/// A number and the letters behind it: 16 and "lb" of "16lb"; nothing when it is no such thing.
struct Amount {
  double value = 0;
  std::string number;
  std::string_view unit;
};

std::optional<Amount> AmountOf(std::string_view text) {
  const std::size_t length = std::min(text.find_first_not_of("0123456789."), text.size());
  Amount amount{0, std::string(text.substr(0, length)), text.substr(length)};
  char* end = nullptr;
  amount.value = std::strtod(amount.number.c_str(), &end);
  const bool whole = length > 0 && end == amount.number.c_str() + length;
  if (!whole || !(amount.value > 0) || length > 8) return std::nullopt;
  return amount;
}

/// A ball of a shape we know and a weight that is not listed: the weight is to be stated.
std::optional<Problem> UnlistedBall(std::string_view id) {
  for (const ShapeWord& shape : kShapeWords) {
    const std::string start = fmt::format("ball-{}-", shape.word);
    if (id.substr(0, start.size()) != start) continue;
    const auto amount = AmountOf(id.substr(start.size()));
    if (!amount || (amount->unit != "lb" && amount->unit != "kg")) return std::nullopt;
    return BadInput("ball",
                    fmt::format("No ball of {} {} in the catalogue.", amount->number, amount->unit),
                    fmt::format("Write ball = {{ weight = \"{} {}\", shape = \"{}\" }}.",
                                amount->number, amount->unit, shape.word))
        .value();
  }
  return std::nullopt;
}

/// An id of this construction in a size that is in use.
std::string UsualLineId(std::string_view construction) {
  std::vector<std::string> ids;
  for (const data::Size& size : data::kSizes) {
    if (size.construction == construction) ids.push_back(LineId(size));
  }
  return ids.empty() ? std::string(construction) : ids[ids.size() / 2];
}

/// A diameter with a blank or a decimal comma in it, as it should be: "0.55mm".
std::string PlainDiameter(std::string_view text) {
  std::string plain;
  for (const char c : text) {
    if (c != ' ') plain += c == ',' ? '.' : c;
  }
  return plain;
}

Problem DiameterProblem(std::string_view id, const data::Construction& construction) {
  const std::string start = fmt::format("{}-", construction.id);
  const std::string plain = PlainDiameter(id.substr(std::min(start.size(), id.size())));
  const auto refuse = [id](std::string_view what, const std::string& remedy) {
    return BadInput("line", fmt::format("\"{}\" {}.", Printable(id), what), remedy).value();
  };
  const auto amount = AmountOf(plain);
  const bool bare = amount && amount->unit.empty();
  const std::string with_unit = bare ? plain + "mm" : plain;
  if (DiameterOf(with_unit) > 0) {
    return refuse(bare ? "has no unit" : "has a blank or a comma in its diameter",
                  fmt::format("Write \"{}{}\".", start, with_unit));
  }
  return refuse(amount ? "has no diameter from 0.05 to 5 mm" : "has no diameter",
                fmt::format("Write \"{}\": any from 0.05 to 5 mm.", UsualLineId(construction.id)));
}

/// A line of a construction we know, with its diameter missing or odd.
std::optional<Problem> OddDiameter(std::string_view id) {
  for (const data::Construction& construction : data::kConstructions) {
    if (id.substr(0, construction.id.size()) != construction.id) continue;
    if (id.size() > construction.id.size() && id[construction.id.size()] != '-') continue;
    return DiameterProblem(id, construction);
  }
  return std::nullopt;
}

/// "wire-7x7-0.84mm" for "wyre-7x7-0.84mm": the diameter is kept as written.
std::string NearestLine(std::string_view id) {
  const LineIdParts parts = SplitLineId(id);
  if (!(parts.diameter_m > 0)) return {};
  std::vector<std::string> constructions;
  for (const data::Construction& known : data::kConstructions) constructions.emplace_back(known.id);
  const std::string near = NearestWord(parts.construction, constructions);
  return near.empty() ? near : near + std::string(id.substr(parts.construction.size()));
}

}  // namespace

std::vector<CatalogueEntry> CatalogueLines() {
  std::vector<CatalogueEntry> entries;
  for (const data::Size& size : data::kSizes) {
    const data::Construction* construction = FindConstruction(size.construction);
    entries.push_back({LineId(size), Build(*construction, size.diameter_mm / 1000).name});
  }
  return entries;
}

std::vector<CatalogueEntry> CatalogueBalls() {
  std::vector<CatalogueEntry> entries;
  for (const ShapeWord& shape : kShapeWords) {
    for (const double pounds : data::kBallWeights_lb) {
      entries.push_back({BallId(shape, pounds), fmt::format("{} lb lead {}", pounds, shape.name)});
    }
  }
  return entries;
}

std::vector<CatalogueEntry> CatalogueFlashers() {
  std::vector<CatalogueEntry> entries;
  for (const data::Plate& plate : data::kPlates) {
    entries.push_back({std::string(plate.id), std::string(plate.name)});
  }
  return entries;
}

std::vector<CatalogueEntry> CatalogueLures() {
  std::vector<CatalogueEntry> entries;
  for (const data::Piece& piece : data::kLures) {
    entries.push_back({std::string(piece.id), std::string(piece.name)});
  }
  return entries;
}

Expected<Line> MakeLine(std::string_view id) {
  const LineIdParts parts = SplitLineId(id);
  const data::Construction* construction = FindConstruction(parts.construction);
  if (construction == nullptr || !(parts.diameter_m > 0)) {
    if (const auto odd = OddDiameter(id)) return tl::unexpected(*odd);
    return NotInCatalogue("line", id, Ids(CatalogueLines()), NearestLine(id));
  }
  return Build(*construction, parts.diameter_m);
}

Expected<Line> MakeLine(std::string_view id, double diameter_m) {
  const data::Construction* construction = FindConstruction(id);
  if (construction != nullptr) return Build(*construction, diameter_m);
  const Expected<Line> listed = MakeLine(id);
  if (!listed) return listed;
  return Build(*FindConstruction(SplitLineId(id).construction), diameter_m);
}

Line MakeLine(LineKind kind, double diameter_m) {
  return Build(UsualConstruction(kind), diameter_m);
}

std::optional<BallShape> FindBallShape(std::string_view word) {
  for (const ShapeWord& shape : kShapeWords) {
    if (shape.word == word) return shape.shape;
  }
  return std::nullopt;
}

Body MakeBall(BallShape shape, double mass_kg, double density_kg_per_m3) {
  Body ball;
  const std::string_view metal = density_kg_per_m3 == kLeadDensity_kg_per_m3 ? "lead " : "";
  ball.name = fmt::format("{:.3g} lb {}{}", mass_kg / data::kPound_kg, metal, ShapeName(shape));
  ball.mass_kg = mass_kg;
  ball.density_kg_per_m3 = density_kg_per_m3;
  const double volume_m3 = mass_kg / density_kg_per_m3;
  switch (shape) {
    case BallShape::kSphere:
      SizeSphere(ball, volume_m3);
      break;
    case BallShape::kFinned:
      SizeFinned(ball, volume_m3);
      break;
    case BallShape::kFlat:
      SizeFlat(ball, volume_m3);
      break;
  }
  return ball;
}

Expected<Body> MakeBall(std::string_view id) {
  for (const ShapeWord& shape : kShapeWords) {
    for (const double pounds : data::kBallWeights_lb) {
      if (BallId(shape, pounds) == id) return MakeBall(shape.shape, pounds * data::kPound_kg);
    }
  }
  if (const auto unlisted = UnlistedBall(id)) return tl::unexpected(*unlisted);
  return NotInCatalogue("ball", id, CatalogueBalls());
}

Expected<Body> MakeFlasher(std::string_view id) {
  for (const data::Plate& plate : data::kPlates) {
    if (plate.id == id) return BuildPlate(plate);
  }
  return NotInCatalogue("flasher", id, CatalogueFlashers());
}

Expected<Body> MakeLure(std::string_view id) {
  for (const data::Piece& piece : data::kLures) {
    if (piece.id == id) return BuildPiece(piece);
  }
  return NotInCatalogue("lure", id, CatalogueLures());
}

}  // namespace offplumb::tackle
