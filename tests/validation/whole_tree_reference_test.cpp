// Two whole trees solved once by SciPy (DOP853 at rtol 1e-10 with fsolve on the tree's unknowns)
// and confirmed by a second formulation (all segment angles at once, Newton) to 1e-5. Tolerance
// 2e-5 of each figure: six printed digits and the two routes' agreement. Sixty more trees are in
// scipy/.
#include <gtest/gtest.h>

#include "tests/engine/tow/tree_builders.h"

namespace offplumb::tow::testing {
namespace {

struct Expected {
  double ball_depth, ball_trail, clip_depth, clip_trail, lure_depth, lure_trail;
  double tension_boom, angle_boom_deg, clip_pull, fishing_line, fishing_line_at_clip;
};

void ExpectFigure(const char* name, double got, double want) {
  EXPECT_NEAR(got, want, 2e-5 * want) << name;
}

void ExpectTree(const TreeProblem& problem, const Expected& want) {
  const SteadyTree tree = SolveTree(problem);  // The program's own mesh and tolerance.
  ASSERT_TRUE(tree.usable());
  const ClipState& clip = tree.clips[0];
  ExpectFigure("ball depth", tree.ball_m.z(), want.ball_depth);
  ExpectFigure("ball trail", -tree.ball_m.x(), want.ball_trail);
  ExpectFigure("clip depth", clip.clip_m.z(), want.clip_depth);
  ExpectFigure("clip trail", -clip.clip_m.x(), want.clip_trail);
  ExpectFigure("lure depth", clip.lure_m.z(), want.lure_depth);
  ExpectFigure("lure trail", -clip.lure_m.x(), want.lure_trail);
  ExpectFigure("tension at the boom", tree.tension_boom_N, want.tension_boom);
  ExpectFigure("angle at the boom", tree.angle_boom_rad / kDegree, want.angle_boom_deg);
  ExpectFigure("pull at the clip", clip.trail_force_N.norm(), want.clip_pull);
  ExpectFigure("fishing line", clip.fishing_line_m, want.fishing_line);
  ExpectFigure("its tension at the clip", clip.fishing_line_force_N.norm(),
               want.fishing_line_at_clip);
}

TEST(WholeTreeReference, G1WireWithFlasher) {
  ExpectTree(MakeUsualTree(), {26.5736, 14.4253, 25.3759, 14.3514, 26.0125, 21.4116, 36.0434,
                               39.409, 6.38723, 31.9778, 14.9014});
}

TEST(WholeTreeReference, G2BraidWithoutFlasher) {
  TreeProblem problem = MakeUsualTree();
  problem.line = MakeLine({0.0006, 1.2, 0.02, -0.0002, 0.002});
  problem.line_m = 61.96;
  problem.ball = MakeBody(60.69233592779373, 0.0040422);
  ClipLoads& clip = problem.clips[0];
  clip.rod_tip_tension_N = 12;
  clip.trail.leader_m = 1;
  clip.trail.flasher = MakeBody(0, 0);
  clip.trail.setback_m = 9;
  clip.trail.lure = MakeBody(0.25, 0.001);
  ExpectTree(problem, {53.5954, 27.8439, 52.3972, 27.7787, 54.1673, 37.6058, 53.1592, 39.5028,
                       0.906066, 72.3728, 11.7314});
}

}  // namespace
}  // namespace offplumb::tow::testing
