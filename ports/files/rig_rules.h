/// \file
/// The keys of a rig file and the ranges of what they state. docs/rig-file.md describes them; a
/// test compares; each table's keys stand in its order. Ranges are wide: they keep out slips of the
/// pen, not odd rigs. Judgement.
#pragma once

#include <array>
#include <limits>
#include <string_view>

#include "ports/files/fields.h"

namespace offplumb::ports::rig_rules {

using answers::Dimension;
using answers::Range;

inline constexpr std::size_t kMostRiggers = 6;
inline constexpr std::size_t kMostClips = 20;

inline constexpr auto kRigKeys =
    std::to_array<std::string_view>({"name", "invented", "water", "riggers"});
inline constexpr auto kWaterKeys =
    std::to_array<std::string_view>({"temperature", "salinity", "density", "viscosity"});
inline constexpr auto kRiggerKeys =
    std::to_array<std::string_view>({"name", "boom_tip", "line", "line_on_reel", "largest_angle",
                                     "ball", "counter_marks", "clips"});
inline constexpr auto kPlaceKeys =
    std::to_array<std::string_view>({"ahead", "aft", "starboard", "port", "up"});
inline constexpr auto kMarkKeys = std::to_array<std::string_view>({"reads", "measured"});
inline constexpr auto kClipKeys = std::to_array<std::string_view>(
    {"name", "above_ball", "rod_tip", "rod_tip_tension", "fishing_line", "setback", "setback_line",
     "flasher", "leader", "leader_line", "lure"});
inline constexpr auto kLineKeys = std::to_array<std::string_view>(
    {"from", "kind", "name", "diameter", "normal_drag_coefficient", "tangential_drag_coefficient",
     "strumming", "weight_in_water", "weight_in_air", "stiffness", "solid_fraction", "density",
     "modulus"});
inline constexpr auto kBallKeys = std::to_array<std::string_view>(
    {"from", "weight", "shape", "density", "name", "weight_in_water", "drag_area", "lift_area",
     "side_area", "eye_to_centre"});
inline constexpr auto kPieceKeys =
    std::to_array<std::string_view>({"from", "name", "weight", "density", "weight_in_water",
                                     "drag_area", "pull", "lift_area", "side_area"});

/// A key that holds a table, or a list of tables, and the keys of each.
struct PartRule {
  std::string_view key;
  Keys keys;
};

/// Every such key of a rig file.
inline constexpr auto kParts = std::to_array<PartRule>({{"water", kWaterKeys},
                                                        {"riggers", kRiggerKeys},
                                                        {"boom_tip", kPlaceKeys},
                                                        {"line", kLineKeys},
                                                        {"ball", kBallKeys},
                                                        {"counter_marks", kMarkKeys},
                                                        {"clips", kClipKeys},
                                                        {"rod_tip", kPlaceKeys},
                                                        {"fishing_line", kLineKeys},
                                                        {"setback_line", kLineKeys},
                                                        {"flasher", kPieceKeys},
                                                        {"leader_line", kLineKeys},
                                                        {"lure", kPieceKeys}});

// Water.
inline constexpr QuantityRule kTemperature{Dimension::kTemperature, {0, 40}};
inline constexpr QuantityRule kSalinity{Dimension::kSalinity, {0, 42}};
inline constexpr QuantityRule kWaterDensity{Dimension::kDensity, {900, 1200}};
inline constexpr QuantityRule kViscosity{Dimension::kViscosity, {1e-7, 1e-5}};

// Rigger.
inline constexpr QuantityRule kAhead{Dimension::kLength, {-30, 30}};
inline constexpr QuantityRule kAside{Dimension::kLength, {-15, 15}};
inline constexpr QuantityRule kUp{Dimension::kLength, {-10, 10}};
inline constexpr QuantityRule kLineOnReel{Dimension::kLength, {1, 3000}};
inline constexpr QuantityRule kLargestAngle{Dimension::kAngle,
                                            {0.0174532925199432, 1.5533430342749535}};  // 1, 89 deg
inline constexpr QuantityRule kMark{Dimension::kLength, {0.1, 3000}};

// Lines.
inline constexpr QuantityRule kDiameter{Dimension::kLength, {0.05e-3, 5e-3}};
inline constexpr Range kSolidFraction{0.05, 1};
inline constexpr QuantityRule kSolidDensity{Dimension::kDensity, {500, 20000}};
inline constexpr QuantityRule kModulus{Dimension::kPressure, {1e7, 1e12}};
inline constexpr Range kNormalDrag{0.01, 10};
inline constexpr Range kTangentialDrag{0, 1};
inline constexpr QuantityRule kLineWeightInWater{Dimension::kForcePerLength, {-2, 10}};
inline constexpr QuantityRule kLineWeightInAir{Dimension::kForcePerLength, {0, 10}};
inline constexpr QuantityRule kStiffness{Dimension::kForce, {10, 1e7}};

// Bodies.
inline constexpr QuantityRule kBallMass{Dimension::kMass, {0.1, 100}};
inline constexpr QuantityRule kBallDensity{Dimension::kDensity, {-1e6, 25000}};
inline constexpr QuantityRule kBallWeightInWater{Dimension::kForce, {-1e4, 1000}};
inline constexpr QuantityRule kPieceMass{Dimension::kMass, {0, 2}};
inline constexpr QuantityRule kPieceDensity{Dimension::kDensity, {20, 20000}};
inline constexpr QuantityRule kPieceWeightInWater{Dimension::kForce, {-20, 20}};
inline constexpr QuantityRule kDragArea{Dimension::kArea, {0, 1}};
inline constexpr QuantityRule kSideArea{Dimension::kArea, {-1, 1}};
inline constexpr QuantityRule kEyeToCentre{Dimension::kLength, {0, 1}};

// Clips.
inline constexpr QuantityRule kAboveBall{Dimension::kLength, {0, 1000}};
inline constexpr QuantityRule kSetback{Dimension::kLength, {0.1, 500}};
inline constexpr QuantityRule kLeader{Dimension::kLength, {0.05, 50}};
inline constexpr QuantityRule kRodTipTension{Dimension::kForce, {0.1, 500}};

}  // namespace offplumb::ports::rig_rules
