#include "answers/drawing/text_box.h"

#include <algorithm>
#include <cmath>

namespace offplumb::answers {
namespace {

constexpr int kFirstLetter = 0x20;
constexpr int kLetters = 95;

// Advance widths of the signs from blank to tilde, in thousandths of the em. Source: table hmtx of
// DejaVuSans.ttf and DejaVuSans-Bold.ttf, version 2.37 (package fonts-dejavu-core).
// tests/ports/drawings/painter_test.cpp holds them against the installed font.
constexpr std::array<int, kLetters> kRegular = {
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361,  318, 337, 636, 636, 636,
    636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
    575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635,  611, 732, 684, 989, 685,
    611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352,  635, 634, 278, 278, 579,
    278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592,  525, 636, 337, 636, 838};
constexpr std::array<int, kLetters> kBold = {
    348,  456, 521, 838, 696, 1002, 872, 306,  457, 457, 523, 838, 380, 415,  380, 365,
    696,  696, 696, 696, 696, 696,  696, 696,  696, 696, 400, 400, 838, 838,  838, 580,
    1000, 774, 762, 734, 830, 683,  683, 821,  837, 372, 372, 775, 637, 995,  837, 850,
    733,  850, 770, 720, 682, 812,  774, 1103, 771, 724, 725, 457, 365, 457,  838, 500,
    500,  675, 716, 593, 716, 678,  435, 716,  712, 343, 343, 665, 343, 1042, 712, 687,
    716,  716, 493, 595, 478, 712,  652, 924,  645, 652, 582, 712, 365, 712,  838};
constexpr int kOther = 1000;

// Top and foot of a line of text over its em, from the same fonts: the slash and the brackets reach
// 0.76 above the baseline, tails 0.24 below, and round letters and digits 0.015.
constexpr double kAscent = 0.76;
constexpr double kTails = 0.24;
constexpr double kNoTails = 0.02;
constexpr std::string_view kPlain =
    "0123456789.- +ABCDEFGHIKLMNOPRSTUVWXYZabcdefhiklmnorstuvwxz:\"'!?%*<>=~^";

bool IsContinuation(char letter) { return (static_cast<unsigned char>(letter) & 0xC0) == 0x80; }

double Descent(std::string_view text) {
  for (const std::string_view sign : {"°", "–"}) {
    const std::size_t at = text.find(sign);
    if (at == std::string_view::npos) continue;
    return std::max(Descent(text.substr(0, at)), Descent(text.substr(at + sign.size())));
  }
  return text.find_first_not_of(kPlain) == std::string_view::npos ? kNoTails : kTails;
}

int Advance(char letter, bool bold) {
  const int index = static_cast<unsigned char>(letter) - kFirstLetter;
  if (index < 0 || index >= kLetters) return kOther;
  return (bold ? kBold : kRegular)[static_cast<std::size_t>(index)];
}

double Dot(const Point& a, const Point& b) { return a.x_mm * b.x_mm + a.y_mm * b.y_mm; }

/// Room between two boxes along one direction; negative where their shadows overlap.
double GapAlong(const Point& direction, const TextBox& a, const TextBox& b) {
  const auto shadow = [&](const TextBox& box) {
    std::array<double, 4> at{};
    std::transform(box.begin(), box.end(), at.begin(),
                   [&](const Point& corner) { return Dot(corner, direction); });
    return std::minmax({at[0], at[1], at[2], at[3]});
  };
  const auto shadow_a = shadow(a);
  const auto shadow_b = shadow(b);
  return std::max(shadow_a.first - shadow_b.second, shadow_b.first - shadow_a.second);
}

/// The two directions of a box's sides, unit vectors.
std::array<Point, 2> Sides(const TextBox& box) {
  const double x_mm = box[1].x_mm - box[0].x_mm;
  const double y_mm = box[1].y_mm - box[0].y_mm;
  const double length_mm = std::hypot(x_mm, y_mm);
  const Point along = length_mm > 0 ? Point{x_mm / length_mm, y_mm / length_mm} : Point{1, 0};
  return {along, Point{-along.y_mm, along.x_mm}};
}

}  // namespace

double TextWidth_mm(std::string_view text, double size_mm, bool bold) {
  int width = 0;
  for (const char letter : text) {
    if (!IsContinuation(letter)) width += Advance(letter, bold);
  }
  return width * size_mm / 1000.0;
}

TextBox BoxOf(const Text& text) {
  const double width_mm = TextWidth_mm(text.text, text.size_mm, text.bold);
  const double left_mm = text.anchor == Anchor::kStart    ? 0
                         : text.anchor == Anchor::kMiddle ? -width_mm / 2
                                                          : -width_mm;
  const double c = std::cos(text.rotation_rad);
  const double s = std::sin(text.rotation_rad);
  const auto turned = [&](double x_mm, double y_mm) {
    return Point{text.place.x_mm + c * x_mm - s * y_mm, text.place.y_mm + s * x_mm + c * y_mm};
  };
  const double top_mm = -kAscent * text.size_mm;
  const double foot_mm = Descent(text.text) * text.size_mm;
  return {turned(left_mm, top_mm), turned(left_mm + width_mm, top_mm),
          turned(left_mm + width_mm, foot_mm), turned(left_mm, foot_mm)};
}

bool Overlap(const TextBox& a, const TextBox& b, double gap_mm) {
  // Two convex shapes are apart if and only if a side of one of them separates them.
  for (const TextBox* box : {&a, &b}) {
    for (const Point& side : Sides(*box)) {
      if (GapAlong(side, a, b) >= gap_mm) return false;
    }
  }
  return true;
}

bool OnSheet(const TextBox& box, const Drawing& drawing, double margin_mm) {
  return std::all_of(box.begin(), box.end(), [&](const Point& corner) {
    return corner.x_mm >= margin_mm && corner.x_mm <= drawing.width_mm - margin_mm &&
           corner.y_mm >= margin_mm && corner.y_mm <= drawing.height_mm - margin_mm;
  });
}

std::vector<std::string> WrapText(std::string_view text, double size_mm, bool bold,
                                  double width_mm) {
  std::vector<std::string> lines;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word(text.substr(at, end - at));
    at = end + 1;
    if (word.empty()) continue;
    const std::string longer = lines.empty() ? word : lines.back() + " " + word;
    if (!lines.empty() && TextWidth_mm(longer, size_mm, bold) <= width_mm) {
      lines.back() = longer;
    } else {
      lines.push_back(word);
    }
  }
  return lines;
}

std::string FitText(std::string_view text, double size_mm, bool bold, double width_mm) {
  if (TextWidth_mm(text, size_mm, bold) <= width_mm) return std::string(text);
  const double room_mm = width_mm - TextWidth_mm("...", size_mm, bold);
  std::size_t end = text.size();
  while (end > 0 && TextWidth_mm(text.substr(0, end), size_mm, bold) > room_mm) {
    --end;
    while (end > 0 && IsContinuation(text[end])) --end;
  }
  return std::string(text.substr(0, end)) + "...";
}

}  // namespace offplumb::answers
