#include <vector>

#include <fmt/format.h>

#include "answers/questions/notes.h"
#include "apps/cli/phrases.h"
#include "apps/cli/show.h"
#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

/// Whose depth is wanted: "the ball", "the low lure".
std::string What(const tackle::Rigger& rigger, const plan::RiggerCount& count) {
  if (count.wish.of == plan::DepthOf::kBall) return "the ball";
  return answers::TheLure(rigger, count.wish.clip);
}

/// The same for all riggers; "the lure" where it is called otherwise on each.
std::string WhatOfAll(const answers::CountAnswer& answer) {
  const std::string first = What(answer.rigged[0], answer.riggers[0]);
  for (std::size_t i = 1; i < answer.riggers.size(); ++i) {
    if (What(answer.rigged[i], answer.riggers[i]) != first) return "the lure";
  }
  return first;
}

/// Where the rest hangs at the count found, since it may be deeper than what was asked for.
std::string There(const tackle::Rigger& rigger, const plan::RiggerCount& count,
                  const plan::RiggerDepth& depth, DisplayUnits units, std::size_t width) {
  std::vector<std::string> parts;
  bool deeper = false;
  const auto add = [&](const std::string& what, const plan::Band& band) {
    parts.push_back(fmt::format("{}{} at {}", what, parts.empty() ? " is" : "",
                                Words(band, Shown::kDepth, units)));
    deeper = deeper || band.high > count.wish.depth_m;
  };
  const bool ball = count.wish.of == plan::DepthOf::kBall;
  if (!ball) add("the ball", depth.figures.ball_depth_m);
  for (std::size_t i = 0; i < depth.figures.clips.size(); ++i) {
    if (!ball && i == count.wish.clip) continue;
    add(answers::TheLure(rigger, i), depth.figures.clips[i].lure_depth_m);
  }
  if (parts.empty()) return {};
  std::string text = "There " + parts[0];
  for (std::size_t i = 1; i < parts.size(); ++i) {
    text += (i + 1 == parts.size() ? ", and " : ", ") + parts[i];
  }
  return Wrap(text + (deeper ? ": mind the bottom." : "."), width, 0) + "\n";
}

std::string Reached(const tackle::Rigger& rigger, const plan::RiggerCount& count,
                    DisplayUnits units) {
  return Strong(fmt::format("{}: the counter must read {}", rigger.name,
                            count.high_open
                                ? Words(count.count_m, Shown::kDepth, units) + " or more"
                                : ShortWords(count.count_m, Shown::kDepth, units))) +
         fmt::format("The line then leans {} at the boom.\n",
                     answers::FormatQuantity(count.angle_boom_rad, Shown::kAngle, units));
}

std::string Remedies(const plan::RiggerCount& count, DisplayUnits units, std::size_t width) {
  if (count.remedies.empty()) {
    return "Nothing usual gets it there: no slower speed, heavier ball or thinner line alone.\n";
  }
  std::string text = "What would get there, everything else left as it is:\n";
  for (const plan::Remedy& remedy : count.remedies) {
    text += Wrap("- " + answers::RemedyText(remedy, units), width, 2) + "\n";
  }
  return text;
}

std::string OutOfReach(const tackle::Rigger& rigger, const plan::RiggerCount& count,
                       DisplayUnits units, std::size_t width) {
  return Strong(fmt::format("{}: no count puts {} at {}", rigger.name, What(rigger, count),
                            Echo(count.wish.depth_m, Shown::kDepth, units))) +
         Remedies(count, units, width);
}

std::string Reach(const tackle::Rigger& rigger, const plan::RiggerCount& count, DisplayUnits units,
                  std::size_t width) {
  return Wrap(fmt::format("The deepest {} goes: {}, at a count of {}, {}.", What(rigger, count),
                          Words(count.reach_depth_m, Shown::kDepth, units),
                          answers::FormatQuantity(count.reach_count_m, Shown::kDepth, units),
                          ReachEnd(count.line_limits, rigger.largest_boom_angle_rad, units)),
              width, 0) +
         "\n";
}

}  // namespace

std::string Show(const answers::CountAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  std::string asked = fmt::format("{} at {}, {}", WhatOfAll(answer),
                                  Echo(answer.request.depth_m, Shown::kDepth, units),
                                  WayAndCurrent(answer.conditions, true, units));
  asked[0] = asked[0] == 't' ? 'T' : 'L';  // "the ball", "lure 1".
  std::string text = answer.request.rig.rig.name + "\n" + Wrap(asked, width, 2) + "\n";
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    const plan::RiggerCount& count = answer.riggers[i];
    const tackle::Rigger& rigger = answer.rigged[i];
    text += "\n" + (count.reachable ? Reached(rigger, count, units)
                                    : OutOfReach(rigger, count, units, width));
    if (answer.at_count[i]) text += There(rigger, count, *answer.at_count[i], units, width);
    text += Reach(rigger, count, units, width);
  }
  return text + Foot(answer.remarks, width);
}

}  // namespace offplumb::cli
