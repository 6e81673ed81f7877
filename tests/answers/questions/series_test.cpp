#include "answers/questions/series.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace offplumb::answers {
namespace {

using testing::DoubleNear;
using testing::HasSubstr;
using testing::Pointwise;

constexpr double kFoot = 0.3048;
constexpr Range kCounts{0, 1000};

Expected<std::vector<double>> Counts(std::string_view text) {
  return ParseSeries(text, Dimension::kLength, kCounts, "counts");
}

TEST(Series, ReadsAListInTheOrderWritten) {
  const auto counts = Counts("20 ft, 1 m,60ft");
  ASSERT_TRUE(counts) << counts.error().message;
  EXPECT_THAT(*counts,
              Pointwise(DoubleNear(1e-12), std::vector<double>{20 * kFoot, 1.0, 60 * kFoot}));
}

TEST(Series, ReadsSteps) {
  const auto counts = Counts("20 ft to 240 ft by 20 ft");
  ASSERT_TRUE(counts) << counts.error().message;
  ASSERT_EQ(counts->size(), 12u);
  EXPECT_DOUBLE_EQ(counts->front(), 20 * kFoot);
  EXPECT_NEAR(counts->back(), 240 * kFoot, 1e-12);
}

// 0.1 has no exact double; the last step must not be lost to its rounding.
TEST(Series, EndsWhereItSays) {
  const auto speeds =
      ParseSeries("1.5 mph to 4.5 mph by 0.1 mph", Dimension::kSpeed, {0, 5}, "speeds");
  ASSERT_TRUE(speeds);
  EXPECT_EQ(speeds->size(), 31u);
}

TEST(Series, StopsBeforeItsEndWhenTheStepsDoNotMeetIt) {
  const auto counts = Counts("1 m to 10 m by 4 m");
  ASSERT_TRUE(counts);
  EXPECT_THAT(*counts, testing::ElementsAre(1.0, 5.0, 9.0));
}

TEST(Series, SaysWhatIsWrong) {
  const auto message = [](std::string_view text) {
    const auto counts = Counts(text);
    EXPECT_FALSE(counts) << text;
    return counts ? std::string() : counts.error().message;
  };
  EXPECT_THAT(message("20, 40 ft"), HasSubstr("no unit"));
  EXPECT_THAT(message("20 ft to 40 ft"), HasSubstr("no step"));
  EXPECT_THAT(message("40 ft to 20 ft by 5 ft"), HasSubstr("does not lead"));
  EXPECT_THAT(message("20 ft to 40 ft by -5 ft"), HasSubstr("does not lead"));
  EXPECT_THAT(message("20 ft to 40 ft by 0.001 ft"), HasSubstr("1000 steps"));
  EXPECT_THAT(message("2 km"), HasSubstr("out of range"));
  EXPECT_THAT(message(""), HasSubstr("number"));
}

}  // namespace
}  // namespace offplumb::answers
