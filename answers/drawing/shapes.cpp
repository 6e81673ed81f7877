#include "answers/drawing/shapes.h"

#include <cmath>
#include <utility>

namespace offplumb::answers {
namespace {

constexpr double kHeadLength_mm = 3.0;
constexpr double kHeadHalfWidth_mm = 0.55;
constexpr double kDimensionWidth_mm = 0.2;
constexpr int kCircleCorners = 48;
constexpr int kCurvePieces = 16;
constexpr double kTurn = 6.283185307179586;

Point Along(const Point& from, const Point& unit, double distance_mm) {
  return {from.x_mm + unit.x_mm * distance_mm, from.y_mm + unit.y_mm * distance_mm};
}

}  // namespace

void AddLine(std::vector<Point> points, const Pen& pen, Drawing& drawing) {
  drawing.lines.push_back(
      Polyline{std::move(points), pen.width_mm, pen.role, false, false, pen.dashed});
}

void AddArea(std::vector<Point> outline, Role role, Drawing& drawing) {
  drawing.lines.push_back(Polyline{std::move(outline), 0.25, role, true, true, false});
}

std::vector<Point> Rectangle(const Point& a, const Point& b) {
  return {a, {b.x_mm, a.y_mm}, b, {a.x_mm, b.y_mm}};
}

std::vector<Point> Circle(const Point& centre, double radius_mm) {
  std::vector<Point> corners;
  for (int i = 0; i < kCircleCorners; ++i) {
    const double at = kTurn * i / kCircleCorners;
    corners.push_back(
        {centre.x_mm + radius_mm * std::cos(at), centre.y_mm + radius_mm * std::sin(at)});
  }
  return corners;
}

std::vector<Point> Bezier(const Point& from, const Point& c1, const Point& c2, const Point& to) {
  std::vector<Point> points;
  for (int i = 0; i <= kCurvePieces; ++i) {
    const double t = static_cast<double>(i) / kCurvePieces;
    const double u = 1 - t;
    const double w[4] = {u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t};
    points.push_back({w[0] * from.x_mm + w[1] * c1.x_mm + w[2] * c2.x_mm + w[3] * to.x_mm,
                      w[0] * from.y_mm + w[1] * c1.y_mm + w[2] * c2.y_mm + w[3] * to.y_mm});
  }
  return points;
}

void AddArrowHead(const Point& tip, const Point& direction, Role role, Drawing& drawing) {
  const double length = std::hypot(direction.x_mm, direction.y_mm);
  if (!(length > 0)) return;
  const Point back{-direction.x_mm / length, -direction.y_mm / length};
  const Point across{-back.y_mm, back.x_mm};
  const Point base = Along(tip, back, kHeadLength_mm);
  AddArea({tip, Along(base, across, kHeadHalfWidth_mm), Along(base, across, -kHeadHalfWidth_mm)},
          role, drawing);
}

void AddDimension(const Point& from, const Point& to, Role role, Drawing& drawing) {
  const Point span{to.x_mm - from.x_mm, to.y_mm - from.y_mm};
  const double length_mm = std::hypot(span.x_mm, span.y_mm);
  if (!(length_mm > 0)) return;
  const Pen pen{kDimensionWidth_mm, role, false};
  const Point back{-span.x_mm, -span.y_mm};
  if (length_mm >= 2.5 * kHeadLength_mm) {
    AddLine({from, to}, pen, drawing);
    AddArrowHead(to, span, role, drawing);
    AddArrowHead(from, back, role, drawing);
    return;
  }
  const Point unit{span.x_mm / length_mm, span.y_mm / length_mm};
  const double tail_mm = 2 * kHeadLength_mm;
  AddLine({Along(from, unit, -tail_mm), Along(to, unit, tail_mm)}, pen, drawing);
  AddArrowHead(from, span, role, drawing);
  AddArrowHead(to, back, role, drawing);
}

}  // namespace offplumb::answers
