#include "answers/questions/count.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "answers/questions/cautions.h"
#include "answers/questions/notes.h"
#include "answers/questions/sound.h"
#include "answers/units/words.h"

namespace offplumb::answers {
namespace {

using plan::RemedyKind;

Problem NoSuchClip(const tackle::Rigger& rigger, const std::string& name) {
  std::vector<std::string_view> names;
  for (const tackle::Clip& clip : rigger.clips) {
    if (!clip.name.empty()) names.push_back(clip.name);
  }
  std::string remedy = fmt::format("Its clips: {}.", JoinWords(names, "and"));
  if (names.empty()) {
    remedy = fmt::format("Its clips have no names: give a number, 1 (the lowest) to {}.",
                         rigger.clips.size());
  }
  if (rigger.clips.size() == 1) remedy = "It has one: leave the clip out.";
  if (rigger.clips.empty()) remedy = "It has none: ask for the ball.";
  return {ProblemKind::kBadInput,
          "clip",
          fmt::format("Rigger {} has no clip {}.", Quoted(rigger.name), Quoted(name)),
          remedy,
          {},
          0};
}

/// The clip whose lure is meant, counted from the lowest.
Expected<std::size_t> ChooseClip(const tackle::Rigger& rigger, const CountRequest& request) {
  if (request.of == plan::DepthOf::kBall || request.clip.empty()) return std::size_t{0};
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    if (SameWord(rigger.clips[i].name, request.clip)) return i;
  }
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    if (request.clip == std::to_string(i + 1)) return i;
  }
  return tl::unexpected<Problem>(NoSuchClip(rigger, request.clip));
}

Expected<plan::RiggerCount> FindOne(const tackle::Rigger& rigger, const CountAnswer& answer,
                                    const learn::Ensemble* ensemble) {
  const auto checked = plan::CheckRigger(rigger);
  if (!checked) return tl::unexpected<Problem>(checked.error());
  const auto clip = ChooseClip(rigger, answer.request);
  if (!clip) return tl::unexpected<Problem>(clip.error());
  const plan::DepthWish wish{answer.request.depth_m, answer.request.of, *clip};
  auto count = plan::FindCount(rigger, answer.conditions, wish, ensemble);
  if (!count) return count;
  const bool sound = Sound(count->count_m) && Sound(count->reach_depth_m) &&
                     std::isfinite(count->reach_count_m) && std::isfinite(count->angle_boom_rad);
  if (!sound) return UnsoundFigure(rigger.name);
  return count;
}

/// Where everything is at the count found; nothing where none was.
Expected<std::optional<plan::RiggerDepth>> FindThere(const tackle::Rigger& rigger,
                                                     const CountAnswer& answer,
                                                     const plan::RiggerCount& count,
                                                     const learn::Ensemble* ensemble) {
  if (!count.reachable) return std::optional<plan::RiggerDepth>{};
  auto depth = plan::FindDepths(rigger, answer.conditions, count.count_m.median, ensemble);
  if (!depth) return tl::unexpected<Problem>(depth.error());
  const auto fields = plan::Fields(depth->figures);
  const bool sound = std::all_of(fields.begin(), fields.end(),
                                 [](const plan::Band* field) { return Sound(*field); });
  if (!sound) return UnsoundFigure(rigger.name);
  return std::optional<plan::RiggerDepth>{std::move(*depth)};
}

Expected<void> FindAll(CountAnswer& answer, const Progress& progress) {
  const auto ensemble = MakeEnsemble(answer.request.wanted);
  for (const tackle::Rigger& rigger : answer.rigged) {
    auto count = FindOne(rigger, answer, Pointer(ensemble));
    if (!count) return tl::unexpected<Problem>(count.error());
    auto there = FindThere(rigger, answer, *count, Pointer(ensemble));
    if (!there) return tl::unexpected<Problem>(there.error());
    answer.riggers.push_back(std::move(*count));
    answer.at_count.push_back(std::move(*there));
    if (progress) {
      progress(static_cast<double>(answer.riggers.size()) /
               static_cast<double>(answer.rigged.size()));
    }
  }
  return {};
}

