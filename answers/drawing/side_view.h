/// \file
/// The side view: boat, lines, ball and lures to scale, with their figures.
#pragma once

#include <string>
#include <vector>

#include "answers/drawing/drawing.h"
#include "answers/units/display.h"
#include "engine/plan/depth.h"
#include "engine/problem.h"
#include "engine/tackle/rig.h"

namespace offplumb::answers {

/// The sheet and the words that the answer itself does not hold.
struct SideViewOptions {
  double width_mm = 297;  ///< A4 on its side.
  double height_mm = 210;
  std::vector<std::string> title_lines;  ///< The first is the heading.
  std::string speed_text;                ///< "2.7 mph through the water".
};

/// Draws what was found, seen from starboard, the bow to the right.
///
/// Both axes have one scale, which the sheet states; the boat is an invented 18 ft, and ball, clip,
/// flasher and lure are drawn no smaller than can be seen. What stands to port or starboard is
/// written, not drawn. The bottom is not known and not drawn. No text overlaps another.
///
/// \param riggers of the rig. \param depths one of each rigger that is to be drawn, by its name.
/// \return a problem when there is nothing to draw, a depth belongs to none of the riggers, or the
/// sheet is too small for all figures.
[[nodiscard]] Expected<Drawing> MakeSideView(const std::vector<tackle::Rigger>& riggers,
                                             const std::vector<plan::RiggerDepth>& depths,
                                             DisplayUnits units, const SideViewOptions& options);

}  // namespace offplumb::answers
