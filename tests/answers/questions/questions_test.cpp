// What the questions ask for, refuse and remark.

#include <algorithm>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "answers/questions/card.h"
#include "answers/questions/cautions.h"
#include "answers/questions/compare.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"
#include "answers/questions/notes.h"
#include "answers/questions/question_list.h"
#include "tests/answers/questions/example_rigs.h"

namespace offplumb::answers {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::Each;
using testing::HasSubstr;
using testing::Not;

DepthRequest AskDepth() {
  DepthRequest request;
  request.rig.rig = TestRig();
  request.sea = TestSea(1.2);
  request.wanted.bands = false;
  request.count_m = 30;
  return request;
}

std::vector<std::string> Notes(const DepthRequest& request) {
  const auto answer = Answer(request);
  EXPECT_TRUE(answer) << (answer ? "" : answer.error().message);
  return answer ? answer->remarks.notes : std::vector<std::string>{};
}

water::Current ShearedCurrent() {
  water::Current current;
  current.points = {{0, {0, 0}}, {10, {0.2, 0.1}}};
  return current;
}

TEST(QuestionList, FindsEachWordAndTheNearest) {
  for (const QuestionEntry& entry : Questions()) {
    const auto found = FindQuestion(entry.word);
    ASSERT_TRUE(found);
    EXPECT_EQ(*found, entry.question);
    EXPECT_EQ(EntryOf(entry.question).word, entry.word);
  }
  const auto unknown = FindQuestion("conut");
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().kind, ProblemKind::kBadInput);
  EXPECT_THAT(unknown.error().message, HasSubstr("Did you mean count?"));
}

TEST(Cautions, StandBesideEveryQuestionAndDeferToTheRules) {
  for (const QuestionEntry& entry : Questions()) {
    const auto cautions = CautionsFor(entry.question);
    EXPECT_THAT(cautions, Contains(HasSubstr("Not for navigation"))) << entry.word;
    EXPECT_THAT(cautions, Contains(HasSubstr("Local regulations"))) << entry.word;
  }
}

TEST(Setting, NeedsASpeed) {
  DepthRequest request = AskDepth();
  request.sea.speed_mps.reset();
  const auto answer = Answer(request);
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().kind, ProblemKind::kBadInput);
  EXPECT_EQ(answer.error().subject, "speed");
}

TEST(Setting, NeedsAHeadingOnlyWhereItMatters) {
  DepthRequest request = AskDepth();
  request.sea.current = ShearedCurrent();
  EXPECT_FALSE(Answer(request));
  request.sea.heading_rad = 1;
  EXPECT_TRUE(Answer(request));
  request.sea.heading_rad.reset();
  request.sea.current.points.resize(1);
  EXPECT_TRUE(Answer(request)) << "one current for all depths changes nothing";
}

TEST(Setting, OverGroundTheHeadingIsTheCourseUnlessGiven) {
  DepthRequest request = AskDepth();
  request.sea.speed_kind = plan::SpeedKind::kOverGround;
  request.sea.current = ShearedCurrent();
  EXPECT_FALSE(Answer(request)) << "no course";
  request.sea.course_rad = 0.5;
  const auto answer = Answer(request);
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->conditions.heading_rad, 0.5);
}

TEST(Setting, FindsARiggerWhateverItsCapitals) {
  DepthRequest request = AskDepth();
  request.rig.rigger = "StarBoard";
  const auto answer = Answer(request);
  ASSERT_TRUE(answer);
  ASSERT_EQ(answer->riggers.size(), 1u);
  EXPECT_EQ(answer->riggers[0].name, "starboard");
}

// The water asked for comes before that of the rig, which comes before the usual sea water.
TEST(Setting, ChoosesTheWater) {
  DepthRequest request = AskDepth();
  EXPECT_EQ(Answer(request)->conditions.water.density_kg_per_m3,
            water::UsualSaltWater().density_kg_per_m3);
  request.rig.rig.water = water::Water{1010, 1.2e-6};
  EXPECT_EQ(Answer(request)->conditions.water.density_kg_per_m3, 1010);
  request.sea.water = water::UsualFreshWater();
  EXPECT_EQ(Answer(request)->conditions.water.density_kg_per_m3,
            water::UsualFreshWater().density_kg_per_m3);
  EXPECT_THAT(Notes(request), Contains(HasSubstr("not the one in the rig file")));
}

