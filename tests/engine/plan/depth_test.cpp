// Count to depths: the figures are the solved tree's, in the signs of the contract, and the bands
// are the ensemble's quantiles.
#include "engine/plan/depth.h"

#include <algorithm>
#include <cmath>
#include <map>

#include <gtest/gtest.h>

#include "tests/engine/plan/rigs.h"

namespace offplumb::plan {
namespace {

using learn::Input;
using testing::DepthsOf;
using testing::kFoot_m;
using testing::kMph_mps;
using testing::kSolver_m;
using testing::StackedRigger;
using testing::Trolling;
using testing::UsualRigger;

constexpr double kCount_m = 100 * kFoot_m;

void ExpectSame(RiggerFigures<Band> a, RiggerFigures<Band> b, double tolerance) {
  const auto x = Fields(a);
  const auto y = Fields(b);
  ASSERT_EQ(x.size(), y.size());
  for (std::size_t i = 0; i < x.size(); ++i) {
    EXPECT_NEAR(x[i]->median, y[i]->median, tolerance) << "figure " << i;
  }
}

TEST(FindDepths, TellsTheSolvedTree) {
  const tackle::Rigger rigger = StackedRigger();
  const RiggerDepth depth = DepthsOf(rigger, Trolling(2.5), kCount_m);
  tow::SteadySolver solver;
  tow::SteadyTree tree;
  solver.Solve(MakeProblem(rigger, Trolling(2.5), kCount_m, learn::MedianDraw()), tree);
  ASSERT_TRUE(tree.usable());
  const RiggerFigures<Band>& f = depth.figures;
  EXPECT_EQ(depth.name, "stacked");
  EXPECT_EQ(f.ball_depth_m.median, tree.ball_m.z());
  EXPECT_EQ(f.ball_trail_m.median, rigger.boom_tip_m.x() - tree.ball_m.x());
  EXPECT_EQ(f.ball_side_m.median, tree.ball_m.y() - rigger.boom_tip_m.y());
  EXPECT_EQ(f.tension_boom_N.median, tree.tension_boom_N);
  EXPECT_EQ(f.tension_ball_N.median, tree.tension_ball_N);
  EXPECT_EQ(f.angle_boom_rad.median, tree.angle_boom_rad);
  EXPECT_EQ(f.length_m.median, tree.stretched_m);
  ASSERT_EQ(f.clips.size(), 2u);
  for (std::size_t i = 0; i < 2; ++i) {
    const tow::ClipState& clip = tree.clips[i];
    EXPECT_EQ(f.clips[i].clip_depth_m.median, clip.clip_m.z());
    EXPECT_EQ(f.clips[i].leader_pull_N.median, clip.trail_force_N.norm());
    EXPECT_EQ(f.clips[i].line_pull_N.median, clip.fishing_line_force_N.norm());
    EXPECT_EQ(f.clips[i].clip_net_N.median,
              (clip.trail_force_N + clip.fishing_line_force_N).norm());
    EXPECT_EQ(f.clips[i].fishing_line_m.median, clip.fishing_line_m);
    EXPECT_EQ(f.clips[i].lure_depth_m.median, clip.lure_m.z());
  }
}

TEST(FindDepths, HangsTogether) {
  const tackle::Rigger rigger = StackedRigger();
  const RiggerFigures<Band> f = DepthsOf(rigger, Trolling(2.5), kCount_m).figures;
  // The line from boom to eye is count and boom height long, and stretched by its pull.
  EXPECT_GT(f.length_m.median, kCount_m + 1);
  EXPECT_LT(f.length_m.median, (kCount_m + 1) * 1.02);
  EXPECT_LT(f.ball_depth_m.median, kCount_m);
  EXPECT_GT(f.ball_trail_m.median, 0);
  for (std::size_t i = 0; i < 2; ++i) {
    const ClipFigures<Band>& clip = f.clips[i];
    // A clip is above the ball by no more than the line between them, and the lure behind it by no
    // more than its setback and leader.
    const double above = f.ball_depth_m.median - clip.clip_depth_m.median;
    EXPECT_GT(above, 0.8 * rigger.clips[i].above_ball_m);
    EXPECT_LT(above, rigger.clips[i].above_ball_m * 1.02 + rigger.ball.eye_to_centre_m);
    EXPECT_GT(clip.lure_trail_m.median, f.ball_trail_m.median);
    EXPECT_GT(clip.fishing_line_m.median, clip.clip_depth_m.median + 2);
    // The two pulls point apart: one aft, one up and ahead.
    EXPECT_LT(clip.clip_net_N.median, clip.leader_pull_N.median + clip.line_pull_N.median);
    EXPECT_GT(clip.clip_net_N.median,
              std::abs(clip.leader_pull_N.median - clip.line_pull_N.median));
  }
}

TEST(FindDepths, IsMeasuredFromTheBoomTip) {
  tackle::Rigger rigger = UsualRigger();
  const RiggerFigures<Band> here = DepthsOf(rigger, Trolling(2.5), kCount_m).figures;
  const Eigen::Vector3d moved(1.5, 4, 0);
  rigger.boom_tip_m += moved;
  rigger.clips[0].rod_tip_m += moved;
  ExpectSame(DepthsOf(rigger, Trolling(2.5), kCount_m).figures, here, kSolver_m);
}

TEST(FindDepths, GivesTheWaterSpeedWhereEachHangs) {
  Conditions conditions = Trolling(2.5);
  const double u = conditions.speed_mps;
  // Below 10 m the water comes 0.3 m/s more from ahead, below 27 m it goes 0.4 m/s to starboard.
  conditions.current.points = {{0, {0, 0}}, {10, {-0.3, 0}}, {27, {0, 0.4}}};
  const RiggerFigures<Band> f = DepthsOf(StackedRigger(), conditions, kCount_m).figures;
  const auto expected = [&](double depth_m) {
    return depth_m > 27 ? std::hypot(u, 0.4) : depth_m > 10 ? u + 0.3 : u;
  };
  EXPECT_NEAR(f.ball_water_speed_mps.median, expected(f.ball_depth_m.median), 1e-12);
  for (const ClipFigures<Band>& clip : f.clips) {
    EXPECT_NEAR(clip.lure_water_speed_mps.median, expected(clip.lure_depth_m.median), 1e-12);
  }
  // The case has all of it: the ball and the stacked lure hang in different layers.
  EXPECT_GT(f.ball_depth_m.median - f.clips[1].lure_depth_m.median, 5);
}

/// A rig in the middle plane of the boat.
tackle::Rigger MiddleRigger() {
  tackle::Rigger rigger = UsualRigger();
  rigger.boom_tip_m.y() = 0;
  rigger.clips[0].rod_tip_m.y() = 0;
  return rigger;
}

TEST(FindDepths, PutsGearToStarboardWhenTheDeepWaterSetsThere) {
  Conditions conditions = Trolling(2.5);
  // The way of the water is given by the compass: toward east, with the bow north and then west.
  conditions.current = testing::TwoLayers({0, 0}, 8, {0, 0.3});
  const RiggerFigures<Band> bow_north = DepthsOf(MiddleRigger(), conditions, kCount_m).figures;
  EXPECT_GT(bow_north.ball_side_m.median, 1);
  EXPECT_GT(bow_north.clips[0].lure_side_m.median, bow_north.ball_side_m.median);

  conditions.current = testing::TwoLayers({0, 0}, 8, {0, -0.3});
  const RiggerFigures<Band> to_port = DepthsOf(MiddleRigger(), conditions, kCount_m).figures;
  EXPECT_NEAR(to_port.ball_side_m.median, -bow_north.ball_side_m.median, kSolver_m);
  EXPECT_NEAR(to_port.ball_depth_m.median, bow_north.ball_depth_m.median, kSolver_m);

  conditions.heading_rad = -kPi / 2;
  conditions.current = testing::TwoLayers({0, 0}, 8, {0.3, 0});  // North is starboard of west.
  ExpectSame(DepthsOf(MiddleRigger(), conditions, kCount_m).figures, bow_north, kSolver_m);
}

TEST(FindDepths, HangsInThePlaneOfMotionInStillWater) {
  const RiggerFigures<Band> f = DepthsOf(MiddleRigger(), Trolling(2.5), kCount_m).figures;
  EXPECT_NEAR(f.ball_side_m.median, 0, 1e-12);
  EXPECT_NEAR(f.clips[0].lure_side_m.median, 0, 1e-12);
}

TEST(FindDepths, BySpeedThroughWaterCountsOnlyTheDifferenceFromTheSurface) {
  Conditions conditions = Trolling(2.5);
  conditions.heading_rad = 0.4;
  conditions.current = testing::TwoLayers({0, 0}, 8, {-0.2, 0.25});
  const RiggerFigures<Band> f = DepthsOf(UsualRigger(), conditions, kCount_m).figures;
  conditions.current = testing::TwoLayers({0.7, -0.4}, 8, {0.5, -0.15});
  ExpectSame(DepthsOf(UsualRigger(), conditions, kCount_m).figures, f, kSolver_m);
  conditions.current = testing::OneLayer({0.7, -0.4});
  const RiggerFigures<Band> carried = DepthsOf(UsualRigger(), conditions, kCount_m).figures;
  conditions.current = {};
  ExpectSame(DepthsOf(UsualRigger(), conditions, kCount_m).figures, carried, kSolver_m);
}

// The boat makes 1.2 m/s along its bow through water that goes 0.4 m/s another way: what is
// measured over ground is the sum of the two.
TEST(FindDepths, OverGroundIsThroughTheWaterThatTheCurrentCarries) {
  Conditions through = Trolling(0);
  through.speed_mps = 1.2;
  through.heading_rad = 0.9;
  const RiggerFigures<Band> want = DepthsOf(UsualRigger(), through, kCount_m).figures;
  for (const double toward_rad : {0.9, 2.0, 4.2}) {
    const Eigen::Vector2d current =
        0.4 * Eigen::Vector2d(std::cos(toward_rad), std::sin(toward_rad));
    const Eigen::Vector2d ground =
        1.2 * Eigen::Vector2d(std::cos(through.heading_rad), std::sin(through.heading_rad)) +
        current;
    Conditions over = through;
    over.speed_kind = SpeedKind::kOverGround;
    over.speed_mps = ground.norm();
    over.course_rad = std::atan2(ground.y(), ground.x());
    over.current = testing::OneLayer(current);
    ExpectSame(DepthsOf(UsualRigger(), over, kCount_m).figures, want, kSolver_m);
  }
}

TEST(FindDepths, WithoutEnsembleIsCertain) {
  const RiggerDepth depth = DepthsOf(UsualRigger(), Trolling(2.75), kCount_m);
  RiggerFigures<Band> figures = depth.figures;
  ASSERT_EQ(Fields(figures).size(), 8u + 11u);
  for (const Band* band : Fields(figures)) {
    EXPECT_EQ(band->low, band->median);
    EXPECT_EQ(band->high, band->median);
  }
  EXPECT_FALSE(depth.dominant);
  EXPECT_EQ(depth.members, 0);
}

TEST(FindDepths, SamplesTheShapeFromBoomToEye) {
  const RiggerDepth depth = DepthsOf(UsualRigger(), Trolling(2.75), kCount_m);
  ASSERT_GE(depth.shape.main_line.size(), 10u);
  EXPECT_LT((depth.shape.main_line.front() - UsualRigger().boom_tip_m).norm(), kSolver_m);
  EXPECT_LT((depth.shape.main_line.back() - depth.median.eye_m).norm(), kSolver_m);
}

TEST(FindDepths, SaysWhyNothingHangs) {
  tackle::Rigger rigger = UsualRigger();
  rigger.clips[0].rod_tip_tension_N = 200;  // Holds up more than the ball weighs.
  const auto depth = FindDepths(rigger, Trolling(2.75), kCount_m, nullptr);
  ASSERT_FALSE(depth);
  EXPECT_EQ(depth.error().kind, ProblemKind::kCannotBeDone);
  EXPECT_EQ(depth.error().message, tow::Describe(tow::SteadyStatus::kMainLineSlack));
  EXPECT_FALSE(depth.error().remedy.empty());
}

// Bands.

/// Every figure of every member, each solved from scratch.
std::vector<std::vector<double>> SolveAll(const tackle::Rigger& rigger,
                                          const Conditions& conditions,
                                          const learn::Ensemble& ensemble) {
  std::vector<std::vector<double>> values;
  for (const learn::Draw& draw : ensemble.members) {
    tow::SteadySolver solver;
    tow::SteadyTree tree;
    solver.Solve(MakeProblem(rigger, conditions, kCount_m, draw), tree);
    EXPECT_TRUE(tree.usable());
    RiggerFigures<double> figures = FiguresOf(tree, rigger.boom_tip_m);
    const auto fields = Fields(figures);
    values.resize(fields.size());
    for (std::size_t i = 0; i < fields.size(); ++i) values[i].push_back(*fields[i]);
  }
  return values;
}

TEST(FindDepths, BandsAreTheQuantilesOfTheEnsemblesAnswers) {
  const tackle::Rigger rigger = UsualRigger();
  const learn::Ensemble ensemble = learn::PriorEnsemble();
  RiggerDepth depth = DepthsOf(rigger, Trolling(2.5), kCount_m, &ensemble);
  EXPECT_EQ(depth.members, 128);
  EXPECT_EQ(depth.unusable, 0);
  auto values = SolveAll(rigger, Trolling(2.5), ensemble);
  const auto bands = Fields(depth.figures);
  ASSERT_EQ(bands.size(), values.size());
  for (std::size_t i = 0; i < bands.size(); ++i) {
    std::sort(values[i].begin(), values[i].end());
    // 128 * 0.05 + 0.5 = 6.9: nine tenths of the way from the 6th to the 7th.
    EXPECT_NEAR(bands[i]->low, 0.1 * values[i][5] + 0.9 * values[i][6], kSolver_m) << i;
    EXPECT_NEAR(bands[i]->high, 0.1 * values[i][122] + 0.9 * values[i][121], kSolver_m) << i;
  }
}

TEST(FindDepths, BandsHoldTheMedianAndAreTheSameEveryTime) {
  const learn::Ensemble ensemble = learn::PriorEnsemble();
  RiggerDepth once = DepthsOf(UsualRigger(), Trolling(2.75), kCount_m, &ensemble);
  RiggerDepth again = DepthsOf(UsualRigger(), Trolling(2.75), kCount_m, &ensemble);
  const RiggerDepth certain = DepthsOf(UsualRigger(), Trolling(2.75), kCount_m);
  EXPECT_EQ(once.figures.ball_depth_m.median, certain.figures.ball_depth_m.median);
  EXPECT_EQ(once.dominant, again.dominant);
  const auto a = Fields(once.figures);
  const auto b = Fields(again.figures);
  for (std::size_t i = 0; i < a.size(); ++i) {
    EXPECT_LE(a[i]->low, a[i]->median) << i;
    EXPECT_GE(a[i]->high, a[i]->median) << i;
    EXPECT_EQ(a[i]->low, b[i]->low) << i;
    EXPECT_EQ(a[i]->high, b[i]->high) << i;
  }
  // A band worth showing: 100 ft of the usual rig is uncertain by feet on either side.
  EXPECT_GT(once.figures.ball_depth_m.high - once.figures.ball_depth_m.low, 2 * kFoot_m);
}

// The usual rig's band is 2.5 m wide with a flasher that is guessed, 2.1 m with one that is
// weighed.
TEST(FindDepths, BandNarrowsByATenthWhenTheFlasherIsWeighed) {
  const learn::Ensemble ensemble = learn::PriorEnsemble();
  tackle::Rigger rigger = UsualRigger();
  const auto width = [&] {
    const Band band = DepthsOf(rigger, Trolling(2.5), kCount_m, &ensemble).figures.ball_depth_m;
    return band.high - band.low;
  };
  const double guessed_m = width();
  rigger.clips[0].trail.flasher->drag_source = tackle::DragSource::kPull;
  rigger.clips[0].trail.lure.drag_source = tackle::DragSource::kPull;
  EXPECT_LT(width(), 0.9 * guessed_m);
}

TEST(FindDepths, CountsTheDrawsThatHaveNoShape) {
  // A rod that just holds its line at the medians lets go in some of the draws.
  tackle::Rigger rigger = UsualRigger();
  rigger.clips[0].rod_tip_tension_N = 30;
  rigger.ball = tackle::MakeBall("ball-sphere-8lb").value();
  const learn::Ensemble ensemble = learn::PriorEnsemble();
  const RiggerDepth depth = DepthsOf(rigger, Trolling(2), kCount_m, &ensemble);
  EXPECT_EQ(depth.members, 128);
  EXPECT_GT(depth.unusable, 0);
  EXPECT_LT(depth.unusable, 64);
}

// The input that contributes most.

/// How far the ball moves between the 5 % and the 95 % of one input, each solved from scratch.
std::map<Input, double> Swings(const tackle::Rigger& rigger, const Conditions& conditions) {
  std::map<Input, double> swings;
  for (const learn::PriorEntry& entry : learn::Prior()) {
    double depth_m[2] = {};
    for (int side = 0; side < 2; ++side) {
      tow::SteadySolver solver;
      tow::SteadyTree tree;
      const double normal = side == 0 ? -learn::kBandNormal : learn::kBandNormal;
      solver.Solve(MakeProblem(rigger, conditions, kCount_m, learn::DrawAt(entry.input, normal)),
                   tree);
      EXPECT_TRUE(tree.usable());
      depth_m[side] = tree.ball_m.z();
    }
    swings[entry.input] = std::abs(depth_m[1] - depth_m[0]);
  }
  return swings;
}

Input Largest(const std::map<Input, double>& swings) {
  return std::max_element(swings.begin(), swings.end(),
                          [](const auto& a, const auto& b) { return a.second < b.second; })
      ->first;
}

TEST(DominantInput, IsTheOneThatMovesTheBallMost) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(2);
  Conditions over_ground = Trolling(2.5);
  over_ground.speed_kind = SpeedKind::kOverGround;
  for (const tackle::Rigger& rigger : {testing::BareRigger(), UsualRigger(), StackedRigger()}) {
    for (const Conditions& conditions : {Trolling(2), Trolling(3), over_ground}) {
      const RiggerDepth depth = DepthsOf(rigger, conditions, kCount_m, &ensemble);
      ASSERT_TRUE(depth.dominant);
      EXPECT_EQ(*depth.dominant, Largest(Swings(rigger, conditions))) << rigger.name;
    }
  }
}

// Inputs that a rigger does not depend on move nothing, and all that move it are listed.
TEST(DominantInput, IsSoughtAmongAllThatMatter) {
  for (const tackle::Rigger& rigger : {testing::BareRigger(), UsualRigger(), StackedRigger()}) {
    const std::vector<Input> inputs = InputsOf(rigger, Trolling(2.5));
    for (const auto& [input, swing_m] : Swings(rigger, Trolling(2.5))) {
      const bool listed = std::find(inputs.begin(), inputs.end(), input) != inputs.end();
      EXPECT_EQ(listed, swing_m > 10 * kSolver_m)
          << rigger.name << ": " << learn::Prior()[static_cast<std::size_t>(input)].id;
    }
  }
}

TEST(DominantInput, IsTheUnknownCurrentWhenOnlyTheGroundSpeedIsKnown) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(2);
  tackle::Rigger rigger = testing::BareRigger();
  rigger.line.constant_drag = true;  // Known, or it would move the ball even more.
  Conditions conditions = Trolling(2.5);
  conditions.speed_kind = SpeedKind::kOverGround;
  EXPECT_EQ(DepthsOf(rigger, conditions, kCount_m, &ensemble).dominant, Input::kGroundSpeed);
}

