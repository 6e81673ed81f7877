#include "engine/plan/card.h"

#include <utility>

#include "engine/tow/steady_solver.h"

namespace offplumb::plan {
namespace {

/// The depths of one solved cell: ball first, then the lures from the lowest up.
std::vector<double> DepthsOf(const tow::SteadyTree& tree) {
  std::vector<double> depths{tree.ball_m.z()};
  for (const tow::ClipState& clip : tree.clips) depths.push_back(clip.lure_m.z());
  return depths;
}

/// The ensemble's depths of one cell, by quantity.
struct Gathered {
  std::vector<std::vector<double>> depths;
};

/// Solves one speed's counts for one draw and hands each usable solution on.
template <typename Use>
void SolveColumn(const tackle::Rigger& rigger, const Conditions& conditions, const Card& card,
                 const learn::Draw& draw, tow::SteadySolver& solver, const Use& use) {
  tow::TreeProblem problem = MakeProblem(rigger, conditions, card.counts_m.front(), draw);
  tow::SteadyTree tree;
  for (std::size_t j = 0; j < card.counts_m.size(); ++j) {
    SetCount(rigger, card.counts_m[j], draw, problem);
    const double under_water_m = problem.line_m + rigger.boom_tip_m.z();
    if (!problem.clips.empty() && problem.clips.back().above_ball_m >= under_water_m) continue;
    solver.Solve(problem, tree);
    if (tree.usable()) use(j, tree);
  }
}

void FillMedians(const tackle::Rigger& rigger, const Conditions& conditions, const Card& card,
                 tow::SteadySolver& solver, std::vector<CardCell>& cells) {
  SolveColumn(rigger, conditions, card, learn::MedianDraw(), solver,
              [&](std::size_t j, const tow::SteadyTree& tree) {
                CardCell& cell = cells[j];
                cell.solved = true;
                cell.beyond_angle = tree.angle_boom_rad > rigger.largest_boom_angle_rad;
                const std::vector<double> depths = DepthsOf(tree);
                cell.ball_depth_m = Certain(depths[0]);
                for (std::size_t k = 1; k < depths.size(); ++k) {
                  cell.lure_depth_m.push_back(Certain(depths[k]));
                }
              });
}

void FillBands(const tackle::Rigger& rigger, const Conditions& conditions, const Card& card,
               const learn::Ensemble& ensemble, tow::SteadySolver& solver,
               std::vector<CardCell>& cells) {
  std::vector<Gathered> gathered(cells.size());
  for (Gathered& cell : gathered) cell.depths.resize(1 + rigger.clips.size());
  for (const learn::Draw& draw : ensemble.members) {
    SolveColumn(rigger, conditions, card, draw, solver,
                [&](std::size_t j, const tow::SteadyTree& tree) {
                  const std::vector<double> depths = DepthsOf(tree);
                  for (std::size_t k = 0; k < depths.size(); ++k) {
                    gathered[j].depths[k].push_back(depths[k]);
                  }
                });
  }
  for (std::size_t j = 0; j < cells.size(); ++j) {
    CardCell& cell = cells[j];
    if (!cell.solved) continue;
    cell.ball_depth_m = BandOf(cell.ball_depth_m.median, gathered[j].depths[0]);
    for (std::size_t k = 0; k < cell.lure_depth_m.size(); ++k) {
      cell.lure_depth_m[k] = BandOf(cell.lure_depth_m[k].median, gathered[j].depths[k + 1]);
    }
  }
}

}  // namespace

Card MakeCard(const tackle::Rigger& rigger, Conditions conditions,
              const std::vector<double>& speeds_mps, const std::vector<double>& counts_m,
              const learn::Ensemble* ensemble) {
  Card card;
  card.rigger = rigger.name;
  card.speeds_mps = speeds_mps;
  card.counts_m = counts_m;
  if (counts_m.empty()) return card;
  tow::SteadySolver solver;
  for (const double speed_mps : speeds_mps) {
    conditions.speed_mps = speed_mps;
    std::vector<CardCell> cells(counts_m.size());
    FillMedians(rigger, conditions, card, solver, cells);
    if (ensemble) FillBands(rigger, conditions, card, *ensemble, solver, cells);
    card.cells.push_back(std::move(cells));
  }
  return card;
}

}  // namespace offplumb::plan
