#include <cmath>
#include <string>

#include <fmt/format.h>

#include "apps/cli/phrases.h"
#include "apps/cli/show.h"
#include "apps/cli/table.h"
#include "apps/cli/terminal.h"
#include "engine/constants.h"

namespace offplumb::cli {
namespace {

using answers::WholeBearing;

plan::Band Turned(const plan::Band& band) { return {-band.median, -band.high, -band.low}; }

/// \return whether a figure shows as below none: it is then told from the other side.
bool ShowsNegative(const plan::Band& band, Shown shown, DisplayUnits units) {
  return answers::FormatNumber(band.median, shown, units).front() == '-';
}

/// A row of a table whose name says which side of none its figure lies on.
void AddSided(const plan::Band& band, Shown shown, DisplayUnits units, const std::string& above,
              const std::string& below, Table& table) {
  const bool negative = ShowsNegative(band, shown, units);
  table.Add({negative ? below : above, Words(negative ? Turned(band) : band, shown, units)});
}

/// What was read on a leg: "3.1 mph toward 40".
std::string LegWords(const plan::Leg& leg, DisplayUnits units) {
  return fmt::format("{} toward {}", Echo(leg.ground_speed_mps, Shown::kSpeed, units),
                     WholeBearing(leg.course_rad));
}

std::string Asked(const plan::TwoLegs& legs, DisplayUnits units) {
  std::string text = fmt::format("Over ground {} out, {} back", LegWords(legs[0], units),
                                 LegWords(legs[1], units));
  const std::string out = answers::FormatQuantity(legs[0].duration_s, Shown::kTime, units);
  const std::string back = answers::FormatQuantity(legs[1].duration_s, Shown::kTime, units);
  text += out == back ? fmt::format(", {} each", out) : fmt::format(", {} and {}", out, back);
  if (legs[0].heading_rad && legs[1].heading_rad) {
    text += fmt::format(", headings {} and {}", WholeBearing(*legs[0].heading_rad),
                        WholeBearing(*legs[1].heading_rad));
  }
  return text;
}

/// "37 deg, 352 to 82"; a band of a whole turn is no band.
std::string DirectionWords(const plan::Band& band) {
  const std::string median = WholeBearing(band.median);
  const std::string low = WholeBearing(band.low);
  const std::string high = WholeBearing(band.high);
  if (low == median && high == median) return median + " deg";
  return fmt::format("{} deg, {} to {}", median, low, high);
}

std::string Headline(const plan::TwoWay& found, DisplayUnits units) {
  const std::string speed = Words(found.speed_mps, Shown::kSpeed, answers::CurrentUnits(units));
  if (!found.differs_from_none) return Strong("The current may be none: " + speed);
  return Strong(fmt::format("The current: {}; toward {}", speed, DirectionWords(found.toward_rad)));
}

void AddLog(const plan::LogCheck& log, DisplayUnits units, Table& table) {
  AddSided(log.error_mps, Shown::kSpeed, units, "the log reads too high by",
           "the log reads too low by", table);
  std::string factor = fmt::format("{:.2f}", log.factor.median);
  if (log.factor.low < log.factor.high) {
    factor += fmt::format(", {:.2f} to {:.2f}", log.factor.low, log.factor.high);
  }
  table.Add({"multiply its reading by", factor});
}

std::string Figures(const plan::TwoWay& found, DisplayUnits units, std::size_t width) {
  const DisplayUnits knots = answers::CurrentUnits(units);
  Table table({"", "on the way out"});
  AddSided(found.along_mps, Shown::kSpeed, knots, "current with the boat",
           "current against the boat", table);
  AddSided(found.across_mps, Shown::kSpeed, knots, "current to starboard", "current to port",
           table);
  table.Add({"heading, worked out", DirectionWords(found.first_heading_rad)});
  Table both({"", "on both ways"});
  both.Add({"boat through the water", Words(found.water_speed_mps, Shown::kSpeed, units)});
  if (found.log) AddLog(*found.log, units, both);
  if (found.compass_error_rad) {
    AddSided(*found.compass_error_rad, Shown::kAngle, units, "the compass reads too high by",
             "the compass reads too low by", both);
  }
  return table.Text(width) + "\n" + both.Text(width);
}

/// How the current is handed to the other questions.
std::string Use(const plan::TwoWay& found, DisplayUnits units, std::size_t width) {
  if (!found.differs_from_none) return {};
  const DisplayUnits knots = answers::CurrentUnits(units);
  return "\n" +
         Wrap(fmt::format("To use it, if it runs the same at all depths: --current \"{:.2f} {} "
                          "toward {}\"",
                          answers::InShownUnit(found.speed_mps.median, Shown::kSpeed, knots),
                          answers::ShownUnit(Shown::kSpeed, knots),
                          WholeBearing(found.toward_rad.median)),
              width, 2) +
         "\n";
}

}  // namespace

std::string Show(const answers::TwoWayAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  return "Two-way run\n" + Wrap(Asked(answer.request.legs, units), width, 2) + "\n\n" +
         Headline(answer.found, units) + "\n" + Figures(answer.found, units, width) +
         Use(answer.found, units, width) + Foot(answer.remarks, width);
}

}  // namespace offplumb::cli
