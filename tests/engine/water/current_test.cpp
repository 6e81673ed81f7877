// Frames and signs of a current, how its layers join, and what is refused.
#include "engine/water/current.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace offplumb::water {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kQuarter = 1.5707963267948966;  // 90 degrees.
// Rotations and sums of a few numbers of size one.
constexpr double kRounding = 1e-15;

void ExpectVelocity(const Vector2d& got, double x, double y) {
  EXPECT_NEAR(got.x(), x, 4 * kRounding);
  EXPECT_NEAR(got.y(), y, 4 * kRounding);
}

Current Steps() {
  return {CurrentShape::kSteps, {{0, {0.5, 0}}, {10, {0, 0.25}}, {30, {-0.5, 0}}}};
}

Current Linear() { return {CurrentShape::kLinear, {{5, {0.4, 0}}, {15, {0.2, 0.2}}}}; }

TEST(CurrentAt, StepsHoldFromEachDepthDown) {
  ExpectVelocity(CurrentAt(Steps(), 0), 0.5, 0);
  ExpectVelocity(CurrentAt(Steps(), 9.999), 0.5, 0);
  ExpectVelocity(CurrentAt(Steps(), 10), 0, 0.25);
  ExpectVelocity(CurrentAt(Steps(), 1000), -0.5, 0);
}

TEST(CurrentAt, LinearIsStraightBetweenPointsAndConstantBeyond) {
  ExpectVelocity(CurrentAt(Linear(), 0), 0.4, 0);
  ExpectVelocity(CurrentAt(Linear(), 10), 0.3, 0.1);
  ExpectVelocity(CurrentAt(Linear(), 99), 0.2, 0.2);
}

TEST(CurrentAt, NoPointsIsStillWater) { ExpectVelocity(CurrentAt({}, 7), 0, 0); }

TEST(Flow, ABoatThatPointsNorthSeesASouthwardCurrentOnTheBow) {
  // Boat frame: x ahead, y to starboard. Heading north, a current that goes south runs aft: x < 0.
  const Current south{CurrentShape::kSteps, {{0, {-0.5, 0}}}};
  ExpectVelocity(FlowOverGround(0, 0, 0, south).At(3), -0.5, 0);
}

TEST(Flow, ACurrentThatGoesEastRunsToStarboardOfABoatThatPointsNorth) {
  const Current east{CurrentShape::kSteps, {{0, {0, 0.5}}}};
  ExpectVelocity(FlowOverGround(0, 0, 0, east).At(3), 0, 0.5);
}

TEST(Flow, ACurrentThatGoesEastRunsAheadOfABoatThatPointsEast) {
  const Current east{CurrentShape::kSteps, {{0, {0, 0.5}}}};
  ExpectVelocity(FlowOverGround(0, 0, kQuarter, east).At(3), 0.5, 0);
}

TEST(Flow, OverGroundIsTheCurrentMinusTheBoat) {
  // Points north, goes east over ground at 1 m/s in water that goes east at 0.25: the water passes
  // to port.
  const Current east{CurrentShape::kSteps, {{0, {0, 0.25}}}};
  ExpectVelocity(FlowOverGround(1, kQuarter, 0, east).At(3), 0, -0.75);
}

TEST(Flow, ThroughWaterCountsTheCurrentFromTheSurface) {
  // At the surface the water passes at the boat's speed whatever the current; below, the difference
  // is added.
  const Flow flow = FlowThroughWater(1.25, 0, Steps());
  ExpectVelocity(flow.At(0), -1.25, 0);
  ExpectVelocity(flow.At(20), -1.75, 0.25);
  ExpectVelocity(flow.At(40), -2.25, 0);
}

TEST(Flow, ThroughWaterAndOverGroundAgreeWhereTheBoatDriftsWithTheSurface) {
  // A boat with heading h and speed u through the surface water goes u h + current(0) over ground.
  const Current current = Steps();
  const double heading = 0.7;
  const Vector2d ground =
      1.25 * Vector2d(std::cos(heading), std::sin(heading)) + CurrentAt(current, 0);
  const Flow through = FlowThroughWater(1.25, heading, current);
  const Flow over =
      FlowOverGround(ground.norm(), std::atan2(ground.y(), ground.x()), heading, current);
  for (double depth : {0.0, 5.0, 10.0, 25.0, 31.0}) {
    ExpectVelocity(over.At(depth), through.At(depth).x(), through.At(depth).y());
  }
}

TEST(Flow, FollowsCurrentAtEverywhere) {
  for (const Current& current : {Steps(), Linear()}) {
    const Flow flow = FlowOverGround(0, 0, 0, current);
    for (double depth = 0; depth < 40; depth += 0.7) {
      const Vector2d want = CurrentAt(current, depth);
      ExpectVelocity(flow.At(depth), want.x(), want.y());
    }
  }
}