TEST(Notes, TellOfAnUnknownCurrentOnlyOverGround) {
  DepthRequest request = AskDepth();
  EXPECT_THAT(Notes(request), Each(Not(HasSubstr("speed over ground"))));
  request.sea.speed_kind = plan::SpeedKind::kOverGround;
  EXPECT_THAT(Notes(request), Contains(HasSubstr("Only the speed over ground is known")));
}

TEST(Notes, TellOfHummingUnlessTheDragIsStatedByItsOwner) {
  DepthRequest request = AskDepth();
  request.rig.rigger = "port";
  EXPECT_THAT(Notes(request), Contains(HasSubstr("not to hum")));
  request.rig.rig.riggers[0].line.constant_drag = true;
  EXPECT_THAT(Notes(request), Each(Not(HasSubstr("hum"))));
}

TEST(Notes, TellOfALeanBeyondTheRigsOwnLimit) {
  DepthRequest request = AskDepth();
  request.rig.rigger = "port";
  EXPECT_THAT(Notes(request), Each(Not(HasSubstr("leans"))));
  request.rig.rig.riggers[0].largest_boom_angle_rad = 0.2;
  EXPECT_THAT(Notes(request), Contains(HasSubstr("more than the 11 deg the rig allows")));
}

TEST(Notes, TellOfABallFasterThanItsDragLaw) {
  DepthRequest request = AskDepth();
  request.rig.rig.riggers[0].clips.clear();
  request.rig.rigger = "port";
  request.sea.speed_mps = 4;  // 0.097 m at 4 m/s: a Reynolds number of 2.9e5.
  EXPECT_THAT(Notes(request), Contains(HasSubstr("drag law")));
  request.sea.speed_mps = 2;
  EXPECT_THAT(Notes(request), Each(Not(HasSubstr("drag law"))));
}

TEST(Notes, TellOfWaterFromAstern) {
  DepthRequest request = AskDepth();
  request.rig.rigger = "port";
  request.sea.heading_rad = 0;
  request.sea.current.points = {{0, {0, 0}}, {10, {1.5, 0}}};
  EXPECT_THAT(Notes(request), Contains(HasSubstr("comes from astern")));
}

TEST(Notes, TellOfABallNearTheSurface) {
  DepthRequest request = AskDepth();
  request.rig.rig.riggers[0].clips.clear();
  request.rig.rigger = "port";
  request.count_m = 0.5;
  EXPECT_THAT(Notes(request), Contains(HasSubstr("of the surface")));
}

TEST(Notes, TellOfAFishingLineThatBellies) {
  DepthRequest request = AskDepth();
  request.rig.rigger = "port";
  EXPECT_THAT(Notes(request), Each(Not(HasSubstr("bellies"))));
  request.rig.rig.riggers[0].clips[0].rod_tip_tension_N = 6;
  request.sea.speed_mps = 1.5;
  EXPECT_THAT(Notes(request), Contains(HasSubstr("bellies")));
}

TEST(Notes, TellOfALureThatHangsWellBelowItsBall) {
  DepthRequest request = AskDepth();
  request.rig.rigger = "port";
  tackle::Body& lure = request.rig.rig.riggers[0].clips[0].trail.lure;
  for (const double weight_N : {0.05, 8.0}) {
    lure.weight_in_water_N = weight_N;
    const auto answer = Answer(request);
    ASSERT_TRUE(answer);
    const auto& figures = answer->riggers[0].figures;
    const bool below = figures.clips[0].lure_depth_m.median - figures.ball_depth_m.median > 0.3048;
    EXPECT_EQ(below, weight_N > 1) << "the test's own rig";
    const auto told = Contains(AllOf(HasSubstr("The lure hangs"), HasSubstr("weigh yours")));
    EXPECT_THAT(answer->remarks.notes, below
                                           ? testing::Matcher<std::vector<std::string>>(told)
                                           : testing::Matcher<std::vector<std::string>>(Not(told)));
  }
}

