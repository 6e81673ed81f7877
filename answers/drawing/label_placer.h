/// \file
/// Finding a place for a text where nothing else stands.
#pragma once

#include <vector>

#include "answers/drawing/drawing.h"
#include "answers/drawing/text_box.h"

namespace offplumb::answers {

/// An upright rectangle of the paper.
struct Region {
  Point top_left;
  Point bottom_right;
};

/// A place a text may take, and how gladly: the cost is as of so many millimetres from the best.
struct Candidate {
  Text text;
  double cost_mm = 0;
};

/// Adds a text at the cheapest of several places where it overlaps no text of the drawing. Each
/// line of the drawing it stands on has its cost too.
///
/// \param region where it must lie.
/// \param cross_lines whether a place on a line will do.
/// \return whether there was a place.
bool AddWhereFree(const std::vector<Candidate>& candidates, const Region& region, bool cross_lines,
                  Drawing& drawing);

/// \return the texts as candidates, each dearer than the one before.
[[nodiscard]] std::vector<Candidate> InOrder(const std::vector<Text>& places);

/// \return the same, and after them the first one moved ever further in all directions.
[[nodiscard]] std::vector<Candidate> WithSurroundings(const std::vector<Text>& places);

}  // namespace offplumb::answers
