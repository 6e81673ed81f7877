/// \file
/// Parts that both drawings are made of.
#pragma once

#include <vector>

#include "answers/drawing/drawing.h"

namespace offplumb::answers {

/// How a line is drawn.
struct Pen {
  double width_mm = 0.25;
  Role role = Role::kInk;
  bool dashed = false;
};

void AddLine(std::vector<Point> points, const Pen& pen, Drawing& drawing);
void AddArea(std::vector<Point> outline, Role role, Drawing& drawing);

/// \return the corners of an upright rectangle; the two points are opposite corners.
[[nodiscard]] std::vector<Point> Rectangle(const Point& a, const Point& b);

/// \return a circle as a polygon, within 0.2 % of its radius.
[[nodiscard]] std::vector<Point> Circle(const Point& centre, double radius_mm);

/// \return points of the curve with these end and control points (cubic Bezier), ends included.
[[nodiscard]] std::vector<Point> Bezier(const Point& from, const Point& c1, const Point& c2,
                                        const Point& to);

/// A dimension line: a thin line with a slim arrow head at both ends. Where it is too short for two
/// heads they point inwards from outside.
void AddDimension(const Point& from, const Point& to, Role role, Drawing& drawing);

/// An arrow head with its tip at a point. \param direction where it points; any length but zero.
void AddArrowHead(const Point& tip, const Point& direction, Role role, Drawing& drawing);

}  // namespace offplumb::answers
