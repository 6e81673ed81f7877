/// \file
/// The normal drag of a line as a factor on the normal velocity; inline, for the inner loops of
/// this room.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>

#include "engine/tow/loads.h"
#include "engine/water/current.h"

namespace offplumb::tow {

/// Sixth root of a number >= 0, relative error below 2e-14; numbers below 1e-300 give 0.
///
/// A start by dividing the exponent by six (good to 3.4 %; the way of W. Kahan, Computing a real
/// cube root, 1991), then Halley's rule (1.2e-4), then the series of (1 - e)^(-1/6). Taken from the
/// square of the speed it waits for no square root; and it is made of + - * / alone, so that every
/// machine gives the same bits.
inline double SixthRoot(double x) {
  if (!(x > 1e-300)) return 0.0;
  std::uint64_t bits = 0;
  std::memcpy(&bits, &x, sizeof bits);
  bits = bits / 6 + 0x3547640000000000ULL;
  double y = 0;
  std::memcpy(&y, &bits, sizeof y);
  const double inverse = 1.0 / x;
  const double rough = (y * y * y) * (y * y * y);
  y *= (5 * rough + 7 * x) / (7 * rough + 5 * x);
  const double e = 1.0 - (y * y * y) * (y * y * y) * inverse;
  return y + y * e * ((1.0 / 6 + e * (7.0 / 72)) + e * e * (91.0 / 1296));
}

/// 1/2 rho d Cn |Wn|, kg/(m s), with White's Reynolds number term (LineLoads).
/// \param normal_speed2 |Wn|^2, m2/s2; a negative rounding error counts as zero.
inline double NormalFactor(const LineLoads& line, double normal_speed2) {
  const double speed = std::sqrt(std::max(normal_speed2, 0.0));
  double factor = line.normal_linear * speed;
  if (line.normal_cbrt > 0) factor += line.normal_cbrt * SixthRoot(normal_speed2);
  return factor;
}

/// Mesh rule for a layer in which the stream changes: one more step for each quarter of its greater
/// speed by which its velocity changes. Found by bench/random_trees: without it the worst depth
/// error was 5e-5. \param bottom_m of the layer, or of the part that a line can be in.
inline double ChangesIn(const water::FlowLayer& layer, double bottom_m) {
  if (layer.gx == 0 && layer.gy == 0) return 0;
  constexpr double kChangePerStep = 0.25;
  const double dx = layer.gx * (bottom_m - layer.top_m);
  const double dy = layer.gy * (bottom_m - layer.top_m);
  const double top2 = layer.vx * layer.vx + layer.vy * layer.vy;
  const double bottom2 = (layer.vx + dx) * (layer.vx + dx) + (layer.vy + dy) * (layer.vy + dy);
  return std::sqrt((dx * dx + dy * dy) / std::max(top2, bottom2)) / kChangePerStep;
}

}  // namespace offplumb::tow
