#include "engine/tow/coefficients.h"

#include "engine/tow/fishing_line.h"
#include "engine/tow/steady_solver.h"

namespace offplumb::tow {

using tackle::Coefficient;
using tackle::Mark;

std::vector<Coefficient> Coefficients() {
  const SteadyOptions options;
  return {
      {"kLongestFishingLine_m", kLongestFishingLine_m, "m",
       "longer than any spool: the rod does not hold such a line", Mark::kJudgement},
      {"SteadyOptions::refine", static_cast<double>(options.refine), "-",
       "the mesh that the accuracy tests and the bench measure", Mark::kJudgement},
      {"SteadyOptions::tolerance", options.tolerance, "-",
       "largest miss over the line's length: 0.1 micrometre in 100 m", Mark::kJudgement},
      {"SteadyOptions::max_passes", static_cast<double>(options.max_passes), "-",
       "after that the stream is eased in from rest, which takes longer but goes further",
       Mark::kJudgement},
  };
}

}  // namespace offplumb::tow
