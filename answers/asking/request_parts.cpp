#include "answers/asking/request_parts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "engine/constants.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::answers {
namespace {

// As for a file of currents. Judgement: wide, to keep out slips of the finger.
constexpr NumberRule kCurrentDepthRule{{0, 3000}, "m"};
// As in a rig file.
constexpr NumberRule kDensityRule{{900, 1200}, "kg/m3"};
constexpr NumberRule kViscosityRule{{1e-7, 1e-5}, "m2/s"};
constexpr NumberRule kTemperatureRule{{0, 40}, "C"};
constexpr NumberRule kSalinityRule{{0, 42}, "g/kg"};

/// One key of a request and the words of the questions it goes with.
struct Key {
  std::string_view name;
  std::string_view questions;
};

constexpr std::string_view kAll = "depth count card compare";
constexpr std::string_view kEvery = "depth count card compare two_way";

constexpr auto kKeys = std::to_array<Key>({
    {"question", kEvery},
    {"rig_toml", "depth count card"},
    {"rigs_toml", "compare"},
    {"rigger", kAll},
    {"ball_mass_kg", kAll},
    {"count_m", "depth"},
    {"depth_m", "count"},
    {"of", "count"},
    {"clip", "count"},
    {"speeds_mps", "card"},
    {"counts_m", "card compare"},
    {"gains_count_m", "compare"},
    {"speed_mps", "depth count compare"},
    {"speed_kind", kAll},
    {"course_deg", kAll},
    {"heading_deg", kAll},
    {"current", kAll},
    {"water", kAll},
    {"legs", "two_way"},
    {"bands", kEvery},
    {"draws", kAll},
    {"units", kEvery},
    {"shape", "depth"},
    {"sheet", "depth card"},
    {"date", "card"},
});

std::vector<std::string_view> WordsOf(std::string_view list) {
  std::vector<std::string_view> words;
  while (!list.empty()) {
    const std::size_t blank = list.find(' ');
    words.push_back(list.substr(0, blank));
    list.remove_prefix(blank == std::string_view::npos ? list.size() : blank + 1);
  }
  return words;
}

std::vector<std::string_view> KeysOf(std::string_view question) {
  std::vector<std::string_view> keys;
  for (const Key& key : kKeys) {
    const auto words = WordsOf(key.questions);
    if (std::find(words.begin(), words.end(), question) != words.end()) keys.push_back(key.name);
  }
  return keys;
}

water::CurrentPoint ReadPoint(const RequestFields& fields) {
  constexpr auto kPointKeys =
      std::to_array<std::string_view>({"depth_m", "speed_mps", "toward_deg"});
  fields.CheckKeys(kPointKeys, "a point of the current");
  fields.Require("depth_m", "The depth of this point", "10");
  fields.Require("speed_mps", "The speed of this point", "0.3");
  fields.Require("toward_deg", "The way the water goes at this point", "200");
  const double speed_mps = fields.Number("speed_mps", kCurrentSpeedRule).value_or(0);
  const double toward_rad = ReadBearing(fields, "toward_deg").value_or(0);
  return {fields.Number("depth_m", kCurrentDepthRule).value_or(0),
          {speed_mps * std::cos(toward_rad), speed_mps * std::sin(toward_rad)}};
}

water::Current ReadCurrent(const RequestFields& request) {
  water::Current current;
  const auto fields = request.Object("current");
  if (!fields) return current;
  constexpr auto kCurrentKeys = std::to_array<std::string_view>({"shape", "points"});
  constexpr auto kShapes = std::to_array<std::string_view>({"steps", "linear"});
  fields->CheckKeys(kCurrentKeys, "current");
  fields->Require("shape", "The shape of the current", "\"steps\"");
  fields->Require("points", "The list of points",
                  R"([{"depth_m": 0, "speed_mps": 0.3, "toward_deg": 200}])");
  const bool linear = fields->Word("shape", kShapes).value_or(0) == 1;
  current.shape = linear ? water::CurrentShape::kLinear : water::CurrentShape::kSteps;
  for (const RequestFields& point : fields->Objects("points", kMostCurrentPoints)) {
    current.points.push_back(ReadPoint(point));
  }
  if (current.points.empty()) {
    fields->Fail("points", "The current has no points.", "Give one, or leave current out.");
  }
  const auto checked = water::CheckCurrent(current);
  if (!checked) request.Fail("current", checked.error());
  return current;
}

std::optional<water::Water> ReadWater(const RequestFields& request) {
  const auto fields = request.Object("water");
  if (!fields) return std::nullopt;
  constexpr auto kStated =
      std::to_array<std::string_view>({"density_kg_per_m3", "kinematic_viscosity_m2_per_s"});
  constexpr auto kMeasured =
      std::to_array<std::string_view>({"temperature_C", "salinity_g_per_kg"});
  if (fields->Has(kMeasured[0]) || fields->Has(kMeasured[1])) {
    fields->CheckKeys(kMeasured, "water with a temperature");
    fields->Require(kMeasured[0], "The water's temperature", "10");
    fields->Require(kMeasured[1], "The water's salinity", "30");
    const auto temperature_C = fields->Number(kMeasured[0], kTemperatureRule);
    const auto salinity = fields->Number(kMeasured[1], kSalinityRule);
    if (!temperature_C || !salinity) return std::nullopt;
    const auto water = water::MakeWater(*temperature_C, *salinity);
    if (water) return *water;
    request.Fail("water", water.error());
    return std::nullopt;
  }
  fields->CheckKeys(kStated, "water");
  fields->Require(kStated[0], "The water's density", "1023");
  fields->Require(kStated[1], "The water's kinematic viscosity", "1.37e-6");
  return water::Water{fields->Number(kStated[0], kDensityRule).value_or(0),
                      fields->Number(kStated[1], kViscosityRule).value_or(0)};
}

/// What MakeConditions refuses too, named by the keys of a request.
void CheckDirections(const Sea& sea, const RequestFields& fields) {
  const bool over_ground = sea.speed_kind == plan::SpeedKind::kOverGround;
  if (over_ground && !sea.current.points.empty()) {
    fields.Require("course_deg", "The course, needed with a current and a speed over ground,",
                   "20");
  }
  if (!over_ground && sea.course_rad) {
    fields.Fail("course_deg", "A course goes with a speed over ground.",
                "Leave it out, or write \"speed_kind\": \"over_ground\".");
  }
  if (!over_ground && VariesWithDepth(sea.current)) {
    fields.Require("heading_deg", "The heading, needed with a current that changes with depth,",
                   "20");
  }
}

}  // namespace