TEST(Flow, LayersTouchFromTheSurfaceToInfinity) {
  for (const Current& current : {Steps(), Linear(), Current{}}) {
    const Flow flow = FlowThroughWater(1, 0.3, current);
    const auto& layers = flow.layers();
    EXPECT_EQ(layers.front().top_m, 0);
    EXPECT_EQ(layers.back().bottom_m, kInfinity);
    for (std::size_t i = 1; i < layers.size(); ++i) {
      EXPECT_EQ(layers[i].top_m, layers[i - 1].bottom_m);
    }
  }
}

TEST(Flow, LayersThatContinueEachOtherAreOne) {
  const Current split{CurrentShape::kSteps,
                      {{0, {0.5, 0}}, {4, {0.5, 0}}, {10, {0, 0.25}}, {30, {-0.5, 0}}}};
  EXPECT_EQ(FlowThroughWater(1, 0.4, split).layers().size(), 3u);
  const Current on_the_way{CurrentShape::kLinear,
                           {{5, {0.4, 0}}, {10, {0.3, 0.1}}, {15, {0.2, 0.2}}}};
  EXPECT_EQ(FlowThroughWater(1, 0.4, on_the_way).layers().size(),
            FlowThroughWater(1, 0.4, Linear()).layers().size());
}

TEST(Flow, UniformCurrentIsUniform) {
  EXPECT_TRUE(Flow::Uniform(1).uniform());
  EXPECT_TRUE(FlowThroughWater(1, 0.4, {CurrentShape::kSteps, {{0, {1, 1}}}}).uniform());
  EXPECT_FALSE(FlowThroughWater(1, 0.4, Linear()).uniform());
}

TEST(Flow, AtAnEdgeTheLowerLayerAndAboveTheSurfaceTheFirst) {
  const Flow flow = FlowThroughWater(1, 0, Steps());
  EXPECT_EQ(flow.LayerAt(10), 1);
  EXPECT_EQ(flow.LayerAt(-3), 0);
  ExpectVelocity(flow.At(-3), -1, 0);
}

TEST(Flow, LargestSpeedLooksOnlyAsDeepAsAsked) {
  const Flow flow = FlowOverGround(0, 0, 0, {CurrentShape::kLinear, {{0, {0, 0}}, {10, {1, 0}}}});
  EXPECT_NEAR(flow.LargestSpeed_mps(4), 0.4, kRounding);
  EXPECT_NEAR(flow.LargestSpeed_mps(50), 1.0, kRounding);
}

TEST(Flow, PlusAddsEverywhere) {
  const Flow flow = FlowThroughWater(1, 0, Linear()).Plus({0.5, -0.25});
  ExpectVelocity(flow.At(10), -1 + 0.3 - 0.4 + 0.5, 0.1 - 0.25);
}

struct Refusal {
  const char* why;
  Current current;
  const char* says;
};

class CheckCurrentTest : public ::testing::TestWithParam<Refusal> {};

TEST_P(CheckCurrentTest, RefusesInASentence) {
  const Expected<Current> checked = CheckCurrent(GetParam().current);
  ASSERT_FALSE(checked.has_value()) << GetParam().why;
  EXPECT_EQ(checked.error().kind, ProblemKind::kBadInput);
  EXPECT_NE(checked.error().message.find(GetParam().says), std::string::npos)
      << checked.error().message;
  EXPECT_EQ(checked.error().message.back(), '.');
}

const double kNan = std::numeric_limits<double>::quiet_NaN();

INSTANTIATE_TEST_SUITE_P(
    All, CheckCurrentTest,
    ::testing::Values(
        Refusal{"depths fall", {CurrentShape::kLinear, {{5, {0, 0}}, {4, {0, 0}}}}, "increase"},
        Refusal{"a depth twice", {CurrentShape::kLinear, {{5, {0, 0}}, {5, {1, 0}}}}, "increase"},
        Refusal{"above the surface", {CurrentShape::kLinear, {{-1, {0, 0}}}}, "surface"},
        Refusal{"depth not a number", {CurrentShape::kLinear, {{kNan, {0, 0}}}}, "number"},
        Refusal{"endless depth", {CurrentShape::kLinear, {{kInfinity, {0, 0}}}}, "number"},
        Refusal{"too fast", {CurrentShape::kSteps, {{0, {5.1, 0}}}}, "0 to 5 m/s"},
        Refusal{"speed not a number", {CurrentShape::kSteps, {{0, {kNan, 0}}}}, "0 to 5 m/s"},
        Refusal{"no layer at the surface", {CurrentShape::kSteps, {{3, {1, 0}}}}, "surface"}));

TEST(CheckCurrent, PassesWhatIsSound) {
  EXPECT_TRUE(CheckCurrent(Steps()).has_value());
  EXPECT_TRUE(CheckCurrent(Linear()).has_value());
  EXPECT_TRUE(CheckCurrent({}).has_value());
  EXPECT_TRUE(CheckCurrent({CurrentShape::kSteps, {{0, {3, 4}}}}).has_value());
}

}  // namespace
}  // namespace offplumb::water
