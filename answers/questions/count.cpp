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
  return {ProblemKind::kBadInput,
          "clip",
          fmt::format("Rigger {} has no clip {}.", Quoted(rigger.name), Quoted(name)),
          names.empty() ? "Its clips have no names: leave --clip out for the lowest."
                        : fmt::format("Its clips: {}.", JoinWords(names, "and")),
          {},
          0};
}

/// The clip whose lure is meant, counted from the lowest.
Expected<std::size_t> ChooseClip(const tackle::Rigger& rigger, const CountRequest& request) {
  if (request.of == plan::DepthOf::kBall || request.clip.empty()) return std::size_t{0};
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    if (SameWord(rigger.clips[i].name, request.clip)) return i;
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

Expected<void> FindAll(CountAnswer& answer, const Progress& progress) {
  const auto ensemble = MakeEnsemble(answer.request.wanted);
  for (const tackle::Rigger& rigger : answer.rigged) {
    auto count = FindOne(rigger, answer, Pointer(ensemble));
    if (!count) return tl::unexpected<Problem>(count.error());
    answer.riggers.push_back(std::move(*count));
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
    notes.push_back(
        fmt::format("{}: The lure is that of the lowest clip; --clip names another.", rigger.name));
  }
  if (found.reachable && found.unreached > 0) {
    notes.push_back(fmt::format(
        "{}: In {} of the {} draws behind the band the depth is out of reach; the band is that of "
        "the rest.",
        rigger.name, found.unreached, found.members));
  }
  if (!found.reachable && found.members > found.unreached) {
    notes.push_back(fmt::format(
        "{}: In {} of the {} draws behind the bands the depth is within reach after all.",
        rigger.name, found.members - found.unreached, found.members));
  }
}

Remarks Remark(const CountAnswer& answer) {
  const CountRequest& request = answer.request;
  Remarks remarks;
  remarks.cautions = CautionsFor(Question::kCount);
  remarks.notes =
      NotesOnSetting(request.rig, request.sea, request.wanted, answer.rigged, answer.conditions);
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) NoteRigger(answer, i, remarks.notes);
  return remarks;
}

/// A value rounded in a shown unit to the side that still gets there.
std::string Rounded(double si, Shown shown, DisplayUnits units, double step, bool up) {
  const double value = InShownUnit(si, shown, units) / step;
  // A hair of slack, so that 15.0000001 lb does not become 15.5.
  const double whole = up ? std::ceil(value - 1e-6) : std::floor(value + 1e-6);
  return fmt::format("{:.10g} {}", whole * step, ShownUnit(shown, units));
}

bool Metric(DisplayUnits units) { return units == DisplayUnits::kMetric; }

}  // namespace

bool CountAnswer::reachable() const {
  return std::all_of(riggers.begin(), riggers.end(),
                     [](const plan::RiggerCount& rigger) { return rigger.reachable; });
}

Expected<CountAnswer> Answer(const CountRequest& request, const Progress& progress) {
  CountAnswer answer;
  answer.request = request;
  auto riggers = ChooseRiggers(request.rig);
  if (!riggers) return tl::unexpected<Problem>(riggers.error());
  answer.rigged = std::move(*riggers);
  auto conditions = MakeConditions(request.sea, request.rig.rig);
  if (!conditions) return tl::unexpected<Problem>(conditions.error());
  answer.conditions = std::move(*conditions);
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
      return Rounded(remedy.value, Shown::kDepth, units, 1, true) + " of line on the reel";
  }
  return {};
}

}  // namespace offplumb::answers
