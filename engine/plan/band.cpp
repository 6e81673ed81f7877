#include "engine/plan/band.h"

#include <algorithm>
#include <cmath>

namespace offplumb::plan {
namespace {

/// Hyndman and Fan (1996) definition 5: the k-th of n is the (k - 1/2)/n quantile. Sorted input.
double Quantile(const std::vector<double>& sorted, double probability) {
  const double last = static_cast<double>(sorted.size()) - 1.0;
  const double at = std::clamp(probability * static_cast<double>(sorted.size()) - 0.5, 0.0, last);
  const double below = std::floor(at);
  const auto i = static_cast<std::size_t>(below);
  const std::size_t j = std::min(i + 1, sorted.size() - 1);
  return sorted[i] + (at - below) * (sorted[j] - sorted[i]);
}

}  // namespace

Band BandOf(double median, std::vector<double>& values) {
  if (values.empty()) return Certain(median);
  std::sort(values.begin(), values.end());
  return {median, std::min(median, Quantile(values, 0.05)),
          std::max(median, Quantile(values, 0.95))};
}

}  // namespace offplumb::plan
