/// \file
/// Phrases that the answers of several questions share.
#pragma once

#include <string>

#include "answers/questions/phrases.h"
#include "answers/questions/setting.h"
#include "answers/units/display.h"
#include "engine/plan/band.h"

namespace offplumb::cli {

using answers::DisplayUnits;
using answers::Echo;
using answers::Shown;
using answers::WayAndCurrent;

/// \return a band in words: "88 ft, 84 to 91".
[[nodiscard]] std::string Words(const plan::Band& band, Shown shown, DisplayUnits units);

/// \return the shortest honest phrase: "88 ft, give or take 3" where the sides are alike, else as
/// above.
[[nodiscard]] std::string ShortWords(const plan::Band& band, Shown shown, DisplayUnits units);

/// \return where the reach ends: "where the line leans 65 deg at the boom".
[[nodiscard]] std::string ReachEnd(bool line_limits, double largest_angle_rad, DisplayUnits units);

/// \return a heading in strong letters with its line end.
[[nodiscard]] std::string Strong(const std::string& text);

/// \return notes and cautions for the foot of an answer.
[[nodiscard]] std::string Foot(const answers::Remarks& remarks, std::size_t width);

}  // namespace offplumb::cli