void NoteRigger(const CountAnswer& answer, std::size_t i, std::vector<std::string>& notes) {
  const plan::RiggerCount& found = answer.riggers[i];
  const tackle::Rigger& rigger = answer.rigged[i];
  if (found.wish.of == plan::DepthOf::kLure && answer.request.clip.empty() &&
      rigger.clips.size() > 1) {
    notes.push_back(fmt::format("{}: The lure is that of the lowest clip; name a clip for another.",
                                rigger.name));
  }
  if (found.reachable && found.unreached > 0) {
    notes.push_back(fmt::format(
        "{}: In {} of {} trials of what is not known about the rig the depth is out of reach{}.",
        rigger.name, found.unreached, found.members,
        found.high_open ? "; the band has no upper end" : ""));
  }
  if (!found.reachable && found.members > found.unreached) {
    notes.push_back(fmt::format(
        "{}: In {} of {} trials of what is not known about the rig the depth is within reach after "
        "all.",
        rigger.name, found.members - found.unreached, found.members));
  }
}

Remarks Remark(const CountAnswer& answer) {
  const CountRequest& request = answer.request;
  Remarks remarks;
  remarks.cautions = CautionsFor(Question::kCount);
  remarks.notes =
      NotesOnSetting(request.rig, request.sea, request.wanted, answer.rigged, answer.conditions);
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    NoteRigger(answer, i, remarks.notes);
    if (!answer.at_count[i]) continue;
    AddNew(remarks.notes,
           NotesOnLowLures(answer.rigged[i], *answer.at_count[i], request.wanted.units));
  }
  return remarks;
}

/// A value rounded in a shown unit to the side that still gets there.
std::string Rounded(double si, Shown shown, DisplayUnits units, double step, bool up) {
  const double value = InShownUnit(si, shown, units) / step;
  // A hair of slack, so that 15.0000001 lb does not become 15.5.
  const double whole = up ? std::ceil(value - 1e-6) : std::floor(value + 1e-6);
  return fmt::format("{:.10g} {}", whole * step, ShownUnit(shown, units));
}

Expected<void> CheckClip(const CountRequest& request) {
  if (request.of == plan::DepthOf::kLure || request.clip.empty()) return {};
  return BadInput("clip", "A clip says which lure is meant, but the ball's depth is asked for.",
                  "Write --of lure, or leave --clip out.");
}

bool Metric(DisplayUnits units) { return units == DisplayUnits::kMetric; }

}  // namespace

bool CountAnswer::reachable() const {
  return std::all_of(riggers.begin(), riggers.end(),
                     [](const plan::RiggerCount& rigger) { return rigger.reachable; });
}

Expected<CountAnswer> Answer(const CountRequest& request, const Progress& progress) {
  const auto checked = CheckClip(request);
  if (!checked) return tl::unexpected<Problem>(checked.error());
  CountAnswer answer;
  answer.request = request;
  auto setting = MakeSetting(request.rig, request.sea);
  if (!setting) return tl::unexpected<Problem>(setting.error());
  answer.rigged = std::move(setting->riggers);
  answer.conditions = std::move(setting->conditions);
  const auto done = FindAll(answer, progress);
  if (!done) return tl::unexpected<Problem>(done.error());
  answer.remarks = Remark(answer);
  return answer;
}

std::string RemedyId(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::kHeavierBall:
      return "heavier_ball";
    case RemedyKind::kSlower:
      return "slower";
    case RemedyKind::kThinnerLine:
      return "thinner_line";
    case RemedyKind::kNoFlasher:
      return "no_flasher";
    case RemedyKind::kMoreLine:
      return "more_line";
  }
  return {};
}

std::string RemedyUnit(RemedyKind kind) {
  switch (kind) {
    case RemedyKind::kHeavierBall:
      return "kg";
    case RemedyKind::kSlower:
      return "m/s";
    case RemedyKind::kThinnerLine:
    case RemedyKind::kMoreLine:
      return "m";
    case RemedyKind::kNoFlasher:
      return {};
  }
  return {};
}

std::string RemedyText(const plan::Remedy& remedy, DisplayUnits units) {
  switch (remedy.kind) {
    case RemedyKind::kHeavierBall:
      return "a ball of " +
             Rounded(remedy.value, Shown::kMass, units, Metric(units) ? 0.25 : 0.5, true);
    case RemedyKind::kSlower:
      return "a speed of " +
             Rounded(remedy.value, Shown::kSpeed, units, Metric(units) ? 0.05 : 0.1, false);
    case RemedyKind::kThinnerLine:
      return "a line of " + Rounded(remedy.value, Shown::kDiameter, units, 0.01, false);
    case RemedyKind::kNoFlasher:
      return "no flasher";
    case RemedyKind::kMoreLine:
      return fmt::format("fill the reel to {} of line",
                         Rounded(remedy.value, Shown::kDepth, units, 1, true));
  }
  return {};
}

}  // namespace offplumb::answers