TEST(DominantInput, IsTheTackleWhenThatDragsMost) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(2);
  tackle::Rigger rigger = UsualRigger();
  rigger.clips[0].trail.flasher->drag_area_m2 *= 2;
  EXPECT_EQ(DepthsOf(rigger, Trolling(2.5), kCount_m, &ensemble).dominant, Input::kTackleDrag);
  // Weighed with a spring scale it is known better than the rest.
  rigger.clips[0].trail.flasher->drag_source = tackle::DragSource::kPull;
  rigger.clips[0].trail.lure.drag_source = tackle::DragSource::kPull;
  const auto weighed = DepthsOf(rigger, Trolling(2.5), kCount_m, &ensemble).dominant;
  EXPECT_NE(weighed, Input::kTackleDrag);
  EXPECT_NE(weighed, Input::kPulledTackleDrag);
}

TEST(InputsOf, LeavesOutWhatIsStated) {
  tackle::Rigger rigger = testing::BareRigger();
  rigger.line.constant_drag = true;
  rigger.ball.drag_source = tackle::DragSource::kStated;
  EXPECT_EQ(InputsOf(rigger, Trolling(2.5)),
            (std::vector<Input>{Input::kLogSpeed, Input::kCounter}));
}

}  // namespace
}  // namespace offplumb::plan
