#include <algorithm>
#include <cmath>

#include "answers/drawing/band_words.h"
#include "answers/drawing/shapes.h"
#include "answers/drawing/side_view_parts.h"

namespace offplumb::answers {
namespace {

constexpr double kFigureSize_mm = 5;
constexpr double kSmaller = 0.8;
constexpr double kRangeSize_mm = 4.4;
constexpr double kRangeStep_mm = 5.6;  // From a figure down to its band.
constexpr double kArcStep_mm = 12.5;   // From one rigger's angle to the next.
constexpr double kNameSize_mm = 3.4;
constexpr double kCountOffset_mm = 5;   // Of the count's dimension line from the line itself.
constexpr double kPlumbGap_mm = 3;      // From plumb to the words of the angle.
constexpr double kWorthSaying_m = 0.5;  // To port or starboard.
constexpr double kFaintWidth_mm = 0.15;
constexpr double kUnderBoat_m = 0.8;  // No figure above this: hull and outboard are there.

const Pen kWitness{kFaintWidth_mm, Role::kAccent, false};
const Pen kPlumb{kFaintWidth_mm, Role::kAccent, true};

Text Figure(std::string words, const Point& place, Anchor anchor) {
  return Text{std::move(words), place, kFigureSize_mm, anchor, true, 0, Role::kInk, true};
}

/// Writes a figure at the best of its places; in smaller letters when there is none for large ones.
bool AddFigure(std::vector<Text> places, const SideLayout& layout, Drawing& drawing) {
  for (int attempt = 0; attempt < 3; ++attempt) {
    if (AddWhereFree(WithSurroundings(places), layout.view, true, drawing)) return true;
    for (Text& place : places) place.size_mm *= kSmaller;
  }
  return false;
}

/// The same, but rather smaller than away from its row.
bool AddInRow(const std::vector<Text>& places, const SideLayout& layout, Drawing& drawing) {
  std::vector<Text> smaller = places;
  for (int attempt = 0; attempt < 3; ++attempt) {
    if (AddWhereFree(InOrder(smaller), layout.view, true, drawing)) return true;
    for (Text& place : smaller) place.size_mm *= kSmaller;
  }
  return AddFigure(places, layout, drawing);
}

std::string Prefix(const DrawnRiggers& riggers, const DrawnRigger& drawn) {
  return riggers.size() > 1 ? drawn.rigger->name + ": " : "";
}

/// The part of the line that the count measures: from the water at the boom to the ball's eye,
/// moved a little to one side. \param offset_mm ahead of the line; negative is aft.
std::vector<Point> CountLine(const DrawnRigger& drawn, double offset_mm, const SideFrame& frame) {
  std::vector<Point> line;
  const auto& main_line = drawn.depth->shape.main_line;
  for (std::size_t i = 0; i < main_line.size(); ++i) {
    const Point at = frame.At(main_line[i]);
    const Point before = frame.At(main_line[i == 0 ? 0 : i - 1]);
    const Point after = frame.At(main_line[std::min(i + 1, main_line.size() - 1)]);
    const double x = after.x_mm - before.x_mm;
    const double y = after.y_mm - before.y_mm;
    const double length = std::hypot(x, y);
    if (main_line[i].z() < 0 || !(length > 0)) continue;
    line.push_back({at.x_mm + offset_mm * y / length, at.y_mm - offset_mm * x / length});
  }
  return line;
}

Point Difference(const Point& a, const Point& b) { return {a.x_mm - b.x_mm, a.y_mm - b.y_mm}; }

void AddCountLine(const std::vector<Point>& line, Drawing& drawing) {
  AddLine(line, Pen{0.2, Role::kAccent, false}, drawing);
  AddArrowHead(line.front(), Difference(line.front(), line[1]), Role::kAccent, drawing);
  AddArrowHead(line.back(), Difference(line.back(), line[line.size() - 2]), Role::kAccent, drawing);
}

/// Places for the count's words beside its line; the middle first.
std::vector<Text> CountPlaces(const std::string& words, const std::vector<Point>& line,
                              bool ahead) {
  std::vector<Text> places;
  for (const double part : {0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2}) {
    const auto index = static_cast<std::size_t>(part * static_cast<double>(line.size() - 1));
    places.push_back(Figure(
        words, {line[index].x_mm + (ahead ? 2.5 : -2.5), line[index].y_mm + 0.36 * kFigureSize_mm},
        ahead ? Anchor::kStart : Anchor::kEnd));
  }
  return places;
}

/// \return whether the fishing lines run ahead of the main line, so that the count goes aft of it.
bool FishingLinesAhead(const DrawnRigger& drawn) {
  const auto& main_line = drawn.depth->shape.main_line;
  for (const tow::TreeShape::OfClip& clip : drawn.depth->shape.clips) {
    if (clip.fishing_line.empty()) continue;
    const Eigen::Vector3d& middle_m = clip.fishing_line[clip.fishing_line.size() / 2];
    const auto level = std::find_if(main_line.begin(), main_line.end(), [&](const auto& place_m) {
      return place_m.z() >= middle_m.z();
    });
    if (level != main_line.end() && middle_m.x() > level->x()) return true;
  }
  return false;
}

bool AddCount(const DrawnRigger& drawn, DisplayUnits units, const SideLayout& layout,
              Drawing& drawing) {
  const bool ahead = !FishingLinesAhead(drawn);
  const std::vector<Point> line =
      CountLine(drawn, ahead ? kCountOffset_mm : -kCountOffset_mm, layout.frame);
  const std::string words = "count " + FormatQuantity(drawn.depth->count_m, Shown::kDepth, units);
  if (line.size() < 2) {
    const Point ball = layout.frame.At(drawn.depth->median.ball_m);
    return AddFigure({Figure(words, ball, Anchor::kStart)}, layout, drawing);
  }
  AddCountLine(line, drawing);
  return AddFigure(CountPlaces(words, line, ahead), layout, drawing);
}

std::string SideWords(const plan::Band& side_m, DisplayUnits units) {
  if (std::abs(side_m.median) < kWorthSaying_m) return {};
  return "; " + FormatQuantity(std::abs(side_m.median), Shown::kDepth, units) +
         (side_m.median > 0 ? " to starboard" : " to port");
}

std::string AftWords(const plan::RiggerFigures<plan::Band>& figures, DisplayUnits units) {
  plan::Band trail_m = figures.ball_trail_m;
  const bool ahead = trail_m.median < 0;
  if (ahead) trail_m = {-trail_m.median, -trail_m.high, -trail_m.low};
  return FigureWords(trail_m, Shown::kDepth, units, ahead ? " ahead" : " aft") +
         SideWords(figures.ball_side_m, units);
}

/// How far aft: a row below everything, from below the ball to plumb under the boom tip.
bool AddAft(const DrawnRiggers& riggers, std::size_t index, DisplayUnits units,
            const SideLayout& layout, Drawing& drawing) {
  const DrawnRigger& drawn = riggers[index];
  const double row_mm = layout.first_aft_row_mm + kAftRow_mm * static_cast<double>(index);
  const Point ball = layout.frame.At(drawn.depth->median.ball_m);
  const Point boom = layout.frame.At(drawn.rigger->boom_tip_m);
  AddLine({boom, {boom.x_mm, row_mm + 2}}, kPlumb, drawing);
  AddLine({{ball.x_mm, ball.y_mm + 3}, {ball.x_mm, row_mm + 2}}, kWitness, drawing);
  AddDimension({ball.x_mm, row_mm}, {boom.x_mm, row_mm}, Role::kAccent, drawing);
  const std::string words = Prefix(riggers, drawn) + AftWords(drawn.depth->figures, units);
  const double base_mm = row_mm + 0.36 * kFigureSize_mm;
  const double right_mm = std::max(ball.x_mm, boom.x_mm);
  const double left_mm = std::min(ball.x_mm, boom.x_mm);
  std::vector<Text> places = {
      Figure(words, {right_mm + 8, base_mm}, Anchor::kStart),
      Figure(words, {left_mm - 8, base_mm}, Anchor::kEnd),
      Figure(words, {(left_mm + right_mm) / 2, row_mm - 1.9}, Anchor::kMiddle)};
  const double room_mm = right_mm - left_mm - 3;
  if (TextWidth_mm(words, kFigureSize_mm, true) < room_mm) std::swap(places[0], places[2]);
  return AddInRow(places, layout, drawing);
}

std::vector<Point> Arc(const Point& centre, double radius_mm, double from_rad, double to_rad) {
  constexpr int kPieces = 24;
  std::vector<Point> points;
  for (int i = 0; i <= kPieces; ++i) {
    const double at = from_rad + (to_rad - from_rad) * i / kPieces;
    points.push_back(
        {centre.x_mm - radius_mm * std::sin(at), centre.y_mm + radius_mm * std::cos(at)});
  }
  return points;
}

/// The angle as it is seen from the side: of the line's first piece, aft of plumb.
double SeenAngle_rad(const DrawnRigger& drawn) {
  const auto& line = drawn.depth->shape.main_line;
  if (line.size() < 2) return 0;
  return std::atan2(line[0].x() - line[1].x(), line[1].z() - line[0].z());
}

std::string AngleWords(const DrawnRiggers& riggers, const DrawnRigger& drawn, DisplayUnits units) {
  const plan::Band& angle_rad = drawn.depth->figures.angle_boom_rad;
  return Prefix(riggers, drawn) + FigureWords(plan::Certain(angle_rad.median), Shown::kAngle, units,
                                              riggers.size() > 1 ? "" : " at the boom");
}

/// Writes the band below the text that was written last.
bool AddRangeBelow(const plan::Band& angle_rad, DisplayUnits units, const SideLayout& layout,
                   Drawing& drawing) {
  Text below = drawing.texts.back();
  below.text = RangeWords(angle_rad, Shown::kAngle, units);
  if (below.text.empty()) return true;
  below.bold = false;
  below.size_mm = kRangeSize_mm;
  below.place.y_mm += kRangeStep_mm;
  return AddFigure({below}, layout, drawing);
}

bool AddAngle(const DrawnRiggers& riggers, std::size_t index, DisplayUnits units,
              const SideLayout& layout, Drawing& drawing) {
  const DrawnRigger& drawn = riggers[index];
  const Point boom = layout.frame.At(drawn.rigger->boom_tip_m);
  const double clear_mm = layout.frame.At(0, kUnderBoat_m).y_mm - boom.y_mm + kFigureSize_mm;
  const double radius_mm = std::max(18.0, clear_mm) + kArcStep_mm * static_cast<double>(index);
  const double seen_rad = SeenAngle_rad(drawn);
  AddLine(Arc(boom, radius_mm, 0, seen_rad), Pen{0.2, Role::kAccent, false}, drawing);
  const Text beside = Figure(
      AngleWords(riggers, drawn, units),
      {boom.x_mm + kPlumbGap_mm, boom.y_mm + radius_mm + 0.36 * kFigureSize_mm}, Anchor::kStart);
  return AddFigure({beside}, layout, drawing) &&
         AddRangeBelow(drawn.depth->figures.angle_boom_rad, units, layout, drawing);
}

/// Places for a name around a thing.
std::vector<Text> NamePlaces(const std::string& name, const Point& thing) {
  std::vector<Text> places;
  const auto add = [&](double x_mm, double y_mm, Anchor anchor) {
    places.push_back(Text{name,
                          {thing.x_mm + x_mm, thing.y_mm + y_mm},
                          kNameSize_mm,
                          anchor,
                          false,
                          0,
                          Role::kInk,
                          false});
  };
  add(-2, -2.4, Anchor::kMiddle);
  add(-2, 4.6, Anchor::kMiddle);
  add(3, 3.6, Anchor::kStart);
  add(3, -1.6, Anchor::kStart);
  add(-3, 4, Anchor::kEnd);
  add(0, -5, Anchor::kMiddle);
  add(0, 8, Anchor::kMiddle);
  return places;
}

}  // namespace

double AngleWidth_mm(const DrawnRiggers& riggers, DisplayUnits units) {
  double width_mm = 0;
  for (const DrawnRigger& drawn : riggers) {
    width_mm =
        std::max(width_mm, TextWidth_mm(AngleWords(riggers, drawn, units), kFigureSize_mm, true));
  }
  return width_mm + kPlumbGap_mm;
}

bool AddLineFigures(const DrawnRiggers& riggers, DisplayUnits units, const SideLayout& layout,
                    Drawing& drawing) {
  bool all = true;
  for (std::size_t i = 0; i < riggers.size(); ++i) {
    all = AddAft(riggers, i, units, layout, drawing) && all;
    all = AddAngle(riggers, i, units, layout, drawing) && all;
  }
  if (riggers.size() == 1) all = AddCount(riggers.front(), units, layout, drawing) && all;
  return all;
}

void AddPartNames(const DrawnRiggers& riggers, const SideLayout& layout, Drawing& drawing) {
  const auto name = [&](const std::string& words, const Eigen::Vector3d& place_m) {
    AddWhereFree(InOrder(NamePlaces(words, layout.frame.At(place_m))), layout.view, false, drawing);
  };
  for (const DrawnRigger& drawn : riggers) {
    name(riggers.size() > 1 ? drawn.rigger->name : "ball", drawn.depth->median.ball_m);
    for (std::size_t i = 0; i < drawn.rigger->clips.size(); ++i) {
      const tow::ClipState& clip = drawn.depth->median.clips[i];
      name("lure", clip.lure_m);
      if (drawn.rigger->clips[i].trail.flasher) name("flasher", clip.flasher_m);
      name("clip", clip.clip_m);
    }
  }
}

}  // namespace offplumb::answers
