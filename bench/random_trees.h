/// \file
/// Trees drawn at random from the ranges of the trade, for benchmarks and error measurements.
#pragma once

#include <cstdint>
#include <vector>

#include "engine/plan/conditions.h"
#include "engine/tackle/rig.h"

namespace offplumb::bench {

/// One set-up.
struct RandomCase {
  tackle::Rigger rigger;
  plan::Conditions conditions;
  double count_m = 0;
};

/// What to draw.
struct RandomRanges {
  int clips = 1;        ///< 0 for a single line.
  bool sheared = true;  ///< A current that changes in speed and direction with depth, in every
                        ///< case; else still water.
};

/// \return `n` cases; the same for the same seed on every machine.
///
/// Ranges, common practice, no source: ball 6 to 20 lb, wire 0.6 to 1.0 mm or braid 0.5 to 0.7 mm,
/// count 20 to 250 ft, 1.5 to 4 mph, setback 5 to 100 ft, leader 18 to 84 in, flasher with 0 to
/// 0.012 m2 of drag area, lure 0.0002 to 0.0015 m2, fishing line 0.45 to 0.6 mm, rod-tip tension 2
/// to 5 lb but no more than half the ball, current to 0.8 kn at each of three depths, in any
/// direction. Drag follows the engine's Reynolds number law.
[[nodiscard]] std::vector<RandomCase> DrawCases(int n, const RandomRanges& ranges,
                                                std::uint32_t seed);

}  // namespace offplumb::bench
