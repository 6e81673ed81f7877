#include "apps/cli/csv.h"

#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "answers/questions/notes.h"
#include "apps/cli/phrases.h"

namespace offplumb::cli {
namespace {

constexpr std::string_view kLineEnd = "\r\n";

/// RFC 4180: quotes around what holds a comma, a quote or a line end; quotes doubled.
std::string Quote(std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(text);
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

std::string Row(const std::vector<std::string>& cells) {
  std::string row;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) row += ',';
    row += Quote(cells[i]);
  }
  return row + std::string(kLineEnd);
}

/// Finer than the text: a thousandth of the shown unit.
std::string Number(double si, Shown shown, DisplayUnits units) {
  return fmt::format("{:.3f}", answers::InShownUnit(si, shown, units));
}

std::string Unit(Shown shown, DisplayUnits units) {
  return std::string(answers::ShownUnit(shown, units));
}

void AddBand(const plan::Band& band, Shown shown, DisplayUnits units,
             std::vector<std::string>& cells) {
  for (const double value : {band.median, band.low, band.high}) {
    cells.push_back(Number(value, shown, units));
  }
}

/// Writes the rows of one part: rigger, part, quantity, unit, median, low, high.
class PartRows {
 public:
  PartRows(std::string rigger, DisplayUnits units) : rigger_(std::move(rigger)), units_(units) {}

  void Add(const std::string& part, const std::string& quantity, const plan::Band& band,
           Shown shown) {
    std::vector<std::string> cells{rigger_, part, quantity, Unit(shown, units_)};
    AddBand(band, shown, units_, cells);
    text_ += Row(cells);
  }

  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string rigger_;
  DisplayUnits units_;
  std::string text_;
};

void AddClip(const std::string& clip, const std::string& lure,
             const plan::ClipFigures<plan::Band>& figures, PartRows& rows) {
  rows.Add(clip, "depth", figures.clip_depth_m, Shown::kDepth);
  rows.Add(clip, "behind the boom", figures.clip_trail_m, Shown::kDepth);
  rows.Add(clip, "to starboard", figures.clip_side_m, Shown::kDepth);
  rows.Add(clip, "leader pull", figures.leader_pull_N, Shown::kForce);
  rows.Add(clip, "line pull", figures.line_pull_N, Shown::kForce);
  rows.Add(clip, "net pull", figures.clip_net_N, Shown::kForce);
  rows.Add(clip, "fishing line", figures.fishing_line_m, Shown::kDepth);
  rows.Add(lure, "depth", figures.lure_depth_m, Shown::kDepth);
  rows.Add(lure, "behind the boom", figures.lure_trail_m, Shown::kDepth);
  rows.Add(lure, "to starboard", figures.lure_side_m, Shown::kDepth);
  rows.Add(lure, "water speed", figures.lure_water_speed_mps, Shown::kSpeed);
}

std::string RiggerRows(const tackle::Rigger& rigger, const plan::RiggerDepth& depth,
                       DisplayUnits units) {
  const auto& figures = depth.figures;
  PartRows rows(rigger.name, units);
  rows.Add("ball", "depth", figures.ball_depth_m, Shown::kDepth);
  rows.Add("ball", "behind the boom", figures.ball_trail_m, Shown::kDepth);
  rows.Add("ball", "to starboard", figures.ball_side_m, Shown::kDepth);
  rows.Add("ball", "water speed", figures.ball_water_speed_mps, Shown::kSpeed);
  for (std::size_t i = 0; i < figures.clips.size(); ++i) {
    AddClip(answers::ClipName(rigger, i), answers::LureName(rigger, i), figures.clips[i], rows);
  }
  rows.Add("line", "pull at the boom", figures.tension_boom_N, Shown::kForce);
  rows.Add("line", "pull at the ball", figures.tension_ball_N, Shown::kForce);
  rows.Add("line", "lean at the boom", figures.angle_boom_rad, Shown::kAngle);
  rows.Add("line", "length", figures.length_m, Shown::kDepth);
  return rows.text();
}

std::string CardRows(const std::string& part, int lure, const plan::Card& card,
                     DisplayUnits units) {
  std::string text;
  for (std::size_t i = 0; i < card.cells.size(); ++i) {
    for (std::size_t j = 0; j < card.cells[i].size(); ++j) {
      const plan::CardCell& cell = card.cells[i][j];
      std::vector<std::string> cells{card.rigger, part,
                                     Number(card.speeds_mps[i], Shown::kSpeed, units),
                                     Number(card.counts_m[j], Shown::kDepth, units)};
      if (cell.solved) {
        AddBand(lure < 0 ? cell.ball_depth_m : cell.lure_depth_m[static_cast<std::size_t>(lure)],
                Shown::kDepth, units, cells);
        cells.emplace_back(cell.beyond_angle ? "yes" : "no");
      } else {
        cells.insert(cells.end(), 4, "");
      }
      text += Row(cells);
    }
  }
  return text;
}

}  // namespace

