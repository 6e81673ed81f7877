// What anglers say of the depth of a ball, and depths worked out once for the same set-ups by
// another program. Common practice, no source: at about 100 ft of count, 12 to 15 lb and 2.5 to
// 3 mph, wire of 0.7 to 1.0 mm loses around a tenth of its depth and braid about half of that. No
// speed, ball, diameter or tackle is attached to such rules, so they bound and do not calibrate.
#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "engine/constants.h"
#include "engine/plan/depth.h"
#include "engine/tackle/catalogue.h"
#include "ports/files/rig_file.h"

namespace offplumb {
namespace {

constexpr double kFoot_m = 0.3048;
constexpr double kMph_mps = 0.44704;
constexpr double kPound_kg = 0.45359237;
constexpr double kCount_m = 100 * kFoot_m;

const std::vector<double> kSpeeds_mph{2.5, 2.75, 3.0};

double BallDepth_ft(const tackle::Rigger& rigger, double speed_mph, const water::Water& water) {
  plan::Conditions conditions;
  conditions.water = water;
  conditions.speed_mps = speed_mph * kMph_mps;
  const auto depth = plan::FindDepths(rigger, conditions, kCount_m, nullptr);
  EXPECT_TRUE(depth) << (depth ? "" : depth.error().message);
  return depth ? depth->figures.ball_depth_m.median / kFoot_m : std::nan("");
}

// 1 The catalogue's gear and the example within the bounds of common practice.

struct Set {
  std::string line;
  std::string ball;
  std::string flasher;  ///< Empty: none.
};

/// Boom 1 m up, clip 4 ft above the ball, 20 ft of setback, rod tip 2 m up: the example's.
tackle::Rigger WholeTree(const Set& set) {
  tackle::Rigger rigger;
  rigger.name = set.line + ", " + set.ball + ", " + set.flasher;
  rigger.boom_tip_m = {0, 0, -1};
  rigger.line = tackle::MakeLine(set.line).value();
  rigger.ball = tackle::MakeBall(set.ball).value();
  rigger.line_on_reel_m = tackle::kLineOnReel_m;
  rigger.largest_boom_angle_rad = tackle::kLargestBoomAngle_rad;
  tackle::Clip clip;
  clip.above_ball_m = 4 * kFoot_m;
  clip.rod_tip_m = {0.6, 0, -2};
  clip.rod_tip_tension_N = tackle::kRodTipTension_N;
  clip.fishing_line = tackle::MakeLine("nylon-0.55mm").value();
  clip.trail.setback_m = 20 * kFoot_m;
  clip.trail.setback_line = clip.fishing_line;
  clip.trail.lure = tackle::MakeLure("spoon-small").value();
  if (!set.flasher.empty()) {
    clip.trail.flasher = tackle::MakeFlasher(set.flasher).value();
    clip.trail.leader_m = 3.5 * kFoot_m;
    clip.trail.leader_line = tackle::MakeLine("nylon-0.7mm").value();
  }
  rigger.clips = {clip};
  return rigger;
}

/// 12 and 15 lb of every shape, with every flasher and without.
std::vector<Set> Sets(const std::vector<std::string>& lines) {
  std::vector<Set> sets;
  std::vector<std::string> flashers{""};
  for (const auto& entry : tackle::CatalogueFlashers()) flashers.push_back(entry.id);
  for (const std::string& line : lines) {
    for (const char* shape : {"sphere", "finned", "flat"}) {
      for (const char* pounds : {"12", "15"}) {
        for (const std::string& flasher : flashers) {
          sets.push_back({line, std::string("ball-") + shape + "-" + pounds + "lb", flasher});
        }
      }
    }
  }
  return sets;
}

void ExpectWithin(const std::vector<std::string>& lines, double least_ft, double most_ft) {
  for (const Set& set : Sets(lines)) {
    for (const double mph : kSpeeds_mph) {
      const tackle::Rigger rigger = WholeTree(set);
      const double depth_ft = BallDepth_ft(rigger, mph, water::UsualSaltWater());
      EXPECT_GE(depth_ft, least_ft) << rigger.name << " at " << mph << " mph";
      EXPECT_LE(depth_ft, most_ft) << rigger.name << " at " << mph << " mph";
    }
  }
}

TEST(CommonPractice, WireAtAHundredFeetLiesBetween76And98) {
  ExpectWithin(
      {"wire-1x7-0.7mm", "wire-7x7-0.8mm", "wire-1x7-0.8mm", "wire-1x7-0.9mm", "wire-7x7-1mm"}, 76,
      98);
}

// Braid of 0.5 to 0.7 mm, as it is used. Thinner braid with the least drag behind it goes past the
// bound: 0.4 mm, 15 lb finned, no flasher, 2.5 mph comes to 99.2 ft, of which 1.2 ft is stretch.
TEST(CommonPractice, BraidAtAHundredFeetLiesBetween78And99) {
  ExpectWithin({"braid-0.5mm", "braid-0.6mm", "braid-0.7mm"}, 78, 99);
}

// "The same set-up": what changes is the line, as each is used, wire of 0.8 mm and braid of 0.5.
TEST(CommonPractice, BraidIsDeeperThanWireAtTheSameSetUp) {
  for (Set set : Sets({"wire-1x7-0.8mm"})) {
    for (const double mph : kSpeeds_mph) {
      const double wire_ft = BallDepth_ft(WholeTree(set), mph, water::UsualSaltWater());
      Set braid = set;
      braid.line = "braid-0.5mm";
      EXPECT_GT(BallDepth_ft(WholeTree(braid), mph, water::UsualSaltWater()), wire_ft)
          << set.ball << " " << set.flasher << " at " << mph;
    }
  }
}

TEST(CommonPractice, HoldsOfTheExampleRigs) {
  const std::string folder = std::string(OFFPLUMB_SOURCE_DIR) + "/examples/rigs/";
  for (const char* name : {"one-rigger.toml", "two-riggers.toml"}) {
    const auto file = ports::ReadRigFile(folder + name);
    ASSERT_TRUE(file) << name;
    for (const tackle::Rigger& rigger : file->rig.riggers) {
      const bool wire = rigger.line.kind == tackle::LineKind::kWire;
      for (const double mph : kSpeeds_mph) {
        const double depth_ft = BallDepth_ft(rigger, mph, water::UsualSaltWater());
        EXPECT_GE(depth_ft, wire ? 76 : 78) << name << " " << rigger.name << " at " << mph;
        EXPECT_LE(depth_ft, wire ? 98 : 99) << name << " " << rigger.name << " at " << mph;
      }
    }
  }
}

// 2 Depths in ft, printed to 0.1, worked out by a separate program (an adaptive integrator of order
// 8 at a tolerance of 1e-11) for constant coefficients: sea water of 1025 kg/m3, lead of
// 11340 kg/m3, a line that does not stretch, 0.8 mm wire of 0.02674 N/m in water.

constexpr water::Water kWater{1025, 1.35e-6};

tackle::Line Constant(tackle::LineKind kind, double diameter_m, double cn, double in_water_N_per_m,
                      double in_air_N_per_m) {
  tackle::Line line;
  line.kind = kind;
  line.diameter_m = diameter_m;
  line.normal_drag_coefficient = cn;
  line.constant_drag = true;
  line.tangential_drag_coefficient = 0.01;
  line.weight_in_water_N_per_m = in_water_N_per_m;
  line.weight_in_air_N_per_m = in_air_N_per_m;
  line.stiffness_N = INFINITY;
  return line;
}

tackle::Line Wire(double cn) {
  return Constant(tackle::LineKind::kWire, 0.0008, cn, 0.02674178, 0.0307);
}

tackle::Body StatedBody(double weight_in_water_N, double drag_area_m2) {
  tackle::Body body;
  body.weight_in_water_N = weight_in_water_N;
  body.drag_area_m2 = drag_area_m2;
  body.drag_source = tackle::DragSource::kStated;
  return body;
}

/// A lead sphere of constant drag coefficient, told at its eye.
tackle::Body LeadSphere(double pounds, double drag_coefficient) {
  const double mass_kg = pounds * kPound_kg;
  const double diameter_m = std::cbrt(6 * mass_kg / (kPi * tackle::kLeadDensity_kg_per_m3));
  return StatedBody(mass_kg * kGravity_mps2 * (1 - 1025 / tackle::kLeadDensity_kg_per_m3),
                    drag_coefficient * kPi / 4 * diameter_m * diameter_m);
}

tackle::Rigger Rigger(const tackle::Line& line, const tackle::Body& ball) {
  tackle::Rigger rigger;
  rigger.line = line;
  rigger.ball = ball;
  rigger.line_on_reel_m = tackle::kLineOnReel_m;
  rigger.largest_boom_angle_rad = tackle::kLargestBoomAngle_rad;
  return rigger;
}

// Ball and line alone from the waterline, Cd 0.43. All is stated: the depths are met to the digit
// printed, half a tenth and a thousandth for the roundings of both programs.
TEST(WorkedOutDepths, OfBallAndLineAlone) {
  const double coefficients[] = {1.0, 1.2, 1.5, 1.8, 2.0, 2.2};
  const struct {
    double pounds, mph;
    double depth_ft[6];
  } rows[] = {
      {12, 2.50, {97.7, 96.9, 95.7, 94.2, 93.2, 92.2}},
      {12, 2.75, {96.7, 95.7, 93.9, 92.0, 90.7, 89.4}},
      {12, 3.00, {95.5, 94.1, 91.9, 89.5, 87.9, 86.3}},
      {15, 2.50, {98.4, 97.9, 97.0, 96.0, 95.2, 94.5}},
      {15, 2.75, {97.7, 97.0, 95.7, 94.4, 93.4, 92.4}},
      {15, 3.00, {96.8, 95.8, 94.2, 92.4, 91.2, 89.9}},
  };
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < 6; ++i) {
      const tackle::Rigger rigger = Rigger(Wire(coefficients[i]), LeadSphere(row.pounds, 0.43));
      EXPECT_NEAR(BallDepth_ft(rigger, row.mph, kWater), row.depth_ft[i], 0.051)
          << row.pounds << " lb at " << row.mph << " mph, Cn " << coefficients[i];
    }
  }
}

