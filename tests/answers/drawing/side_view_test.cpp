#include "answers/drawing/side_view.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/answers/drawing/drawn_rigs.h"
#include "tests/answers/drawing/sheet_check.h"

namespace offplumb::answers {
namespace {

using testing::IsEmpty;

/// A question to draw.
struct Case {
  std::string name;
  std::vector<tackle::Rigger> riggers;
  double count_ft = 0;
  double speed_mph = 0;
};

std::vector<Case> Cases() {
  const std::vector<tackle::Rigger> one = {OneClipRigger("port")};
  const std::vector<tackle::Rigger> two = {OneClipRigger("port"), StackedRigger("starboard")};
  tackle::Rigger bare = OneClipRigger("port");
  bare.clips.clear();
  std::vector<tackle::Rigger> four = two;
  four.push_back(OneClipRigger("port quarter"));
  four.push_back(StackedRigger("starboard quarter"));
  return {{"shallow", one, 15, 2.5},
          {"hundred", one, 100, 2.75},
          {"deep", one, 250, 2.5},
          {"bowed", one, 180, 3.6},
          {"two", two, 120, 2.5},
          {"two deep", two, 250, 2.5},
          {"two nearly still", two, 40, 0.3},
          {"no clip", {bare}, 100, 2.5},
          {"very shallow", one, 7, 1},
          {"four", four, 200, 2.5}};
}

std::vector<plan::RiggerDepth> Solve(const Case& drawn, const learn::Ensemble* ensemble) {
  std::vector<plan::RiggerDepth> depths;
  for (const tackle::Rigger& rigger : drawn.riggers) {
    const auto depth =
        plan::FindDepths(rigger, StillWater(drawn.speed_mph), drawn.count_ft * kFoot_m, ensemble);
    EXPECT_TRUE(depth) << drawn.name;
    if (depth) depths.push_back(*depth);
  }
  return depths;
}

SideViewOptions Words() {
  SideViewOptions options;
  options.title_lines = {"A sound that nobody has seen, two riggers",
                         "port: 12 lb lead ball on 7-strand stainless wire, 0.80 mm; 20 ft to "
                         "rotating flasher, 11 in; 3.5 ft to hoochie, 4 in"};
  options.speed_text = "2.5 mph through the water";
  return options;
}

class SideView : public testing::TestWithParam<Case> {};

TEST_P(SideView, NoTextOverlapsIsCutOrLeavesTheSheet) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(8);
  const auto depths = Solve(GetParam(), &ensemble);
  for (const DisplayUnits units :
       {DisplayUnits::kFeet, DisplayUnits::kFeetKnots, DisplayUnits::kMetric}) {
    const auto drawing = MakeSideView(GetParam().riggers, depths, units, Words());
    ASSERT_TRUE(drawing) << drawing.error().message;
    EXPECT_THAT(FaultsOf(*drawing, 5), IsEmpty()) << GetParam().name;
  }
}

TEST_P(SideView, WritesTheDepthOfEveryBallAndLureLarge) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(8);
  const auto depths = Solve(GetParam(), &ensemble);
  const auto drawing = MakeSideView(GetParam().riggers, depths, DisplayUnits::kFeet, Words());
  ASSERT_TRUE(drawing);
  for (const plan::RiggerDepth& depth : depths) {
    std::vector<plan::Band> wanted = {depth.figures.ball_depth_m};
    for (const auto& clip : depth.figures.clips) wanted.push_back(clip.lure_depth_m);
    for (const plan::Band& band : wanted) {
      const auto found =
          TextsOf(*drawing, FormatQuantity(band.median, Shown::kDepth, DisplayUnits::kFeet));
      ASSERT_FALSE(found.empty());
      // Digits of 6.5 mm: twice a printed card's, since the sheet is also looked at on a screen.
      EXPECT_GE(found.front().size_mm * kDigitHeight, 6.5);
    }
  }
}

TEST_P(SideView, DrawsTheMainLineToTheScaleItStates) {
  const auto depths = Solve(GetParam(), nullptr);
  const auto drawing = MakeSideView(GetParam().riggers, depths, DisplayUnits::kFeet, Words());
  ASSERT_TRUE(drawing);
  double scale = 0;
  for (const Text& text : drawing->texts) {
    const std::size_t at = text.text.find("scale 1 to ");
    if (at != std::string::npos) scale = std::strtod(text.text.c_str() + at + 11, nullptr);
  }
  ASSERT_GT(scale, 0);
  for (const plan::RiggerDepth& depth : depths) {
    const auto& line_m = depth.shape.main_line;
    const auto matches = [&](const Polyline& line) {
      if (line.points.size() != line_m.size()) return false;
      for (std::size_t i = 1; i < line_m.size(); ++i) {
        const double dx_mm = line.points[i].x_mm - line.points[0].x_mm;
        const double dy_mm = line.points[i].y_mm - line.points[0].y_mm;
        if (std::abs(dx_mm * scale / 1000 - (line_m[i].x() - line_m[0].x())) > 1e-9) return false;
        if (std::abs(dy_mm * scale / 1000 - (line_m[i].z() - line_m[0].z())) > 1e-9) return false;
      }
      return true;
    };
    EXPECT_TRUE(std::any_of(drawing->lines.begin(), drawing->lines.end(), matches));
  }
}

std::string NameOf(const testing::TestParamInfo<Case>& drawn) {
  std::string name = drawn.param.name;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Rigs, SideView, testing::ValuesIn(Cases()), NameOf);

