#include "engine/plan/coefficients.h"

#include "engine/plan/alter.h"
#include "engine/plan/conditions.h"
#include "engine/plan/defaults.h"
#include "engine/plan/two_way.h"

namespace offplumb::plan {

using tackle::Coefficient;
using tackle::Mark;

std::vector<Coefficient> Coefficients() {
  return {
      {"kLargestSpeed_mps", kLargestSpeed_mps, "m/s",
       "10 mph: nobody trolls faster, and beyond it no drag law here was checked",
       Mark::kJudgement},
      {"kLargestCount_m", kLargestCount_m, "m", "more than any reel of this gear holds",
       Mark::kJudgement},
      {"kHeaviestBall_kg", kHeaviestBall_kg, "kg", "20 lb", Mark::kCommonPractice},
      {"kThinnestLine_m", kThinnestLine_m, "m", "", Mark::kCommonPractice},
      {"kSlowestPart", kSlowestPart, "-", "slower than this is drifting, no remedy",
       Mark::kJudgement},
      {"kMostLinePart", kMostLinePart, "-", "three times the reel: beyond it another rig is meant",
       Mark::kJudgement},
      {"kLeadInWater", kLeadInWater, "-",
       "1 - 1025/11340, for the mass of a ball given only by its weight in water",
       Mark::kWorkedOut},
      {"kStations", kStations, "-",
       "depth and angle are monotone over a 24th of the line unless the current turns sharply",
       Mark::kJudgement},
      {"kCountTolerance_m", kCountTolerance_m, "m", "far below what a counter shows",
       Mark::kJudgement},
      {"kRemedyHalvings", kRemedyHalvings, "-", "one part in 4000 of a remedy's range",
       Mark::kJudgement},
      {"kGainBall_kg", kGainBall_kg, "kg", "a pound of ball; NIST SP 811 (2008), appendix B.8",
       Mark::kJudgement},
      {"kGainLine_m", kGainLine_m, "m", "a tenth of a millimetre of line", Mark::kJudgement},
      {"kGainSpeed_mps", kGainSpeed_mps, "m/s",
       "a tenth of a mile an hour; NIST SP 811 (2008), appendix B.8", Mark::kJudgement},
      {"kLargestGroundSpeed_mps", kLargestGroundSpeed_mps, "m/s",
       "two-way run: 20 mph, the fastest boat on a current as fast", Mark::kJudgement},
      {"kSlowestRun_mps", kSlowestRun_mps, "m/s",
       "two-way run: half a knot; slower is drifting, and a log below it is fouled",
       Mark::kJudgement},
      {"kShortestLeg_s", kShortestLeg_s, "s",
       "two-way run: boat and receiver need as long to settle after the turn", Mark::kJudgement},
      {"kFairLeg_s", kFairLeg_s, "s", "two-way run: below it the scatter rules the band",
       Mark::kJudgement},
      {"kLongestLeg_s", kLongestLeg_s, "s", "two-way run: over an hour the tide turns the current",
       Mark::kJudgement},
      {"kLargestTurnMiss_rad", kLargestTurnMiss_rad, "rad",
       "two-way run: 20 deg from opposite headings; further off the run was not made as meant",
       Mark::kJudgement},
      {"kLargestCompassError_rad", kLargestCompassError_rad, "rad",
       "two-way run: 45 deg, more than variation and a phone laid askew come to", Mark::kJudgement},
      {"kUsualSpread_mps", kUsualSpread_mps, "m/s",
       "two-way run: 0.2 mph, how far a phone's ground speed jumps about in the open",
       Mark::kJudgement},
      {"kLargestSpread_mps", kLargestSpread_mps, "m/s",
       "two-way run: as fast as trolling itself; nothing can be read", Mark::kJudgement},
      {"kSpreadTime_s", kSpreadTime_s, "s",
       "two-way run: receivers smooth, waves and steering last some seconds", Mark::kJudgement},
      {"kLegFloor_mps", kLegFloor_mps, "m/s",
       "two-way run: a speed told to a tenth of a mph, and the receiver's own error",
       Mark::kJudgement},
      {"kTurnRead_rad", kTurnRead_rad, "rad",
       "two-way run: 4 deg, two readings of a small boat's or phone's compass", Mark::kJudgement},
      {"kTurnTaken_rad", kTurnTaken_rad, "rad",
       "two-way run: 5 deg, the same and 3 deg of steering", Mark::kJudgement},
      {"kCurrentChange_mps", kCurrentChange_mps, "m/s",
       "two-way run: 0.1 kn, between two places some 100 m and minutes apart", Mark::kJudgement},
      {"kThrottleChange", kThrottleChange, "-",
       "two-way run: wind and waves ahead and astern at one throttle", Mark::kJudgement},
      {"kLogReading_mps", kLogReading_mps, "m/s",
       "two-way run: a mean reading told to a tenth of a mph", Mark::kJudgement},
  };
}

}  // namespace offplumb::plan
