/// \file
/// A drawing as plain primitives, for any painter: paper by Cairo, the page by SVG.
///
/// Frame: millimetres on the paper, origin at the top left corner, x to the right, y down.
#pragma once

#include <string>
#include <vector>

namespace offplumb::answers {

/// What a line or text stands for. A painter gives each role one colour for day, night or print.
/// X(name, id for JSON)
#define OFFPLUMB_ROLES(X)                                   \
  X(kPaper, "paper")   /* The sheet itself. */              \
  X(kInk, "ink")       /* Things, and figures to act on. */ \
  X(kAccent, "accent") /* Dimensions. */                    \
  X(kFaint, "faint")   /* Rulings and help lines. */        \
  X(kBand, "band")     /* Where a thing may be. */          \
  X(kWater, "water")   /* The surface of the water. */

enum class Role {
#define OFFPLUMB_ENTRY(name, id) name,
  OFFPLUMB_ROLES(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
};

/// A place on the paper.
struct Point {
  double x_mm = 0;
  double y_mm = 0;
};

/// A line through points, or the area within them.
struct Polyline {
  std::vector<Point> points;  ///< At least two.
  double width_mm = 0.25;     ///< Of the stroke. > 0. Not used when filled.
  Role role = Role::kInk;
  bool closed = false;  ///< The last point is joined to the first.
  bool filled = false;  ///< The area is painted, without a stroke.
  bool dashed = false;
};

/// Which point of the text lies at its place.
enum class Anchor { kStart, kMiddle, kEnd };

/// One line of text in an upright sans-serif letter.
struct Text {
  std::string text;    ///< UTF-8.
  Point place;         ///< On the baseline.
  double size_mm = 3;  ///< The em. A digit is kDigitHeight of it high. > 0.
  Anchor anchor = Anchor::kStart;
  bool bold = false;
  double rotation_rad = 0;  ///< Clockwise on the paper, about the place.
  Role role = Role::kInk;
  bool halo = false;  ///< Edged with paper, where it stands on a line.
};

/// Height of a digit over the em, in the letter the sheets are set in.
inline constexpr double kDigitHeight = 0.729;

/// One sheet. Lines are painted first, in order, then texts.
struct Drawing {
  std::string title;  ///< For a file's own title; not painted.
  double width_mm = 0;
  double height_mm = 0;
  std::vector<Polyline> lines;
  std::vector<Text> texts;
};

}  // namespace offplumb::answers
