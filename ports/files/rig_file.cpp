#include "ports/files/rig_file.h"

#include <cstddef>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "ports/files/fields.h"
#include "ports/files/rig_parts.h"
#include "ports/files/rig_rules.h"
#include "ports/files/text_file.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {
namespace {

using tackle::Clip;
using tackle::CounterMark;
using tackle::LineKind;
using tackle::Rigger;
using tackle::Vector3d;

constexpr std::string_view kLineExample = "line = { from = \"wire-1x7-0.8mm\" }";
constexpr std::string_view kPlaceExample =
    "{ aft = \"2 ft\", port = \"4 ft\", up = \"3 ft\" }, from the middle of the stern at the "
    "waterline";

/// A part that must be there; nothing, with its problem noted, if it is not.
std::optional<Fields> RequiredPart(const Fields& fields, std::string_view key, Keys keys,
                                   std::string_view example) {
  if (!fields.Has(key)) fields.FailMissing(key, example);
  return fields.Part(key, keys);
}

tackle::Line RequiredLine(const Fields& fields, std::string_view key, LineKind usual,
                          std::string_view example) {
  const auto part = RequiredPart(fields, key, rig_rules::kLineKeys, example);
  return part ? ReadLine(*part, usual) : tackle::Line{};
}

/// A point on the boat. \param least_m how far above the water it must be.
Vector3d RequiredPlace(const Fields& fields, std::string_view key, std::string_view what,
                       double least_m) {
  const auto part =
      RequiredPart(fields, key, rig_rules::kPlaceKeys, fmt::format("{} = {}.", key, kPlaceExample));
  if (!part) return Vector3d::Zero();
  const Vector3d place = ReadPlace(*part);
  const auto height = answers::CheckRange(-place.z(), {least_m, rig_rules::kUp.range.high},
                                          part->Written("up"), rig_rules::kUp.dimension, "up");
  if (!height) {
    part->Fail("up",
               fmt::format("The {} must be above the water: {}", what, height.error().message),
               "Measure its height from the waterline; \"up\" is positive above it.");
  }
  return place;
}

// Clips.

void ReadFlasherAndLeader(const Fields& fields, double water_density, tackle::Trail& trail) {
  const auto flasher = fields.Part("flasher", rig_rules::kPieceKeys);
  if (!flasher) {
    for (const std::string_view key : {"leader", "leader_line"}) {
      if (!fields.Has(key) || fields.Has("flasher")) continue;
      fields.Fail(key, "A leader runs from flasher to lure; this clip has no flasher.",
                  "Without a flasher the setback runs to the lure: write its length there.");
    }
    return;
  }
  trail.flasher = ReadFlasher(*flasher, trail.lure, water_density);
  trail.leader_m = fields.Required("leader", rig_rules::kLeader, "leader = \"42 in\"");
  trail.leader_line = RequiredLine(fields, "leader_line", LineKind::kNylon,
                                   "leader_line = { from = \"nylon-0.7mm\" }");
}

tackle::Trail ReadTrail(const Fields& fields, const tackle::Line& fishing_line,
                        double water_density) {
  tackle::Trail trail;
  trail.setback_m = fields.Required("setback", rig_rules::kSetback, "setback = \"20 ft\"");
  const auto setback_line = fields.Part("setback_line", rig_rules::kLineKeys);
  trail.setback_line = setback_line ? ReadLine(*setback_line, LineKind::kNylon) : fishing_line;
  const auto lure = RequiredPart(fields, "lure", rig_rules::kPieceKeys,
                                 "lure = { from = \"hoochie\" }; nothing at all: \"no-lure\"");
  if (lure) trail.lure = ReadLure(*lure);
  ReadFlasherAndLeader(fields, water_density, trail);
  return trail;
}

Clip ReadClip(const Fields& fields, double water_density) {
  constexpr double kLeastRodTipHeight_m = 0.05;
  Clip clip;
  clip.name = fields.Text("name").value_or("");
  clip.above_ball_m = fields.Required("above_ball", rig_rules::kAboveBall, "above_ball = \"4 ft\"");
  clip.rod_tip_m = RequiredPlace(fields, "rod_tip", "rod tip", kLeastRodTipHeight_m);
  clip.rod_tip_tension_N = fields.Quantity("rod_tip_tension", rig_rules::kRodTipTension)
                               .value_or(tackle::kRodTipTension_N);
  clip.fishing_line = RequiredLine(fields, "fishing_line", LineKind::kNylon,
                                   "fishing_line = { from = \"nylon-0.55mm\" }");
  clip.trail = ReadTrail(fields, clip.fishing_line, water_density);
  return clip;
}

/// \param reel how much line there is, as messages tell it.
void CheckClip(const Fields& fields, const Clip& clip, const Rigger& rigger,
               std::string_view reel) {
  constexpr double kClosest_m = 0.01;
  if (clip.above_ball_m >= rigger.line_on_reel_m) {
    fields.Fail("above_ball",
                fmt::format("The clip is {} above the ball; the reel holds {} of line.",
                            fields.Written("above_ball"), reel),
                "Place it lower, or correct line_on_reel.");
  }
  for (const Clip& other : rigger.clips) {
    if (clip.above_ball_m - other.above_ball_m < kClosest_m) {
      fields.Fail("above_ball",
                  fmt::format("Two clips sit at the same place, {} above the ball.",
                              fields.Written("above_ball")),
                  "Give them heights at least 1 cm apart.");
    }
    if (!clip.name.empty() && answers::SameWord(clip.name, other.name)) {
      fields.Fail("name", fmt::format("Two clips are called {}.", answers::Quoted(clip.name)),
                  "Give each clip its own name.");
    }
  }
}

void ReadClips(const Fields& fields, double water_density, Rigger& rigger) {
  const auto parts = fields.Parts("clips", rig_rules::kClipKeys, "above_ball");
  if (parts.size() > rig_rules::kMostClips) {
    fields.Fail("clips",
                fmt::format("There are {} clips; a rigger may have from 0 to {}.", parts.size(),
                            rig_rules::kMostClips),
                "Leave some out.");
    return;
  }
  constexpr double kFoot_m = 0.3048;
  const std::string reel = fields.Has("line_on_reel")
                               ? fields.Written("line_on_reel")
                               : fmt::format("{:.0f} ft", tackle::kLineOnReel_m / kFoot_m);
  for (const Fields& part : parts) {
    const Clip clip = ReadClip(part, water_density);
    CheckClip(part, clip, rigger, reel);
    rigger.clips.push_back(clip);
  }
}

// Riggers.

/// \param above the mark before this one, if any.
void CheckMark(const Fields& fields, const CounterMark& mark, const Fields* above,
               const CounterMark& last) {
  for (const auto& [key, from, to] : {std::tuple{"reads", last.reads_m, mark.reads_m},
                                      std::tuple{"measured", last.measured_m, mark.measured_m}}) {
    if (to > from || above == nullptr) continue;
    fields.Fail(key,
                fmt::format("Counter marks must increase; {} follows {}.", fields.Written(key),
                            above->Written(key)),
                "Write them from the shortest line out to the longest.");
  }
}

void ReadMarks(const Fields& fields, Rigger& rigger) {
  const Fields* above = nullptr;
  const auto parts = fields.Parts("counter_marks", rig_rules::kMarkKeys);
  for (const Fields& part : parts) {
    const CounterMark mark{part.Required("reads", rig_rules::kMark, "reads = \"50 ft\""),
                           part.Required("measured", rig_rules::kMark, "measured = \"47 ft\"")};
    CheckMark(part, mark, above, rigger.marks.empty() ? CounterMark{} : rigger.marks.back());
    rigger.marks.push_back(mark);
    above = &part;
  }
}

Rigger ReadRigger(const Fields& fields, double water_density) {
  Rigger rigger;
  if (!fields.Has("name")) fields.FailMissing("name", "name = \"port\"");
  rigger.name = std::string(answers::Trim(fields.Text("name").value_or("")));
  rigger.boom_tip_m = RequiredPlace(fields, "boom_tip", "boom tip", 0);
  rigger.line = RequiredLine(fields, "line", LineKind::kWire, kLineExample);
  rigger.line_on_reel_m =
      fields.Quantity("line_on_reel", rig_rules::kLineOnReel).value_or(tackle::kLineOnReel_m);
  rigger.largest_boom_angle_rad = fields.Quantity("largest_angle", rig_rules::kLargestAngle)
                                      .value_or(tackle::kLargestBoomAngle_rad);
  const auto ball =
      RequiredPart(fields, "ball", rig_rules::kBallKeys, "ball = { from = \"ball-sphere-12lb\" }");
  if (ball) rigger.ball = ReadBall(*ball);
  ReadMarks(fields, rigger);
  ReadClips(fields, water_density, rigger);
  return rigger;
}

void CheckName(const Fields& fields, const Rigger& rigger, const tackle::Rig& rig) {
  for (const Rigger& other : rig.riggers) {
    if (!answers::SameWord(rigger.name, other.name)) continue;
    fields.Fail("name", fmt::format("Two riggers are called {}.", answers::Quoted(rigger.name)),
                "Give each rigger its own name.");
  }
}

void ReadRiggers(const Fields& fields, double water_density, tackle::Rig& rig) {
  const auto parts = fields.Parts("riggers", rig_rules::kRiggerKeys);
  if (parts.empty() || parts.size() > rig_rules::kMostRiggers) {
    fields.Fail("riggers",
                fmt::format("There are {} riggers; a rig must have from 1 to {}.", parts.size(),
                            rig_rules::kMostRiggers),
                "Start each rigger with a line that says [[riggers]].");
    return;
  }
  for (const Fields& part : parts) {
    const Rigger rigger = ReadRigger(part, water_density);
    CheckName(part, rigger, rig);
    rig.riggers.push_back(rigger);
  }
}

void ReadRig(const Fields& fields, RigFile& result) {
  result.rig.name = fields.Text("name").value_or(result.file);
  result.invented = fields.Flag("invented").value_or(false);
  if (const auto water = fields.Part("water", rig_rules::kWaterKeys)) {
    result.rig.water = ReadWater(*water);
  }
  const water::Water water = result.rig.water.value_or(water::UsualSaltWater());
  ReadRiggers(fields, water.density_kg_per_m3, result.rig);
}

}  // namespace