TEST(SideViewWords, OneRiggerHasAllItsDimensions) {
  const learn::Ensemble ensemble = learn::PriorEnsemble(8);
  const Case drawn{"one", {OneClipRigger("port")}, 100, 2.75};
  const auto depths = Solve(drawn, &ensemble);
  ASSERT_EQ(depths.size(), 1U);
  const auto drawing = MakeSideView(drawn.riggers, depths, DisplayUnits::kFeet, Words());
  ASSERT_TRUE(drawing);
  EXPECT_EQ(TextsOf(*drawing, "count 100 ft").size(), 1U);
  const std::string degrees =
      FormatNumber(depths[0].figures.angle_boom_rad.median, Shown::kAngle, DisplayUnits::kFeet);
  EXPECT_EQ(TextsOf(*drawing, degrees + "° at the boom").size(), 1U);
  const plan::Band& ball_m = depths[0].figures.ball_depth_m;
  const auto feet = [](double si) { return FormatNumber(si, Shown::kDepth, DisplayUnits::kFeet); };
  EXPECT_EQ(TextsOf(*drawing, feet(ball_m.low) + " to " + feet(ball_m.high)).size(), 1U);
  const plan::Band& trail_m = depths[0].figures.ball_trail_m;
  EXPECT_EQ(TextsOf(*drawing, feet(trail_m.median) + " ft aft, " + feet(trail_m.low) + " to " +
                                  feet(trail_m.high))
                .size(),
            1U);
}

TEST(SideViewWords, WithoutBandsNoRangeIsWrittenOrShaded) {
  const Case drawn{"one", {OneClipRigger("port")}, 100, 2.75};
  const auto drawing =
      MakeSideView(drawn.riggers, Solve(drawn, nullptr), DisplayUnits::kFeet, Words());
  ASSERT_TRUE(drawing);
  for (const Text& text : drawing->texts) {
    EXPECT_EQ(text.text.find("nine times"), std::string::npos);
    if (text.text.find("scale 1 to") != std::string::npos) continue;
    EXPECT_EQ(text.text.find(" to 8"), std::string::npos) << text.text;
  }
  for (const Polyline& line : drawing->lines) {
    if (line.role == Role::kBand) {
      EXPECT_EQ(line.points[0].y_mm, line.points[2].y_mm);
    }
  }
}

TEST(SideViewWords, GearPushedAcrossIsSaidSinceItCannotBeSeen) {
  const tackle::Rigger rigger = OneClipRigger("port");
  plan::Conditions conditions = StillWater(2.5);
  // The water below sets to starboard of a boat heading north: east.
  conditions.current.points = {{0, {0, 0}}, {10, {0, 0.3}}, {200, {0, 0.3}}};
  const auto depth = plan::FindDepths(rigger, conditions, 100 * kFoot_m, nullptr);
  ASSERT_TRUE(depth) << depth.error().message;
  ASSERT_GT(std::abs(depth->figures.ball_side_m.median), 0.5);
  const auto drawing = MakeSideView({rigger}, {*depth}, DisplayUnits::kFeet, Words());
  ASSERT_TRUE(drawing);
  const std::string side = depth->figures.ball_side_m.median > 0 ? " to starboard" : " to port";
  EXPECT_TRUE(std::any_of(drawing->texts.begin(), drawing->texts.end(), [&](const Text& text) {
    return text.text.find(side) != std::string::npos;
  }));
  EXPECT_THAT(FaultsOf(*drawing, 5), IsEmpty());
}

TEST(SideViewWords, EveryClipOfAStackedRiggerIsNamedAndADodgerIsCalledOne) {
  Case drawn{"stacked", {StackedRigger("starboard")}, 120, 2.5};
  drawn.riggers[0].clips[0].trail.flasher = tackle::MakeFlasher("dodger-swaying-8in").value();
  const auto drawing =
      MakeSideView(drawn.riggers, Solve(drawn, nullptr), DisplayUnits::kFeet, Words());
  ASSERT_TRUE(drawing);
  EXPECT_EQ(TextsOf(*drawing, "clip").size(), 2U);
  EXPECT_EQ(TextsOf(*drawing, "lure").size(), 2U);
  EXPECT_EQ(TextsOf(*drawing, "dodger").size(), 1U);
  EXPECT_THAT(TextsOf(*drawing, "flasher"), IsEmpty());
}

TEST(SideViewProblems, NothingToDrawATooSmallSheetAndAStrangeDepthAreProblems) {
  const Case drawn{"one", {OneClipRigger("port")}, 100, 2.75};
  auto depths = Solve(drawn, nullptr);
  EXPECT_FALSE(MakeSideView(drawn.riggers, {}, DisplayUnits::kFeet, Words()));
  SideViewOptions small = Words();
  small.width_mm = 90;
  small.height_mm = 60;
  const auto cramped = MakeSideView(drawn.riggers, depths, DisplayUnits::kFeet, small);
  ASSERT_FALSE(cramped);
  EXPECT_EQ(cramped.error().kind, ProblemKind::kBadInput);
  depths[0].name = "nobody";
  const auto strange = MakeSideView(drawn.riggers, depths, DisplayUnits::kFeet, Words());
  ASSERT_FALSE(strange);
  EXPECT_EQ(strange.error().kind, ProblemKind::kFault);
}

}  // namespace
}  // namespace offplumb::answers
