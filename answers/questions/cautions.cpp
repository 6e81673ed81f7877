#include "answers/questions/cautions.h"

namespace offplumb::answers {
namespace {

// What a hung-up ball does to a small boat: the coast guards' advice is never to anchor by the
// stern, since the pull on a low transom swamps it; a fast line is that anchor. The rest is common
// practice, no source.
constexpr const char* kNotForNavigation =
    "Not for navigation. Depths here are worked out, not measured: watch your sounder.";
constexpr const char* kHangUp =
    "If the ball hangs up: out of gear, everyone low and clear of the line, give line off the "
    "clutch. Never wrap line round a hand or a cleat. Keep cutters for it within reach.";
constexpr const char* kRules =
    "Local regulations say how many rods, hooks, clips and what weights are allowed, and change in "
    "season; this program does not know them.";
constexpr const char* kBoom =
    "Set the clutch to slip well below what boom, mount and gunwale will bear; their makers' "
    "instructions say how much, and a doubtful mount wants a licensed yard.";
constexpr const char* kHeavyBall =
    "A heavier ball swings harder when it comes aboard: stop it at the surface, and do not reach "
    "out over the gunwale for it, least of all alone.";
// Common practice, no source: a straight run with eyes on the phone is how boats meet.
constexpr const char* kOfThisWaterOnly =
    "Not for navigation. This is the current at the top of the water, at the place and time of the "
    "run; below it, and an hour later, it is another.";
constexpr const char* kLookOut =
    "Keep a lookout on both legs: note the figures before and after, not on the way, and break off "
    "for any boat, line or shoal. Local regulations and the rules of the road come first.";
constexpr const char* kWideTurn =
    "Turn wide, or with the gear up: in a tight turn the inner ball sinks and lines cross.";

}  // namespace

std::vector<std::string> CautionsFor(Question question) {
  switch (question) {
    case Question::kDepth:
    case Question::kCard:
      return {kNotForNavigation, kHangUp, kRules};
    case Question::kCount:
      return {kNotForNavigation, kHangUp, kHeavyBall, kRules};
    case Question::kCompare:
      return {kNotForNavigation, kBoom, kHeavyBall, kRules};
    case Question::kTwoWay:
      return {kOfThisWaterOnly, kLookOut, kWideTurn};
  }
  return {kNotForNavigation};
}

}  // namespace offplumb::answers
