#include <algorithm>
#include <array>
#include <cmath>

#include "answers/drawing/band_words.h"
#include "answers/drawing/shapes.h"
#include "answers/drawing/side_view_parts.h"
#include "answers/drawing/text_box.h"

namespace offplumb::answers {
namespace {

constexpr double kFigureSize_mm = 5;
constexpr double kSmaller = 0.8;
constexpr double kRangeSize_mm = 4.4;
constexpr double kRangeStep_mm = 5.6;  // From a figure down to its band.
constexpr double kArcStep_mm = 12.5;   // From one rigger's angle to the next.
constexpr double kNameSize_mm = 3.4;
// Of the count's dimension line from the line itself; ahead, and negative aft.
constexpr std::array<double, 6> kCountOffsets_mm = {5, -5, 9, -9, 13, -13};
constexpr double kTangled_mm = 2.5;     // The count's line nearer than this to a fishing line.
constexpr double kPlumbGap_mm = 3;      // From plumb to the words of the angle.
constexpr double kWorthSaying_m = 0.5;  // To port or starboard.
constexpr double kFaintWidth_mm = 0.15;
constexpr double kPart_mm = 1;        // From a part's middle to the line that leads to its name.
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

/// \return how many of a line's points are all but on a fishing line.
int Tangles(const std::vector<Point>& line, const DrawnRigger& drawn, const SideFrame& frame) {
  std::vector<Point> others;
  for (const tow::TreeShape::OfClip& clip : drawn.depth->shape.clips) {
    for (std::size_t i = 1; i < clip.fishing_line.size(); ++i) {
      const Point a = frame.At(clip.fishing_line[i - 1]);
      const Point b = frame.At(clip.fishing_line[i]);
      const int pieces = 1 + static_cast<int>(std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm));
      for (int piece = 0; piece < pieces; ++piece) {
        const double part = static_cast<double>(piece) / pieces;
        others.push_back({a.x_mm + part * (b.x_mm - a.x_mm), a.y_mm + part * (b.y_mm - a.y_mm)});
      }
    }
  }
  return static_cast<int>(std::count_if(line.begin(), line.end(), [&](const Point& point) {
    return std::any_of(others.begin(), others.end(), [&](const Point& other) {
      return std::hypot(point.x_mm - other.x_mm, point.y_mm - other.y_mm) < kTangled_mm;
    });
  }));
}

/// \return where the count's line runs clear of the fishing lines; where it nowhere does, where it
/// is least tangled.
double CountOffset_mm(const DrawnRigger& drawn, const SideFrame& frame) {
  double best_mm = kCountOffsets_mm.front();
  int fewest = Tangles(CountLine(drawn, best_mm, frame), drawn, frame);
  for (const double offset_mm : kCountOffsets_mm) {
    const int tangles = Tangles(CountLine(drawn, offset_mm, frame), drawn, frame);
    if (tangles >= fewest) continue;
    fewest = tangles;
    best_mm = offset_mm;
  }
  return best_mm;
}

bool AddCount(const DrawnRigger& drawn, DisplayUnits units, const SideLayout& layout,
              Drawing& drawing) {
  const double offset_mm = CountOffset_mm(drawn, layout.frame);
  const bool ahead = offset_mm > 0;
  const std::vector<Point> line = CountLine(drawn, offset_mm, layout.frame);
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
  add(-6, 1, Anchor::kEnd);
  return places;
}

/// A dodger sways where a flasher turns; who tows one does not call it a flasher.
std::string SwayingName(const tackle::Body& flasher) {
  return flasher.name.find("dodger") == std::string::npos ? "flasher" : "dodger";
}

/// The point of a text's box that is nearest to another.
Point NearestOf(const Text& text, const Point& to) {
  const TextBox box = BoxOf(text);
  return {std::clamp(to.x_mm, box[0].x_mm, box[2].x_mm),
          std::clamp(to.y_mm, box[0].y_mm, box[2].y_mm)};
}

/// Names a clip close to it; where all is taken, further away with a thin line to it. Other parts
/// are told by their shape, or by the depth at the side, and go without.
void AddClipName(const Point& at, const SideLayout& layout, Drawing& drawing) {
  const std::vector<Text> places = NamePlaces("clip", at);
  if (AddWhereFree(InOrder(places), layout.view, false, drawing)) return;
  if (!AddWhereFree(WithSurroundings(places), layout.view, false, drawing)) return;
  const Point end = NearestOf(drawing.texts.back(), at);
  const double length_mm = std::hypot(end.x_mm - at.x_mm, end.y_mm - at.y_mm);
  if (!(length_mm > kPart_mm)) return;
  const double part = kPart_mm / length_mm;
  AddLine({{at.x_mm + part * (end.x_mm - at.x_mm), at.y_mm + part * (end.y_mm - at.y_mm)}, end},
          Pen{kFaintWidth_mm, Role::kInk, false}, drawing);
}

/// Names the lines of one clip with their lengths, where there is room left.
void AddLineNames(const tackle::Clip& clip, const tow::TreeShape::OfClip& lines, DisplayUnits units,
                  const SideLayout& layout, Drawing& drawing) {
  const auto name = [&](const std::string& words, const std::vector<Eigen::Vector3d>& line) {
    if (line.empty()) return;
    const Point middle = layout.frame.At(line[line.size() / 2]);
    AddWhereFree(InOrder(NamePlaces(words, middle)), layout.view, false, drawing);
  };
  const auto length = [&](double length_m, Shown shown) {
    return FigureWords(plan::Certain(length_m), shown, units, "");
  };
  name("setback " + length(clip.trail.setback_m, Shown::kDepth), lines.setback);
  if (clip.trail.flasher) {
    name("leader " + length(clip.trail.leader_m, Shown::kLength), lines.leader);
  }
  name("fishing line", lines.fishing_line);
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

void AddPartNames(const DrawnRiggers& riggers, DisplayUnits units, const SideLayout& layout,
                  Drawing& drawing) {
  const auto name = [&](const std::string& words, const Eigen::Vector3d& place_m) {
    AddWhereFree(InOrder(NamePlaces(words, layout.frame.At(place_m))), layout.view, false, drawing);
  };
  for (const DrawnRigger& drawn : riggers) {
    name(riggers.size() > 1 ? drawn.rigger->name : "ball", drawn.depth->median.ball_m);
    for (std::size_t i = 0; i < drawn.rigger->clips.size(); ++i) {
      const tow::ClipState& state = drawn.depth->median.clips[i];
      const tackle::Clip& clip = drawn.rigger->clips[i];
      name("lure", state.lure_m);
      if (clip.trail.flasher) name(SwayingName(*clip.trail.flasher), state.flasher_m);
      AddClipName(layout.frame.At(state.clip_m), layout, drawing);
    }
  }
  // With more riggers there is no room for them, and the table tells them.
  if (riggers.size() > 1) return;
  const DrawnRigger& drawn = riggers.front();
  for (std::size_t i = 0; i < drawn.rigger->clips.size(); ++i) {
    AddLineNames(drawn.rigger->clips[i], drawn.depth->shape.clips[i], units, layout, drawing);
  }
}

}  // namespace offplumb::answers
