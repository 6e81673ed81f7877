#include "engine/learn/coefficients.h"

#include <string>
#include <string_view>

#include "engine/learn/prior.h"

namespace offplumb::learn {
namespace {

using tackle::Coefficient;
using tackle::Mark;

bool IsSpeed(Input input) { return input == Input::kLogSpeed || input == Input::kGroundSpeed; }

/// On what grounds the judgement of an input's prior stands.
std::string_view Grounds(Input input) {
  switch (input) {
    case Input::kWireDrag:
    case Input::kBraidDrag:
      return "whole trees with 1.2 come out where common practice has them; smooth line has 0.95, "
             "strumming up to 1.75";
    case Input::kNylonDrag:
      return "as braid: smooth line has 0.95, strumming up to 1.6";
    case Input::kTackleDrag:
      return "no measurement of a turning flasher was found: a factor of two";
    case Input::kPulledTackleDrag:
      return "what a spring scale and a log read beside the boat";
    case Input::kBallDrag:
      return "shape, roughness and wobble of a casting";
    case Input::kRodTension:
      return "how far a rod is bent down, seldom weighed";
    case Input::kCounter:
      return "wraps change with the layer on the spool";
    case Input::kLogSpeed:
      return "a calibrated log is good to 0.1 mph";
    case Input::kGroundSpeed:
      return "a current of 0.3 kn along the course goes unseen";
  }
  return "";
}

void Add(const PriorEntry& entry, std::vector<Coefficient>& list) {
  const std::string unit = IsSpeed(entry.input) ? "m/s" : "-";
  const std::string grounds(Grounds(entry.input));
  const std::string name = std::string("prior of ") + std::string(entry.words);
  list.push_back({name + ", 5 %", entry.low, unit, grounds, Mark::kJudgement});
  list.push_back({name + ", median", entry.median, unit, grounds, Mark::kJudgement});
  list.push_back({name + ", 95 %", entry.high, unit, grounds, Mark::kJudgement});
}

}  // namespace

std::vector<Coefficient> Coefficients() {
  std::vector<Coefficient> list;
  for (const PriorEntry& entry : Prior()) Add(entry, list);
  list.push_back({"kMembers", kMembers, "-",
                  "a power of two; the 5 % and 95 % lie between the 6th and 7th from either end",
                  Mark::kJudgement});
  list.push_back({"kBandNormal", kBandNormal, "-", "inverse of the normal distribution at 0.95",
                  Mark::kWorkedOut});
  return list;
}

}  // namespace offplumb::learn
