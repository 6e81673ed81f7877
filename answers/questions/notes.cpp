#include "answers/questions/notes.h"

#include <algorithm>

#include <fmt/format.h>

namespace offplumb::answers {
namespace {

// Limits of the notes. Judgement, but for the Reynolds number: the sphere law was fitted up to it
// (engine/tackle/drag_law.h).
constexpr double kSphereLawReynolds = 2e5;
constexpr double kBellyingLine = 1.10;  // Fishing line's path over the straight way.
constexpr double kNearSurface_m = 1.0;
constexpr double kWellBelow_m = 0.3048;

bool MayStrum(const tackle::Rigger& rigger) {
  return !rigger.line.constant_drag && !rigger.line.strumming;
}

bool CurrentHasNoSay(const Sea& sea) {
  if (sea.speed_kind == plan::SpeedKind::kOverGround) return false;
  return !sea.current.points.empty() && !VariesWithDepth(sea.current);
}

std::string UnknownCurrent(const Wanted& wanted) {
  const auto& prior = learn::Prior()[static_cast<std::size_t>(learn::Input::kGroundSpeed)];
  const std::string allowed =
      wanted.bands
          ? fmt::format(", and the bands allow for {} of it with or against the boat",
                        FormatQuantity(prior.high, Shown::kSpeed, DisplayUnits::kFeetKnots))
          : std::string();
  return fmt::format(
      "Only the speed over ground is known. The current is taken as none{}. Give the "
      "current too, or the speed through the water.",
      allowed);
}

void NoteStrumming(const std::vector<tackle::Rigger>& riggers, const Wanted& wanted,
                   std::vector<std::string>& notes) {
  if (!std::any_of(riggers.begin(), riggers.end(), MayStrum)) return;
  notes.emplace_back(wanted.bands
                         ? "A line that hums has more drag and rides shallower. That is inside the "
                           "bands, not in the middle figures."
                         : "The line is taken not to hum; one that does has more drag and rides "
                           "shallower.");
}

/// The water's velocity at a depth, x ahead: normally below zero.
bool RunsAft(const plan::Conditions& conditions, double depth_m) {
  return plan::FlowOf(conditions, learn::MedianDraw()).At(depth_m).x() < 0;
}

void NoteBall(const tackle::Rigger& rigger, const plan::Conditions& conditions,
              const plan::RiggerDepth& depth, DisplayUnits units, std::vector<std::string>& notes) {
  const double reynolds = depth.figures.ball_water_speed_mps.median *
                          rigger.ball.sphere_diameter_m /
                          conditions.water.kinematic_viscosity_m2_per_s;
  if (reynolds > kSphereLawReynolds) {
    notes.emplace_back(
        "The ball goes faster than its drag law was measured for; its drag may be less than taken "
        "here, and the ball deeper.");
  }
  if (depth.figures.ball_depth_m.low < kNearSurface_m) {
    notes.push_back(
        fmt::format("The ball rides within {} of the surface, where waves and the wake move it.",
                    FormatQuantity(kNearSurface_m, Shown::kLength, units)));
  }
}

void NoteBoom(const tackle::Rigger& rigger, const plan::RiggerDepth& depth, DisplayUnits units,
              std::vector<std::string>& notes) {
  if (depth.figures.angle_boom_rad.median <= rigger.largest_boom_angle_rad) return;
  notes.push_back(
      fmt::format("The line leans {} at the boom, more than the {} the rig allows.",
                  FormatQuantity(depth.figures.angle_boom_rad.median, Shown::kAngle, units),
                  FormatQuantity(rigger.largest_boom_angle_rad, Shown::kAngle, units)));
}

void NoteClip(const tackle::Rigger& rigger, std::size_t clip, const plan::Conditions& conditions,
              const plan::RiggerDepth& depth, std::vector<std::string>& notes) {
  const tow::ClipState& state = depth.median.clips[clip];
  const double straight_m = (state.clip_m - rigger.clips[clip].rod_tip_m).norm();
  if (state.fishing_line_m > kBellyingLine * straight_m) {
    notes.push_back(fmt::format(
        "The fishing line to the {} bellies: it runs {:.0f} % longer than straight. A rod loaded "
        "harder takes slack out of the strike.",
        ClipName(rigger, clip), 100 * (state.fishing_line_m / straight_m - 1)));
  }
  if (!RunsAft(conditions, state.lure_m.z())) {
    notes.push_back(fmt::format(
        "At {} the water stands still or comes from astern: it does not swim as it should.",
        TheLure(rigger, clip)));
  }
}

void NoteDraws(const plan::RiggerDepth& depth, std::vector<std::string>& notes) {
  if (depth.unusable == 0) return;
  notes.push_back(
      fmt::format("In {} of {} trials of what is not known about the rig the gear did not settle; "
                  "the bands leave them out.",
                  depth.unusable, depth.members));
}

std::string Capital(std::string text) {
  if (text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

/// "clip 1 (lowest)" where several have no names.
std::string Numbered(const char* what, std::size_t clip) {
  return fmt::format("{} {}{}", what, clip + 1, clip == 0 ? " (lowest)" : "");
}

}  // namespace

std::vector<std::string> NotesOnSetting(const RigChoice& rig, const Sea& sea, const Wanted& wanted,
                                        const std::vector<tackle::Rigger>& riggers,
                                        const plan::Conditions& conditions) {
  std::vector<std::string> notes;
  if (rig.invented) notes.emplace_back("This rig is an invented example.");
  if (sea.water && rig.rig.water && !SameWater(*sea.water, *rig.rig.water)) {
    notes.emplace_back("The water is the one asked for, not the one in the rig file.");
  }
  if (plan::SpeedInput(conditions) == learn::Input::kGroundSpeed) {
    notes.push_back(UnknownCurrent(wanted));
  }
  if (CurrentHasNoSay(sea)) {
    notes.emplace_back(
        "A current that is the same at all depths carries boat and gear alike: with the speed "
        "through the water it changes nothing.");
  }
  NoteStrumming(riggers, wanted, notes);
  return notes;
}

std::vector<std::string> NotesOnShape(const tackle::Rigger& rigger,
                                      const plan::Conditions& conditions,
                                      const plan::RiggerDepth& depth, DisplayUnits units) {
  std::vector<std::string> notes;
  NoteBall(rigger, conditions, depth, units, notes);
  NoteBoom(rigger, depth, units, notes);
  for (std::size_t clip = 0; clip < rigger.clips.size(); ++clip) {
    NoteClip(rigger, clip, conditions, depth, notes);
  }
  NoteDraws(depth, notes);
  for (std::string& note : notes) note = fmt::format("{}: {}", rigger.name, note);
  AddNew(notes, NotesOnLowLures(rigger, depth, units));
  return notes;
}

std::vector<std::string> NotesOnLowLures(const tackle::Rigger& rigger,
                                         const plan::RiggerDepth& depth, DisplayUnits units) {
  std::vector<std::string> notes;
  for (std::size_t clip = 0; clip < rigger.clips.size(); ++clip) {
    const double below_m =
        depth.figures.clips[clip].lure_depth_m.median - depth.figures.ball_depth_m.median;
    if (below_m <= kWellBelow_m) continue;
    notes.push_back(fmt::format(
        "{}: {} hangs {} below the ball. How far hangs on its weight, which is not in the band: "
        "weigh yours and write weight = ... in the rig file.",
        rigger.name, Capital(TheLure(rigger, clip)),
        FormatQuantity(below_m, Shown::kDepth, units)));
  }
  return notes;
}

void AddNew(std::vector<std::string>& notes, const std::vector<std::string>& added) {
  for (const std::string& note : added) {
    if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
  }
}

std::string ClipName(const tackle::Rigger& rigger, std::size_t clip) {
  const std::string& name = rigger.clips[clip].name;
  if (!name.empty()) return name + " clip";
  return rigger.clips.size() == 1 ? "clip" : Numbered("clip", clip);
}

std::string LureName(const tackle::Rigger& rigger, std::size_t clip) {
  if (rigger.clips.size() == 1) return "lure";
  const std::string& name = rigger.clips[clip].name;
  return name.empty() ? Numbered("lure", clip) : name + " lure";
}

std::string TheLure(const tackle::Rigger& rigger, std::size_t clip) {
  const bool numbered = rigger.clips.size() > 1 && rigger.clips[clip].name.empty();
  return (numbered ? "" : "the ") + LureName(rigger, clip);
}

}  // namespace offplumb::answers
