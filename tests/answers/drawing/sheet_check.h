/// \file
/// What must hold on every sheet, whatever it shows.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "answers/drawing/drawing.h"
#include "answers/drawing/text_box.h"

namespace offplumb::answers {

/// \return what is wrong with a sheet's texts, one line each: overlaps, texts off the sheet or cut
/// short. Widths are those of text_box.h, which tests/ports/drawings holds against the font.
inline std::vector<std::string> FaultsOf(const Drawing& drawing, double margin_mm) {
  std::vector<std::string> faults;
  for (std::size_t i = 0; i < drawing.texts.size(); ++i) {
    const Text& text = drawing.texts[i];
    const TextBox box = BoxOf(text);
    if (!OnSheet(box, drawing, margin_mm)) faults.push_back("off the sheet: " + text.text);
    if (text.text.find("...") != std::string::npos) faults.push_back("cut: " + text.text);
    for (std::size_t j = i + 1; j < drawing.texts.size(); ++j) {
      if (Overlap(box, BoxOf(drawing.texts[j]))) {
        faults.push_back("overlap: " + text.text + " | " + drawing.texts[j].text);
      }
    }
  }
  for (const Polyline& line : drawing.lines) {
    for (const Point& point : line.points) {
      const bool on = point.x_mm >= 0 && point.x_mm <= drawing.width_mm && point.y_mm >= 0 &&
                      point.y_mm <= drawing.height_mm;
      if (!on) faults.push_back("a line leaves the sheet");
    }
  }
  return faults;
}

/// \return the texts that read so.
inline std::vector<Text> TextsOf(const Drawing& drawing, const std::string& words) {
  std::vector<Text> found;
  std::copy_if(drawing.texts.begin(), drawing.texts.end(), std::back_inserter(found),
               [&](const Text& text) { return text.text == words; });
  return found;
}

}  // namespace offplumb::answers
