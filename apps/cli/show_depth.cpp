#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "answers/questions/notes.h"
#include "apps/cli/phrases.h"
#include "apps/cli/show.h"
#include "apps/cli/table.h"
#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

using Figures = plan::RiggerFigures<plan::Band>;

/// Sides are told to port where everything lies there.
struct Side {
  bool port = false;
  [[nodiscard]] const char* head() const { return port ? "to port" : "to starboard"; }
  [[nodiscard]] plan::Band Of(const plan::Band& starboard) const {
    if (!port) return starboard;
    return {-starboard.median, -starboard.high, -starboard.low};
  }
};

Side SideOf(const Figures& figures) {
  const bool lures = std::all_of(figures.clips.begin(), figures.clips.end(),
                                 [](const auto& clip) { return clip.lure_side_m.median <= 0; });
  return {lures && figures.ball_side_m.median < 0};
}

/// \return whether anything may lie so far aside that it is worth a column.
bool LiesAside(const Figures& figures) {
  constexpr double kWorthTelling_m = 0.6096;  // 2 ft. Judgement.
  const auto aside = [](const plan::Band& side) {
    return std::max(std::abs(side.low), std::abs(side.high)) >= kWorthTelling_m;
  };
  return aside(figures.ball_side_m) ||
         std::any_of(figures.clips.begin(), figures.clips.end(),
                     [&](const auto& clip) { return aside(clip.lure_side_m); });
}

std::string Headline(const tackle::Rigger& rigger, const Figures& figures, DisplayUnits units) {
  std::string text = fmt::format("{}: the ball at {}", rigger.name,
                                 ShortWords(figures.ball_depth_m, Shown::kDepth, units));
  for (std::size_t i = 0; i < figures.clips.size(); ++i) {
    text += fmt::format("; {} at {}", answers::TheLure(rigger, i),
                        ShortWords(figures.clips[i].lure_depth_m, Shown::kDepth, units));
  }
  return Strong(text);
}

std::string Places(const tackle::Rigger& rigger, const Figures& figures, DisplayUnits units,
                   std::size_t width) {
  const Side side = SideOf(figures);
  const bool aside = LiesAside(figures);
  std::vector<std::string> heads{"", "depth", "behind the boom", "water past it"};
  if (aside) heads.emplace_back(side.head());
  Table table(std::move(heads));
  const auto add = [&](const std::string& name, const plan::Band& depth, const plan::Band& trail,
                       const plan::Band& starboard, const plan::Band& speed) {
    std::vector<std::string> cells{name, Words(depth, Shown::kDepth, units),
                                   Words(trail, Shown::kDepth, units),
                                   Words(speed, Shown::kSpeed, units)};
    if (aside) cells.push_back(Words(side.Of(starboard), Shown::kDepth, units));
    table.Add(std::move(cells));
  };
  add("ball", figures.ball_depth_m, figures.ball_trail_m, figures.ball_side_m,
      figures.ball_water_speed_mps);
  for (std::size_t i = 0; i < figures.clips.size(); ++i) {
    const auto& clip = figures.clips[i];
    table.Add({answers::ClipName(rigger, i), Words(clip.clip_depth_m, Shown::kDepth, units)});
    add(answers::LureName(rigger, i), clip.lure_depth_m, clip.lure_trail_m, clip.lure_side_m,
        clip.lure_water_speed_mps);
  }
  return table.Text(width);
}

std::string Pulls(const tackle::Rigger& rigger, const Figures& figures, DisplayUnits units,
                  std::size_t width) {
  std::string text;
  if (!figures.clips.empty()) {
    Table table({"", "leader pull", "line pull", "both together", "fishing line"});
    for (std::size_t i = 0; i < figures.clips.size(); ++i) {
      const auto& clip = figures.clips[i];
      table.Add({"at the " + answers::ClipName(rigger, i),
                 Words(clip.leader_pull_N, Shown::kForce, units),
                 Words(clip.line_pull_N, Shown::kForce, units),
                 Words(clip.clip_net_N, Shown::kForce, units),
                 Words(clip.fishing_line_m, Shown::kDepth, units)});
    }
    text += "\n" + table.Text(width);
  }
  Table table({"", "pull of the line", "its lean", "line, tip to ball"});
  table.Add({"at the boom", Words(figures.tension_boom_N, Shown::kForce, units),
             Words(figures.angle_boom_rad, Shown::kAngle, units),
             Words(figures.length_m, Shown::kDepth, units)});
  table.Add({"at the ball", Words(figures.tension_ball_N, Shown::kForce, units)});
  return text + "\n" + table.Text(width);
}

std::string Dominant(const plan::RiggerDepth& depth) {
  if (!depth.dominant) return {};
  return fmt::format("\nWhat the ball's depth hangs on most: {}.\n",
                     learn::Prior()[static_cast<std::size_t>(*depth.dominant)].words);
}

}  // namespace

std::string Show(const answers::DepthAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  const std::string asked =
      fmt::format("{} on the counter, {}", Echo(answer.request.count_m, Shown::kDepth, units),
                  WayAndCurrent(answer.conditions, true, units));
  std::string text = answer.request.rig.rig.name + "\n" + Wrap(asked, width, 2) + "\n";
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    const tackle::Rigger& rigger = answer.rigged[i];
    const Figures& figures = answer.riggers[i].figures;
    text += "\n" + Headline(rigger, figures, units) + "\n";
    text += Places(rigger, figures, units, width);
    text += Pulls(rigger, figures, units, width);
    text += Dominant(answer.riggers[i]);
  }
  return text + Foot(answer.remarks, width);
}

}  // namespace offplumb::cli