TEST(Names, OfClipsAndLures) {
  const tackle::Rig rig = TestRig();
  EXPECT_EQ(ClipName(rig.riggers[0], 0), "clip");
  EXPECT_EQ(LureName(rig.riggers[0], 0), "lure");
  EXPECT_EQ(ClipName(rig.riggers[1], 1), "stacked clip");
  EXPECT_EQ(LureName(rig.riggers[1], 0), "low lure");
  EXPECT_EQ(TheLure(rig.riggers[0], 0), "the lure");
  EXPECT_EQ(TheLure(rig.riggers[1], 0), "the low lure");
}

TEST(Names, AreNumbersFromTheLowestWhereThereAreNone) {
  tackle::Rigger rigger = TestRig().riggers[1];
  for (tackle::Clip& clip : rigger.clips) clip.name.clear();
  EXPECT_EQ(LureName(rigger, 0), "lure 1 (lowest)");
  EXPECT_EQ(TheLure(rigger, 1), "lure 2");
  EXPECT_EQ(ClipName(rigger, 1), "clip 2");
}

TEST(Depth, RefusesABuoyantBallByItsRigger) {
  DepthRequest request = AskDepth();
  request.rig.rig.riggers[1].ball.weight_in_water_N = -1;
  const auto answer = Answer(request);
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().subject, "rigger \"starboard\"");
}

CountRequest AskCount(double depth_m) {
  CountRequest request;
  request.rig.rig = TestRig();
  request.sea = TestSea(1.2);
  request.wanted.bands = false;
  request.depth_m = depth_m;
  return request;
}

TEST(Count, DepthAtTheCountFoundIsTheDepthWanted) {
  CountRequest request = AskCount(25);
  request.of = plan::DepthOf::kLure;
  request.rig.rigger = "port";
  const auto count = Answer(request);
  ASSERT_TRUE(count);
  ASSERT_TRUE(count->reachable());
  DepthRequest depth = AskDepth();
  depth.rig.rigger = "port";
  depth.count_m = count->riggers[0].count_m.median;
  // FindCount promises 1e-6 m of depth.
  EXPECT_NEAR(Answer(depth)->riggers[0].figures.clips[0].lure_depth_m.median, 25, 2e-6);
}

// A wish shallower than the shortest usual count is met exactly, or refused: never answered by
// another depth.
TEST(Count, AShallowWishIsMetOrRefused) {
  for (const double depth_m : {0.5, 1.0, 2.0, 4.0}) {
    SCOPED_TRACE(depth_m);
    CountRequest request = AskCount(depth_m);
    request.rig.rig.riggers[1].clips.clear();
    request.rig.rigger = "starboard";
    const auto count = Answer(request);
    if (!count || !count->reachable()) continue;
    DepthRequest depth = AskDepth();
    depth.rig = request.rig;
    depth.count_m = count->riggers[0].count_m.median;
    EXPECT_NEAR(Answer(depth)->riggers[0].figures.ball_depth_m.median, depth_m, 2e-6);
  }
}

TEST(Count, FindsTheClipByName) {
  CountRequest request = AskCount(25);
  request.of = plan::DepthOf::kLure;
  request.rig.rigger = "starboard";
  request.clip = "Stacked";
  const auto count = Answer(request);
  ASSERT_TRUE(count);
  EXPECT_EQ(count->riggers[0].wish.clip, 1u);
  request.clip = "";
  const auto lowest = Answer(request);
  EXPECT_EQ(lowest->riggers[0].wish.clip, 0u);
  EXPECT_THAT(lowest->remarks.notes, Contains(HasSubstr("lowest clip")));
  request.clip = "middle";
  const auto unknown = Answer(request);
  ASSERT_FALSE(unknown);
  EXPECT_THAT(unknown.error().remedy, HasSubstr("low and stacked"));
}

