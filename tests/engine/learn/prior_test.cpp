// The prior holds the quantiles it states, and its ensemble is even, independent and the same every
// time.
#include "engine/learn/prior.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include <gtest/gtest.h>

#include "engine/learn/coefficients.h"
#include "engine/tackle/catalogue.h"

namespace offplumb::learn {
namespace {

bool IsSpeed(Input input) { return input == Input::kLogSpeed || input == Input::kGroundSpeed; }

/// What a draw holds when an input stands at `value`: a factor on the median, or an added speed.
double AsDrawn(const PriorEntry& entry, double value) {
  return IsSpeed(entry.input) ? value : value / entry.median;
}

/// Quantiles are reached through exp and log: a few units in the last place.
constexpr double kRounding = 1e-14;

std::vector<double> SortedValues(const Ensemble& ensemble, Input input) {
  std::vector<double> values;
  for (const Draw& draw : ensemble.members) values.push_back(draw[input]);
  std::sort(values.begin(), values.end());
  return values;
}

TEST(Prior, IsInTheOrderOfItsEnum) {
  for (std::size_t i = 0; i < kInputs; ++i) {
    EXPECT_EQ(static_cast<std::size_t>(Prior()[i].input), i);
    EXPECT_FALSE(Prior()[i].id.empty());
    EXPECT_FALSE(Prior()[i].words.empty());
    EXPECT_LT(Prior()[i].low, Prior()[i].median);
    EXPECT_LT(Prior()[i].median, Prior()[i].high);
  }
}

// The table of docs/method.md section 7, typed here a second time. 0.1 mph and 0.3 kn in m/s: NIST
// SP 811 (2008), appendix B.
TEST(Prior, IsTheTableOfTheManual) {
  const double mph = 0.44704;
  const double knot = 1852.0 / 3600.0;
  const struct {
    Input input;
    double low, median, high;
  } table[] = {
      {Input::kWireDrag, 0.95, 1.25, 1.75},
      {Input::kBraidDrag, 0.95, 1.2, 1.6},
      {Input::kNylonDrag, 0.95, 1.2, 1.6},
      {Input::kTackleDrag, 0.5, 1, 2},
      {Input::kPulledTackleDrag, 0.85, 1, 1.15},
      {Input::kBallDrag, 0.6, 1, 1.5},
      {Input::kRodTension, 0.6, 1, 1.6},
      {Input::kCounter, 0.985, 1, 1.015},
      {Input::kLogSpeed, -0.1 * mph, 0, 0.1 * mph},
      {Input::kGroundSpeed, -0.3 * knot, 0, 0.3 * knot},
  };
  ASSERT_EQ(std::size(table), kInputs);
  for (const auto& row : table) {
    const PriorEntry& entry = Prior()[static_cast<std::size_t>(row.input)];
    // The knots are printed with six digits.
    EXPECT_NEAR(entry.low, row.low, 5e-7) << entry.id;
    EXPECT_NEAR(entry.median, row.median, 5e-7) << entry.id;
    EXPECT_NEAR(entry.high, row.high, 5e-7) << entry.id;
  }
}

// The catalogue's levels are what the factors multiply, so each must be its prior's median.
TEST(Prior, MediansAreTheCataloguesLevels) {
  const auto median = [](Input input) { return Prior()[static_cast<std::size_t>(input)].median; };
  using tackle::LineKind;
  const auto level = [](LineKind kind) {
    return tackle::MakeLine(kind, 8e-4).normal_drag_coefficient;
  };
  EXPECT_DOUBLE_EQ(level(LineKind::kWire), median(Input::kWireDrag));
  EXPECT_DOUBLE_EQ(level(LineKind::kBraid), median(Input::kBraidDrag));
  EXPECT_DOUBLE_EQ(level(LineKind::kNylon), median(Input::kNylonDrag));
  EXPECT_DOUBLE_EQ(level(LineKind::kFluorocarbon), median(Input::kNylonDrag));
}

TEST(MedianDraw, ChangesNothing) {
  const Draw draw = MedianDraw();
  for (const PriorEntry& entry : Prior()) {
    EXPECT_EQ(draw[entry.input], IsSpeed(entry.input) ? 0.0 : 1.0) << entry.id;
  }
}

TEST(DrawAt, HoldsAllThreeQuantilesOfItsInputAndTheMediansOfTheRest) {
  for (const PriorEntry& entry : Prior()) {
    const Draw low = DrawAt(entry.input, -kBandNormal);
    const Draw median = DrawAt(entry.input, 0);
    const Draw high = DrawAt(entry.input, kBandNormal);
    EXPECT_NEAR(low[entry.input], AsDrawn(entry, entry.low), kRounding) << entry.id;
    EXPECT_EQ(median[entry.input], AsDrawn(entry, entry.median)) << entry.id;
    EXPECT_NEAR(high[entry.input], AsDrawn(entry, entry.high), kRounding) << entry.id;
    for (const PriorEntry& other : Prior()) {
      if (other.input == entry.input) continue;
      EXPECT_EQ(low[other.input], MedianDraw()[other.input]) << entry.id << " moves " << other.id;
    }
  }
}

TEST(DrawAt, RisesAllTheWayThroughTheMedian) {
  for (const PriorEntry& entry : Prior()) {
    double before = -INFINITY;
    for (double z = -3; z <= 3; z += 0.125) {
      const double value = DrawAt(entry.input, z)[entry.input];
      EXPECT_GT(value, before) << entry.id << " at " << z;
      before = value;
    }
  }
}

// Midpoints of n equal slices: the k-th of n sorted values is the (k - 1/2)/n quantile, exactly.
TEST(PriorEnsemble, HasOneMemberInTheMiddleOfEachSliceOfEveryInput) {
  for (const int members : {16, kMembers, 1024}) {
    const Ensemble ensemble = PriorEnsemble(members);
    ASSERT_EQ(ensemble.members.size(), static_cast<std::size_t>(members));
    for (const PriorEntry& entry : Prior()) {
      const std::vector<double> values = SortedValues(ensemble, entry.input);
      for (int k = 0; k < members; ++k) {
        // The probability that the prior gives to all below the value.
        const double value = values[static_cast<std::size_t>(k)];
        const double span =
            IsSpeed(entry.input)
                ? value / (value < 0 ? -entry.low : entry.high)
                : std::log(value) / (value < 1 ? std::log(entry.median / entry.low)
                                               : std::log(entry.high / entry.median));
        const double below = 0.5 * std::erfc(-span * kBandNormal / std::sqrt(2.0));
        // 1e-6 of a slice: rounding of erfc and its inverse.
        ASSERT_NEAR(below * members, k + 0.5, 1e-6)
            << entry.id << ", slice " << k << " of " << members;
      }
    }
  }
}

// Of 128 slices the 5 % lies between the middles of the 6th and 7th, the 95 % likewise from above:
// the stated quantile must be between those members.
TEST(PriorEnsemble, EnclosesTheStatedQuantilesWithinOneSlice) {
  const Ensemble ensemble = PriorEnsemble();
  for (const PriorEntry& entry : Prior()) {
    const std::vector<double> values = SortedValues(ensemble, entry.input);
    ASSERT_EQ(values.size(), 128u);
    EXPECT_LE(values[5], AsDrawn(entry, entry.low)) << entry.id;
    EXPECT_GE(values[6], AsDrawn(entry, entry.low)) << entry.id;
    EXPECT_LE(values[63], AsDrawn(entry, entry.median)) << entry.id;
    EXPECT_GE(values[64], AsDrawn(entry, entry.median)) << entry.id;
    EXPECT_LE(values[121], AsDrawn(entry, entry.high)) << entry.id;
    EXPECT_GE(values[122], AsDrawn(entry, entry.high)) << entry.id;
  }
}

TEST(PriorEnsemble, IsTheSameEveryTime) {
  const Ensemble once = PriorEnsemble();
  const Ensemble again = PriorEnsemble();
  for (std::size_t m = 0; m < once.members.size(); ++m) {
    EXPECT_EQ(once.members[m].value, again.members[m].value);
  }
}

// Pins the members and their order, on every machine and compiler: a sum in which every place has
// its own weight. Computed once from this code after the tests above passed.
TEST(PriorEnsemble, IsTheOneItWas) {
  const Ensemble ensemble = PriorEnsemble();
  double sum = 0;
  for (std::size_t m = 0; m < ensemble.members.size(); ++m) {
    for (std::size_t i = 0; i < kInputs; ++i) {
      sum += static_cast<double>((m + 1) * (i + 1)) * ensemble.members[m].value[i];
    }
  }
  constexpr double kSum = 305658.17316322762;
  EXPECT_NEAR(sum / kSum, 1.0, 1e-9) << sum;
}

/// Rank of each member in one input, 0 the lowest.
std::vector<double> Ranks(const Ensemble& ensemble, std::size_t input) {
  const std::size_t n = ensemble.members.size();
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return ensemble.members[a].value[input] < ensemble.members[b].value[input];
  });
  std::vector<double> ranks(n);
  for (std::size_t k = 0; k < n; ++k) ranks[order[k]] = static_cast<double>(k);
  return ranks;
}