int RigFile::LineOf(std::string_view key) const {
  for (std::string path(key); !path.empty();) {
    const auto found = lines.find(path);
    if (found != lines.end()) return found->second;
    const std::size_t cut = path.find_last_of(".[");
    path.resize(cut == std::string::npos ? 0 : cut);
  }
  return 0;
}

tl::expected<RigFile, RigProblem> ReadRigDocument(const TomlValue& document,
                                                  std::string_view file_name) {
  Report report(file_name);
  RigFile result;
  result.file = file_name;
  ReadRig(Fields(report, document, {}, rig_rules::kRigKeys), result);
  if (report.first()) return tl::unexpected(RigProblem{*report.first(), report.first_path()});
  result.lines = report.lines();
  return result;
}

Expected<RigFile> ReadRigText(std::string_view text, std::string_view file_name) {
  const auto document = ParseToml(text, file_name);
  if (!document) return tl::unexpected(document.error());
  auto read = ReadRigDocument(*document, file_name);
  if (!read) return tl::unexpected(std::move(read.error().problem));
  return *std::move(read);
}

Expected<RigFile> ReadRigFile(const std::string& path) {
  const auto text = ReadTextFile(path);
  if (!text) return tl::unexpected(text.error());
  return ReadRigText(*text, path);
}

}  // namespace offplumb::ports
