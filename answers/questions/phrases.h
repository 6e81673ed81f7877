/// \file
/// How a question was asked, in a person's words: for the heads of answers and of drawings.
#pragma once

#include <string>

#include "answers/questions/setting.h"
#include "answers/units/display.h"

namespace offplumb::answers {

/// \return what a person gave, with the digits they gave it in: "2.75 mph".
[[nodiscard]] std::string Echo(double si, Shown shown, DisplayUnits units);

/// \return how the boat goes: "2.75 mph through the water", or over ground with its course.
/// \param with_speed false leaves the figure out.
[[nodiscard]] std::string Way(const plan::Conditions& conditions, bool with_speed,
                              DisplayUnits units);

/// \return the current: "current 0.6 kn toward 200 at the surface, 0.1 kn toward 230 at 150 ft",
/// degrees from true north, the way it goes; "the current taken as none" for a speed over ground
/// without one; else nothing. In knots, since that is how a current is told, or metres a second.
[[nodiscard]] std::string CurrentWords(const plan::Conditions& conditions, DisplayUnits units);

/// \return the two above, for the head of an answer.
[[nodiscard]] std::string WayAndCurrent(const plan::Conditions& conditions, bool with_speed,
                                        DisplayUnits units);

/// \return the current in sentences for a card; empty where it has no say in the figures.
[[nodiscard]] std::string CurrentSentences(const plan::Conditions& conditions, DisplayUnits units);

/// \return which water: "salt water", or by its density.
[[nodiscard]] std::string WaterWords(const water::Water& water);

}  // namespace offplumb::answers