std::string Csv(const answers::DepthAnswer& answer) {
  std::string text = Row({"rigger", "part", "quantity", "unit", "median", "low", "high"});
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    text += RiggerRows(answer.rigged[i], answer.riggers[i], answer.request.wanted.units);
  }
  return text;
}

std::string Csv(const answers::CountAnswer& answer) {
  const DisplayUnits units = answer.request.wanted.units;
  const std::string unit = Unit(Shown::kDepth, units);
  std::string text = Row({"rigger", "of", "wanted_depth_" + unit, "reachable", "count_" + unit,
                          "count_low_" + unit, "count_high_" + unit, "reach_" + unit,
                          "reach_low_" + unit, "reach_high_" + unit});
  for (const plan::RiggerCount& count : answer.riggers) {
    std::vector<std::string> cells{
        count.name, count.wish.of == plan::DepthOf::kBall ? "ball" : "lure",
        Number(count.wish.depth_m, Shown::kDepth, units), count.reachable ? "yes" : "no"};
    if (count.reachable) {
      AddBand(count.count_m, Shown::kDepth, units, cells);
    } else {
      cells.insert(cells.end(), 3, "");
    }
    AddBand(count.reach_depth_m, Shown::kDepth, units, cells);
    text += Row(cells);
  }
  return text;
}

std::string Csv(const answers::CardAnswer& answer) {
  const DisplayUnits units = answer.request.wanted.units;
  const std::string unit = Unit(Shown::kDepth, units);
  std::string speed = "speed_" + Unit(Shown::kSpeed, units);
  std::string text = Row({"rigger", "part", speed, "count_" + unit, "depth_" + unit,
                          "depth_low_" + unit, "depth_high_" + unit, "leans_too_far"});
  for (std::size_t i = 0; i < answer.cards.size(); ++i) {
    text += CardRows("ball", -1, answer.cards[i], units);
    for (std::size_t clip = 0; clip < answer.rigged[i].clips.size(); ++clip) {
      text += CardRows(answers::LureName(answer.rigged[i], clip), static_cast<int>(clip),
                       answer.cards[i], units);
    }
  }
  return text;
}

std::string Csv(const answers::CompareAnswer& answer) {
  const DisplayUnits units = answer.request.wanted.units;
  const std::string unit = Unit(Shown::kDepth, units);
  const std::string pull = Unit(Shown::kForce, units);
  std::string text =
      Row({"rig", "count_" + unit, "depth_" + unit, "depth_low_" + unit, "depth_high_" + unit,
           "pull_" + pull, "pull_low_" + pull, "pull_high_" + pull});
  for (const plan::ComparedRig& row : answer.rows) {
    for (std::size_t i = 0; i < row.counts_m.size(); ++i) {
      std::vector<std::string> cells{row.name, Number(row.counts_m[i], Shown::kDepth, units)};
      if (row.solved[i]) {
        AddBand(row.depth_m[i], Shown::kDepth, units, cells);
        AddBand(row.tension_boom_N[i], Shown::kForce, units, cells);
      } else {
        cells.insert(cells.end(), 6, "");
      }
      text += Row(cells);
    }
  }
  return text;
}

std::string Csv(const answers::TwoWayAnswer& answer) {
  const DisplayUnits units = answer.request.wanted.units;
  const plan::TwoWay& found = answer.found;
  std::string text = Row({"quantity", "unit", "median", "low", "high"});
  const auto add = [&](const std::string& quantity, const plan::Band& band, Shown shown) {
    std::vector<std::string> cells{quantity, Unit(shown, units)};
    AddBand(band, shown, units, cells);
    text += Row(cells);
  };
  add("current", found.speed_mps, Shown::kSpeed);
  add("current toward", found.toward_rad, Shown::kAngle);
  add("current along first heading", found.along_mps, Shown::kSpeed);
  add("current to starboard of it", found.across_mps, Shown::kSpeed);
  add("through the water", found.water_speed_mps, Shown::kSpeed);
  add("first heading", found.first_heading_rad, Shown::kAngle);
  if (found.log) {
    add("log error", found.log->error_mps, Shown::kSpeed);
    const plan::Band& factor = found.log->factor;
    text += Row({"log factor", "", fmt::format("{:.4f}", factor.median),
                 fmt::format("{:.4f}", factor.low), fmt::format("{:.4f}", factor.high)});
  }
  if (found.compass_error_rad) add("compass error", *found.compass_error_rad, Shown::kAngle);
  return text;
}

}  // namespace offplumb::cli