// 128 independent draws would have rank correlations of 1/sqrt(127) = 0.09 (one sigma); 0.25 is
// nearly three.
TEST(PriorEnsemble, KeepsItsInputsApart) {
  const Ensemble ensemble = PriorEnsemble();
  const double n = static_cast<double>(ensemble.members.size());
  for (std::size_t i = 0; i < kInputs; ++i) {
    for (std::size_t j = i + 1; j < kInputs; ++j) {
      const std::vector<double> a = Ranks(ensemble, i);
      const std::vector<double> b = Ranks(ensemble, j);
      double covariance = 0;
      for (std::size_t k = 0; k < a.size(); ++k) {
        covariance += (a[k] - (n - 1) / 2) * (b[k] - (n - 1) / 2);
      }
      const double correlation = covariance / (n * (n * n - 1) / 12);
      EXPECT_LT(std::abs(correlation), 0.25) << Prior()[i].id << " and " << Prior()[j].id;
    }
  }
}

TEST(DragInput, FollowsWhatALineIsMadeOf) {
  using tackle::LineKind;
  const struct {
    LineKind kind;
    Input input;
  } cases[] = {{LineKind::kWire, Input::kWireDrag},
               {LineKind::kBraid, Input::kBraidDrag},
               {LineKind::kNylon, Input::kNylonDrag},
               {LineKind::kFluorocarbon, Input::kNylonDrag}};
  for (const auto& c : cases) {
    Input input{};
    EXPECT_TRUE(DragInput(tackle::MakeLine(c.kind, 6e-4), input));
    EXPECT_EQ(input, c.input);
  }
}

