/// \file
/// A value with its band.
#pragma once

#include <vector>

namespace offplumb::plan {

/// Median with 5 % and 95 %. The median is the answer at the medians of all inputs; low and high
/// are quantiles of the ensemble's answers. Without bands all three are the one value.
struct Band {
  double median = 0;
  double low = 0;
  double high = 0;
};

/// \return the band of a value that is known.
[[nodiscard]] inline Band Certain(double value) { return {value, value, value}; }

/// \param values the ensemble's answers, in any order; reordered. Empty: no band.
/// \return the band of one quantity: linear interpolation between order statistics (Hyndman and
/// Fan, The American Statistician 50 (1996) 361, definition 5), widened to hold the median if need
/// be.
[[nodiscard]] Band BandOf(double median, std::vector<double>& values);

}  // namespace offplumb::plan
