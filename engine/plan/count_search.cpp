#include "engine/plan/count_search.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

#include <boost/math/tools/toms748_solve.hpp>

#include "engine/plan/defaults.h"

namespace offplumb::plan {
namespace {

/// A faulty bracket cannot be: its ends are looked at before. The library's message for it would
/// drag string streams into the page.
using Quiet = boost::math::policies::policy<
    boost::math::policies::domain_error<boost::math::policies::ignore_error>,
    boost::math::policies::evaluation_error<boost::math::policies::ignore_error>>;

constexpr std::uintmax_t kMostEvaluations = 60;
/// The ends of the counts that have a steady shape are found to this, m of count.
constexpr double kEdge_m = 0.01;

/// One count solved.
struct Station {
  double count_m = 0;
  bool usable = false;
  double depth_m = 0;  ///< Of what is wished.
  double angle_rad = 0;
};

/// Solves one rigger at one draw for count after count.
class Walker {
 public:
  Walker(const tackle::Rigger& rigger, const Conditions& conditions, const DepthWish& wish,
         const learn::Draw& draw)
      : rigger_(rigger),
        wish_(wish),
        draw_(draw),
        problem_(MakeProblem(rigger, conditions, kLargestCount_m, draw)) {}

  Station At(double count_m) {
    SetCount(rigger_, count_m, draw_, problem_);
    Station station;
    station.count_m = count_m;
    if (!RoomForClips()) {
      tree_.status = tow::SteadyStatus::kClipAboveWater;
      return station;
    }
    solver_.SolveFrom(problem_, tree_);
    station.usable = tree_.usable();
    if (station.usable) {
      station.depth_m =
          wish_.of == DepthOf::kBall ? tree_.ball_m.z() : tree_.clips[wish_.clip].lure_m.z();
      station.angle_rad = tree_.angle_boom_rad;
    }
    return station;
  }

  tow::SteadyStatus status() const { return tree_.status; }

 private:
  bool RoomForClips() const {
    return problem_.clips.empty() ||
           problem_.clips.back().above_ball_m < problem_.line_m + rigger_.boom_tip_m.z();
  }

  const tackle::Rigger& rigger_;
  const DepthWish& wish_;
  const learn::Draw& draw_;
  tow::TreeProblem problem_;
  tow::SteadySolver solver_;
  tow::SteadyTree tree_;
};

/// The station between two at which a quantity passes a value; both ends usable and on either side
/// of it.
Station Between(Walker& walker, const Station& a, const Station& b, double Station::*quantity,
                double value) {
  const auto miss = [&](double count_m) { return walker.At(count_m).*quantity - value; };
  const auto close = [](double x, double y) { return std::abs(x - y) < kCountTolerance_m; };
  std::uintmax_t evaluations = kMostEvaluations;
  const auto bracket =
      boost::math::tools::toms748_solve(miss, a.count_m, b.count_m, a.*quantity - value,
                                        b.*quantity - value, close, evaluations, Quiet());
  return walker.At(0.5 * (bracket.first + bracket.second));
}

/// Where shapes end: the last usable count on the way from one that has a steady shape to one, less
/// or more, that has not.
Station EdgeOfShapes(Walker& walker, Station usable, double unusable_m) {
  while (std::abs(unusable_m - usable.count_m) > kEdge_m) {
    const Station middle = walker.At(0.5 * (usable.count_m + unusable_m));
    if (middle.usable) {
      usable = middle;
    } else {
      unusable_m = middle.count_m;
    }
  }
  return usable;
}

/// The shallowest count that has a steady shape and does not lean too much, at or above the first
/// station that has a shape; not usable where every count leans too much.
Station Shallowest(Walker& walker, const Station& first, double unusable_m, double limit_rad) {
  const Station edge = EdgeOfShapes(walker, first, unusable_m);
  if (edge.angle_rad <= limit_rad) return edge;
  if (first.angle_rad > limit_rad) return {};
  return Between(walker, edge, first, &Station::angle_rad, limit_rad);
}

void Keep(const Station& station, Walk& walk) {
  walk.usable = true;
  if (station.depth_m > walk.reach.depth_m) {
    walk.reach.depth_m = station.depth_m;
    walk.reach.count_m = station.count_m;
  }
}

void Meet(const Station& station, Walk& walk) {
  walk.count_m = station.count_m;
  walk.angle_boom_rad = station.angle_rad;
}

/// One stretch of the way, both ends usable.
void Pass(Walker& walker, const Station& from, const Station& to, double wish_m, Walk& walk) {
  if (!walk.count_m && from.depth_m <= wish_m && to.depth_m >= wish_m) {
    Meet(Between(walker, from, to, &Station::depth_m, wish_m), walk);
  }
  Keep(to, walk);
}

}  // namespace

double LargestReading_m(const tackle::Rigger& rigger) {
  return std::min(tackle::CounterReading_m(rigger.marks, rigger.line_on_reel_m), kLargestCount_m);
}

Walk WalkCounts(const tackle::Rigger& rigger, const Conditions& conditions, const DepthWish& wish,
                const learn::Draw& draw) {
  Walk walk;
  Walker walker(rigger, conditions, wish, draw);
  const double end_m = LargestReading_m(rigger);
  const double limit_rad = rigger.largest_boom_angle_rad;
  Station last;
  double unusable_m = 0;
  for (int i = 1; i <= kStations; ++i) {
    Station next = walker.At(end_m * i / kStations);
    if (!next.usable && !last.usable) {  // Still too shallow for the clips.
      walk.status = walker.status();
      unusable_m = next.count_m;
      continue;
    }
    if (!last.usable && next.angle_rad <= limit_rad && next.depth_m <= wish.depth_m) {
      // What is wished lies deeper than the first station: no need to look above it.
      last = next;
      walk.shallowest_m = last.depth_m;
      Keep(last, walk);
      walk.reach.line_limits = i == kStations;
      continue;
    }
    if (!last.usable) {
      last = Shallowest(walker, next, unusable_m, limit_rad);
      walk.leans_everywhere = !last.usable;
      if (walk.leans_everywhere) break;
      walk.shallowest_m = last.depth_m;
      Keep(last, walk);
    }
    const bool shape_ends = !next.usable;
    if (shape_ends) next = EdgeOfShapes(walker, last, next.count_m);
    const bool leans = next.angle_rad > limit_rad;
    if (leans) next = Between(walker, last, next, &Station::angle_rad, limit_rad);
    Pass(walker, last, next, wish.depth_m, walk);
    last = next;
    walk.reach.line_limits = i == kStations && !shape_ends && !leans;
    if (shape_ends || leans) break;
  }
  // The reach itself, asked for in as many digits as it was told.
  if (!walk.count_m && last.usable && std::abs(last.depth_m - wish.depth_m) <= kCountTolerance_m) {
    Meet(last, walk);
  }
  return walk;
}

}  // namespace offplumb::plan
