/// \file
/// A small open boat from the side, for the eye: no measure of the owner's own boat.
#pragma once

#include "answers/drawing/drawing.h"
#include "answers/drawing/side_frame.h"
#include "engine/tackle/rig.h"

namespace offplumb::answers {

/// Length of the boat that is drawn, stern to stem head. Invented: an 18 ft open boat.
inline constexpr double kBoatLength_m = 5.5;

/// Draws hull and outboard, the stern at the frame's origin.
void AddBoat(const SideFrame& frame, Drawing& drawing);

/// Draws the boom of a rigger, from a post on the gunwale to the rig's own boom tip.
void AddBoom(const tackle::Rigger& rigger, const SideFrame& frame, Drawing& drawing);

/// Draws a loaded rod, bent over to the rig's own rod tip.
void AddRod(const tackle::Clip& clip, const SideFrame& frame, Drawing& drawing);

/// \return how high the bent rod stands above the water, m: more than its tip.
[[nodiscard]] double RodTop_m(const tackle::Clip& clip);

}  // namespace offplumb::answers
