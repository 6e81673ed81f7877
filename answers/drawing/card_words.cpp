#include "answers/drawing/card_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace offplumb::answers {
namespace {

const char* const kDash = "–";

bool Answered(const plan::CardCell& cell) { return cell.solved && !cell.beyond_angle; }

bool AnyCell(const plan::Card& card, bool (*holds)(const plan::CardCell&)) {
  return std::any_of(card.cells.begin(), card.cells.end(), [&](const auto& column) {
    return std::any_of(column.begin(), column.end(), holds);
  });
}

/// A band as its rounded figure and ends; no ends when all look alike.
CellWords Rounded(const plan::Band& depth_m, DisplayUnits units) {
  CellWords words{FormatNumber(depth_m.median, Shown::kDepth, units),
                  FormatNumber(depth_m.low, Shown::kDepth, units),
                  FormatNumber(depth_m.high, Shown::kDepth, units)};
  if (words.low == words.figure && words.high == words.figure) words.low = words.high = {};
  return words;
}

/// A length without needless zeros: "4 ft", "3.5 ft".
std::string ShortLength(double si, DisplayUnits units) {
  return fmt::format("{} {}", HeadNumber(si, Shown::kLength, units),
                     ShownUnit(Shown::kLength, units));
}

std::string Capital(std::string word) {
  if (word.front() >= 'a' && word.front() <= 'z') word.front() -= 'a' - 'A';
  return word;
}

std::string ClipWords(const tackle::Rigger& rigger, std::size_t index, DisplayUnits units) {
  const tackle::Clip& clip = rigger.clips[index];
  std::string words = clip.name.empty() ? "Clip" : Capital(clip.name) + " clip";
  words +=
      fmt::format(" {} above the ball: {} setback to {}", ShortLength(clip.above_ball_m, units),
                  ShortLength(clip.trail.setback_m, units),
                  clip.trail.flasher ? clip.trail.flasher->name : clip.trail.lure.name);
  if (clip.trail.flasher) {
    words += fmt::format(", {} leader to {}", ShortLength(clip.trail.leader_m, units),
                         clip.trail.lure.name);
  }
  return words + ".";
}

}  // namespace

CellWords WordsOf(const plan::CardCell& cell, std::size_t thing, DisplayUnits units) {
  if (!Answered(cell) || thing > cell.lure_depth_m.size()) return {kDash, {}, {}};
  return Rounded(thing == 0 ? cell.ball_depth_m : cell.lure_depth_m[thing - 1], units);
}

std::string ShortRange(const CellWords& words) { return words.low + kDash + words.high; }

bool HasDashes(const plan::Card& card) {
  return AnyCell(card, [](const plan::CardCell& cell) { return !Answered(cell); });
}

bool HasBands(const plan::Card& card) {
  return AnyCell(card, [](const plan::CardCell& cell) {
    return Answered(cell) && cell.ball_depth_m.low < cell.ball_depth_m.high;
  });
}

std::vector<std::string> ThingNames(const tackle::Rigger& rigger) {
  std::vector<std::string> names = {"ball"};
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    const std::string& name = rigger.clips[i].name;
    if (rigger.clips.size() == 1) {
      names.push_back("lure");
    } else {
      names.push_back(name.empty() ? "lure " + std::to_string(i + 1) : name);
    }
  }
  return names;
}

std::string HeadNumber(double si, Shown shown, DisplayUnits units) {
  const double value = InShownUnit(si, shown, units);
  const int least = shown == Shown::kSpeed ? 1 : 0;
  // Half a hundredth is finer than anyone reads a counter, a log or a tape.
  for (int decimals = least; decimals < 2; ++decimals) {
    const double power = std::pow(10.0, decimals);
    if (std::abs(std::round(value * power) / power - value) < 0.005) {
      return fmt::format("{:.{}f}", value, decimals);
    }
  }
  return fmt::format("{:.2f}", value);
}

std::vector<std::string> RigWords(const tackle::Rigger& rigger, DisplayUnits units) {
  std::vector<std::string> words = {fmt::format("{} on {}, boom tip {} above the water.",
                                                rigger.ball.name, rigger.line.name,
                                                ShortLength(-rigger.boom_tip_m.z(), units))};
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    words.push_back(ClipWords(rigger, i, units));
  }
  return words;
}

std::string KeyWords(const plan::Card& card, const tackle::Rigger& rigger,
                     const CardSheetFacts& facts, DisplayUnits units) {
  std::string words = fmt::format("To read it: large, the depth in {} at a steady speed {}.",
                                  ShownUnit(Shown::kDepth, units), facts.speed_words);
  if (HasBands(card)) {
    words += " Small: it lies between these nine times in ten.";
  }
  words += " Count: the counter's reading, zeroed with the ball's eye at the waterline.";
  if (facts.current.empty()) {
    words += " No current that changes with depth is in it.";
  }
  if (HasDashes(card)) {
    words += fmt::format(
        " A dash: a clip would be above the water, the line would lean more than {}° at the boom, "
        "or the gear has no steady place.",
        FormatNumber(rigger.largest_boom_angle_rad, Shown::kAngle, units));
  }
  return words;
}

std::vector<std::string> CardCautions() {
  return {
      "Hung up: out of gear, everyone low and clear of the line. Ease the clutch and give line; no "
      "turn round a hand or cleat. Go back over the snag from up-current. Stern drawn down or "
      "water "
      "aboard: cut. Keep cutters for your line at hand.",
      "Alone or cold water: jacket and engine cut-off lanyard on. Boat slow when the ball comes "
      "aboard; do not lean out for it.",
      "Not for navigation: the bottom is not in these figures. Ask the authority "
      "for the day's rules. Makers' instructions and licensed practice come first."};
}

}  // namespace offplumb::answers
