#include <algorithm>
#include <cmath>

#include "answers/drawing/boat.h"
#include "answers/drawing/shapes.h"
#include "answers/drawing/side_view_parts.h"

namespace offplumb::answers {
namespace {

// No smaller than can be seen; the true size where that is larger.
constexpr double kSmallestBall_mm = 1.5;  // Radius.
constexpr double kClip_mm = 0.75;         // Radius.
constexpr double kFlasherLength_mm = 4.4;
constexpr double kFlasherWidth_mm = 1.3;
constexpr double kLureLength_mm = 3.4;
constexpr double kLureWidth_mm = 1.5;
constexpr double kBandWidth_mm = 3.2;

/// The second rigger's line is thinner than the first's, and so on.
double LineWidth_mm(std::size_t index) {
  return std::max(0.2, 0.45 - 0.17 * static_cast<double>(index));
}

std::vector<Point> OnPaper(const SideFrame& frame, const std::vector<Eigen::Vector3d>& line_m) {
  std::vector<Point> points;
  for (const Eigen::Vector3d& place_m : line_m) points.push_back(frame.At(place_m));
  return points;
}

void AddLineOf(const std::vector<Eigen::Vector3d>& line_m, const SideFrame& frame, double width_mm,
               Drawing& drawing) {
  if (line_m.size() < 2) return;
  AddLine(OnPaper(frame, line_m), Pen{width_mm, Role::kInk, false}, drawing);
}

void AddBand(double x_m, const plan::Band& depth_m, const SideFrame& frame, Drawing& drawing) {
  const Point top = frame.At(x_m, depth_m.low);
  const Point foot = frame.At(x_m, depth_m.high);
  AddArea(Rectangle({top.x_mm - kBandWidth_mm / 2, top.y_mm},
                    {foot.x_mm + kBandWidth_mm / 2, foot.y_mm}),
          Role::kBand, drawing);
}

/// A leaf-shaped outline along a direction, its nose at a point.
std::vector<Point> Leaf(const Point& nose, const Point& aft, double length_mm, double width_mm) {
  const double size = std::hypot(aft.x_mm, aft.y_mm);
  const Point a = size > 0 ? Point{aft.x_mm / size, aft.y_mm / size} : Point{-1, 0};
  const auto at = [&](double along_mm, double across_mm) {
    return Point{nose.x_mm + a.x_mm * along_mm - a.y_mm * across_mm,
                 nose.y_mm + a.y_mm * along_mm + a.x_mm * across_mm};
  };
  const double half_mm = width_mm / 2;
  return {at(0, 0),         at(0.25 * length_mm, half_mm),  at(0.65 * length_mm, half_mm),
          at(length_mm, 0), at(0.65 * length_mm, -half_mm), at(0.25 * length_mm, -half_mm)};
}

/// Where a line points at its aft end.
Point EndDirection(const std::vector<Eigen::Vector3d>& line_m) {
  if (line_m.size() < 2) return {-1, 0};
  const Eigen::Vector3d d = line_m.back() - line_m[line_m.size() - 2];
  return {d.x(), d.z()};
}

void AddOutlined(std::vector<Point> outline, bool solid, Drawing& drawing) {
  AddArea(outline, solid ? Role::kInk : Role::kPaper, drawing);
  drawing.lines.push_back(Polyline{std::move(outline), 0.3, Role::kInk, true, false, false});
}

void AddTackle(const tow::TreeShape::OfClip& clip, bool flasher, double width_mm,
               const SideFrame& frame, Drawing& drawing) {
  AddLineOf(clip.fishing_line, frame, width_mm * 0.6, drawing);
  AddLineOf(clip.setback, frame, width_mm * 0.6, drawing);
  AddLineOf(clip.leader, frame, width_mm * 0.6, drawing);
  const auto& last = clip.leader.size() >= 2 ? clip.leader : clip.setback;
  if (flasher && !clip.setback.empty()) {
    AddOutlined(Leaf(frame.At(clip.setback.back()), EndDirection(clip.setback), kFlasherLength_mm,
                     kFlasherWidth_mm),
                false, drawing);
  }
  if (!last.empty()) {
    AddOutlined(Leaf(frame.At(last.back()), EndDirection(last), kLureLength_mm, kLureWidth_mm),
                true, drawing);
  }
  if (!clip.setback.empty()) {
    AddOutlined(Circle(frame.At(clip.setback.front()), kClip_mm), false, drawing);
  }
}

double BallRadius_mm(const tackle::Body& ball, const SideFrame& frame) {
  return std::max(kSmallestBall_mm, ball.sphere_diameter_m / 2 * frame.mm_per_m);
}

void AddBands(const plan::RiggerDepth& depth, const SideFrame& frame, Drawing& drawing) {
  AddBand(depth.median.ball_m.x(), depth.figures.ball_depth_m, frame, drawing);
  for (std::size_t i = 0; i < depth.median.clips.size(); ++i) {
    AddBand(depth.median.clips[i].lure_m.x(), depth.figures.clips[i].lure_depth_m, frame, drawing);
  }
}

void AddRigger(const DrawnRigger& drawn, std::size_t index, const SideFrame& frame,
               Drawing& drawing) {
  const double width_mm = LineWidth_mm(index);
  const tow::TreeShape& shape = drawn.depth->shape;
  for (std::size_t i = 0; i < shape.clips.size(); ++i) {
    AddRod(drawn.rigger->clips[i], frame, drawing);
    AddTackle(shape.clips[i], drawn.rigger->clips[i].trail.flasher.has_value(), width_mm, frame,
              drawing);
  }
  AddBoom(*drawn.rigger, frame, drawing);
  AddLineOf(shape.main_line, frame, width_mm, drawing);
  // The ball of every other rigger is an open ring, so that two can be told apart without colour.
  AddOutlined(
      Circle(frame.At(drawn.depth->median.ball_m), BallRadius_mm(drawn.rigger->ball, frame)),
      index % 2 == 0, drawing);
}

/// The surface, with the draughtsman's mark of a water level.
void AddSurface(const SideLayout& layout, Drawing& drawing) {
  const double y_mm = layout.frame.At(0, 0).y_mm;
  const Pen pen{0.35, Role::kWater, false};
  AddLine({{layout.left_axis_mm - 6, y_mm}, {layout.right_axis_mm + 6, y_mm}}, pen, drawing);
  const double x_mm = layout.left_axis_mm + 9;
  AddLine({{x_mm, y_mm}, {x_mm - 1.6, y_mm - 2.8}, {x_mm + 1.6, y_mm - 2.8}, {x_mm, y_mm}}, pen,
          drawing);
  AddLine({{x_mm - 3, y_mm + 1.2}, {x_mm + 3, y_mm + 1.2}}, pen, drawing);
  AddLine({{x_mm - 1.5, y_mm + 2.2}, {x_mm + 1.5, y_mm + 2.2}}, pen, drawing);
}

}  // namespace

void AddGear(const DrawnRiggers& riggers, const SideLayout& layout, Drawing& drawing) {
  for (const DrawnRigger& drawn : riggers) AddBands(*drawn.depth, layout.frame, drawing);
  AddSurface(layout, drawing);
  AddBoat(layout.frame, drawing);
  for (std::size_t i = 0; i < riggers.size(); ++i) {
    AddRigger(riggers[i], i, layout.frame, drawing);
  }
}

}  // namespace offplumb::answers
