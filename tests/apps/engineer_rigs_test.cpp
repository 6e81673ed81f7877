// The check cases of docs/method.md through the program itself: rig file in, JSON out. Expected
// values: W2 and W4 are closed forms (a weightless line under pure normal drag hangs in a catenary
// on its side); G1 and G2 come from an independent solution by general-purpose ODE and root
// solvers, printed to six digits and good to 2e-5, which is the tolerance here.

#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "tests/apps/program.h"

namespace offplumb::cli {
namespace {

using nlohmann::json;

constexpr double kTolerance = 2e-5;

struct Expectation {
  const char* pointer;  ///< From the first rigger on.
  double value;
};

json FirstRigger(std::vector<std::string> words) {
  words.insert(words.end(), {"--bands", "off", "--json"});
  const Heard heard = Hear(words);
  EXPECT_EQ(heard.exit_code, 0) << heard.err;
  EXPECT_EQ(heard.err, "");
  return json::parse(heard.out).at("riggers").at(0);
}

void Check(const json& rigger, const std::vector<Expectation>& expected) {
  for (const auto& [pointer, value] : expected) {
    const json& got = rigger.at(json::json_pointer(pointer));
    EXPECT_NEAR(got.at("median"), value, kTolerance * std::abs(value)) << pointer;
    EXPECT_EQ(got.at("low"), got.at("median")) << pointer;
    EXPECT_EQ(got.at("high"), got.at("median")) << pointer;
  }
}

TEST(EngineerRigs, OneLineInAUniformStreamIsTheClosedFormW2) {
  Check(FirstRigger({"depth", "--rig", "examples/rigs/engineer.toml", "--count", "60 m", "--speed",
                     "1.2 m/s"}),
        {{"/ball/depth_m", 53.4184},
         {"/ball/trail_m", 24.6596},
         {"/line/tension_boom_N", 50.0871},
         {"/line/angle_boom_deg", 42.2312}});
}

TEST(EngineerRigs, OneLineInTwoLayersIsTheClosedFormW4) {
  Check(FirstRigger({"depth", "--rig", "examples/rigs/engineer-layers.toml", "--count", "60 m",
                     "--speed", "1.5 m/s", "--heading", "0", "--current",
                     "examples/currents/two-layers.toml"}),
        {{"/ball/depth_m", 55.0342},
         {"/ball/trail_m", 20.5601},
         {"/ball/water_speed_mps", 1.0},
         {"/line/tension_boom_N", 50.0420},
         {"/line/angle_boom_deg", 42.7911}});
}

// The same water told over ground: the boat makes 1.5 m/s north, the lower layer runs north.
TEST(EngineerRigs, TheSameLayersOverGroundGiveTheSameAnswer) {
  Check(FirstRigger({"depth", "--rig", "examples/rigs/engineer-layers.toml", "--count", "60 m",
                     "--speed", "1.5 m/s", "--over-ground", "--course", "0", "--current",
                     "examples/currents/two-layers.toml"}),
        {{"/ball/depth_m", 55.0342}, {"/ball/trail_m", 20.5601}});
}

TEST(EngineerRigs, AWholeTreeIsTheIndependentSolutionG1) {
  Check(FirstRigger({"depth", "--rig", "examples/rigs/engineer-tree-1.toml", "--count", "30.48 m",
                     "--speed", "1.2 m/s"}),
        {{"/ball/depth_m", 26.5736},
         {"/ball/trail_m", 14.4253},
         {"/clips/0/depth_m", 25.3759},
         {"/lures/0/depth_m", 26.0125},
         {"/lures/0/trail_m", 21.4116},
         {"/line/tension_boom_N", 36.0434},
         {"/line/angle_boom_deg", 39.409},
         {"/clips/0/leader_pull_N", 6.38723},
         {"/clips/0/line_pull_N", 14.9014},
         {"/clips/0/fishing_line_m", 31.9778}});
}

TEST(EngineerRigs, AWholeTreeWithALightLineIsTheIndependentSolutionG2) {
  Check(FirstRigger({"depth", "--rig", "examples/rigs/engineer-tree-2.toml", "--count", "60.96 m",
                     "--speed", "1.2 m/s"}),
        {{"/ball/depth_m", 53.5954},
         {"/ball/trail_m", 27.8439},
         {"/clips/0/depth_m", 52.3972},
         {"/lures/0/depth_m", 54.1673},
         {"/lures/0/trail_m", 37.6058},
         {"/line/tension_boom_N", 53.1592},
         {"/line/angle_boom_deg", 39.5028},
         {"/clips/0/leader_pull_N", 0.906066},
         {"/clips/0/line_pull_N", 11.7314},
         {"/clips/0/fishing_line_m", 72.3728}});
}

/// Depth of the ball of engineer.toml (50 N, 0.004 m2, 60 m of weightless 0.8 mm line, Cn 1.2, 1025
/// kg/m3) in two layers with an edge at 25 m. Pure normal drag on a weightless line leaves its
/// tension T constant and turns it by T dphi/ds = (1/2) rho Cn d U|U| cos^2(phi), so that tan(phi)
/// is linear along each layer and depth is a difference of asinh(tan(phi)).
double DepthInTwoLayers_m(double upper_mps, double lower_mps) {
  constexpr double kEdge_m = 25;
  constexpr double kLine_m = 60;
  const auto pressure = [](double speed) { return 0.5 * 1025 * speed * std::abs(speed); };
  const double drag_N = pressure(lower_mps) * 0.004;
  const double tension_N = std::hypot(50.0, drag_N);
  const double upper = pressure(upper_mps) * 1.2 * 0.0008 / tension_N;
  const double lower = pressure(lower_mps) * 1.2 * 0.0008 / tension_N;
  const double at_ball = drag_N / 50;
  double least = 0;
  double most =
      kLine_m;  // Of line in the lower layer: by bisection, so that the rest spans the upper.
  for (int i = 0; i < 100; ++i) {
    const double below = 0.5 * (least + most);
    const double at_edge = at_ball + lower * below;
    const double span_m =
        (std::asinh(at_edge + upper * (kLine_m - below)) - std::asinh(at_edge)) / upper;
    (span_m > kEdge_m ? least : most) = below;
  }
  const double at_edge = at_ball + lower * least;
  return kEdge_m + (std::asinh(at_edge) - std::asinh(at_ball)) / lower;
}

TEST(EngineerRigs, ACurrentThatOvertakesTheBoatBelowIsTheClosedForm) {
  const TestFolder folder;
  const std::string current = folder.Write("reversing.toml", R"(shape = "steps"
points = [
  { depth = "0 m", speed = "0 m/s", toward = "0 deg" },
  { depth = "25 m", speed = "1.5 m/s", toward = "0 deg" },
]
)");
  Check(FirstRigger({"depth", "--rig", "examples/rigs/engineer.toml", "--count", "60 m", "--speed",
                     "1.2 m/s", "--heading", "0", "--current", current}),
        {{"/ball/depth_m", DepthInTwoLayers_m(1.2, -0.3)}, {"/ball/water_speed_mps", 0.3}});
}

// The inverse, through the program: the count found for G1's depths is G1's count.
TEST(EngineerRigs, CountIsTheInverseOfDepth) {
  const json ball = FirstRigger({"count", "--rig", "examples/rigs/engineer-tree-1.toml", "--depth",
                                 "26.5736 m", "--speed", "1.2 m/s"});
  EXPECT_TRUE(ball.at("reachable"));
  EXPECT_NEAR(ball.at("count_m").at("median"), 30.48, kTolerance * 30.48);
  const json lure = FirstRigger({"count", "--rig", "examples/rigs/engineer-tree-1.toml", "--depth",
                                 "26.0125 m", "--of", "lure", "--speed", "1.2 m/s"});
  EXPECT_NEAR(lure.at("count_m").at("median"), 30.48, kTolerance * 30.48);
}

TEST(EngineerRigs, TheCardHoldsTheSameDepth) {
  const Heard heard =
      Hear({"card", "--rig", "examples/rigs/engineer.toml", "--counts", "20 m to 80 m by 20 m",
            "--speeds", "1 m/s, 1.2 m/s", "--bands", "off", "--json"});
  ASSERT_EQ(heard.exit_code, 0) << heard.err;
  const json card = json::parse(heard.out);
  EXPECT_NEAR(card.at("ball_depth_m").at(1).at(2).at("median"), 53.4184, kTolerance * 53.4184);
}

}  // namespace
}  // namespace offplumb::cli
