/// \file
/// The side view's steps. Not for use outside it.
#pragma once

#include <string>
#include <vector>

#include "answers/drawing/drawing.h"
#include "answers/drawing/label_placer.h"
#include "answers/drawing/side_frame.h"
#include "answers/drawing/side_view.h"

namespace offplumb::answers {

/// One rigger with its answer. Both outlive the drawing's making.
struct DrawnRigger {
  const tackle::Rigger* rigger = nullptr;
  const plan::RiggerDepth* depth = nullptr;
};
using DrawnRiggers = std::vector<DrawnRigger>;

/// A depth that is written at the side of the view.
struct DepthFigure {
  std::string name;      ///< "port ball".
  std::string footnote;  ///< A last line below it; may be empty.
  plan::Band depth_m;
  double x_m = 0;  ///< Of the thing, in the boat's frame.
};

/// \return the balls' depths, and the lures', each from the shallowest down.
/// A ball's has the count below it where several riggers leave no room to write it on each line.
[[nodiscard]] std::vector<DepthFigure> BallFigures(const DrawnRiggers& riggers, DisplayUnits units);
[[nodiscard]] std::vector<DepthFigure> LureFigures(const DrawnRiggers& riggers);

/// Where everything stands on the sheet.
struct SideLayout {
  SideFrame frame;
  double scale = 0;             ///< Paper : nature is 1 : scale.
  double left_axis_mm = 0;      ///< The lures' depths are measured along it.
  double right_axis_mm = 0;     ///< The balls'.
  double first_aft_row_mm = 0;  ///< How far aft: one row a rigger, kAftRow_mm apart.
  Region view;                  ///< Between the title and the foot, from margin to margin.
};

inline constexpr double kSheetMargin_mm = 8;
inline constexpr double kAftRow_mm = 9;

/// Chooses the largest round scale at which all fits. \param view what title and foot leave.
/// \return a problem when the sheet is too small for any.
[[nodiscard]] Expected<SideLayout> LayOutSideView(const DrawnRiggers& riggers, DisplayUnits units,
                                                  const Region& view);

/// Draws boat, lines and tackle.
void AddGear(const DrawnRiggers& riggers, const SideLayout& layout, Drawing& drawing);

/// \return the height they take when nothing is between them.
[[nodiscard]] double DepthFiguresHeight_mm(const std::vector<DepthFigure>& figures);

/// Between the lowest ball's depth and the rows of how far aft, whose words may run on below it.
inline constexpr double kAboveRows_mm = 5;

/// Writes depths beside an axis, with a dimension line from the surface. \param left on which side
/// of the axis. \return whether there was room.
[[nodiscard]] bool AddDepthFigures(const std::vector<DepthFigure>& figures, DisplayUnits units,
                                   const SideLayout& layout, bool left, Drawing& drawing);

/// \return the width that AddDepthFigures takes, axis included.
[[nodiscard]] double DepthFiguresWidth_mm(const std::vector<DepthFigure>& figures,
                                          DisplayUnits units);

/// \return the room that the angle at the boom takes ahead of plumb.
[[nodiscard]] double AngleWidth_mm(const DrawnRiggers& riggers, DisplayUnits units);

/// Writes count, angle at the boom and how far aft. \return whether there was room.
[[nodiscard]] bool AddLineFigures(const DrawnRiggers& riggers, DisplayUnits units,
                                  const SideLayout& layout, Drawing& drawing);

/// Names the parts where there is room for it.
void AddPartNames(const DrawnRiggers& riggers, DisplayUnits units, const SideLayout& layout,
                  Drawing& drawing);

/// Writes title and foot. \return what they leave for the view.
[[nodiscard]] Region AddTitle(const SideViewOptions& options, Drawing& drawing);
/// \param bands whether any depth has one.
void AddFoot(DisplayUnits units, const SideLayout& layout, bool bands, Drawing& drawing);

}  // namespace offplumb::answers
