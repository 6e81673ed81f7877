// Lines thinned for a page stay within a centimetre of the solved ones.

#include "answers/questions/json_shape.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "answers/questions/depth.h"
#include "answers/questions/json.h"
#include "tests/answers/questions/example_rigs.h"

namespace offplumb::answers {
namespace {

using Eigen::Vector3d;
using nlohmann::json;
using Points = std::vector<Vector3d>;

double DistanceToPart(const Vector3d& point, const Vector3d& a, const Vector3d& b) {
  const Vector3d along = b - a;
  const double square = along.squaredNorm();
  const double part = square > 0 ? std::clamp((point - a).dot(along) / square, 0.0, 1.0) : 0;
  return (a + part * along - point).norm();
}

/// \return the largest distance of any of the points from a line of straight parts.
double LargestMiss_m(const Points& points, const Points& line) {
  double largest = 0;
  for (const Vector3d& point : points) {
    double nearest = (point - line.front()).norm();
    for (std::size_t i = 1; i < line.size(); ++i) {
      nearest = std::min(nearest, DistanceToPart(point, line[i - 1], line[i]));
    }
    largest = std::max(largest, nearest);
  }
  return largest;
}

Points Arc(int count) {
  Points points;
  for (int i = 0; i < count; ++i) {
    const double turn = 1.2 * i / (count - 1);
    points.emplace_back(-30 * std::sin(turn), 0.1 * turn, 30 * (1 - std::cos(turn)));
  }
  return points;
}

TEST(Thinned, KeepsWithinTheDistanceAndBothEnds) {
  const Points arc = Arc(500);
  for (const double tolerance_m : {0.001, 0.01, 0.3}) {
    const Points thin = Thinned(arc, tolerance_m);
    EXPECT_EQ(thin.front(), arc.front());
    EXPECT_EQ(thin.back(), arc.back());
    EXPECT_LE(LargestMiss_m(arc, thin), tolerance_m);
    EXPECT_LT(thin.size(), arc.size() / 3);
  }
}

TEST(Thinned, AStraightLineIsItsEnds) {
  Points line;
  for (int i = 0; i <= 50; ++i) line.emplace_back(0.3 * i, -0.1 * i, 0.7 * i);
  EXPECT_EQ(Thinned(line, 1e-6).size(), 2u);
  EXPECT_EQ(Thinned({}, 0.01).size(), 0u);
  EXPECT_EQ(Thinned({{1, 2, 3}}, 0.01).size(), 1u);
  // A loop: the ends lie on each other, what is between does not.
  EXPECT_EQ(Thinned({{0, 0, 0}, {1, 0, 0}, {0, 0, 0}}, 0.01).size(), 3u);
}

Points PointsOf(const json& line) {
  Points points;
  for (const json& point : line) points.emplace_back(point[0], point[1], point[2]);
  return points;
}

TEST(ShapeJson, EveryLineIsWithinACentimetreOfTheSolvedOne) {
  DepthRequest request;
  request.rig.rig = TestRig();
  request.sea = TestSea(1.4);
  request.sea.heading_rad = 0;
  request.sea.current = {water::CurrentShape::kLinear, {{0, {0, 0}}, {30, {-0.2, 0.4}}}};
  request.wanted.bands = false;
  request.wanted.shape = true;
  for (const double count_m : {12.0, 45.0, 110.0}) {
    request.count_m = count_m;
    const auto answer = Answer(request);
    ASSERT_TRUE(answer) << answer.error().message;
    const json riggers = json::parse(ToJson(*answer)).at("riggers");
    for (std::size_t i = 0; i < riggers.size(); ++i) {
      const json& told = riggers[i].at("shape");
      const tow::TreeShape& solved = answer->riggers[i].shape;
      EXPECT_LE(LargestMiss_m(solved.main_line, PointsOf(told.at("main_line"))), 0.01);
      ASSERT_EQ(told.at("clips").size(), solved.clips.size());
      for (std::size_t c = 0; c < solved.clips.size(); ++c) {
        const json& clip = told.at("clips")[c];
        EXPECT_LE(LargestMiss_m(solved.clips[c].fishing_line, PointsOf(clip.at("fishing_line"))),
                  0.01);
        EXPECT_LE(LargestMiss_m(solved.clips[c].setback, PointsOf(clip.at("setback"))), 0.01);
        // From the clip up to the rod, and aft to the lure.
        EXPECT_EQ(clip.at("fishing_line").front(), clip.at("clip"));
        EXPECT_EQ(clip.at("fishing_line").back(), clip.at("rod_tip"));
        EXPECT_EQ(clip.at("setback").front(), clip.at("clip"));
        const bool flasher = !clip.at("flasher").is_null();
        EXPECT_EQ((flasher ? clip.at("leader") : clip.at("setback")).back(), clip.at("lure"));
        EXPECT_EQ(clip.at("leader").empty(), !flasher);
      }
    }
  }
}

}  // namespace
}  // namespace offplumb::answers
