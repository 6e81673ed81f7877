#include <array>
#include <string>

#include <fmt/format.h>

#include "engine/constants.h"
#include "engine/tackle/catalogue.h"
#include "engine/tackle/catalogue_data.h"
#include "engine/tackle/rig.h"
#include "engine/water/current.h"
#include "engine/water/water.h"

namespace offplumb::tackle {
namespace {

struct Row {
  std::string_view name;
  double value;
  std::string_view unit;
  Mark mark;
  std::string_view source;
};

constexpr std::string_view kCgpm = "3rd General Conference on Weights and Measures (1901)";
constexpr std::string_view kEos80 =
    "EOS-80, UNESCO Technical Papers in Marine Science 36 (1981); Millero and Poisson, Deep-Sea "
    "Research 28A "
    "(1981) 625";
constexpr std::string_view kSharqawy =
    "Sharqawy, Lienhard and Zubair, Desalination and Water Treatment 16 (2010) 354, eqs. (22)-(23)";
constexpr std::string_view kWhite = "F. M. White, Viscous Fluid Flow (1991), eq. (3-225)";
constexpr std::string_view kSuckerBrauer =
    "Sucker and Brauer, Waerme- und Stoffuebertragung 8 (1975) 149";
constexpr std::string_view kHaiderLevenspiel =
    "Haider and Levenspiel, Powder Technology 58 (1989) 63";
constexpr std::string_view kMorrison =
    "F. A. Morrison, An Introduction to Fluid Mechanics (2013), eq. (8.83)";
constexpr std::string_view kHoernerPlate = "S. F. Hoerner, Fluid-Dynamic Drag (1965), section 3-5";
constexpr std::string_view kRayleigh = "Rayleigh; H. Lamb, Hydrodynamics (1932), art. 77";
constexpr std::string_view kVandiver = "J. K. Vandiver, OTC 4490 (1983)";
constexpr std::string_view kGovardhan = "Govardhan and Williamson, J. Fluid Mech. 561 (2006) 147";

// The laws' constants stand in the code as in their publications. Here they are listed; the test of
// this list computes each law from the list and compares it with the code.
constexpr auto kRows = std::to_array<Row>({
    {"kGravity_mps2", kGravity_mps2, "m/s2", Mark::kPublished, kCgpm},

    {"kSaltTemperature_C", water::kSaltTemperature_C, "C", Mark::kCommonPractice, ""},
    {"kSaltSalinity_g_per_kg", water::kSaltSalinity_g_per_kg, "g/kg", Mark::kCommonPractice, ""},
    {"kFreshTemperature_C", water::kFreshTemperature_C, "C", Mark::kCommonPractice, ""},
    {"water density, pure, t^0", 999.842594, "kg/m3", Mark::kPublished, kEos80},
    {"water density, pure, t^1", 6.793952e-2, "kg/m3", Mark::kPublished, kEos80},
    {"water density, pure, t^2", -9.095290e-3, "kg/m3", Mark::kPublished, kEos80},
    {"water density, pure, t^3", 1.001685e-4, "kg/m3", Mark::kPublished, kEos80},
    {"water density, pure, t^4", -1.120083e-6, "kg/m3", Mark::kPublished, kEos80},
    {"water density, pure, t^5", 6.536332e-9, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S, t^0", 8.24493e-1, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S, t^1", -4.0899e-3, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S, t^2", 7.6438e-5, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S, t^3", -8.2467e-7, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S, t^4", 5.3875e-9, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S^1.5, t^0", -5.72466e-3, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S^1.5, t^1", 1.0227e-4, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S^1.5, t^2", -1.6546e-6, "kg/m3", Mark::kPublished, kEos80},
    {"water density, S^2", 4.8314e-4, "kg/m3", Mark::kPublished, kEos80},
    {"water viscosity, pure, floor", 4.2844e-5, "Pa s", Mark::kPublished, kSharqawy},
    {"water viscosity, pure, factor", 0.157, "1/(Pa s C2)", Mark::kPublished, kSharqawy},
    {"water viscosity, pure, offset", 64.993, "C", Mark::kPublished, kSharqawy},
    {"water viscosity, pure, constant", 91.296, "1/(Pa s)", Mark::kPublished, kSharqawy},
    {"water viscosity, A, t^0", 1.541, "-", Mark::kPublished, kSharqawy},
    {"water viscosity, A, t^1", 1.998e-2, "1/C", Mark::kPublished, kSharqawy},
    {"water viscosity, A, t^2", -9.52e-5, "1/C2", Mark::kPublished, kSharqawy},
    {"water viscosity, B, t^0", 7.974, "-", Mark::kPublished, kSharqawy},
    {"water viscosity, B, t^1", -7.561e-2, "1/C", Mark::kPublished, kSharqawy},
    {"water viscosity, B, t^2", 4.724e-4, "1/C2", Mark::kPublished, kSharqawy},

    {"kBodyHeight_m", water::kBodyHeight_m, "m", Mark::kJudgement,
     "about a ball's own height, two of a lure's: over it a step of the current is felt"},
    {"kReferenceSpeed_mps", kReferenceSpeed_mps, "m/s", Mark::kJudgement,
     "2.7 mph, the middle of trolling speeds: where a line's drag level is stated"},
    {"White's cylinder, constant", 1.0, "-", Mark::kFromMemory, kWhite},
    {"White's cylinder, factor", 10.0, "-", Mark::kFromMemory, kWhite},
    {"White's cylinder, exponent", -2.0 / 3.0, "-", Mark::kFromMemory, kWhite},
    {"Sucker and Brauer's cylinder, constant", 1.18, "-", Mark::kFromMemory, kSuckerBrauer},
    {"Sucker and Brauer's cylinder, first factor", 6.8, "-", Mark::kFromMemory, kSuckerBrauer},
    {"Sucker and Brauer's cylinder, first exponent", 0.89, "-", Mark::kFromMemory, kSuckerBrauer},
    {"Sucker and Brauer's cylinder, second factor", 1.96, "-", Mark::kFromMemory, kSuckerBrauer},
    {"Sucker and Brauer's cylinder, second exponent", 0.5, "-", Mark::kFromMemory, kSuckerBrauer},
    {"Sucker and Brauer's cylinder, dip", 0.0004, "-", Mark::kFromMemory, kSuckerBrauer},
    {"Sucker and Brauer's cylinder, dip's end", 3.64e-7, "-", Mark::kFromMemory, kSuckerBrauer},
    {"Haider and Levenspiel's sphere, Stokes", 24.0, "-", Mark::kPublished, kHaiderLevenspiel},
    {"Haider and Levenspiel's sphere, A", 0.1806, "-", Mark::kPublished, kHaiderLevenspiel},
    {"Haider and Levenspiel's sphere, B", 0.6459, "-", Mark::kPublished, kHaiderLevenspiel},
    {"Haider and Levenspiel's sphere, C", 0.4251, "-", Mark::kPublished, kHaiderLevenspiel},
    {"Haider and Levenspiel's sphere, D", 6880.95, "-", Mark::kPublished, kHaiderLevenspiel},
    {"Morrison's sphere, Stokes", 24.0, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, second factor", 2.6, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, second scale", 5.0, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, second exponent", 1.52, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, crisis factor", 0.411, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, crisis scale", 2.63e5, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, crisis exponent above", -7.94, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, crisis exponent below", -8.0, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, last exponent", 0.80, "-", Mark::kPublished, kMorrison},
    {"Morrison's sphere, last divisor", 461000.0, "-", Mark::kPublished, kMorrison},
    {"plate broadside, square", 1.10, "-", Mark::kFromMemory, kHoernerPlate},
    {"plate broadside, per aspect", 0.02, "-", Mark::kFromMemory, kHoernerPlate},
    {"inclined plate, 4 + pi sin", 4.0, "-", Mark::kFromMemory, kRayleigh},
    {"strumming drag, factor", 1.043, "-", Mark::kPublished, kVandiver},
    {"strumming drag, exponent", 0.65, "-", Mark::kPublished, kVandiver},
    {"strumming amplitude, factor", 0.41, "-", Mark::kPublished, kGovardhan},
    {"strumming amplitude, exponent", 0.36, "-", Mark::kPublished, kGovardhan},
    {"strumming amplitude, least Reynolds number", 500, "-", Mark::kPublished, kGovardhan},
    {"strumming amplitude, largest Reynolds number", 33000, "-", Mark::kPublished, kGovardhan},

    {"kRodTipTension_N", kRodTipTension_N, "N", Mark::kJudgement, "a loaded rod holds 2 to 6 lb"},
    {"kLineOnReel_m", kLineOnReel_m, "m", Mark::kCommonPractice, ""},
    {"kLargestBoomAngle_rad", kLargestBoomAngle_rad, "rad", Mark::kCommonPractice, ""},
    {"ball lead, density (kLeadDensity_kg_per_m3)", data::kLead.value, "kg/m3", data::kLead.mark,
     data::kLead.source},
    {"pound", data::kPound_kg, "kg", Mark::kPublished, "NIST SP 811 (2008), appendix B.8, exact"},
});

void Add(std::vector<Coefficient>& list, std::string name, const data::Figure& figure,
         std::string unit) {
  list.push_back(
      {std::move(name), figure.value, std::move(unit), std::string(figure.source), figure.mark});
}

void AddConstructions(std::vector<Coefficient>& list) {
  for (const data::Construction& c : data::kConstructions) {
    const std::string id(c.id);
    Add(list, id + ", solid fraction", c.solid_fraction, "-");
    Add(list, id + ", density of the solid", c.solid_density, "kg/m3");
    Add(list, id + ", modulus on the solid", c.modulus, "Pa");
    Add(list, id + ", normal drag coefficient", c.normal_drag, "-");
    Add(list, id + ", tangential drag coefficient", c.tangential_drag, "-");
  }
}

void AddSizes(std::vector<Coefficient>& list) {
  for (const data::Size& size : data::kSizes) {
    list.push_back({fmt::format("{}, listed diameter {} mm", size.construction, size.diameter_mm),
                    size.diameter_mm / 1000, "m", "", Mark::kCommonPractice});
  }
  for (const double pounds : data::kBallWeights_lb) {
    list.push_back({fmt::format("ball, listed weight {} lb", pounds), pounds * data::kPound_kg,
                    "kg", "", Mark::kCommonPractice});
  }
}

void AddCastings(std::vector<Coefficient>& list) {
  for (const data::Casting& casting : data::kCastings) {
    const std::string shape = casting.shape == BallShape::kFinned ? "finned ball" : "flat ball";
    Add(list, shape + ", proportion", casting.proportion, "-");
    Add(list, shape + ", drag coefficient", casting.drag_coefficient, "-");
  }
}

void AddPlates(std::vector<Coefficient>& list) {
  for (const data::Plate& plate : data::kPlates) {
    const std::string id(plate.id);
    Add(list, id + ", length", plate.length, "m");
    Add(list, id + ", width", plate.width, "m");
    Add(list, id + ", mean incidence", plate.incidence_deg, "deg");
    Add(list, id + ", mass", plate.mass, "kg");
    Add(list, id + ", density", plate.density, "kg/m3");
  }
}

void AddLures(std::vector<Coefficient>& list) {
  for (const data::Piece& piece : data::kLures) {
    const std::string id(piece.id);
    Add(list, id + ", mass", piece.mass, "kg");
    Add(list, id + ", density", piece.density, "kg/m3");
    Add(list, id + ", drag area", piece.drag_area, "m2");
  }
}

}  // namespace

std::string_view MarkText(Mark mark) {
  switch (mark) {
    case Mark::kPublished:
      return "published";
    case Mark::kWorkedOut:
      return "worked out";
    case Mark::kFromMemory:
      return "from memory";
    case Mark::kCommonPractice:
      return "common practice, no source";
    case Mark::kJudgement:
      return "judgement";
  }
  return "";
}

std::vector<Coefficient> Coefficients() {
  std::vector<Coefficient> list;
  for (const Row& row : kRows) {
    list.push_back({std::string(row.name), row.value, std::string(row.unit),
                    std::string(row.source), row.mark});
  }
  AddConstructions(list);
  AddSizes(list);
  AddCastings(list);
  AddPlates(list);
  AddLures(list);
  return list;
}

}  // namespace offplumb::tackle
