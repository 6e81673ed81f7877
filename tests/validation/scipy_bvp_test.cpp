// Sixty-six set-ups against SciPy's boundary-value solver, on another formulation of the same
// equations: see scipy/README.md. Places must agree to 1e-6 of the line's length; the data are good
// to about 1e-9 of it.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <string>

#include <nlohmann/json.hpp>

#include "tests/engine/tow/tree_builders.h"

namespace offplumb::tow::testing {
namespace {

using nlohmann::json;

const std::string kFolder = std::string(OFFPLUMB_SOURCE_DIR) + "/tests/validation/scipy/";
constexpr double kPlaces = 1e-6;  ///< Over the line's length.

json ReadCases() {
  std::ifstream file(kFolder + "trees.json");
  return json::parse(file);
}

Vector3d ToPoint(const json& j) {
  return {j[0].get<double>(), j[1].get<double>(), j[2].get<double>()};
}

/// By way of the catalogue's own type, so that tow::Resolve is under test too.
LineLoads ToLine(const json& j, const water::Water& water) {
  tackle::Line line;
  line.diameter_m = j["d"];
  line.normal_drag_coefficient = j["Cn"];
  line.tangential_drag_coefficient = j["Cf"];
  line.constant_drag = !j["white"].get<bool>();
  line.weight_in_water_N_per_m = j["w"].get<double>();
  line.weight_in_air_N_per_m = j["w_air"].get<double>();
  line.stiffness_N = 1.0 / j["compliance"].get<double>();
  return Resolve(line, water, 1);
}

BodyLoads ToBody(const json& j, const water::Water& water) {
  tackle::Body body;
  body.weight_in_water_N = j["W"].get<double>();
  body.drag_area_m2 = j["CdA"];
  body.lift_area_m2 = j["ClA"];
  body.side_area_m2 = j["CsA"];
  body.sphere_diameter_m = j.value("sphere_d", 0.0);
  return Resolve(body, water, 1);
}

ClipLoads ToClip(const json& j, const water::Water& water) {
  ClipLoads clip;
  clip.above_ball_m = j["above_ball"];
  clip.rod_tip_m = ToPoint(j["rod_tip"]);
  clip.rod_tip_tension_N = j["rod_tension"];
  clip.fishing_line = ToLine(j["fishing_line"], water);
  clip.trail.setback = ToLine(j["setback_line"], water);
  clip.trail.setback_m = j["setback"];
  clip.trail.has_flasher = !j["flasher"].is_null();
  if (clip.trail.has_flasher) {
    clip.trail.flasher = ToBody(j["flasher"], water);
    clip.trail.leader = ToLine(j["leader_line"], water);
    clip.trail.leader_m = j["leader"];
  }
  clip.trail.lure = ToBody(j["lure"], water);
  return clip;
}

water::Flow ToFlow(const json& layers) {
  std::vector<water::FlowLayer> out;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const json& l = layers[i];
    const double bottom = i + 1 < layers.size() ? layers[i + 1]["top"].get<double>() : INFINITY;
    out.push_back({l["top"], bottom, l["vx"], l["vy"], l["gx"], l["gy"]});
  }
  return water::Flow::FromLayers(std::move(out));
}

TreeProblem ToProblem(const json& inputs, const water::Water& water) {
  TreeProblem problem;
  problem.flow = ToFlow(inputs["layers"]);
  problem.boom_tip_m = ToPoint(inputs["boom_tip"]);
  problem.line = ToLine(inputs["line"], water);
  problem.line_m = inputs["line_m"];
  problem.ball = ToBody(inputs["ball"], water);
  problem.eye_to_centre_m = inputs["eye_to_centre"];
  for (const json& clip : inputs["clips"]) problem.clips.push_back(ToClip(clip, water));
  return problem;
}

/// Largest distance between places, over the line's length.
double PlaceError(const SteadyTree& tree, const json& expected, double line_m) {
  double worst = (tree.ball_m - ToPoint(expected["ball"])).norm();
  for (std::size_t i = 0; i < tree.clips.size(); ++i) {
    const json& want = expected["clips"][i];
    worst = std::max({worst, (tree.clips[i].clip_m - ToPoint(want["clip"])).norm(),
                      (tree.clips[i].lure_m - ToPoint(want["lure"])).norm(),
                      (tree.clips[i].flasher_m - ToPoint(want["flasher"])).norm()});
  }
  return worst / line_m;
}

/// Largest relative error of a tension, a force or the fishing line's length.
double ForceError(const SteadyTree& tree, const json& expected) {
  const auto relative = [](double got, double want) { return std::abs(got / want - 1); };
  double worst = std::max(relative(tree.tension_boom_N, expected["tension_boom"]),
                          relative(tree.tension_ball_N, expected["tension_ball"]));
  for (std::size_t i = 0; i < tree.clips.size(); ++i) {
    const json& want = expected["clips"][i];
    const ClipState& clip = tree.clips[i];
    const Vector3d trail = ToPoint(want["trail_force"]);
    const Vector3d rod = ToPoint(want["fishing_line_force"]);
    worst = std::max({worst, (clip.trail_force_N - trail).norm() / trail.norm(),
                      (clip.fishing_line_force_N - rod).norm() / rod.norm(),
                      relative(clip.fishing_line_unstretched_m, want["fishing_line_unstretched"])});
  }
  return worst;
}

struct Worst {
  double error = 0;
  std::string name;