TEST(DragInput, IsNoneForAStatedConstant) {
  tackle::Line line = tackle::MakeLine(tackle::LineKind::kWire, 8e-4);
  line.constant_drag = true;
  Input input{};
  EXPECT_FALSE(DragInput(line, input));
  tackle::Body flasher = tackle::MakeFlasher("flasher-rotating-11in").value();
  flasher.drag_source = tackle::DragSource::kStated;
  EXPECT_FALSE(DragInput(flasher, input));
}

TEST(DragInput, IsNarrowerForAPullThanForTheCatalogue) {
  tackle::Body flasher = tackle::MakeFlasher("flasher-rotating-11in").value();
  Input catalogue{};
  ASSERT_TRUE(DragInput(flasher, catalogue));
  EXPECT_EQ(catalogue, Input::kTackleDrag);
  flasher.drag_source = tackle::DragSource::kPull;
  Input pull{};
  ASSERT_TRUE(DragInput(flasher, pull));
  EXPECT_EQ(pull, Input::kPulledTackleDrag);
  const auto width = [](Input input) {
    return DrawAt(input, kBandNormal)[input] / DrawAt(input, -kBandNormal)[input];
  };
  EXPECT_LT(width(pull), width(catalogue) / 2);
}

TEST(Coefficients, OfThePriorAreItsQuantiles) {
  const std::vector<tackle::Coefficient> list = Coefficients();
  std::size_t row = 0;
  for (const PriorEntry& entry : Prior()) {
    for (const double value : {entry.low, entry.median, entry.high}) {
      ASSERT_LT(row, list.size());
      EXPECT_EQ(list[row].value, value) << list[row].name;
      EXPECT_NE(list[row].name.find(entry.words), std::string::npos) << list[row].name;
      EXPECT_FALSE(list[row].source.empty()) << list[row].name;
      ++row;
    }
  }
}

}  // namespace
}  // namespace offplumb::learn
