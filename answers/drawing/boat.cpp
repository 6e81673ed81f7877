#include "answers/drawing/boat.h"

#include <algorithm>
#include <initializer_list>
#include <utility>

#include "answers/drawing/shapes.h"

namespace offplumb::answers {
namespace {

// Every measure of the boat below is invented: metres ahead of the stern and below the water.
using Place = std::pair<double, double>;

constexpr Place kTransomTop{-0.10, -0.72};
constexpr Place kTransomFoot{0.0, 0.20};
constexpr Place kForefoot{3.4, 0.28};
constexpr Place kStemHead{kBoatLength_m, -1.12};
constexpr double kGunwale_m = -0.74;

const Pen kOutline{0.35, Role::kInk, false};
const Pen kDetail{0.2, Role::kInk, false};

Point On(const SideFrame& frame, const Place& place) { return frame.At(place.first, place.second); }

std::vector<Point> OnAll(const SideFrame& frame, std::initializer_list<Place> places) {
  std::vector<Point> points;
  for (const Place& place : places) points.push_back(On(frame, place));
  return points;
}

std::vector<Point> Curve(const SideFrame& frame, const Place& from, const Place& c1,
                         const Place& c2, const Place& to) {
  return Bezier(On(frame, from), On(frame, c1), On(frame, c2), On(frame, to));
}

void AddShape(std::vector<Point> outline, const Pen& pen, Drawing& drawing) {
  AddArea(outline, Role::kPaper, drawing);
  outline.push_back(outline.front());
  AddLine(std::move(outline), pen, drawing);
}

std::vector<Point> HullOutline(const SideFrame& frame) {
  std::vector<Point> outline = {On(frame, kTransomTop), On(frame, kTransomFoot)};
  const auto add = [&](const std::vector<Point>& part) {
    outline.insert(outline.end(), part.begin(), part.end());
  };
  add(Curve(frame, kForefoot, {4.5, 0.26}, {5.2, -0.35}, kStemHead));
  add(Curve(frame, kStemHead, {3.8, -0.80}, {1.8, -0.71}, kTransomTop));
  return outline;
}

void AddOutboard(const SideFrame& frame, Drawing& drawing) {
  AddShape(OnAll(frame, {{-0.20, -0.80}, {-0.20, 0.34}, {-0.42, 0.34}, {-0.46, -0.80}}), kDetail,
           drawing);
  AddShape(OnAll(frame, {{-0.08, 0.42},
                         {-0.18, 0.34},
                         {-0.48, 0.34},
                         {-0.58, 0.42},
                         {-0.48, 0.50},
                         {-0.36, 0.50},
                         {-0.30, 0.66},
                         {-0.22, 0.50},
                         {-0.16, 0.49}}),
           kDetail, drawing);
  AddShape(OnAll(frame, {{-0.12, -1.20},
                         {-0.44, -1.22},
                         {-0.58, -1.08},
                         {-0.60, -0.90},
                         {-0.50, -0.78},
                         {-0.14, -0.78}}),
           kOutline, drawing);
  AddLine(OnAll(frame, {{-0.12, -0.92}, {0.50, -1.02}}), kOutline, drawing);
}

/// Where a post or rod holder stands on the gunwale, some way ahead of its tip.
Place Foot(double tip_x_m, double ahead_m) {
  return {std::clamp(tip_x_m + ahead_m, 0.25, 4.2), kGunwale_m};
}

constexpr double kPostHeight_m = 0.22;
constexpr double kSpoolRadius_m = 0.15;
constexpr double kRodFootAhead_m = 1.9;
constexpr double kRodBend_m = 0.6;  // Of a control point above the tip: how far the rod bows over.

}  // namespace

void AddBoat(const SideFrame& frame, Drawing& drawing) {
  AddOutboard(frame, drawing);
  AddShape(HullOutline(frame), kOutline, drawing);
  AddLine(Curve(frame, {5.38, -0.98}, {3.8, -0.69}, {1.8, -0.60}, {-0.09, -0.62}), kDetail,
          drawing);
  AddLine(Curve(frame, {4.95, -0.42}, {4.0, -0.10}, {2.4, -0.02}, {-0.03, -0.02}), kDetail,
          drawing);
}

void AddBoom(const tackle::Rigger& rigger, const SideFrame& frame, Drawing& drawing) {
  const Place foot = Foot(rigger.boom_tip_m.x(), 1.2);
  const Place head{foot.first, foot.second - kPostHeight_m};
  AddLine({On(frame, foot), On(frame, head)}, Pen{0.5, Role::kInk, false}, drawing);
  AddLine({On(frame, head), frame.At(rigger.boom_tip_m)}, Pen{0.5, Role::kInk, false}, drawing);
  AddShape(Circle(On(frame, head), kSpoolRadius_m * frame.mm_per_m), kDetail, drawing);
}

void AddRod(const tackle::Clip& clip, const SideFrame& frame, Drawing& drawing) {
  const Place tip{clip.rod_tip_m.x(), clip.rod_tip_m.z()};
  const Place foot = Foot(tip.first, kRodFootAhead_m);
  const double back_m = foot.first - tip.first;
  AddLine(Curve(frame, foot, {foot.first - 0.3 * back_m, tip.second - 0.2 * kRodBend_m},
                {tip.first + 0.35 * back_m, tip.second - kRodBend_m}, tip),
          Pen{0.3, Role::kInk, false}, drawing);
}

double RodTop_m(const tackle::Clip& clip) { return -clip.rod_tip_m.z() + 0.6 * kRodBend_m; }

}  // namespace offplumb::answers