std::optional<double> ReadBearing(const RequestFields& fields, std::string_view key) {
  const auto degrees = fields.Number(key, kBearingRule);
  if (!degrees) return std::nullopt;
  return *degrees * kPi / 180.0;
}

void CheckRequestKeys(const RequestFields& fields, Question question) {
  const std::string_view word = EntryOf(question).word;
  for (const Key& key : kKeys) {
    const auto words = WordsOf(key.questions);
    if (!fields.Given(key.name)) continue;
    if (std::find(words.begin(), words.end(), word) != words.end()) continue;
    fields.Fail(key.name,
                fmt::format("This key goes with {}, not with {}.", JoinWords(words, "and"), word),
                "Leave it out.");
  }
  std::vector<std::string_view> known = KeysOf(word);
  fields.CheckKeys(known, fmt::format("a request for {}", word));
}

Sea ReadSea(const RequestFields& fields) {
  constexpr auto kKinds = std::to_array<std::string_view>({"through_water", "over_ground"});
  Sea sea;
  const bool over_ground = fields.Word("speed_kind", kKinds).value_or(0) == 1;
  if (over_ground) sea.speed_kind = plan::SpeedKind::kOverGround;
  sea.speed_mps = fields.Number("speed_mps", kSpeedRule);
  sea.course_rad = ReadBearing(fields, "course_deg");
  sea.heading_rad = ReadBearing(fields, "heading_deg");
  sea.current = ReadCurrent(fields);
  sea.water = ReadWater(fields);
  CheckDirections(sea, fields);
  return sea;
}

Wanted ReadWanted(const RequestFields& fields) {
  constexpr NumberRule kDrawsRule{{1, learn::kMembers}, ""};
  Wanted wanted;
  wanted.bands = fields.Flag("bands").value_or(wanted.bands);
  wanted.draws = fields.Whole("draws", kDrawsRule).value_or(wanted.draws);
  wanted.units = static_cast<DisplayUnits>(fields.Word("units", kUnitWords).value_or(0));
  wanted.shape = fields.Flag("shape").value_or(false);
  wanted.sheet = fields.Flag("sheet").value_or(false);
  wanted.date = fields.Text("date").value_or("");
  return wanted;
}

std::optional<RigText> ReadRig(const RequestFields& fields, std::string_view key,
                               std::string_view toml, const RigTexts& texts) {
  auto text = texts.read(toml);
  if (text) return std::move(*text);
  Problem problem = text.error();
  if (problem.subject.empty()) problem.subject = std::string(key);
  fields.Fail(problem);
  return std::nullopt;
}

RigChoice ChoiceOf(const RequestFields& fields, const RigText& text) {
  constexpr NumberRule kBallRule{kBallMass, "kg"};
  return {text.rig, fields.Text("rigger").value_or(""), text.invented,
          fields.Number("ball_mass_kg", kBallRule)};
}

}  // namespace offplumb::answers
