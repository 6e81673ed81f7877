#include "engine/learn/prior.h"

#include <cmath>
#include <cstdint>

#include <boost/math/special_functions/erf.hpp>
#include <boost/random/sobol.hpp>

namespace offplumb::learn {
namespace {

bool IsAdded(Input input) { return input == Input::kLogSpeed || input == Input::kGroundSpeed; }

/// Value of one input at a standard normal: see OFFPLUMB_PRIOR for the law.
double ValueAt(const PriorEntry& entry, double standard_normal) {
  const double z = standard_normal / kBandNormal;
  if (IsAdded(entry.input)) return z * (z < 0 ? -entry.low : entry.high);
  const double spread =
      z < 0 ? std::log(entry.median / entry.low) : std::log(entry.high / entry.median);
  return std::exp(z * spread);
}

double StandardNormal(double probability) {
  return -std::sqrt(2.0) * boost::math::erfc_inv(2.0 * probability);
}

}  // namespace

const std::array<PriorEntry, kInputs>& Prior() {
  static constexpr std::array<PriorEntry, kInputs> kPrior{{
#define OFFPLUMB_ENTRY(name, id, words, low, median, high) \
  {Input::name, id, words, low, median, high},
      OFFPLUMB_PRIOR(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
  }};
  return kPrior;
}

Draw MedianDraw() {
  Draw draw{};
  for (const PriorEntry& entry : Prior()) draw[entry.input] = ValueAt(entry, 0.0);
  return draw;
}

Draw DrawAt(Input input, double standard_normal) {
  Draw draw = MedianDraw();
  draw[input] = ValueAt(Prior()[static_cast<std::size_t>(input)], standard_normal);
  return draw;
}

Ensemble PriorEnsemble(int members) {
  boost::random::sobol generator(kInputs);
  const double full = std::ldexp(1.0, 64);
  // The first 2^k points lie on the lower corners of 2^k slices: move them to the middles. The
  // first of them is the origin, which the generator leaves out.
  const double half_slice = 0.5 / members;
  Ensemble ensemble;
  ensemble.members.resize(static_cast<std::size_t>(members));
  bool origin = true;
  for (Draw& draw : ensemble.members) {
    for (const PriorEntry& entry : Prior()) {
      const double corner = origin ? 0.0 : static_cast<double>(generator()) / full;
      draw[entry.input] = ValueAt(entry, StandardNormal(corner + half_slice));
    }
    origin = false;
  }
  return ensemble;
}

bool DragInput(const tackle::Line& line, Input& input) {
  if (line.constant_drag) return false;
  switch (line.kind) {
    case tackle::LineKind::kWire:
      input = Input::kWireDrag;
      break;
    case tackle::LineKind::kBraid:
      input = Input::kBraidDrag;
      break;
    case tackle::LineKind::kNylon:
    case tackle::LineKind::kFluorocarbon:
      input = Input::kNylonDrag;
      break;
  }
  return true;
}

bool DragInput(const tackle::Body& tackle, Input& input) {
  if (tackle.drag_source == tackle::DragSource::kStated) return false;
  input = tackle.drag_source == tackle::DragSource::kPull ? Input::kPulledTackleDrag
                                                          : Input::kTackleDrag;
  return true;
}

}  // namespace offplumb::learn
