#include "answers/questions/json_shape.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace offplumb::answers {
namespace {

using Eigen::Vector3d;
using Points = std::vector<Vector3d>;

/// Rounding to a millimetre moves a point by up to this much.
constexpr double kRounding_m = 0.0009;

double DistanceFrom(const Vector3d& point, const Vector3d& a, const Vector3d& b) {
  const Vector3d along = b - a;
  const double square = along.squaredNorm();
  const double part = square > 0 ? std::clamp((point - a).dot(along) / square, 0.0, 1.0) : 0.0;
  return (point - a - part * along).norm();
}

/// The point between two that lies farthest from the straight line through them; `first` if there
/// is none farther than the tolerance.
std::size_t Farthest(const Points& points, std::size_t first, std::size_t last,
                     double tolerance_m) {
  std::size_t farthest = first;
  for (std::size_t i = first + 1; i < last; ++i) {
    const double distance_m = DistanceFrom(points[i], points[first], points[last]);
    if (distance_m <= tolerance_m) continue;
    tolerance_m = distance_m;
    farthest = i;
  }
  return farthest;
}

void WriteNumbers(const Vector3d& place, JsonWriter& json) {
  // Adding 0 turns a "-0" into "0".
  for (int i = 0; i < 3; ++i) json.NumberItem(std::round(place[i] * 1000) / 1000 + 0.0);
  json.End();
}

void WritePlace(std::string_view key, const Vector3d& place, JsonWriter& json) {
  json.List(key);
  WriteNumbers(place, json);
}

void WriteLine(std::string_view key, const Points& points, JsonWriter& json) {
  json.List(key);
  for (const Vector3d& point : Thinned(points, kShapeTolerance_m - kRounding_m)) {
    json.ListItem();
    WriteNumbers(point, json);
  }
  json.End();
}

void WriteClip(const tackle::Clip& clip, const tow::TreeShape::OfClip& lines,
               const tow::ClipState& state, JsonWriter& json) {
  json.ObjectItem();
  json.Text("name", clip.name);
  WritePlace("clip", state.clip_m, json);
  WritePlace("rod_tip", clip.rod_tip_m, json);
  if (clip.trail.flasher) {
    WritePlace("flasher", state.flasher_m, json);
  } else {
    json.Null("flasher");
  }
  WritePlace("lure", state.lure_m, json);
  WriteLine("fishing_line", {lines.fishing_line.rbegin(), lines.fishing_line.rend()}, json);
  WriteLine("setback", lines.setback, json);
  WriteLine("leader", lines.leader, json);
  json.End();
}

}  // namespace

Points Thinned(const Points& points, double tolerance_m) {
  if (points.size() < 3) return points;
  std::vector<char> kept(points.size(), 0);
  kept.front() = kept.back() = 1;
  std::vector<std::pair<std::size_t, std::size_t>> spans{{0, points.size() - 1}};
  while (!spans.empty()) {
    const auto [first, last] = spans.back();
    spans.pop_back();
    const std::size_t split = Farthest(points, first, last, tolerance_m);
    if (split == first) continue;
    kept[split] = 1;
    spans.emplace_back(first, split);
    spans.emplace_back(split, last);
  }
  Points thinned;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (kept[i] != 0) thinned.push_back(points[i]);
  }
  return thinned;
}

void WriteShape(std::string_view key, const tackle::Rigger& rigger, const plan::RiggerDepth& depth,
                JsonWriter& json) {
  json.Object(key);
  WritePlace("boom_tip", rigger.boom_tip_m, json);
  WritePlace("ball", depth.median.ball_m, json);
  WriteLine("main_line", depth.shape.main_line, json);
  json.List("clips");
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    WriteClip(rigger.clips[i], depth.shape.clips[i], depth.median.clips[i], json);
  }
  json.End();
  json.End();
}

}  // namespace offplumb::answers