TEST(Count, FindsAClipByItsNumber) {
  CountRequest request = AskCount(25);
  request.of = plan::DepthOf::kLure;
  request.rig.rigger = "starboard";
  for (tackle::Clip& clip : request.rig.rig.riggers[1].clips) clip.name.clear();
  request.clip = "2";
  EXPECT_EQ(Answer(request)->riggers[0].wish.clip, 1u);
  request.clip = "3";
  const auto unknown = Answer(request);
  ASSERT_FALSE(unknown);
  EXPECT_THAT(unknown.error().remedy, HasSubstr("1 (the lowest) to 2"));
}

TEST(Count, RefusesAClipForTheBall) {
  CountRequest request = AskCount(25);
  request.rig.rigger = "starboard";
  request.clip = "low";
  const auto answer = Answer(request);
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().kind, ProblemKind::kBadInput);
  EXPECT_EQ(answer.error().subject, "clip");
}

TEST(Count, TellsWhereTheRestIsAtTheCountFound) {
  CountRequest request = AskCount(25);
  const auto count = Answer(request);
  ASSERT_TRUE(count);
  ASSERT_EQ(count->at_count.size(), 2u);
  for (std::size_t i = 0; i < 2; ++i) {
    ASSERT_TRUE(count->at_count[i]);
    EXPECT_EQ(count->at_count[i]->count_m, count->riggers[i].count_m.median);
  }
  request.depth_m = 200;
  EXPECT_FALSE(Answer(request)->at_count[0]);
}

// Rounded the other way, a remedy would fall short of the depth.
TEST(Count, RemediesAreRoundedToTheSideThatGetsThere) {
  using plan::RemedyKind;
  constexpr double kPound = 0.45359237;
  const auto text = [](RemedyKind kind, double value, DisplayUnits units = DisplayUnits::kFeet) {
    return RemedyText({kind, value}, units);
  };
  EXPECT_EQ(text(RemedyKind::kHeavierBall, 14.1 * kPound), "a ball of 14.5 lb");
  EXPECT_EQ(text(RemedyKind::kHeavierBall, 15 * kPound), "a ball of 15 lb");
  EXPECT_EQ(text(RemedyKind::kSlower, 2.38 * 0.44704), "a speed of 2.3 mph");
  EXPECT_EQ(text(RemedyKind::kThinnerLine, 0.000688), "a line of 0.68 mm");
  EXPECT_EQ(text(RemedyKind::kMoreLine, 400.2 * 0.3048), "fill the reel to 401 ft of line");
  EXPECT_EQ(text(RemedyKind::kNoFlasher, 0), "no flasher");
  EXPECT_EQ(text(RemedyKind::kHeavierBall, 6.3, DisplayUnits::kMetric), "a ball of 6.5 kg");
}

TEST(Card, UsualCountsFitTheShortestReel) {
  CardRequest request;
  request.rig.rig = TestRig();
  request.rig.rig.riggers[1].line_on_reel_m = 40;  // 131 ft
  request.wanted.bands = false;
  const auto card = Answer(request);
  ASSERT_TRUE(card);
  EXPECT_EQ(card->request.counts_m.size(), 12u);
  EXPECT_LE(card->request.counts_m.back(), 40);
  EXPECT_EQ(card->request.speeds_mps.size(), 7u);
}

TEST(Card, UsualCountsStartAboveTheHighestClip) {
  CardRequest request;
  request.rig.rig = TestRig();
  request.rig.rig.riggers[1].clips[1].above_ball_m = 20;  // 66 ft
  request.wanted.bands = false;
  const auto card = Answer(request);
  ASSERT_TRUE(card);
  EXPECT_EQ(card->request.counts_m.size(), 12u);
  EXPECT_NEAR(card->request.counts_m.front(), 80 * 0.3048, 1e-9);
  EXPECT_LE(card->request.counts_m.back(), tackle::kLineOnReel_m);
  EXPECT_NEAR(card->request.speeds_mps.front(), 2.0 * 0.44704, 1e-12);
  EXPECT_NEAR(card->request.speeds_mps.back(), 3.2 * 0.44704, 1e-12);
}