/// Stated: rod tip 2 m up with 15 N, 0.55 mm nylon of Cn 1.2, clip 1.2 m above the ball, 20 ft of
/// setback, a flasher of 0.010 m2. Not stated and taken from case G1 of
/// whole_tree_reference_test.cpp: the rod tip 0.6 m ahead, the lure (0.0008 m2, 0.15 N), the
/// flasher's weight (0.3 N), 1.1 m of 0.7 mm leader and the lines' weights.
tackle::Clip StatedClip(bool flasher) {
  const auto nylon = [](double diameter_m, double in_water, double in_air) {
    return Constant(tackle::LineKind::kNylon, diameter_m, 1.2, in_water, in_air);
  };
  tackle::Clip clip;
  clip.above_ball_m = 1.2;
  clip.rod_tip_m = {0.6, 0, -2};
  clip.rod_tip_tension_N = 15;
  clip.fishing_line = nylon(0.00055, 0.000268, 0.00266);
  clip.trail.setback_m = 20 * kFoot_m;
  clip.trail.setback_line = clip.fishing_line;
  clip.trail.lure = StatedBody(0.15, 0.0008);
  if (flasher) {
    clip.trail.flasher = StatedBody(0.3, 0.010);
    clip.trail.leader_m = 1.1;
    clip.trail.leader_line = nylon(0.0007, 0.00043, 0.0043);
  }
  return clip;
}

