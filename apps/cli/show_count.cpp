#include <fmt/format.h>

#include "answers/questions/notes.h"
#include "apps/cli/phrases.h"
#include "apps/cli/show.h"
#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

std::string What(const tackle::Rigger& rigger, const plan::RiggerCount& count) {
  if (count.wish.of == plan::DepthOf::kBall) return "ball";
  return answers::LureName(rigger, count.wish.clip);
}

std::string Reached(const tackle::Rigger& rigger, const plan::RiggerCount& count,
                    DisplayUnits units) {
  return Strong(fmt::format("{}: the counter must read {}", rigger.name,
                            ShortWords(count.count_m, Shown::kDepth, units))) +
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
  return Strong(fmt::format("{}: no count puts the {} at {}", rigger.name, What(rigger, count),
                            Echo(count.wish.depth_m, Shown::kDepth, units))) +
         Remedies(count, units, width);
}

std::string Reach(const tackle::Rigger& rigger, const plan::RiggerCount& count, DisplayUnits units,
                  std::size_t width) {
  return Wrap(fmt::format("The deepest the {} goes: {}, at a count of {}, {}.", What(rigger, count),
                          Words(count.reach_depth_m, Shown::kDepth, units),
                          answers::FormatQuantity(count.reach_count_m, Shown::kDepth, units),
                          ReachEnd(count.line_limits, rigger.largest_boom_angle_rad, units)),
              width, 0) +
         "\n";
}

}  // namespace

std::string Show(const answers::CountAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  const bool lure = answer.request.of == plan::DepthOf::kLure;
  std::string text = fmt::format(
      "{}\nThe {} at {}, {}\n", answer.request.rig.rig.name, lure ? "lure" : "ball",
      Echo(answer.request.depth_m, Shown::kDepth, units), Way(answer.conditions, true, units));
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    const plan::RiggerCount& count = answer.riggers[i];
    const tackle::Rigger& rigger = answer.rigged[i];
    text += "\n" + (count.reachable ? Reached(rigger, count, units)
                                    : OutOfReach(rigger, count, units, width));
    text += Reach(rigger, count, units, width);
  }
  return text + Foot(answer.remarks, width);
}

}  // namespace offplumb::cli
