#include "answers/drawing/side_view.h"

#include <algorithm>

#include "answers/drawing/side_view_parts.h"

namespace offplumb::answers {
namespace {

Expected<DrawnRiggers> Match(const std::vector<tackle::Rigger>& riggers,
                             const std::vector<plan::RiggerDepth>& depths) {
  DrawnRiggers drawn;
  for (const plan::RiggerDepth& depth : depths) {
    const auto rigger =
        std::find_if(riggers.begin(), riggers.end(),
                     [&](const tackle::Rigger& one) { return one.name == depth.name; });
    if (rigger == riggers.end() || rigger->clips.size() != depth.shape.clips.size()) {
      return tl::unexpected<Problem>(Problem{ProblemKind::kFault,
                                             "rigger \"" + depth.name + "\"",
                                             "A depth belongs to none of the rig's riggers.",
                                             "Please report the rig and the question.",
                                             {},
                                             0});
    }
    drawn.push_back({&*rigger, &depth});
  }
  if (drawn.empty()) {
    return BadInput("drawing", "There is no rigger to draw.", "Name one that has an answer.");
  }
  return drawn;
}

bool HasBands(const DrawnRiggers& riggers) {
  return std::any_of(riggers.begin(), riggers.end(), [](const DrawnRigger& drawn) {
    const plan::Band& depth_m = drawn.depth->figures.ball_depth_m;
    return depth_m.low < depth_m.high;
  });
}

tl::unexpected<Problem> TooSmall() {
  return BadInput("drawing", "The sheet is too small for all figures.",
                  "Ask for a larger sheet, or draw one rigger alone.");
}

}  // namespace

Expected<Drawing> MakeSideView(const std::vector<tackle::Rigger>& riggers,
                               const std::vector<plan::RiggerDepth>& depths, DisplayUnits units,
                               const SideViewOptions& options) {
  const auto drawn = Match(riggers, depths);
  if (!drawn) return tl::unexpected<Problem>(drawn.error());
  Drawing drawing;
  drawing.title = options.title_lines.empty() ? "Side view" : options.title_lines.front();
  drawing.width_mm = options.width_mm;
  drawing.height_mm = options.height_mm;
  const Region view = AddTitle(options, drawing);
  const auto layout = LayOutSideView(*drawn, units, view);
  if (!layout) return TooSmall();
  AddFoot(units, *layout, HasBands(*drawn), drawing);
  AddGear(*drawn, *layout, drawing);
  const bool all = AddDepthFigures(LureFigures(*drawn), units, *layout, true, drawing) &&
                   AddDepthFigures(BallFigures(*drawn, units), units, *layout, false, drawing) &&
                   AddLineFigures(*drawn, units, *layout, drawing);
  if (!all) return TooSmall();
  AddPartNames(*drawn, units, *layout, drawing);
  return drawing;
}

}  // namespace offplumb::answers
