#include "engine/plan/depth.h"

#include <algorithm>
#include <cmath>

namespace offplumb::plan {
namespace {

using learn::Draw;
using learn::Input;

ClipFigures<double> FiguresOfClip(const tow::ClipState& clip, const Eigen::Vector3d& boom_tip_m) {
  ClipFigures<double> figures;
  figures.clip_depth_m = clip.clip_m.z();
  figures.clip_trail_m = boom_tip_m.x() - clip.clip_m.x();
  figures.clip_side_m = clip.clip_m.y() - boom_tip_m.y();
  figures.leader_pull_N = clip.trail_force_N.norm();
  figures.line_pull_N = clip.fishing_line_force_N.norm();
  figures.clip_net_N = (clip.trail_force_N + clip.fishing_line_force_N).norm();
  figures.fishing_line_m = clip.fishing_line_m;
  figures.lure_depth_m = clip.lure_m.z();
  figures.lure_trail_m = boom_tip_m.x() - clip.lure_m.x();
  figures.lure_side_m = clip.lure_m.y() - boom_tip_m.y();
  figures.lure_water_speed_mps = clip.lure_water_speed_mps;
  return figures;
}

/// Bands of all figures over the ensemble.
void FillBands(const tackle::Rigger& rigger, const Conditions& conditions,
               const learn::Ensemble& ensemble, RiggerDepth& depth) {
  RiggerFigures<double> middle = FiguresOf(depth.median, rigger.boom_tip_m);
  const std::size_t fields = Fields(middle).size();
  std::vector<std::vector<double>> values(fields);
  tow::SteadySolver solver;
  tow::SteadyTree tree = depth.median;
  for (const Draw& draw : ensemble.members) {
    solver.SolveFrom(MakeProblem(rigger, conditions, depth.count_m, draw), tree);
    ++depth.members;
    if (!tree.usable()) {
      ++depth.unusable;
      continue;
    }
    RiggerFigures<double> figures = FiguresOf(tree, rigger.boom_tip_m);
    const auto pointers = Fields(figures);
    for (std::size_t i = 0; i < fields; ++i) values[i].push_back(*pointers[i]);
  }
  const auto bands = Fields(depth.figures);
  for (std::size_t i = 0; i < fields; ++i) *bands[i] = BandOf(bands[i]->median, values[i]);
}

/// How far the ball's depth moves when one input goes from its 5 % to its 95 %.
double Swing_m(const tackle::Rigger& rigger, const Conditions& conditions, double count_m,
               Input input, const tow::SteadyTree& start) {
  tow::SteadySolver solver;
  double depth_m[2] = {start.ball_m.z(), start.ball_m.z()};
  for (int side = 0; side < 2; ++side) {
    const double normal = side == 0 ? -learn::kBandNormal : learn::kBandNormal;
    tow::SteadyTree tree = start;
    solver.SolveFrom(MakeProblem(rigger, conditions, count_m, learn::DrawAt(input, normal)), tree);
    if (tree.usable()) depth_m[side] = tree.ball_m.z();
  }
  return std::abs(depth_m[1] - depth_m[0]);
}

std::optional<Input> Dominant(const tackle::Rigger& rigger, const Conditions& conditions,
                              double count_m, const tow::SteadyTree& median) {
  std::optional<Input> dominant;
  double largest = 0;
  for (const Input input : InputsOf(rigger, conditions)) {
    const double swing = Swing_m(rigger, conditions, count_m, input, median);
    if (swing > largest) {
      largest = swing;
      dominant = input;
    }
  }
  return dominant;
}

}  // namespace

RiggerFigures<double> FiguresOf(const tow::SteadyTree& tree, const Eigen::Vector3d& boom_tip_m) {
  RiggerFigures<double> figures;
  figures.ball_depth_m = tree.ball_m.z();
  figures.ball_trail_m = boom_tip_m.x() - tree.ball_m.x();
  figures.ball_side_m = tree.ball_m.y() - boom_tip_m.y();
  figures.ball_water_speed_mps = tree.ball_water_speed_mps;
  figures.tension_boom_N = tree.tension_boom_N;
  figures.tension_ball_N = tree.tension_ball_N;
  figures.angle_boom_rad = tree.angle_boom_rad;
  figures.length_m = tree.stretched_m;
  for (const tow::ClipState& clip : tree.clips) {
    figures.clips.push_back(FiguresOfClip(clip, boom_tip_m));
  }
  return figures;
}

std::vector<Input> InputsOf(const tackle::Rigger& rigger, const Conditions& conditions) {
  std::vector<Input> inputs{SpeedInput(conditions), Input::kCounter};
  const auto add = [&](Input input) {
    if (std::find(inputs.begin(), inputs.end(), input) == inputs.end()) inputs.push_back(input);
  };
  Input input{};
  const auto add_line = [&](const tackle::Line& line) {
    if (learn::DragInput(line, input)) add(input);
  };
  const auto add_body = [&](const tackle::Body& body) {
    if (learn::DragInput(body, input)) add(input);
  };
  add_line(rigger.line);
  if (rigger.ball.drag_source != tackle::DragSource::kStated) add(Input::kBallDrag);
  for (const tackle::Clip& clip : rigger.clips) {
    add(Input::kRodTension);
    add_line(clip.fishing_line);
    add_line(clip.trail.setback_line);
    add_body(clip.trail.lure);
    if (clip.trail.flasher) {
      add_line(clip.trail.leader_line);
      add_body(*clip.trail.flasher);
    }
  }
  return inputs;
}

Expected<RiggerDepth> FindDepths(const tackle::Rigger& rigger, const Conditions& conditions,
                                 double count_m, const learn::Ensemble* ensemble) {
  RiggerDepth depth;
  depth.name = rigger.name;
  depth.count_m = count_m;
  const tow::TreeProblem problem = MakeProblem(rigger, conditions, count_m, learn::MedianDraw());
  tow::SteadySolver solver;
  solver.Solve(problem, depth.median);
  if (!depth.median.usable()) {
    return tl::unexpected<Problem>(ProblemOf(depth.median.status, rigger));
  }
  RiggerFigures<double> middle = FiguresOf(depth.median, rigger.boom_tip_m);
  depth.figures.clips.resize(middle.clips.size());
  const auto from = Fields(middle);
  const auto to = Fields(depth.figures);
  for (std::size_t i = 0; i < from.size(); ++i) *to[i] = Certain(*from[i]);
  depth.shape = SampleShape(problem, depth.median);
  if (ensemble) {
    FillBands(rigger, conditions, *ensemble, depth);
    depth.dominant = Dominant(rigger, conditions, count_m, depth.median);
  }
  return depth;
}

}  // namespace offplumb::plan
