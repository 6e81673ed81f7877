#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "answers/drawing/boat.h"
#include "answers/drawing/side_view_parts.h"

namespace offplumb::answers {
namespace {

constexpr double kBeside_mm = 7;  // Between the outermost thing and an axis.
constexpr double kAboveRods_mm = 2;
constexpr double kBelowBalls_mm = 8;  // From the deepest thing to the first row of how far aft.
constexpr double kBelowRows_mm = 3;

/// All that must be seen, m.
struct Extent {
  double aft_m = -0.7;  // The outboard's.
  double ahead_m = kBoatLength_m;
  double boom_m = -std::numeric_limits<double>::infinity();  // The foremost boom tip.
  double top_m = -1.3;
  double deep_m = 0.7;

  void Add(const Eigen::Vector3d& place_m) {
    aft_m = std::min(aft_m, place_m.x());
    ahead_m = std::max(ahead_m, place_m.x());
    top_m = std::min(top_m, place_m.z());
    deep_m = std::max(deep_m, place_m.z());
  }
  void Add(const std::vector<Eigen::Vector3d>& line_m) {
    for (const Eigen::Vector3d& place_m : line_m) Add(place_m);
  }
};

void AddRigger(const DrawnRigger& drawn, Extent& extent) {
  const plan::RiggerDepth& depth = *drawn.depth;
  extent.boom_m = std::max(extent.boom_m, drawn.rigger->boom_tip_m.x());
  extent.Add(depth.shape.main_line);
  extent.Add(depth.median.ball_m);
  extent.deep_m = std::max(extent.deep_m, depth.figures.ball_depth_m.high);
  for (std::size_t i = 0; i < depth.shape.clips.size(); ++i) {
    const tow::TreeShape::OfClip& clip = depth.shape.clips[i];
    extent.Add(clip.fishing_line);
    extent.Add(clip.setback);
    extent.Add(clip.leader);
    extent.top_m = std::min(extent.top_m, -RodTop_m(drawn.rigger->clips[i]));
    extent.deep_m = std::max(extent.deep_m, depth.figures.clips[i].lure_depth_m.high);
  }
}

/// Room for the view itself on the paper.
struct Room {
  double angle_mm = 0;  ///< That the angle's words take ahead of the boom tip.
  double width_mm = 0;
  double height_mm = 0;
};

double Width_mm(const Extent& extent, const Room& room, double mm_per_m) {
  return (extent.boom_m - extent.aft_m) * mm_per_m +
         std::max((extent.ahead_m - extent.boom_m) * mm_per_m, room.angle_mm);
}

double Height_mm(const Extent& extent, double mm_per_m) {
  return (extent.deep_m - extent.top_m) * mm_per_m;
}

/// \return the smallest round scale (1 to so many) at which the view has room; 0 if none.
double RoundScale(const Extent& extent, const Room& room) {
  constexpr std::array<double, 16> kSteps = {1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75,
                                             3, 3.5,  4,   4.5,  5, 6,    7,   8};
  for (double decade = 10; decade < 1e5; decade *= 10) {
    for (const double step : kSteps) {
      const double mm_per_m = 1000 / (step * decade);
      if (Width_mm(extent, room, mm_per_m) <= room.width_mm &&
          Height_mm(extent, mm_per_m) <= room.height_mm) {
        return step * decade;
      }
    }
  }
  return 0;
}

}  // namespace

Expected<SideLayout> LayOutSideView(const DrawnRiggers& riggers, DisplayUnits units,
                                    const Region& view) {
  Extent extent;
  for (const DrawnRigger& drawn : riggers) AddRigger(drawn, extent);
  const double left_mm = DepthFiguresWidth_mm(LureFigures(riggers), units);
  const double right_mm = DepthFiguresWidth_mm(BallFigures(riggers, units), units);
  const double rows_mm = kBelowBalls_mm + kAftRow_mm * static_cast<double>(riggers.size());
  Room room;
  room.angle_mm = AngleWidth_mm(riggers, units);
  room.width_mm = view.bottom_right.x_mm - view.top_left.x_mm - left_mm - right_mm - 2 * kBeside_mm;
  room.height_mm =
      view.bottom_right.y_mm - view.top_left.y_mm - kAboveRods_mm - rows_mm - kBelowRows_mm;
  SideLayout layout;
  layout.view = view;
  layout.scale = RoundScale(extent, room);
  if (layout.scale == 0) return BadInput("drawing", "The sheet is too small.");
  const double mm_per_m = 1000 / layout.scale;
  layout.left_axis_mm = view.top_left.x_mm + left_mm;
  layout.right_axis_mm = view.bottom_right.x_mm - right_mm;
  const double spare_x_mm = room.width_mm - Width_mm(extent, room, mm_per_m);
  const double spare_y_mm = room.height_mm - Height_mm(extent, mm_per_m);
  layout.frame.mm_per_m = mm_per_m;
  layout.frame.origin = {
      layout.left_axis_mm + kBeside_mm + spare_x_mm / 2 - extent.aft_m * mm_per_m,
      view.top_left.y_mm + kAboveRods_mm + spare_y_mm / 2 - extent.top_m * mm_per_m};
  const double ball_foot_mm =
      layout.frame.At(0, extent.deep_m).y_mm + kBelowBalls_mm - kAboveRows_mm;
  const double missing_mm =
      DepthFiguresHeight_mm(BallFigures(riggers, units)) - (ball_foot_mm - view.top_left.y_mm);
  // Many figures and a flat view: the view goes down as far as it can to give them room.
  layout.frame.origin.y_mm += std::clamp(missing_mm, 0.0, spare_y_mm / 2);
  layout.first_aft_row_mm = layout.frame.At(0, extent.deep_m).y_mm + kBelowBalls_mm;
  return layout;
}

}  // namespace offplumb::answers
