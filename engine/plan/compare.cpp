#include "engine/plan/compare.h"

#include <algorithm>
#include <limits>

#include "engine/plan/alter.h"
#include "engine/plan/count.h"
#include "engine/plan/count_search.h"
#include "engine/plan/defaults.h"
#include "engine/plan/depth.h"

namespace offplumb::plan {
namespace {

/// The ball's depth at the medians; NaN never leaves this file.
bool BallDepth_m(const tackle::Rigger& rigger, const Conditions& conditions, double count_m,
                 double& depth_m) {
  const auto depth = FindDepths(rigger, conditions, count_m, nullptr);
  if (depth) depth_m = depth->figures.ball_depth_m.median;
  return depth.has_value();
}

/// The changes of a rigger that are priced, with their names.
struct Change {
  std::string id;
  tackle::Rigger rigger;
  Conditions conditions;
};

std::vector<Change> Changes(const tackle::Rigger& rigger, const Conditions& conditions) {
  std::vector<Change> changes;
  const auto add = [&](const char* id) -> Change& {
    changes.push_back({id, rigger, conditions});
    return changes.back();
  };
  const double mass_kg = BallMass_kg(rigger.ball);
  Change& heavier = add("ball_1_lb_heavier");
  heavier.rigger.ball = ScaledBall(rigger.ball, (mass_kg + kGainBall_kg) / mass_kg);
  if (rigger.line.diameter_m > 2 * kGainLine_m) {
    Change& thinner = add("line_0.1_mm_thinner");
    thinner.rigger.line = ScaledLine(rigger.line, 1.0 - kGainLine_m / rigger.line.diameter_m);
  }
  if (conditions.speed_mps > 2 * kGainSpeed_mps) {
    add("speed_0.1_mph_slower").conditions.speed_mps -= kGainSpeed_mps;
  }
  const bool flasher = std::any_of(rigger.clips.begin(), rigger.clips.end(),
                                   [](const auto& clip) { return clip.trail.flasher.has_value(); });
  if (flasher) {
    Change& bare = add("no_flasher");
    bare.rigger = WithoutFlashers(rigger);
  }
  return changes;
}

void FillGains(const tackle::Rigger& rigger, const Conditions& conditions, ComparedRig& row) {
  double present_m = 0;
  if (!BallDepth_m(rigger, conditions, row.gains_count_m, present_m)) return;
  for (const Change& change : Changes(rigger, conditions)) {
    double changed_m = 0;
    if (BallDepth_m(change.rigger, change.conditions, row.gains_count_m, changed_m)) {
      row.gains.push_back({change.id, changed_m - present_m});
    }
  }
}

void FillReach(const tackle::Rigger& rigger, const Conditions& conditions,
               const learn::Ensemble& ensemble, ComparedRig& row) {
  DepthWish deepest;
  deepest.depth_m = std::numeric_limits<double>::infinity();
  std::vector<double> reaches_m;
  for (const learn::Draw& draw : ensemble.members) {
    const Walk walk = WalkCounts(rigger, conditions, deepest, draw);
    if (walk.usable) reaches_m.push_back(walk.reach.depth_m);
  }
  row.reach_depth_m = BandOf(row.reach_depth_m.median, reaches_m);
}

void FillCounts(const tackle::Rigger& rigger, const Conditions& conditions,
                const learn::Ensemble* ensemble, ComparedRig& row) {
  for (const double count_m : row.counts_m) {
    const bool fits = CheckCount(rigger, count_m).has_value();
    const auto depth = fits ? FindDepths(rigger, conditions, count_m, ensemble)
                            : Expected<RiggerDepth>(tl::unexpected<Problem>(Problem{}));
    row.solved.push_back(depth.has_value());
    row.depth_m.push_back(depth ? depth->figures.ball_depth_m : Band{});
    row.tension_boom_N.push_back(depth ? depth->figures.tension_boom_N : Band{});
  }
}

}  // namespace

Expected<ComparedRig> CompareRig(const std::string& name, const tackle::Rigger& rigger,
                                 const Conditions& conditions, const std::vector<double>& counts_m,
                                 double gains_count_m, const learn::Ensemble* ensemble) {
  const auto reach = FindReach(rigger, conditions);
  if (!reach) return tl::unexpected<Problem>(reach.error());
  ComparedRig row;
  row.name = name;
  row.reach_depth_m = Certain(reach->depth_m);
  row.reach_count_m = reach->count_m;
  row.line_limits = reach->line_limits;
  row.counts_m = counts_m;
  row.gains_count_m = gains_count_m;
  FillCounts(rigger, conditions, ensemble, row);
  FillGains(rigger, conditions, row);
  if (ensemble) FillReach(rigger, conditions, *ensemble, row);
  return row;
}

}  // namespace offplumb::plan
