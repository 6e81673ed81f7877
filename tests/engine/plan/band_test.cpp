// The quantiles are those of Hyndman and Fan (1996), definition 5: the k-th of n sorted values is
// the (k - 1/2)/n quantile, straight between.
#include "engine/plan/band.h"

#include <cmath>
#include <vector>

#include <gtest/gtest.h>

namespace offplumb::plan {
namespace {

TEST(BandOf, TakesTheFifthAndNinetyFifthOfAHundredAndTwentyEight) {
  std::vector<double> values;
  for (int k = 128; k >= 1; --k) values.push_back(k);
  const Band band = BandOf(60, values);
  EXPECT_EQ(band.median, 60);
  // 128 * 0.05 + 0.5 = 6.9; from above 128 * 0.95 + 0.5 = 122.1.
  EXPECT_NEAR(band.low, 6.9, 1e-12);
  EXPECT_NEAR(band.high, 122.1, 1e-12);
}

TEST(BandOf, StaysWithinFewValues) {
  std::vector<double> two{4, 3};
  EXPECT_EQ(BandOf(3.5, two).low, 3);
  EXPECT_EQ(BandOf(3.5, two).high, 4);
  std::vector<double> one{3};
  EXPECT_EQ(BandOf(3, one).low, 3);
  EXPECT_EQ(BandOf(3, one).high, 3);
}

TEST(BandOf, IsWidenedToHoldItsMedian) {
  std::vector<double> values{5, 6, 7};
  EXPECT_EQ(BandOf(4, values).low, 4);
  EXPECT_EQ(BandOf(9, values).high, 9);
}

TEST(BandOf, OfNoValuesIsTheMedianAlone) {
  std::vector<double> none;
  const Band band = BandOf(7, none);
  EXPECT_EQ(band.low, 7);
  EXPECT_EQ(band.median, 7);
  EXPECT_EQ(band.high, 7);
}

}  // namespace
}  // namespace offplumb::plan