TEST(Card, AgreesWithDepth) {
  CardRequest request;
  request.rig.rig = TestRig();
  request.wanted.bands = false;
  request.speeds_mps = {0.9, 1.2};
  request.counts_m = {10, 30};
  const auto card = Answer(request);
  const auto depth = Answer(AskDepth());
  ASSERT_TRUE(card && depth);
  for (std::size_t i = 0; i < 2; ++i) {
    const plan::CardCell& cell = card->cards[i].cells[1][1];
    // Both are solved to 1e-9 of the line's length.
    EXPECT_NEAR(cell.ball_depth_m.median, depth->riggers[i].figures.ball_depth_m.median, 1e-6);
    EXPECT_NEAR(cell.lure_depth_m[0].median, depth->riggers[i].figures.clips[0].lure_depth_m.median,
                1e-6);
  }
}

TEST(Card, TellsProgressUpToTheEnd) {
  CardRequest request;
  request.rig.rig = TestRig();
  request.wanted.bands = false;
  std::vector<double> told;
  (void)Answer(request, [&](double done) { told.push_back(done); });
  ASSERT_EQ(told.size(), 14u);  // Two riggers, seven speeds.
  EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
  EXPECT_DOUBLE_EQ(told.back(), 1);
}

TEST(Compare, NeedsARigAndCountsThatIncrease) {
  CompareRequest request;
  request.sea = TestSea(1.2);
  EXPECT_FALSE(Answer(request));
  request.rigs = {RigChoice{TestRig(), "", false}};
  request.counts_m = {20, 20};
  EXPECT_FALSE(Answer(request));
}

TEST(Compare, ACountBeyondAReelIsRefused) {
  CompareRequest request;
  request.sea = TestSea(1.2);
  request.wanted.bands = false;
  request.rigs = {RigChoice{TestRig(), "", false}};
  request.gains_count_m = 150;
  const auto answer = Answer(request);
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().kind, ProblemKind::kBadInput);
  EXPECT_EQ(answer.error().subject, "count");
}

TEST(Compare, NamesTheInventedRig) {
  CompareRequest request;
  request.sea = TestSea(1.2);
  request.wanted.bands = false;
  request.rigs = {RigChoice{TestRig(), "port", true}, RigChoice{TestRig(), "port", false}};
  request.rigs[1].rig.name = "My rig";
  const auto answer = Answer(request);
  ASSERT_TRUE(answer);
  EXPECT_THAT(answer->remarks.notes, Contains("Test rig is an invented example."));
  EXPECT_THAT(answer->remarks.notes, Each(Not(HasSubstr("My rig"))));
}

TEST(Compare, GainsAreToldInTheUnitsChosen) {
  EXPECT_EQ(GainText("ball_1_lb_heavier", DisplayUnits::kFeet), "a ball 1 lb heavier");
  EXPECT_EQ(GainText("ball_1_lb_heavier", DisplayUnits::kMetric), "a ball 0.45 kg heavier");
  EXPECT_EQ(GainText("speed_0.1_mph_slower", DisplayUnits::kMetric), "0.045 m/s slower");
}

TEST(Compare, EveryRiggerMeantHasARow) {
  CompareRequest request;
  request.sea = TestSea(1.2);
  request.wanted.bands = false;
  request.rigs = {RigChoice{TestRig(), "", false}};
  const auto answer = Answer(request);
  ASSERT_TRUE(answer);
  ASSERT_EQ(answer->rows.size(), 2u);
  EXPECT_EQ(answer->rows[1].name, "Test rig: starboard");
  EXPECT_EQ(answer->request.counts_m.size(), 4u);
}

}  // namespace
}  // namespace offplumb::answers
