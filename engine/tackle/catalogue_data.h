/// \file
/// The figures of the catalogue, each with its source or mark. Only catalogue*.cpp includes this.
#pragma once

#include <array>
#include <string_view>

#include "engine/tackle/catalogue.h"

namespace offplumb::tackle::data {

/// A figure and where it comes from.
struct Figure {
  double value;
  Mark mark;
  std::string_view source;
};

/// How a line is built; with a diameter it makes a line.
struct Construction {
  std::string_view id;
  std::string_view name;
  LineKind kind;
  Figure solid_fraction;
  Figure solid_density;
  Figure modulus;
  Figure normal_drag;
  Figure tangential_drag;
};

/// A diameter in which a construction is listed.
struct Size {
  std::string_view construction;
  double diameter_mm;
};

/// A body of a catalogue: flasher or lure.
struct Piece {
  std::string_view id;
  std::string_view name;
  Figure mass;
  Figure density;
  Figure drag_area;
};

/// A flat piece that spins or sways on the tow: its drag area follows from its size.
struct Plate {
  std::string_view id;
  std::string_view name;
  Figure length;
  Figure width;
  Figure incidence_deg;
  Figure mass;
  Figure density;
};

/// A form of ball that is no sphere. Drag coefficient on the area it shows to the stream.
struct Casting {
  BallShape shape;
  Figure proportion;  ///< Finned: length over height. Flat: height over thickness.
  Figure drag_coefficient;
};

inline constexpr std::string_view kBandCarriesIt =
    "the prior's median for a whole tree; the band holds strumming and wear";
inline constexpr std::string_view kStainless = "stainless steel 316 and 304 lie at 7930 to 7980";

inline constexpr auto kConstructions = std::to_array<Construction>({
    {"wire-1x7",
     "7-strand stainless wire",
     LineKind::kWire,
     {7.0 / 9.0, Mark::kWorkedOut, "seven equal circles inside one of three times their diameter"},
     {8000, Mark::kJudgement, kStainless},
     {160e9, Mark::kFromMemory, "1x7 strand, 150 to 170 GPa on the metal; solid wire has 193 GPa"},
     {1.25, Mark::kJudgement, kBandCarriesIt},
     {0.01, Mark::kFromMemory, "sample cables of oceanographic cable codes; smooth 0.005 to 0.02"}},
    {"wire-7x7",
     "7x7 stainless wire",
     LineKind::kWire,
     {49.0 / 81.0, Mark::kWorkedOut, "7/9 twice: seven strands of seven wires"},
     {8000, Mark::kJudgement, kStainless},
     {90e9, Mark::kFromMemory, "7x7 rope, 70 to 110 GPa on the metal"},
     {1.25, Mark::kJudgement, kBandCarriesIt},
     {0.01, Mark::kFromMemory, "sample cables of oceanographic cable codes; smooth 0.005 to 0.02"}},
    {"braid",
     "8-strand braid",
     LineKind::kBraid,
     {0.75, Mark::kFromMemory, "packing of braids, 0.65 to 0.8"},
     {970, Mark::kFromMemory, "ultra-high-molecular-weight polyethylene fibre"},
     {40e9, Mark::kFromMemory, "braid of such fibre, 20 to 60 GPa on the fibre"},
     {1.2, Mark::kJudgement, kBandCarriesIt},
     {0.02, Mark::kJudgement,
      "between smooth line (0.01) and fibre rope (0.038, from the FAO handbook's rope table)"}},
    {"nylon",
     "nylon monofilament",
     LineKind::kNylon,
     {1.0, Mark::kWorkedOut, "one solid strand"},
     {1140, Mark::kFromMemory, "polyamide"},
     {2.5e9, Mark::kFromMemory, "wet fishing monofilament, 1.5 to 3.5 GPa"},
     {1.2, Mark::kJudgement, kBandCarriesIt},
     {0.01, Mark::kFromMemory, "smooth line, 0.005 to 0.02"}},
    {"fluorocarbon",
     "fluorocarbon monofilament",
     LineKind::kFluorocarbon,
     {1.0, Mark::kWorkedOut, "one solid strand"},
     {1780, Mark::kFromMemory, "polyvinylidene fluoride"},
     {2.0e9, Mark::kFromMemory, "1.5 to 2.5 GPa"},
     {1.2, Mark::kJudgement, kBandCarriesIt},
     {0.01, Mark::kFromMemory, "smooth line, 0.005 to 0.02"}},
});

/// Sizes in use: common practice, no source. Any other diameter can be had.
inline constexpr auto kSizes = std::to_array<Size>({
    {"wire-1x7", 0.6},     {"wire-1x7", 0.7},     {"wire-1x7", 0.8},     {"wire-1x7", 0.9},
    {"wire-1x7", 1.0},     {"wire-7x7", 0.6},     {"wire-7x7", 0.7},     {"wire-7x7", 0.8},
    {"wire-7x7", 0.9},     {"wire-7x7", 1.0},     {"braid", 0.2},        {"braid", 0.3},
    {"braid", 0.4},        {"braid", 0.5},        {"braid", 0.6},        {"braid", 0.7},
    {"braid", 0.8},        {"nylon", 0.35},       {"nylon", 0.4},        {"nylon", 0.45},
    {"nylon", 0.5},        {"nylon", 0.55},       {"nylon", 0.6},        {"nylon", 0.7},
    {"nylon", 0.8},        {"fluorocarbon", 0.4}, {"fluorocarbon", 0.5}, {"fluorocarbon", 0.6},
    {"fluorocarbon", 0.7}, {"fluorocarbon", 0.8},
});

/// Ball weights in use: common practice, no source.
inline constexpr auto kBallWeights_lb = std::to_array<double>({6, 8, 10, 12, 15, 18, 20});

/// The pound, exact: NIST SP 811 (2008), appendix B.8.
inline constexpr double kPound_kg = 0.45359237;

inline constexpr Figure kLead{kLeadDensity_kg_per_m3, Mark::kFromMemory,
                              "pure lead; casting lead with 2 to 6 % antimony has 11000 to 11200, "
                              "0.2 % of the weight in water"};

inline constexpr auto kCastings = std::to_array<Casting>({
    {BallShape::kFinned,
     {3.0, Mark::kJudgement, "a spheroid three times as long as high"},
     {0.20, Mark::kFromMemory,
      "finned streamlined casting, 0.15 to 0.25 on frontal area, after S. F. Hoerner (1965)"}},
    {BallShape::kFlat,
     {4.0, Mark::kJudgement, "a disc four times as high as thick"},
     {0.25, Mark::kFromMemory,
      "disc edge-on with a tail, 0.2 to 0.3 on edge area, after S. F. Hoerner (1965)"}},
});

inline constexpr std::string_view kSpinning =
    "mean of 15 to 25 degrees guessed for a plate that spins about the tow, at its steep end";
inline constexpr std::string_view kSwaying =
    "a plate that sways stands flatter than one that spins";
inline constexpr std::string_view kPlateMass = "2 mm of plastic with its swivels";
inline constexpr std::string_view kPlateDensity = "plastic at 1200 and metal swivels together";
inline constexpr std::string_view kMetalMass = "1 mm of brass or steel with its swivels";

inline constexpr auto kPlates = std::to_array<Plate>({
    {"flasher-rotating-8in",
     "rotating flasher, 8 in",
     {0.20, Mark::kCommonPractice, ""},
     {0.065, Mark::kCommonPractice, ""},
     {25, Mark::kJudgement, kSpinning},
     {0.04, Mark::kJudgement, kPlateMass},
     {1400, Mark::kJudgement, kPlateDensity}},
    {"flasher-rotating-11in",
     "rotating flasher, 11 in",
     {0.28, Mark::kCommonPractice, ""},
     {0.10, Mark::kCommonPractice, ""},
     {25, Mark::kJudgement, kSpinning},
     {0.08, Mark::kJudgement, kPlateMass},
     {1400, Mark::kJudgement, kPlateDensity}},
    {"dodger-swaying-6in",
     "swaying dodger, 6 in",
     {0.15, Mark::kCommonPractice, ""},
     {0.055, Mark::kCommonPractice, ""},
     {17, Mark::kJudgement, kSwaying},
     {0.07, Mark::kJudgement, kMetalMass},
     {8000, Mark::kJudgement, "brass and steel"}},
    {"dodger-swaying-8in",
     "swaying dodger, 8 in",
     {0.20, Mark::kCommonPractice, ""},
     {0.065, Mark::kCommonPractice, ""},
     {17, Mark::kJudgement, kSwaying},
     {0.11, Mark::kJudgement, kMetalMass},
     {8000, Mark::kJudgement, "brass and steel"}},
});

inline constexpr std::string_view kMetalLureDrag =
    "spoons and plugs pull 0.3 to 1.0 N at 1.23 m/s: 0.0004 to 0.0013 m2";
inline constexpr std::string_view kBaitDrag = "less than a spoon of its size unless it rolls";
inline constexpr std::string_view kHandWeighed = "a usual piece of its kind with its hooks";

inline constexpr auto kLures = std::to_array<Piece>({
    {"spoon-small",
     "spoon, 3 in",
     {0.010, Mark::kJudgement, kHandWeighed},
     {8000, Mark::kJudgement, "brass and steel"},
     {0.0005, Mark::kJudgement, kMetalLureDrag}},
    {"spoon-large",
     "spoon, 5 in",
     {0.022, Mark::kJudgement, kHandWeighed},
     {8000, Mark::kJudgement, "brass and steel"},
     {0.0010, Mark::kJudgement, kMetalLureDrag}},
    {"plug-small",
     "plug, 4 in",
     {0.025, Mark::kJudgement, kHandWeighed},
     {1050, Mark::kJudgement, "wood or hollow plastic, hooks"},
     {0.0009, Mark::kJudgement, kMetalLureDrag}},
    {"plug-large",
     "plug, 5 in",
     {0.045, Mark::kJudgement, kHandWeighed},
     {1050, Mark::kJudgement, "wood or hollow plastic, hooks"},
     {0.0013, Mark::kJudgement, kMetalLureDrag}},
    {"hoochie",
     "hoochie, 4 in",
     {0.012, Mark::kJudgement, kHandWeighed},
     {1800, Mark::kJudgement, "soft plastic and steel hooks"},
     {0.0004, Mark::kJudgement, kMetalLureDrag}},
    {"bait-whole",
     "whole bait, 6 in",
     {0.050, Mark::kJudgement, kHandWeighed},
     {1100, Mark::kJudgement, "fish and steel hooks"},
     {0.0003, Mark::kJudgement, kBaitDrag}},
    {"bait-cut",
     "cut-plug bait, 5 in, rolling",
     {0.035, Mark::kJudgement, kHandWeighed},
     {1120, Mark::kJudgement, "fish and steel hooks"},
     {0.0005, Mark::kJudgement, kBaitDrag}},
    {"no-lure",
     "a bare swivel, no lure",
     {0.003, Mark::kJudgement, "a brass swivel"},
     {8400, Mark::kFromMemory, "brass"},
     {0.00003, Mark::kJudgement, "1.1 on 5 mm by 5 mm"}},
});

}  // namespace offplumb::tackle::data
