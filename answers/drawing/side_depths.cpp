#include <algorithm>
#include <cmath>

#include "answers/drawing/band_words.h"
#include "answers/drawing/shapes.h"
#include "answers/drawing/side_view_parts.h"
#include "answers/drawing/text_box.h"

namespace offplumb::answers {
namespace {

constexpr double kNameSize_mm = 3.8;
constexpr double kFigureSize_mm = 9;
constexpr double kRangeSize_mm = 5;
constexpr double kBlock_mm = 19.5;    // One figure with name and band, with the gap to the next.
constexpr double kFootnote_mm = 5.5;  // More, with a footnote.
constexpr double kPointer_mm = 7;     // From the axis to the words.
constexpr double kFaintWidth_mm = 0.15;
constexpr double kBandWidth_mm = 2.4;

std::string NameOf(const DrawnRiggers& riggers, const DrawnRigger& drawn, std::string_view thing) {
  return riggers.size() > 1 ? drawn.rigger->name + " " + std::string(thing) : std::string(thing);
}

void SortByDepth(std::vector<DepthFigure>& figures) {
  std::stable_sort(figures.begin(), figures.end(), [](const DepthFigure& a, const DepthFigure& b) {
    return a.depth_m.median < b.depth_m.median;
  });
}

std::string LureName(const DrawnRiggers& riggers, const DrawnRigger& drawn, std::size_t clip) {
  const bool several = drawn.rigger->clips.size() > 1;
  const std::string& name = drawn.rigger->clips[clip].name;
  if (!several) return NameOf(riggers, drawn, "lure");
  const std::string which = name.empty() ? "clip " + std::to_string(clip + 1) : name;
  return NameOf(riggers, drawn, which + " lure");
}

/// Places at least block_mm apart, in order, as near as may be to where they are wanted.
/// \return nothing when they do not all fit between top and foot.
std::vector<double> Spread(const std::vector<double>& wanted_mm, double block_mm, double top_mm,
                           double foot_mm) {
  const std::size_t count = wanted_mm.size();
  if (block_mm * static_cast<double>(count) > foot_mm - top_mm) return {};
  std::vector<double> at_mm(count);
  double from_mm = top_mm + kBlock_mm / 2;
  for (std::size_t i = 0; i < count; ++i) {
    at_mm[i] = std::max(wanted_mm[i], from_mm);
    from_mm = at_mm[i] + block_mm;
  }
  double to_mm = foot_mm - block_mm + kBlock_mm / 2;
  for (std::size_t i = count; i-- > 0;) {
    at_mm[i] = std::min(at_mm[i], to_mm);
    to_mm = at_mm[i] - block_mm;
  }
  return at_mm;
}

double BlockHeight_mm(const std::vector<DepthFigure>& figures) {
  const bool footnotes = std::any_of(figures.begin(), figures.end(), [](const DepthFigure& figure) {
    return !figure.footnote.empty();
  });
  return kBlock_mm + (footnotes ? kFootnote_mm : 0);
}

/// Name, figure and band, one below the other, around the height `y_mm`.
void AddBlock(const DepthFigure& figure, DisplayUnits units, double x_mm, double y_mm,
              Anchor anchor, Drawing& drawing) {
  const auto add = [&](std::string text, double below_mm, double size_mm, bool bold) {
    drawing.texts.push_back(Text{
        std::move(text), {x_mm, y_mm + below_mm}, size_mm, anchor, bold, 0, Role::kInk, false});
  };
  add(figure.name, -5.2, kNameSize_mm, false);
  add(FormatQuantity(figure.depth_m.median, Shown::kDepth, units), 3.1, kFigureSize_mm, true);
  const std::string range = RangeWords(figure.depth_m, Shown::kDepth, units);
  if (!range.empty()) add(range, 8.6, kRangeSize_mm, false);
  if (!figure.footnote.empty()) {
    add(figure.footnote, range.empty() ? 8.6 : 8.6 + kFootnote_mm, kRangeSize_mm, false);
  }
}

/// The level of a thing, drawn across to the axis, the band on the axis, and the arrow head.
void AddLevel(const DepthFigure& figure, const SideLayout& layout, double axis_mm,
              Drawing& drawing) {
  const Point thing = layout.frame.At(figure.x_m, figure.depth_m.median);
  const double gap_mm = axis_mm < thing.x_mm ? -5 : 3;
  AddLine({{thing.x_mm + gap_mm, thing.y_mm}, {axis_mm, thing.y_mm}},
          Pen{kFaintWidth_mm, Role::kAccent, false}, drawing);
  const double low_mm = layout.frame.At(0, figure.depth_m.low).y_mm;
  const double high_mm = layout.frame.At(0, figure.depth_m.high).y_mm;
  AddArea(Rectangle({axis_mm - kBandWidth_mm / 2, low_mm}, {axis_mm + kBandWidth_mm / 2, high_mm}),
          Role::kBand, drawing);
}

void AddAxis(const std::vector<DepthFigure>& figures, const SideLayout& layout, double axis_mm,
             Drawing& drawing) {
  for (const DepthFigure& figure : figures) AddLevel(figure, layout, axis_mm, drawing);
  const double surface_mm = layout.frame.At(0, 0).y_mm;
  const double deepest_mm = layout.frame.At(0, figures.back().depth_m.median).y_mm;
  AddDimension({axis_mm, surface_mm}, {axis_mm, deepest_mm}, Role::kAccent, drawing);
  for (const DepthFigure& figure : figures) {
    const double y_mm = layout.frame.At(0, figure.depth_m.median).y_mm;
    AddArrowHead({axis_mm, y_mm}, {0, 1}, Role::kAccent, drawing);
  }
}

}  // namespace

std::vector<DepthFigure> BallFigures(const DrawnRiggers& riggers, DisplayUnits units) {
  std::vector<DepthFigure> figures;
  for (const DrawnRigger& drawn : riggers) {
    const std::string count = "count " + FormatQuantity(drawn.depth->count_m, Shown::kDepth, units);
    figures.push_back({NameOf(riggers, drawn, "ball"), riggers.size() > 1 ? count : "",
                       drawn.depth->figures.ball_depth_m, drawn.depth->median.ball_m.x()});
  }
  SortByDepth(figures);
  return figures;
}

std::vector<DepthFigure> LureFigures(const DrawnRiggers& riggers) {
  std::vector<DepthFigure> figures;
  for (const DrawnRigger& drawn : riggers) {
    for (std::size_t i = 0; i < drawn.depth->median.clips.size(); ++i) {
      figures.push_back({LureName(riggers, drawn, i), "",
                         drawn.depth->figures.clips[i].lure_depth_m,
                         drawn.depth->median.clips[i].lure_m.x()});
    }
  }
  SortByDepth(figures);
  return figures;
}

double DepthFiguresWidth_mm(const std::vector<DepthFigure>& figures, DisplayUnits units) {
  double width_mm = 0;
  for (const DepthFigure& figure : figures) {
    width_mm = std::max(
        {width_mm, TextWidth_mm(figure.name, kNameSize_mm, false),
         TextWidth_mm(figure.footnote, kRangeSize_mm, false),
         TextWidth_mm(FormatQuantity(figure.depth_m.median, Shown::kDepth, units), kFigureSize_mm,
                      true),
         TextWidth_mm(RangeWords(figure.depth_m, Shown::kDepth, units), kRangeSize_mm, false)});
  }
  return figures.empty() ? 0 : width_mm + kPointer_mm;
}

double DepthFiguresHeight_mm(const std::vector<DepthFigure>& figures) {
  return BlockHeight_mm(figures) * static_cast<double>(figures.size());
}

bool AddDepthFigures(const std::vector<DepthFigure>& figures, DisplayUnits units,
                     const SideLayout& layout, bool left, Drawing& drawing) {
  if (figures.empty()) return true;
  const double axis_mm = left ? layout.left_axis_mm : layout.right_axis_mm;
  const double words_mm = axis_mm + (left ? -kPointer_mm : kPointer_mm);
  std::vector<double> wanted_mm;
  for (const DepthFigure& figure : figures) {
    wanted_mm.push_back(layout.frame.At(0, figure.depth_m.median).y_mm);
  }
  const std::vector<double> at_mm =
      Spread(wanted_mm, BlockHeight_mm(figures), layout.view.top_left.y_mm,
             left ? layout.view.bottom_right.y_mm : layout.first_aft_row_mm - kAboveRows_mm);
  if (at_mm.empty()) return false;
  AddAxis(figures, layout, axis_mm, drawing);
  for (std::size_t i = 0; i < figures.size(); ++i) {
    AddLine({{axis_mm, wanted_mm[i]}, {words_mm + (left ? 1.5 : -1.5), at_mm[i]}},
            Pen{kFaintWidth_mm, Role::kAccent, false}, drawing);
    AddBlock(figures[i], units, words_mm, at_mm[i], left ? Anchor::kEnd : Anchor::kStart, drawing);
  }
  return true;
}

}  // namespace offplumb::answers
