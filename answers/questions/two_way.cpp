#include "answers/questions/two_way.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "answers/questions/cautions.h"
#include "answers/questions/sound.h"
#include "engine/constants.h"

namespace offplumb::answers {
namespace {

using plan::Band;
using plan::TurnFrom;
using plan::TwoWay;

/// From here on a compass is told to be off: 10 deg, more than a small boat's is. Judgement.
constexpr double kCompassWorthTelling_rad = 0.17453292519943295;
/// Logs of the two legs that differ by more than this part tell of two throttles: twice the
/// standard deviation that the bands allow for. Judgement.
constexpr double kLogsApart = 2 * plan::kThrottleChange;

double Degrees(double angle_rad) { return angle_rad * 180.0 / kPi; }

/// Every band of what was found.
std::vector<Band*> BandsOf(TwoWay& found) {
  std::vector<Band*> bands{&found.speed_mps,  &found.toward_rad,      &found.along_mps,
                           &found.across_mps, &found.water_speed_mps, &found.first_heading_rad};
  if (found.log) {
    bands.push_back(&found.log->factor);
    bands.push_back(&found.log->error_mps);
  }
  if (found.compass_error_rad) bands.push_back(&*found.compass_error_rad);
  return bands;
}

bool AllSound(TwoWay found) {
  const auto bands = BandsOf(found);
  return std::all_of(bands.begin(), bands.end(), [](const Band* band) { return Sound(*band); });
}

std::string CurrentSpeed(double speed_mps, DisplayUnits units) {
  return FormatQuantity(speed_mps, Shown::kSpeed, CurrentUnits(units));
}

void NoteTurn(const TwoWayAnswer& answer, std::vector<std::string>& notes) {
  const TwoWay& found = answer.found;
  if (found.turn_from == TurnFrom::kHeadings) {
    notes.push_back(fmt::format(
        "The two headings read are {:.0f} deg from opposite, and this is reckoned with. A compass "
        "that is off by as much on both ways does no harm: only the change counts.",
        std::abs(Degrees(found.turn_rad) - 180)));
    return;
  }
  notes.emplace_back(
      "The second heading is taken as just the reverse of the first, since a heading is missing. "
      "It must be held by a compass or a far mark, not by the course that the phone shows: a boat "
      "kept on its course over ground hides the current across it.");
  if (found.course_miss_rad <= plan::kLargestTurnMiss_rad) return;
  notes.push_back(
      fmt::format("The two courses are {:.0f} deg from opposite. A current of {} across the boat "
                  "does that, if the headings were opposite; if they were not, give both headings.",
                  Degrees(found.course_miss_rad),
                  CurrentSpeed(std::abs(found.across_mps.median), answer.request.wanted.units)));
}

void NoteCurrent(const TwoWayAnswer& answer, std::vector<std::string>& notes) {
  const TwoWay& found = answer.found;
  if (!found.differs_from_none) {
    notes.emplace_back("This current cannot be told from none, so the way it goes is open.");
  }
  if (found.speed_mps.median > found.water_speed_mps.median) {
    notes.emplace_back("The current is faster than the boat goes through the water.");
  }
  notes.emplace_back(
      "What the wind does to the boat counts as current here, and is none at the ball's depth. Run "
      "in a lull.");
}

void NoteReadings(const TwoWayAnswer& answer, std::vector<std::string>& notes) {
  const plan::TwoLegs& legs = answer.request.legs;
  const bool brief = std::any_of(legs.begin(), legs.end(), [](const plan::Leg& leg) {
    return leg.duration_s < plan::kFairLeg_s;
  });
  if (brief) {
    notes.emplace_back("A leg is shorter than a minute: a longer one gives a narrower band.");
  }
  const bool usual =
      std::any_of(legs.begin(), legs.end(), [](const plan::Leg& leg) { return !leg.spread_mps; });
  if (usual) {
    notes.push_back(fmt::format(
        "How far the ground speed scatters was not told: {} is taken, as a phone in the open "
        "shows.",
        FormatQuantity(plan::kUsualSpread_mps, Shown::kSpeed, answer.request.wanted.units)));
  }
  if (answer.request.wanted.bands) {
    notes.push_back(fmt::format(
        "Beside that scatter the bands allow for a current that changes by about {} between the "
        "legs, "
        "a boat speed that changes by about {:.0f} % at one throttle, and about {:.0f} deg in the "
        "turn. That is judgement.",
        CurrentSpeed(plan::kCurrentChange_mps, answer.request.wanted.units),
        100 * plan::kThrottleChange,
        Degrees(answer.found.turn_from == TurnFrom::kHeadings ? plan::kTurnRead_rad
                                                              : plan::kTurnTaken_rad)));
  }
}

void NoteInstruments(const TwoWayAnswer& answer, std::vector<std::string>& notes) {
  const plan::TwoLegs& legs = answer.request.legs;
  const DisplayUnits units = answer.request.wanted.units;
  if (answer.found.log) {
    notes.emplace_back("The log's error is that at this speed; at another it may differ.");
  }
  if (legs[0].log_mps && legs[1].log_mps &&
      std::abs(*legs[0].log_mps - *legs[1].log_mps) >
          kLogsApart * 0.5 * (*legs[0].log_mps + *legs[1].log_mps)) {
    notes.push_back(
        fmt::format("The log read {} out and {} back: was the throttle touched, or did the wind "
                    "change the boat's speed? The bands do not allow for so much.",
                    FormatQuantity(*legs[0].log_mps, Shown::kSpeed, units),
                    FormatQuantity(*legs[1].log_mps, Shown::kSpeed, units)));
  }
  const auto& compass = answer.found.compass_error_rad;
  if (compass && std::abs(compass->median) > kCompassWorthTelling_rad) {
    notes.push_back(fmt::format(
        "The headings read are {:.0f} deg too {}: magnetic instead of true, or iron near the "
        "compass.",
        std::abs(Degrees(compass->median)), compass->median > 0 ? "high" : "low"));
  }
}

Remarks Remark(const TwoWayAnswer& answer) {
  Remarks remarks;
  remarks.cautions = CautionsFor(Question::kTwoWay);
  NoteTurn(answer, remarks.notes);
  NoteCurrent(answer, remarks.notes);
  NoteReadings(answer, remarks.notes);
  NoteInstruments(answer, remarks.notes);
  return remarks;
}

}  // namespace

Expected<TwoWayAnswer> Answer(const TwoWayRequest& request, const Progress& progress) {
  auto found = plan::FindTwoWay(request.legs);
  if (!found) return tl::unexpected<Problem>(found.error());
  TwoWayAnswer answer{request, std::move(*found), {}};
  if (!AllSound(answer.found)) {
    return tl::unexpected<Problem>(Problem{ProblemKind::kFault,
                                           "legs",
                                           "A figure of the answer is not a finite number.",
                                           "Please report the readings of both legs.",
                                           {},
                                           0});
  }
  answer.remarks = Remark(answer);
  if (!request.wanted.bands) {
    for (Band* band : BandsOf(answer.found)) *band = plan::Certain(band->median);
  }
  if (progress) progress(1);
  return answer;
}

DisplayUnits CurrentUnits(DisplayUnits units) {
  return units == DisplayUnits::kMetric ? units : DisplayUnits::kFeetKnots;
}

std::string WholeBearing(double angle_rad) {
  const double turns = angle_rad / (2 * kPi);
  const double degrees = std::round(360 * (turns - std::floor(turns)));
  return fmt::format("{:.0f}", degrees < 360 ? degrees : 0);
}

}  // namespace offplumb::answers
