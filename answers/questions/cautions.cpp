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
  }
  return {kNotForNavigation};
}

}  // namespace offplumb::answers
