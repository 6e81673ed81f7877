#include "answers/drawing/band_words.h"

namespace offplumb::answers {

std::string RangeWords(const plan::Band& band, Shown shown, DisplayUnits units) {
  const std::string median = FormatNumber(band.median, shown, units);
  const std::string low = FormatNumber(band.low, shown, units);
  const std::string high = FormatNumber(band.high, shown, units);
  if (low == median && high == median) return {};
  return low + " to " + high;
}

std::string FigureWords(const plan::Band& band, Shown shown, DisplayUnits units,
                        const std::string& after) {
  const std::string figure = shown == Shown::kAngle ? FormatNumber(band.median, shown, units) + "°"
                                                    : FormatQuantity(band.median, shown, units);
  const std::string range = RangeWords(band, shown, units);
  return figure + after + (range.empty() ? "" : ", " + range);
}

}  // namespace offplumb::answers