// The whole tree, wire 0.8 mm or braid 0.5 mm at Cn 1.2, boom 1 m up, without and with a flasher. A
// tenth and a half: what is not stated moves the depths by that (a lure of 0.001 instead of
// 0.0008 m2 by 0.09 ft; the rod tip above the boom tip instead of 0.6 m ahead by 0.15 ft; a ball of
// Cd 0.43 instead of G1's 0.47 by 0.14 ft, all means over the table).
TEST(WorkedOutDepths, OfTheWholeTree) {
  const struct {
    double pounds, mph;
    double wire_ft[2], braid_ft[2];
  } rows[] = {
      {12, 2.50, {92.5, 88.7}, {95.0, 91.4}}, {12, 2.75, {89.8, 85.0}, {93.1, 88.2}},
      {12, 3.00, {86.8, 80.9}, {90.8, 84.7}}, {15, 2.50, {94.9, 92.0}, {96.6, 94.0}},
      {15, 2.75, {92.9, 89.1}, {95.2, 91.6}}, {15, 3.00, {90.5, 85.8}, {93.5, 88.9}},
  };
  const tackle::Line braid = Constant(tackle::LineKind::kBraid, 0.0005, 1.2, -0.0002, 0.002);
  for (const auto& row : rows) {
    for (const bool flasher : {false, true}) {
      tackle::Rigger rigger = Rigger(Wire(1.2), LeadSphere(row.pounds, 0.47));
      rigger.boom_tip_m = {0, 0, -1};
      rigger.clips = {StatedClip(flasher)};
      EXPECT_NEAR(BallDepth_ft(rigger, row.mph, kWater), row.wire_ft[flasher], 0.15)
          << "wire, " << row.pounds << " lb at " << row.mph << " mph, flasher " << flasher;
      rigger.line = braid;
      EXPECT_NEAR(BallDepth_ft(rigger, row.mph, kWater), row.braid_ft[flasher], 0.15)
          << "braid, " << row.pounds << " lb at " << row.mph << " mph, flasher " << flasher;
    }
  }
}

}  // namespace
}  // namespace offplumb
