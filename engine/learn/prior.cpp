#include "engine/learn/prior.h"

#include <cmath>
#include <cstdint>

#include <boost/math/policies/policy.hpp>
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

/// Worked out in double, since on another machine a long double is another type, or a slow one. No
/// error can arise between 0 and 1, and the library's messages drag string streams into the page.
namespace policies = boost::math::policies;
using InDouble = policies::policy<
    policies::promote_double<false>, policies::domain_error<policies::ignore_error>,
    policies::pole_error<policies::ignore_error>, policies::overflow_error<policies::ignore_error>,
    policies::evaluation_error<policies::ignore_error>,
    policies::rounding_error<policies::ignore_error>,
    policies::indeterminate_result_error<policies::ignore_error>>;

double StandardNormal(double probability) {
  return -std::sqrt(2.0) * boost::math::erfc_inv(2.0 * probability, InDouble());
}

/// The first rows of Joe and Kuo's table, which boost has for 3667 dimensions: the page need not
/// carry them all. Primitive polynomials and starting direction numbers: S. Joe and F. Y. Kuo, SIAM
/// J. Sci. Comput. 30 (2008) 2635, new-joe-kuo-6.
struct SobolTable {
  using value_type = unsigned short;
  static constexpr unsigned int max_dimension = kInputs;

  static value_type polynomial(std::size_t n) {
    static constexpr std::array<value_type, kInputs - 1> kPolynomials{3,  7,  11, 13, 19,
                                                                      25, 37, 41, 47};
    return kPolynomials[n];
  }
  static value_type minit(std::size_t dimension, std::size_t degree) {
    static constexpr value_type kStarts[kInputs - 1][5] = {
        {1},           {1, 3},           {1, 3, 1},       {1, 1, 1},        {1, 1, 3, 3},
        {1, 3, 5, 13}, {1, 1, 5, 5, 17}, {1, 1, 5, 5, 5}, {1, 1, 7, 11, 19}};
    return kStarts[dimension][degree];
  }
};

using Sobol = boost::random::sobol_engine<std::uint64_t, 64, SobolTable>;

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
  Sobol generator(kInputs);
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
