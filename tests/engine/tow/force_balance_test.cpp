// The points of a solved tree in balance, by the simplest means: chords and the loads at their
// middles.
//
// Nothing of the solver is used but the points and the forces it states at the clips. Walking a
// line from its free end, the pull of what lies ahead changes by the load on each chord; on a line
// in balance every chord points along that pull, and the pull at the far end is the stated one.
// Chords and midpoints are second order in their length: with the sampled lines turning by less
// than 0.05 rad a chord, directions are good to 0.05/2 at the ends of a chord's own pull and
// 0.05^2/24 at its middle.
#include <gtest/gtest.h>

#include <Eigen/Geometry>

#include "tests/engine/tow/random_tree.h"

namespace offplumb::tow::testing {
namespace {

/// Load per metre at a point, written out from the equations, not by the engine's functions.
Vector3d LoadPerMetre(const water::Flow& flow, const LineLoads& line, const Vector3d& at,
                      const Vector3d& t) {
  if (at.z() < 0) return {0, 0, line.weight_in_air_N_per_m};
  const Eigen::Vector2d v = flow.At(at.z());
  const Vector3d stream(v.x(), v.y(), 0);
  const double along = stream.dot(t);
  const Vector3d across = stream - along * t;
  const double wn = across.norm();
  const double cn = line.normal_linear + (wn > 0 ? line.normal_cbrt * std::pow(wn, -2.0 / 3) : 0);
  return Vector3d(0, 0, line.weight_in_water_N_per_m) + cn * wn * across +
         line.tangential * std::abs(along) * along * t;
}

struct Walk {
  Vector3d pull_N;          ///< Of what lies ahead, at the far end.
  double largest_turn = 0;  ///< Between a chord and the pull at its middle.
};

/// \param pull_N of the line ahead at the first point.
Walk Along(const water::Flow& flow, const LineLoads& line, const std::vector<Vector3d>& points,
           Vector3d pull_N) {
  Walk walk{pull_N, 0};
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Vector3d chord = points[i] - points[i - 1];
    const double length = chord.norm();
    if (length < 1e-9) continue;
    const Vector3d t = chord / length;
    const Vector3d load = LoadPerMetre(flow, line, 0.5 * (points[i] + points[i - 1]), t) * length;
    const Vector3d middle = walk.pull_N - 0.5 * load;
    walk.largest_turn = std::max(walk.largest_turn, middle.normalized().cross(t).norm());
    walk.pull_N -= load;
  }
  return walk;
}

std::vector<Vector3d> Reversed(std::vector<Vector3d> points) {
  std::reverse(points.begin(), points.end());
  return points;
}

/// Midpoint rule on chords of a sixtieth or less of the line: 1e-3 is ten times the worst expected.
constexpr double kChordError = 1e-3;

void ExpectClose(const Vector3d& got, const Vector3d& want) {
  EXPECT_LT((got - want).norm(), kChordError * std::max(want.norm(), 1.0))
      << got.transpose() << " for " << want.transpose();
}

void CheckTrail(const TreeProblem& problem, const TrailLoads& trail, const ClipState& clip,
                const TreeShape::OfClip& shape) {
  const auto load = [&problem](const BodyLoads& body, double z) {
    const Eigen::Vector2d v = problem.flow.OverBody(z);
    return Load(body, v.x(), v.y());
  };
  Walk walk{-load(trail.lure, clip.lure_m.z()), 0};
  if (trail.has_flasher) {
    walk = Along(problem.flow, trail.leader, Reversed(shape.leader), walk.pull_N);
    EXPECT_LT(walk.largest_turn, kChordError);
    walk.pull_N -= load(trail.flasher, clip.flasher_m.z());
  }
  walk = Along(problem.flow, trail.setback, Reversed(shape.setback), walk.pull_N);
  EXPECT_LT(walk.largest_turn, kChordError);
  ExpectClose(-walk.pull_N, clip.trail_force_N);
}

void CheckFishingLine(const TreeProblem& problem, const ClipLoads& clip, const ClipState& state,
                      const TreeShape::OfClip& shape) {
  const Walk walk = Along(problem.flow, clip.fishing_line, Reversed(shape.fishing_line),
                          state.fishing_line_force_N);
  EXPECT_LT(walk.largest_turn, kChordError);
  EXPECT_NEAR(walk.pull_N.norm(), clip.rod_tip_tension_N, kChordError * clip.rod_tip_tension_N);
  EXPECT_LT((shape.fishing_line.front() - clip.rod_tip_m).norm(), 1e-9);
  EXPECT_LT((shape.fishing_line.back() - state.clip_m).norm(), 1e-4 * problem.line_m);
}

/// The main line cut at its clips, from the ball up.
std::vector<std::vector<Vector3d>> CutAtClips(const TreeShape& shape, const SteadyTree& tree) {
  std::vector<std::vector<Vector3d>> parts(1);
  for (const Vector3d& point : Reversed(shape.main_line)) {
    parts.back().push_back(point);
    if (parts.size() <= tree.clips.size() &&
        (point - tree.clips[parts.size() - 1].clip_m).norm() < 1e-4) {
      parts.push_back({point});
    }
  }
  return parts;
}

/// Without stretch: chords are then both the load's length and the way.
void Unstretch(TreeProblem& problem) {
  problem.line.compliance_per_N = 0;
  for (ClipLoads& clip : problem.clips) {
    clip.fishing_line.compliance_per_N = 0;
    clip.trail.setback.compliance_per_N = 0;
    clip.trail.leader.compliance_per_N = 0;
  }
}

void CheckTree(const TreeProblem& problem, const SteadyTree& tree) {
  const TreeShape shape = SampleShape(problem, tree);
  ASSERT_EQ(shape.clips.size(), tree.clips.size());
  const auto parts = CutAtClips(shape, tree);
  ASSERT_EQ(parts.size(), tree.clips.size() + 1);
  const Eigen::Vector2d v = problem.flow.OverBody(tree.eye_m.z());
  Walk walk{-Load(problem.ball, v.x(), v.y()), 0};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    walk = Along(problem.flow, problem.line, parts[i], walk.pull_N);
    EXPECT_LT(walk.largest_turn, kChordError);
    if (i == tree.clips.size()) break;
    const ClipState& clip = tree.clips[i];
    CheckTrail(problem, problem.clips[i].trail, clip, shape.clips[i]);
    CheckFishingLine(problem, problem.clips[i], clip, shape.clips[i]);
    walk.pull_N -= clip.trail_force_N + clip.fishing_line_force_N;
  }
  EXPECT_NEAR(walk.pull_N.norm(), tree.tension_boom_N, kChordError * tree.tension_boom_N);
  EXPECT_LT((shape.main_line.front() - problem.boom_tip_m).norm(), 1e-4 * problem.line_m);
}

TEST(ForceBalance, UsualTreeIsInBalance) {
  const TreeProblem problem = MakeUsualTree();
  CheckTree(problem, SolveTree(problem));
}

TEST(ForceBalance, TreesDrawnAtRandomAreInBalance) {
  int checked = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    TreeProblem problem = RandomTradeTree(seed);
    Unstretch(problem);
    const SteadyTree tree = SolveTree(problem);
    if (!tree.usable()) continue;
    SCOPED_TRACE("seed " + std::to_string(seed));
    CheckTree(problem, tree);
    ++checked;
  }
  EXPECT_GT(checked, 40);
}

}  // namespace
}  // namespace offplumb::tow::testing
