/// \file
/// Generic gear as data: lines, balls, flashers and lures, and every coefficient and default behind
/// them with its source or mark.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/problem.h"
#include "engine/tackle/body.h"
#include "engine/tackle/line.h"

namespace offplumb::tackle {

/// How far a figure can be trusted.
enum class Mark {
  kPublished,       ///< `source` names the publication.
  kWorkedOut,       ///< Follows from definitions or geometry; `source` says how.
  kFromMemory,      ///< Recalled from the literature, not re-read.
  kCommonPractice,  ///< Common practice, no source.
  kJudgement,       ///< Ours; `source` says on what grounds.
};

/// \return the mark as the manual prints it: "published", "worked out", "from memory", "common
/// practice, no source", "judgement".
[[nodiscard]] std::string_view MarkText(Mark mark);

/// One coefficient or default of the engine.
struct Coefficient {
  std::string name;
  double value = 0;
  std::string unit;  ///< SI; "-" for a bare number.
  std::string
      source;  ///< Publication, derivation or grounds. Never empty for kPublished and kWorkedOut.
  Mark mark = Mark::kJudgement;
};

/// \return every coefficient and default of water and tackle, the drag laws and all gear below
/// included. The priors are listed by engine/learn.
[[nodiscard]] std::vector<Coefficient> Coefficients();

/// One thing of the catalogue, by the name a rig file calls it.
struct CatalogueEntry {
  std::string id;    ///< "wire-7x7-0.8mm"
  std::string name;  ///< "7x7 stainless wire, 0.80 mm"
};

[[nodiscard]] std::vector<CatalogueEntry> CatalogueLines();
[[nodiscard]] std::vector<CatalogueEntry> CatalogueBalls();
[[nodiscard]] std::vector<CatalogueEntry> CatalogueFlashers();
[[nodiscard]] std::vector<CatalogueEntry> CatalogueLures();

/// \param id of CatalogueLines, or the same with any other diameter from 0.05 to 5 mm:
/// "wire-7x7-0.84mm". \return the line; a problem that says what to write if there is none of this
/// id.
[[nodiscard]] Expected<Line> MakeLine(std::string_view id);

/// \param id of CatalogueLines or of their construction alone: "wire-7x7". \param diameter_m > 0.
/// \return a line of that construction in this diameter.
[[nodiscard]] Expected<Line> MakeLine(std::string_view id, double diameter_m);

/// A line of any diameter, of the usual construction of its kind (wire: 1x7).
/// \param diameter_m > 0.
[[nodiscard]] Line MakeLine(LineKind kind, double diameter_m);

/// The forms of ball. Finned: a fish-shaped casting with a tail; flat: a disc that swims on its
/// edge.
enum class BallShape { kSphere, kFinned, kFlat };

/// \return the shape called "sphere", "finned" or "flat"; nothing for another word.
[[nodiscard]] std::optional<BallShape> FindBallShape(std::string_view word);

/// Density of ball lead, kg/m3.
inline constexpr double kLeadDensity_kg_per_m3 = 11340.0;

/// A ball of any mass. Its size follows from mass and density, its drag from size and shape; its
/// centre hangs below the eye by half its height. \param mass_kg > 0. \param density_kg_per_m3 > 0.
[[nodiscard]] Body MakeBall(BallShape shape, double mass_kg,
                            double density_kg_per_m3 = kLeadDensity_kg_per_m3);

/// \param id of CatalogueBalls: "ball-sphere-12lb".
[[nodiscard]] Expected<Body> MakeBall(std::string_view id);
/// \param id of CatalogueFlashers: "flasher-rotating-11in".
[[nodiscard]] Expected<Body> MakeFlasher(std::string_view id);
/// \param id of CatalogueLures: "hoochie".
[[nodiscard]] Expected<Body> MakeLure(std::string_view id);

}  // namespace offplumb::tackle
