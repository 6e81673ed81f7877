// Rigs side by side say what `depth` and `count` say, and a gain is the difference made by hand.
#include "engine/plan/compare.h"

#include <map>

#include <gtest/gtest.h>

#include "engine/plan/count.h"
#include "tests/engine/plan/rigs.h"

namespace offplumb::plan {
namespace {

using testing::BallDepth_m;
using testing::kFoot_m;
using testing::kMph_mps;
using testing::kPound_kg;
using testing::kSolver_m;
using testing::Trolling;

constexpr double kCount_m = 100 * kFoot_m;
const std::vector<double> kCounts_m{15 * kFoot_m, kCount_m, 500 * kFoot_m};

ComparedRig Row(const tackle::Rigger& rigger, const Conditions& conditions,
                const learn::Ensemble* ensemble = nullptr) {
  return CompareRig("row", rigger, conditions, kCounts_m, kCount_m, ensemble).value();
}

std::map<std::string, double> GainsOf(const ComparedRig& row) {
  std::map<std::string, double> gains;
  for (const Gain& gain : row.gains) gains[gain.id] = gain.depth_m;
  return gains;
}

TEST(CompareRig, TellsDepthLoadAndReach) {
  const tackle::Rigger rigger = testing::StackedRigger();
  const ComparedRig row = Row(rigger, Trolling(2.5));
  EXPECT_EQ(row.name, "row");
  EXPECT_EQ(row.solved, (std::vector<char>{0, 1, 0}));  // Clip out of water; more than the reel.
  const RiggerDepth depth = testing::DepthsOf(rigger, Trolling(2.5), kCount_m);
  EXPECT_NEAR(row.depth_m[1].median, depth.figures.ball_depth_m.median, kSolver_m);
  EXPECT_NEAR(row.tension_boom_N[1].median, depth.figures.tension_boom_N.median, 1e-5);
  const Reach reach = FindReach(rigger, Trolling(2.5)).value();
  EXPECT_EQ(row.reach_depth_m.median, reach.depth_m);
  EXPECT_EQ(row.reach_count_m, reach.count_m);
  EXPECT_EQ(row.line_limits, reach.line_limits);
}

TEST(CompareRig, PricesEachChangeAsTheDifferenceMadeByHand) {
  const tackle::Rigger rigger = testing::UsualRigger();
  const double present_m = BallDepth_m(rigger, Trolling(2.5), kCount_m);
  std::map<std::string, double> gains = GainsOf(Row(rigger, Trolling(2.5)));
  ASSERT_EQ(gains.size(), 4u);

  tackle::Rigger changed = rigger;
  changed.ball = tackle::MakeBall(tackle::BallShape::kSphere, 13 * kPound_kg);
  EXPECT_NEAR(gains["ball_1_lb_heavier"], BallDepth_m(changed, Trolling(2.5), kCount_m) - present_m,
              kSolver_m);

  changed = rigger;
  changed.line = tackle::MakeLine("wire-1x7-0.7mm").value();
  EXPECT_NEAR(gains["line_0.1_mm_thinner"],
              BallDepth_m(changed, Trolling(2.5), kCount_m) - present_m, kSolver_m);

  EXPECT_NEAR(gains["speed_0.1_mph_slower"],
              BallDepth_m(rigger, Trolling(2.4), kCount_m) - present_m, kSolver_m);

  changed = rigger;
  changed.clips[0].trail.flasher.reset();
  changed.clips[0].trail.leader_m = 0;
  EXPECT_NEAR(gains["no_flasher"], BallDepth_m(changed, Trolling(2.5), kCount_m) - present_m,
              kSolver_m);
}

TEST(CompareRig, FindsThatEachOfTheseChangesGoesDeeper) {
  for (const double mph : {2.0, 3.0}) {
    for (const tackle::Rigger& rigger :
         {testing::BareRigger(), testing::UsualRigger(), testing::StackedRigger()}) {
      const ComparedRig row = Row(rigger, Trolling(mph));
      EXPECT_GE(row.gains.size(), 3u);
      for (const Gain& gain : row.gains) EXPECT_GT(gain.depth_m, 0) << rigger.name << gain.id;
    }
  }
}

TEST(CompareRig, PricesOnlyWhatCanBeChanged) {
  // No flasher to leave off; a tenth of a millimetre would be more than half of this line; at rest
  // nothing goes slower.
  tackle::Rigger rigger = testing::BareRigger();
  rigger.line = tackle::MakeLine("braid-0.2mm").value();
  const auto gains = GainsOf(Row(rigger, Trolling(0)));
  EXPECT_EQ(gains.size(), 1u);
  EXPECT_TRUE(gains.count("ball_1_lb_heavier"));
}

TEST(CompareRig, BandsAreThoseOfDepthAndCount) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(16);
  const tackle::Rigger rigger = testing::UsualRigger();
  const ComparedRig row = Row(rigger, Trolling(2.5), &ensemble);
  const RiggerDepth depth = testing::DepthsOf(rigger, Trolling(2.5), kCount_m, &ensemble);
  EXPECT_EQ(row.depth_m[1].low, depth.figures.ball_depth_m.low);
  EXPECT_EQ(row.depth_m[1].high, depth.figures.ball_depth_m.high);
  EXPECT_EQ(row.tension_boom_N[1].low, depth.figures.tension_boom_N.low);
  const RiggerCount count = FindCount(rigger, Trolling(2.5), {20}, &ensemble).value();
  EXPECT_EQ(row.reach_depth_m.low, count.reach_depth_m.low);
  EXPECT_EQ(row.reach_depth_m.high, count.reach_depth_m.high);
}

TEST(CompareRig, SaysWhyARigHangsNowhere) {
  tackle::Rigger rigger = testing::UsualRigger();
  rigger.clips[0].rod_tip_tension_N = 200;
  const auto row = CompareRig("row", rigger, Trolling(2.5), kCounts_m, kCount_m, nullptr);
  ASSERT_FALSE(row);
  EXPECT_EQ(row.error().kind, ProblemKind::kCannotBeDone);
}

}  // namespace
}  // namespace offplumb::plan
