#include "answers/drawing/label_placer.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace offplumb::answers {
namespace {

constexpr double kTextGap_mm = 0.8;
constexpr double kLineGap_mm = 0.6;
constexpr double kCrossingCost_mm = 12;   // How far to go so as not to stand on a line.
constexpr double kNextCost_mm = 2;        // Of a place over the one before it in the list.
constexpr double kElsewhereCost_mm = 15;  // Of any place that is not in the list.
constexpr int kRings = 16;
constexpr int kDirections = 16;
constexpr double kRingStep_mm = 5;
constexpr double kTurn = 6.283185307179586;

double Cross(const Point& o, const Point& a, const Point& b) {
  return (a.x_mm - o.x_mm) * (b.y_mm - o.y_mm) - (a.y_mm - o.y_mm) * (b.x_mm - o.x_mm);
}

bool Cut(const Point& a, const Point& b, const Point& c, const Point& d) {
  return (Cross(a, b, c) > 0) != (Cross(a, b, d) > 0) &&
         (Cross(c, d, a) > 0) != (Cross(c, d, b) > 0);
}

bool Inside(const TextBox& box, const Point& point) {
  for (std::size_t i = 0; i < 4; ++i) {
    if (Cross(box[i], box[(i + 1) % 4], point) < 0) return false;
  }
  return true;
}

bool Touches(const TextBox& box, const Point& from, const Point& to) {
  if (Inside(box, from)) return true;
  for (std::size_t i = 0; i < 4; ++i) {
    if (Cut(box[i], box[(i + 1) % 4], from, to)) return true;
  }
  return false;
}

bool Touches(const TextBox& box, const Polyline& line) {
  const std::size_t count = line.points.size();
  for (std::size_t i = 1; i < count; ++i) {
    if (Touches(box, line.points[i - 1], line.points[i])) return true;
  }
  return line.closed && Touches(box, line.points.back(), line.points.front());
}

int Crossings(const TextBox& box, const Drawing& drawing) {
  return static_cast<int>(std::count_if(drawing.lines.begin(), drawing.lines.end(),
                                        [&](const Polyline& line) { return Touches(box, line); }));
}

/// A box with a little more room on every side.
TextBox Padded(const TextBox& box) {
  const double width_mm = std::hypot(box[1].x_mm - box[0].x_mm, box[1].y_mm - box[0].y_mm);
  if (!(width_mm > 0)) return box;
  const double x = kLineGap_mm * (box[1].x_mm - box[0].x_mm) / width_mm;
  const double y = kLineGap_mm * (box[1].y_mm - box[0].y_mm) / width_mm;
  const auto moved = [&](std::size_t corner, double along, double down) {
    return Point{box[corner].x_mm + along * x - down * y, box[corner].y_mm + along * y + down * x};
  };
  return {moved(0, -1, -1), moved(1, 1, -1), moved(2, 1, 1), moved(3, -1, 1)};
}

bool Within(const TextBox& box, const Region& region) {
  return std::all_of(box.begin(), box.end(), [&](const Point& corner) {
    return corner.x_mm >= region.top_left.x_mm && corner.x_mm <= region.bottom_right.x_mm &&
           corner.y_mm >= region.top_left.y_mm && corner.y_mm <= region.bottom_right.y_mm;
  });
}

bool Free(const TextBox& box, const Drawing& drawing) {
  return std::none_of(drawing.texts.begin(), drawing.texts.end(),
                      [&](const Text& other) { return Overlap(box, BoxOf(other), kTextGap_mm); });
}

}  // namespace

bool AddWhereFree(const std::vector<Candidate>& candidates, const Region& region, bool cross_lines,
                  Drawing& drawing) {
  const Text* best = nullptr;
  double best_cost_mm = std::numeric_limits<double>::infinity();
  for (const Candidate& candidate : candidates) {
    const TextBox box = BoxOf(candidate.text);
    if (!Within(box, region) || !Free(box, drawing)) continue;
    const int crossings = Crossings(Padded(box), drawing);
    if (crossings > 0 && !cross_lines) continue;
    const double cost_mm = crossings * kCrossingCost_mm + candidate.cost_mm;
    if (cost_mm < best_cost_mm) {
      best_cost_mm = cost_mm;
      best = &candidate.text;
    }
  }
  if (best == nullptr) return false;
  drawing.texts.push_back(*best);
  return true;
}

std::vector<Candidate> InOrder(const std::vector<Text>& places) {
  std::vector<Candidate> candidates;
  for (const Text& place : places) {
    candidates.push_back({place, kNextCost_mm * static_cast<double>(candidates.size())});
  }
  return candidates;
}

std::vector<Candidate> WithSurroundings(const std::vector<Text>& places) {
  std::vector<Candidate> candidates = InOrder(places);
  for (int ring = 1; ring <= kRings; ++ring) {
    for (int direction = 0; direction < kDirections; ++direction) {
      const double at = kTurn * direction / kDirections;
      Text moved = places.front();
      moved.place.x_mm += ring * kRingStep_mm * std::cos(at);
      moved.place.y_mm += ring * kRingStep_mm * std::sin(at);
      candidates.push_back({moved, kElsewhereCost_mm + ring * kRingStep_mm});
    }
  }
  return candidates;
}

}  // namespace offplumb::answers
