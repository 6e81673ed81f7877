#include <fmt/format.h>

#include "answers/drawing/band_words.h"
#include "answers/questions/notes.h"
#include "apps/cli/phrases.h"
#include "apps/cli/show.h"
#include "apps/cli/table.h"
#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

/// The band of a cell that is looked at: the ball's, or one lure's.
const plan::Band& BandOfCell(const plan::CardCell& cell, int lure) {
  return lure < 0 ? cell.ball_depth_m : cell.lure_depth_m[static_cast<std::size_t>(lure)];
}

/// One count's two lines: the depths, and below each its band.
void AddCount(const plan::Card& card, std::size_t count, int lure, bool bands, DisplayUnits units,
              Table& table) {
  std::vector<std::string> depths{Echo(card.counts_m[count], Shown::kDepth, units)};
  std::vector<std::string> ranges{""};
  for (const auto& row : card.cells) {
    const plan::CardCell& cell = row[count];
    if (!cell.solved || cell.beyond_angle) {  // As on the printed sheet.
      depths.emplace_back("-");
      ranges.emplace_back("");
      continue;
    }
    const plan::Band& band = BandOfCell(cell, lure);
    depths.push_back(answers::FormatQuantity(band.median, Shown::kDepth, units));
    ranges.push_back(answers::RangeWords(band, Shown::kDepth, units));
  }
  table.Add(std::move(depths));
  if (bands) table.Add(std::move(ranges));
}

std::string Grid(const plan::Card& card, int lure, bool bands, DisplayUnits units,
                 std::size_t width) {
  std::vector<std::string> heads{"count"};
  for (const double speed : card.speeds_mps) heads.push_back(Echo(speed, Shown::kSpeed, units));
  Table table(std::move(heads));
  for (std::size_t i = 0; i < card.counts_m.size(); ++i) {
    AddCount(card, i, lure, bands, units, table);
  }
  return table.Text(width);
}

}  // namespace

std::string Show(const answers::CardAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  const bool bands = answer.request.wanted.bands;
  std::string text =
      answer.request.rig.rig.name + "\n" +
      Wrap("Depths by count and speed " + WayAndCurrent(answer.conditions, false, units), width,
           2) +
      "\n";
  for (std::size_t i = 0; i < answer.cards.size(); ++i) {
    const tackle::Rigger& rigger = answer.rigged[i];
    text += "\n" + Strong(rigger.name + ": depth of the ball") +
            Grid(answer.cards[i], -1, bands, units, width);
    for (std::size_t clip = 0; clip < rigger.clips.size(); ++clip) {
      text += "\n" +
              Strong(fmt::format("{}: depth of {}", rigger.name, answers::TheLure(rigger, clip))) +
              Grid(answer.cards[i], static_cast<int>(clip), bands, units, width);
    }
  }
  return text + Foot(answer.remarks, width);
}

}  // namespace offplumb::cli