  void Take(double other, const std::string& of) {
    if (other > error) *this = {other, of};
  }
};

TEST(ScipyBvp, PlacesAgreeToAMillionthOfTheLine) {
  const json data = ReadCases();
  const water::Water water{data["rho"], data["nu"]};
  Worst places, forces;
  for (const json& c : data["cases"]) {
    const std::string name = c["name"];
    const TreeProblem problem = ToProblem(c["inputs"], water);
    const SteadyTree tree = SolveTree(problem);  // The program's own mesh and tolerance.
    ASSERT_TRUE(tree.usable()) << name << ": " << Describe(tree.status);
    const double place = PlaceError(tree, c["expected"], problem.line_m);
    const double force = ForceError(tree, c["expected"]);
    EXPECT_LT(place, kPlaces) << name;
    // Forces have no length to be measured by; ten times the places' part is asked of them.
    EXPECT_LT(force, 10 * kPlaces) << name;
    places.Take(place, name);
    forces.Take(force, name);
  }
  std::cout << "  " << data["cases"].size() << " set-ups; places: worst " << places.error
            << " of the line (" << places.name << "); forces and lengths: worst " << forces.error
            << " (" << forces.name << ")\n";
}

TEST(ScipyBvp, FineMeshComesCloser) {
  // What is left at four times the steps is the data's own error: 1e-8 of the line bounds it.
  const json data = ReadCases();
  const water::Water water{data["rho"], data["nu"]};
  Worst places;
  for (const json& c : data["cases"]) {
    const TreeProblem problem = ToProblem(c["inputs"], water);
    const SteadyTree tree = SolveFinely(problem);
    ASSERT_TRUE(tree.usable()) << c["name"];
    places.Take(PlaceError(tree, c["expected"], problem.line_m), c["name"]);
  }
  std::cout << "  fine mesh: worst " << places.error << " of the line (" << places.name << ")\n";
  EXPECT_LT(places.error, 1e-8);
}

TEST(ScipyBvp, DataAreWhatTheyClaim) {
  // At least 60 set-ups, 25 of them whole trees in a cross current; in tension everywhere; solved
  // to tolerance.
  const json data = ReadCases();
  int trees = 0, steps = 0, stretch = 0;
  for (const json& c : data["cases"]) {
    const json& inputs = c["inputs"];
    EXPECT_GT(c["expected"]["least_tension"].get<double>(), 0) << c["name"];
    EXPECT_LE(c["expected"]["rms_residual"].get<double>(), data["tolerance"].get<double>())
        << c["name"];
    double cross = 0;
    for (const json& layer : inputs["layers"])
      cross = std::max(cross, std::abs(layer["vy"].get<double>()));
    if (!inputs["clips"].empty() && cross > 0.01) ++trees;
    if (c["current"] == "steps") ++steps;
    if (inputs["line"]["compliance"].get<double>() > 0) ++stretch;
  }
  EXPECT_GE(data["cases"].size(), 60u);
  EXPECT_GE(trees, 25);
  EXPECT_GE(steps, 10);
  EXPECT_GE(stretch, 15);
}

TEST(ScipyBvp, TheScriptStillGivesTheCommittedData) {
  // Debian's own interpreter, where python3-scipy is installed; others on the path need not have
  // it. Five cases, to 1e-8 of the line: the script's exit status says so.
  const std::string command =
      "/usr/bin/python3 '" + kFolder + "tree_bvp.py' check '" + kFolder + "trees.json' 5 2>&1";
  FILE* pipe = popen(command.c_str(), "r");
  ASSERT_NE(pipe, nullptr);
  std::string said;
  std::array<char, 256> part{};
  while (fgets(part.data(), part.size(), pipe)) said += part.data();
  const int status = pclose(pipe);
  std::cout << said;
  EXPECT_EQ(status, 0) << "package python3-scipy is needed";
  EXPECT_NE(said.find("worst"), std::string::npos);
}

}  // namespace
}  // namespace offplumb::tow::testing
