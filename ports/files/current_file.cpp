#include "ports/files/current_file.h"

#include <array>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "ports/files/fields.h"
#include "ports/files/text_file.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {
namespace {

using answers::Dimension;
using water::Current;
using water::CurrentPoint;
using water::CurrentShape;

constexpr auto kCurrentKeys = std::to_array<std::string_view>({"shape", "points"});
constexpr auto kPointKeys = std::to_array<std::string_view>({"depth", "speed", "toward"});

constexpr QuantityRule kDepth{Dimension::kLength, {0, 3000}};
constexpr QuantityRule kSpeed{Dimension::kSpeed, {0, 5}};
// A whole turn either way, a hair more so that "360 deg" is in.
constexpr QuantityRule kToward{Dimension::kAngle, {-6.2831853072, 6.2831853072}};

constexpr std::string_view kToward360 = "degrees clockwise from true north, the way the water goes";

water::Vector2d Velocity(double speed_mps, double toward_rad) {
  return speed_mps * water::Vector2d(std::cos(toward_rad), std::sin(toward_rad));
}

CurrentShape ReadShape(const Fields& fields) {
  if (!fields.Has("shape")) fields.FailMissing("shape", "shape = \"steps\", or \"linear\"");
  if (fields.IsWord("shape", "linear")) return CurrentShape::kLinear;
  const auto word = fields.Text("shape");
  if (word && !fields.IsWord("shape", "steps")) {
    fields.Fail("shape", fmt::format("{} is not a shape of current.", answers::Quoted(*word)),
                "Write \"steps\" for layers, \"linear\" for straight between the points.");
  }
  return CurrentShape::kSteps;
}

CurrentPoint ReadPoint(const Fields& fields) {
  const double depth_m = fields.Required("depth", kDepth, "depth = \"60 ft\"");
  const double speed_mps = fields.Required("speed", kSpeed, "speed = \"0.4 kn\"");
  const double toward_rad = fields.Required("toward", kToward, "toward = \"200 deg\"");
  return {depth_m, Velocity(speed_mps, toward_rad)};
}

/// \param last the depth of the point above, as written.
void CheckPoint(const Fields& fields, const CurrentPoint& point, const Current& above,
                std::string_view last) {
  if (above.points.empty()) {
    if (above.shape == CurrentShape::kLinear || point.depth_m == 0) return;
    fields.Fail("depth",
                fmt::format("The first layer starts at {}; it must start at the surface, 0.",
                            fields.Written("depth")),
                "Write depth = \"0 ft\" for the first point.");
    return;
  }
  if (point.depth_m > above.points.back().depth_m) return;
  fields.Fail("depth",
              fmt::format("The depths must increase from point to point; {} follows {}.",
                          fields.Written("depth"), last),
              "Write the points from the surface down.");
}

Current ReadPoints(const Fields& fields) {
  constexpr std::size_t kMostPoints = 100;
  Current current;
  current.shape = ReadShape(fields);
  const auto parts = fields.Parts("points", kPointKeys);
  if (parts.empty() || parts.size() > kMostPoints) {
    fields.Fail(
        "points",
        fmt::format("There are {} points; a current must have from 1 to {}.", parts.size(),
                    kMostPoints),
        "Write points = [ { depth = \"0 ft\", speed = \"0.4 kn\", toward = \"200 deg\" } ].");
    return current;
  }
  std::string last;
  for (const Fields& part : parts) {
    const CurrentPoint point = ReadPoint(part);
    CheckPoint(part, point, current, last);
    current.points.push_back(point);
    last = part.Written("depth");
  }
  return current;
}

/// Degrees may be left bare here: "toward 200".
Expected<double> ParseToward_rad(std::string_view text) {
  if (answers::ParseNumber(text, "current")) {
    const std::string with_unit = std::string(answers::Trim(text)) + " deg";
    return answers::ParseQuantityWithin(with_unit, kToward.dimension, kToward.range, "current");
  }
  return answers::ParseQuantityWithin(text, kToward.dimension, kToward.range, "current");
}

}  // namespace

Expected<Current> ReadCurrentText(std::string_view text, std::string_view file_name) {
  const auto document = ParseToml(text, file_name);
  if (!document) return tl::unexpected(document.error());
  Report report(file_name);
  const Current current = ReadPoints(Fields(report, *document, {}, kCurrentKeys));
  if (report.first()) return tl::unexpected(*report.first());
  auto checked = water::CheckCurrent(current);
  if (!checked) checked.error().file = file_name;
  return checked;
}

Expected<Current> ReadCurrentFile(const std::string& path) {
  const auto text = ReadTextFile(path);
  if (!text) return tl::unexpected(text.error());
  return ReadCurrentText(*text, path);
}

Expected<Current> ParseCurrent(std::string_view phrase) {
  constexpr std::string_view kWord = " toward ";
  const std::size_t at = phrase.find(kWord);
  if (at == std::string_view::npos) {
    return BadInput("current", fmt::format("{} is not a current.", answers::Quoted(phrase)),
                    fmt::format("Write \"0.4 kn toward 200\" ({}), or give a file.", kToward360));
  }
  const auto speed =
      answers::ParseQuantityWithin(phrase.substr(0, at), kSpeed.dimension, kSpeed.range, "current");
  if (!speed) return tl::unexpected(speed.error());
  const auto toward = ParseToward_rad(phrase.substr(at + kWord.size()));
  if (!toward) return tl::unexpected(toward.error());
  return water::CheckCurrent({CurrentShape::kSteps, {{0, Velocity(*speed, *toward)}}});
}

Expected<Current> ReadCurrent(const std::string& phrase_or_path) {
  const bool phrase = phrase_or_path.find(" toward ") != std::string::npos;
  return phrase ? ParseCurrent(phrase_or_path) : ReadCurrentFile(phrase_or_path);
}

}  // namespace offplumb::ports
