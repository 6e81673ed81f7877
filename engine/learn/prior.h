/// \file
/// What is not known about a rig before it has touched bottom: the prior, and draws from it.
///
/// Every band comes from an Ensemble: a list of draws of the same inputs. The prior makes one here;
/// a posterior learned from touches makes another of the same type, and nothing else changes.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

#include "engine/tackle/body.h"
#include "engine/tackle/line.h"

namespace offplumb::learn {

/// The uncertain inputs: one list from which the enum, the names and the prior are made.
/// X(name, id, what a person calls it, low, median, high) : 5 %, 50 % and 95 %. Judgement, to be
/// learned away. A coefficient or factor is log-normal in two pieces joined at the median, so that
/// all three quantiles hold; the two speeds, in m/s, are normal and added.
#define OFFPLUMB_PRIOR(X)                                                                       \
  X(kWireDrag, "wire_drag", "the wire's drag", 0.95, 1.25, 1.75)                                \
  X(kBraidDrag, "braid_drag", "the braid's drag", 0.95, 1.2, 1.6)                               \
  X(kNylonDrag, "fishing_line_drag", "the drag of fishing line and leaders", 0.95, 1.2, 1.6)    \
  X(kTackleDrag, "tackle_drag", "the drag of flasher and lure", 0.5, 1.0, 2.0)                  \
  X(kPulledTackleDrag, "pulled_tackle_drag", "the tackle's pull on the scale", 0.85, 1.0, 1.15) \
  X(kBallDrag, "ball_drag", "the ball's drag", 0.6, 1.0, 1.5)                                   \
  X(kRodTension, "rod_tension", "the pull of the loaded rod", 0.6, 1.0, 1.6)                    \
  X(kCounter, "counter", "the counter", 0.985, 1.0, 1.015)                                      \
  X(kLogSpeed, "log_speed", "the speed log", -0.044704, 0.0, 0.044704)                          \
  X(kGroundSpeed, "unknown_current", "the unknown current", -0.154333, 0.0, 0.154333)

enum class Input {
#define OFFPLUMB_ENTRY(name, id, words, low, median, high) name,
  OFFPLUMB_PRIOR(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

/// How many inputs there are.
inline constexpr std::size_t kInputs = 10;

/// An input's prior. `low`, `median`, `high` as in the list above.
struct PriorEntry {
  Input input;
  std::string_view id;     ///< For JSON.
  std::string_view words;  ///< For a sentence.
  double low, median, high;
};

/// \return the prior of every input, in the order of the enum.
[[nodiscard]] const std::array<PriorEntry, kInputs>& Prior();

/// One draw: for each input a factor on its median (drag, tension, counter), or metres a second to
/// add (speeds).
struct Draw {
  std::array<double, kInputs> value;

  [[nodiscard]] double operator[](Input input) const {
    return value[static_cast<std::size_t>(input)];
  }
  double& operator[](Input input) { return value[static_cast<std::size_t>(input)]; }
};

/// \return the draw with every input at its median.
[[nodiscard]] Draw MedianDraw();

/// \return the median draw with one input at a quantile. \param standard_normal -1.645 is the 5 %,
/// +1.645 the 95 %.
[[nodiscard]] Draw DrawAt(Input input, double standard_normal);

/// Equally likely draws.
struct Ensemble {
  std::vector<Draw> members;
};

/// Members of the prior's ensemble.
inline constexpr int kMembers = 128;
/// Standard normal quantile of 95 %.
inline constexpr double kBandNormal = 1.6448536269514722;

/// The prior's ensemble: Sobol points (I. M. Sobol, USSR Comput. Math. Math. Phys. 7 (1967) 86)
/// through the quantiles of the prior, so that the same draws come every time. With a power of two
/// for `members` each input takes each of its `members` equal slices once. \param members in [2,
/// 4096].
[[nodiscard]] Ensemble PriorEnsemble(int members = kMembers);

/// \return the input that scales a line's drag; a line whose drag its owner stated has none and
/// gives false.
[[nodiscard]] bool DragInput(const tackle::Line& line, Input& input);
/// \return the same for a flasher or lure.
[[nodiscard]] bool DragInput(const tackle::Body& tackle, Input& input);

}  // namespace offplumb::learn
