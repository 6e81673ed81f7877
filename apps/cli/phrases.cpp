#include "apps/cli/phrases.h"

#include <fmt/format.h>

#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

answers::Band Shownable(const plan::Band& band) { return {band.median, band.low, band.high}; }

void AddList(const std::vector<std::string>& sentences, std::string_view head, std::size_t width,
             std::string& text) {
  if (sentences.empty()) return;
  text += "\n" + std::string(head) + "\n";
  for (const std::string& sentence : sentences) text += Wrap("- " + sentence, width, 2) + "\n";
}

}  // namespace

std::string Words(const plan::Band& band, Shown shown, DisplayUnits units) {
  return answers::FormatBand(Shownable(band), shown, units);
}

std::string ShortWords(const plan::Band& band, Shown shown, DisplayUnits units) {
  const auto around = answers::GiveOrTake(Shownable(band), shown, units);
  if (!around || band.low == band.high) return Words(band, shown, units);
  return answers::FormatQuantity(band.median, shown, units) + ", " + *around;
}

std::string ReachEnd(bool line_limits, double largest_angle_rad, DisplayUnits units) {
  if (line_limits) return "where the line on the reel ends";
  return fmt::format("where the line leans {} at the boom",
                     answers::FormatQuantity(largest_angle_rad, Shown::kAngle, units));
}

std::string Strong(const std::string& text) {
  return std::string(kStrong) + text + std::string(kPlain) + "\n";
}

std::string Foot(const answers::Remarks& remarks, std::size_t width) {
  std::string text;
  AddList(remarks.notes, "Notes", width, text);
  AddList(remarks.cautions, "Mind", width, text);
  return std::string(kFaint) + text + std::string(kPlain);
}

}  // namespace offplumb::cli
