// Every cell of a card is what `depth` says at that count and speed.
#include "engine/plan/card.h"

#include <gtest/gtest.h>

#include "tests/engine/plan/rigs.h"

namespace offplumb::plan {
namespace {

using testing::DepthsOf;
using testing::kFoot_m;
using testing::kMph_mps;
using testing::kSolver_m;

const std::vector<double> kSpeeds_mps{2 * kMph_mps, 2.5 * kMph_mps, 4.5 * kMph_mps};
const std::vector<double> kCounts_m{10 * kFoot_m, 60 * kFoot_m, 150 * kFoot_m};

void ExpectSame(const Band& a, const Band& b) {
  EXPECT_NEAR(a.median, b.median, kSolver_m);
  EXPECT_NEAR(a.low, b.low, kSolver_m);
  EXPECT_NEAR(a.high, b.high, kSolver_m);
}

/// One cell against `depth`, which says a problem where the cell is empty.
void ExpectCellIsDepth(const tackle::Rigger& rigger, const Conditions& conditions, double count_m,
                       const learn::Ensemble* ensemble, const CardCell& cell) {
  const auto depth = CheckCount(rigger, count_m)
                         ? FindDepths(rigger, conditions, count_m, ensemble)
                         : Expected<RiggerDepth>(tl::unexpected<Problem>(Problem{}));
  ASSERT_EQ(cell.solved, depth.has_value());
  if (!depth) {
    EXPECT_TRUE(cell.lure_depth_m.empty());
    return;
  }
  ExpectSame(cell.ball_depth_m, depth->figures.ball_depth_m);
  ASSERT_EQ(cell.lure_depth_m.size(), rigger.clips.size());
  for (std::size_t k = 0; k < rigger.clips.size(); ++k) {
    ExpectSame(cell.lure_depth_m[k], depth->figures.clips[k].lure_depth_m);
  }
  EXPECT_EQ(cell.beyond_angle,
            depth->figures.angle_boom_rad.median > rigger.largest_boom_angle_rad);
}

void ExpectCardIsDepth(const tackle::Rigger& rigger, Conditions conditions,
                       const learn::Ensemble* ensemble) {
  const Card card = MakeCard(rigger, conditions, kSpeeds_mps, kCounts_m, ensemble);
  EXPECT_EQ(card.rigger, rigger.name);
  ASSERT_EQ(card.cells.size(), kSpeeds_mps.size());
  for (std::size_t i = 0; i < kSpeeds_mps.size(); ++i) {
    ASSERT_EQ(card.cells[i].size(), kCounts_m.size());
    conditions.speed_mps = kSpeeds_mps[i];
    for (std::size_t j = 0; j < kCounts_m.size(); ++j) {
      SCOPED_TRACE(rigger.name + " speed " + std::to_string(i) + " count " + std::to_string(j));
      ExpectCellIsDepth(rigger, conditions, kCounts_m[j], ensemble, card.cells[i][j]);
    }
  }
}

TEST(MakeCard, IsDepthCellByCell) {
  for (const tackle::Rigger& rigger :
       {testing::BareRigger(), testing::UsualRigger(), testing::StackedRigger()}) {
    ExpectCardIsDepth(rigger, testing::Trolling(0), nullptr);
  }
}

TEST(MakeCard, IsDepthCellByCellWithBands) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(16);
  ExpectCardIsDepth(testing::StackedRigger(), testing::Trolling(0), &ensemble);
}

TEST(MakeCard, IsDepthCellByCellInACurrentOverGround) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(8);
  Conditions conditions = testing::Trolling(0);
  conditions.speed_kind = SpeedKind::kOverGround;
  conditions.current = testing::TwoLayers({0.1, 0.2}, 15, {-0.2, 0.1});
  ExpectCardIsDepth(testing::UsualRigger(), conditions, &ensemble);
}

TEST(MakeCard, IsEmptyWhereAClipWouldBeAboveTheWater) {
  const Card card = MakeCard(testing::StackedRigger(), testing::Trolling(0), kSpeeds_mps, kCounts_m,
                             nullptr);  // Clip 24 ft above the ball.
  EXPECT_FALSE(card.cells[0][0].solved);
  EXPECT_TRUE(card.cells[0][1].solved);
}

TEST(MakeCard, MarksTheCellsThatLeanTooMuch) {
  const Card card =
      MakeCard(testing::UsualRigger(), testing::Trolling(0), kSpeeds_mps, kCounts_m, nullptr);
  EXPECT_FALSE(card.cells[0][1].beyond_angle);
  ASSERT_TRUE(card.cells[2][2].solved);
  EXPECT_TRUE(card.cells[2][2].beyond_angle);
}

TEST(MakeCard, OfNoCountsIsEmpty) {
  EXPECT_TRUE(MakeCard(testing::UsualRigger(), testing::Trolling(0), kSpeeds_mps, {}, nullptr)
                  .cells.empty());
}

}  // namespace
}  // namespace offplumb::plan
