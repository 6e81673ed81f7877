#include "engine/plan/count.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "engine/constants.h"
#include "engine/plan/alter.h"
#include "engine/plan/count_search.h"
#include "engine/plan/defaults.h"

namespace offplumb::plan {
namespace {

/// Whether the wish can be met by a changed rig at the medians.
bool Meets(const tackle::Rigger& rigger, const Conditions& conditions, const DepthWish& wish) {
  return WalkCounts(rigger, conditions, wish, learn::MedianDraw()).count_m.has_value();
}

/// The mildest change that meets the wish: `meets(0)` is the present rig, `meets(1)` the strongest
/// change. \return false when even the strongest does not.
bool Mildest(const std::function<bool(double)>& meets, double& change) {
  if (!meets(1.0)) return false;
  double fails = 0.0;
  change = 1.0;
  for (int i = 0; i < kRemedyHalvings; ++i) {
    const double middle = 0.5 * (fails + change);
    (meets(middle) ? change : fails) = middle;
  }
  return true;
}

double Between(double from, double to, double part) { return from + part * (to - from); }

void TryHeavierBall(const tackle::Rigger& rigger, const Conditions& conditions,
                    const DepthWish& wish, std::vector<Remedy>& remedies) {
  const double mass_kg = BallMass_kg(rigger.ball);
  if (!(mass_kg < kHeaviestBall_kg)) return;
  const auto mass = [&](double part) { return Between(mass_kg, kHeaviestBall_kg, part); };
  double change = 0;
  const bool found = Mildest(
      [&](double part) {
        tackle::Rigger heavier = rigger;
        heavier.ball = ScaledBall(rigger.ball, mass(part) / mass_kg);
        return Meets(heavier, conditions, wish);
      },
      change);
  if (found) remedies.push_back({RemedyKind::kHeavierBall, mass(change)});
}

void TrySlower(const tackle::Rigger& rigger, const Conditions& conditions, const DepthWish& wish,
               std::vector<Remedy>& remedies) {
  const auto speed = [&](double part) {
    return conditions.speed_mps * Between(1.0, kSlowestPart, part);
  };
  double change = 0;
  const bool found = Mildest(
      [&](double part) {
        Conditions slower = conditions;
        slower.speed_mps = speed(part);
        return Meets(rigger, slower, wish);
      },
      change);
  if (found) remedies.push_back({RemedyKind::kSlower, speed(change)});
}

void TryThinnerLine(const tackle::Rigger& rigger, const Conditions& conditions,
                    const DepthWish& wish, std::vector<Remedy>& remedies) {
  const double present_m = rigger.line.diameter_m;
  if (!(present_m > kThinnestLine_m)) return;
  const auto diameter = [&](double part) { return Between(present_m, kThinnestLine_m, part); };
  double change = 0;
  const bool found = Mildest(
      [&](double part) {
        tackle::Rigger thinner = rigger;
        thinner.line = ScaledLine(rigger.line, diameter(part) / present_m);
        return Meets(thinner, conditions, wish);
      },
      change);
  if (found) remedies.push_back({RemedyKind::kThinnerLine, diameter(change)});
}

void TryNoFlasher(const tackle::Rigger& rigger, const Conditions& conditions, const DepthWish& wish,
                  std::vector<Remedy>& remedies) {
  const bool has =
      std::any_of(rigger.clips.begin(), rigger.clips.end(),
                  [](const tackle::Clip& clip) { return clip.trail.flasher.has_value(); });
  if (has && Meets(WithoutFlashers(rigger), conditions, wish)) {
    remedies.push_back({RemedyKind::kNoFlasher, 0});
  }
}

void TryMoreLine(const tackle::Rigger& rigger, const Conditions& conditions, const DepthWish& wish,
                 std::vector<Remedy>& remedies) {
  tackle::Rigger longer = rigger;
  longer.line_on_reel_m = std::min(kMostLinePart * rigger.line_on_reel_m, kLargestCount_m);
  const Walk walk = WalkCounts(longer, conditions, wish, learn::MedianDraw());
  if (!walk.count_m) return;
  remedies.push_back({RemedyKind::kMoreLine, tackle::MeasuredCount_m(rigger.marks, *walk.count_m)});
}

std::vector<Remedy> FindRemedies(const tackle::Rigger& rigger, const Conditions& conditions,
                                 const DepthWish& wish, bool line_limits) {
  std::vector<Remedy> remedies;
  TrySlower(rigger, conditions, wish, remedies);
  TryHeavierBall(rigger, conditions, wish, remedies);
  TryThinnerLine(rigger, conditions, wish, remedies);
  TryNoFlasher(rigger, conditions, wish, remedies);
  if (line_limits) TryMoreLine(rigger, conditions, wish, remedies);
  return remedies;
}

Expected<void> CheckWish(const tackle::Rigger& rigger, const DepthWish& wish) {
  if (!(wish.depth_m > 0 && wish.depth_m <= kLargestCount_m)) {
    return BadInput(
        "depth",
        fmt::format("The wanted depth is {:.6g} m ({:.6g} ft); it must be above 0 and at "
                    "most {:.0f} m.",
                    wish.depth_m, wish.depth_m / 0.3048, kLargestCount_m),
        "Give a depth below the surface, for example --depth \"90 ft\".");
  }
  if (wish.of == DepthOf::kLure && wish.clip >= rigger.clips.size()) {
    return BadInput("--of lure",
                    fmt::format("Rigger \"{}\" has no clip, and so no lure.", rigger.name),
                    "Ask --of ball, or add a clip to the rig.");
  }
  return {};
}

/// Stands for a count that does not exist in the ordering of the draws: above every count there is.
constexpr double kOutOfReach_m = 1e9;

/// Bands over the ensemble of the count that meets the wish and of the reach.
void FillBands(const tackle::Rigger& rigger, const Conditions& conditions,
               const learn::Ensemble& ensemble, RiggerCount& answer) {
  std::vector<double> counts_m;
  std::vector<double> reaches_m;
  for (const learn::Draw& draw : ensemble.members) {
    const Walk walk = WalkCounts(rigger, conditions, answer.wish, draw);
    ++answer.members;
    if (walk.usable) reaches_m.push_back(walk.reach.depth_m);
    // A draw that never gets there belongs above every count, not nowhere.
    counts_m.push_back(walk.count_m.value_or(kOutOfReach_m));
    if (!walk.count_m) ++answer.unreached;
  }
  answer.reach_depth_m = BandOf(answer.reach_depth_m.median, reaches_m);
  if (!answer.reachable) return;
  answer.count_m = BandOf(answer.count_m.median, counts_m);
  answer.high_open = answer.count_m.high > kLargestCount_m;
  if (answer.high_open) answer.count_m.high = LargestReading_m(rigger);
}

Problem CannotBeDone(const tackle::Rigger& rigger, std::string message, std::string remedy) {
  return {ProblemKind::kCannotBeDone,
          "rigger \"" + rigger.name + "\"",
          std::move(message),
          std::move(remedy),
          {},
          0};
}

/// Why no count can be used.
Problem NoCount(const tackle::Rigger& rigger, const Walk& walk) {
  if (!walk.leans_everywhere) return ProblemOf(walk.status, rigger);
  return CannotBeDone(rigger,
                      fmt::format("At every count the line leans more than the {:.0f} degrees that "
                                  "the rig allows at the boom.",
                                  rigger.largest_boom_angle_rad * 180 / kPi),
                      "Go slower, or use a heavier ball.");
}

/// The wish is shallower than the gear can be.
Problem TooShallow(const tackle::Rigger& rigger, const DepthWish& wish, double shallowest_m) {
  const char* what = wish.of == DepthOf::kBall ? "ball" : "lure";
  return CannotBeDone(
      rigger,
      fmt::format("The wanted depth is {:.1f} ft ({:.2f} m); the {} of rigger \"{}\" is never "
                  "above {:.1f} ft ({:.2f} m), or a clip or lure would leave the water.",
                  wish.depth_m / 0.3048, wish.depth_m, what, rigger.name, shallowest_m / 0.3048,
                  shallowest_m),
      "Ask for more depth. Where it is a clip that ends it, set it nearer to the ball.");
}

}  // namespace

Expected<RiggerCount> FindCount(const tackle::Rigger& rigger, const Conditions& conditions,
                                const DepthWish& wish, const learn::Ensemble* ensemble) {
  if (auto check = CheckWish(rigger, wish); !check) return tl::unexpected<Problem>(check.error());
  const Walk walk = WalkCounts(rigger, conditions, wish, learn::MedianDraw());
  if (!walk.usable) return tl::unexpected<Problem>(NoCount(rigger, walk));
  if (wish.depth_m < walk.shallowest_m) {
    return tl::unexpected<Problem>(TooShallow(rigger, wish, walk.shallowest_m));
  }
  RiggerCount answer;
  answer.name = rigger.name;
  answer.wish = wish;
  answer.reachable = walk.count_m.has_value();
  if (walk.count_m) answer.count_m = Certain(*walk.count_m);
  answer.angle_boom_rad = walk.angle_boom_rad;
  answer.reach_depth_m = Certain(walk.reach.depth_m);
  answer.reach_count_m = walk.reach.count_m;
  answer.line_limits = walk.reach.line_limits;
  if (!answer.reachable) {
    answer.remedies = FindRemedies(rigger, conditions, wish, walk.reach.line_limits);
  }
  if (ensemble) FillBands(rigger, conditions, *ensemble, answer);
  return answer;
}

Expected<Reach> FindReach(const tackle::Rigger& rigger, const Conditions& conditions) {
  DepthWish deepest;
  deepest.depth_m = std::numeric_limits<double>::infinity();
  const Walk walk = WalkCounts(rigger, conditions, deepest, learn::MedianDraw());
  if (!walk.usable) return tl::unexpected<Problem>(NoCount(rigger, walk));
  return walk.reach;
}

}  // namespace offplumb::plan
