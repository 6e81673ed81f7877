#include "engine/plan/coefficients.h"

#include "engine/plan/alter.h"
#include "engine/plan/conditions.h"
#include "engine/plan/defaults.h"

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
  };
}

}  // namespace offplumb::plan
