#include "answers/asking/about.h"

#include <array>
#include <string_view>
#include <vector>

#include "answers/asking/request_parts.h"
#include "answers/questions/card.h"
#include "answers/questions/cautions.h"
#include "answers/questions/compare.h"
#include "answers/questions/json_values.h"
#include "engine/plan/alter.h"
#include "engine/tackle/catalogue.h"

namespace offplumb::answers {
namespace {

void WriteQuestions(JsonWriter& json) {
  json.List("questions");
  for (const QuestionEntry& entry : Questions()) {
    json.ObjectItem();
    json.Text("word", entry.word);
    json.Text("summary", entry.summary);
    json.End();
  }
  json.End();
}

void WriteShown(DisplayUnits units, JsonWriter& json) {
  constexpr auto kIds = std::to_array<std::string_view>({
#define OFFPLUMB_ENTRY(name, id) id,
      OFFPLUMB_SHOWN(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
  });
  json.Object(kUnitWords[static_cast<std::size_t>(units)]);
  for (std::size_t i = 0; i < kIds.size(); ++i) {
    const ShownAs as = HowShown(static_cast<Shown>(i), units);
    json.Object(kIds[i]);
    json.Text("unit", as.unit);
    json.Number("si", as.si);
    json.Whole("digits", as.digits);
    json.NumberOrNull("whole_from", as.whole_from);
    json.End();
  }
  json.End();
}

void WriteLimits(JsonWriter& json) {
  json.Object("limits");
  json.Number("largest_speed_mps", kSpeedRule.range.high);
  json.Number("largest_count_m", kCountRule.range.high);
  json.Number("least_depth_m", kWantedDepthRule.range.low);
  json.Number("lightest_ball_kg", kBallMass.low);
  json.Number("heaviest_ball_kg", kBallMass.high);
  json.Number("heaviest_suggested_ball_kg", plan::kHeaviestBall_kg);
  json.Whole("most_draws", learn::kMembers);
  json.Whole("most_speeds", kMostSpeeds);
  json.Whole("most_counts", kMostCounts);
  json.Whole("most_compared_counts", kMostComparedCounts);
  json.Whole("most_rigs", kMostRigs);
  json.Whole("most_current_points", kMostCurrentPoints);
  json.Number("largest_current_mps", kCurrentSpeedRule.range.high);
  json.End();
}

void WriteEntries(std::string_view key, const std::vector<tackle::CatalogueEntry>& entries,
                  JsonWriter& json) {
  json.List(key);
  for (const tackle::CatalogueEntry& entry : entries) {
    json.ObjectItem();
    json.Text("id", entry.id);
    json.Text("name", entry.name);
    json.End();
  }
  json.End();
}

void WriteBalls(JsonWriter& json) {
  json.List("balls");
  for (const tackle::CatalogueEntry& entry : tackle::CatalogueBalls()) {
    const auto ball = tackle::MakeBall(entry.id);
    json.ObjectItem();
    json.Text("id", entry.id);
    json.Text("name", entry.name);
    json.NumberOrNull("mass_kg", ball ? std::optional<double>(ball->mass_kg) : std::nullopt);
    json.End();
  }
  json.End();
}

void WriteCatalogue(JsonWriter& json) {
  json.Object("catalogue");
  WriteEntries("lines", tackle::CatalogueLines(), json);
  WriteBalls(json);
  WriteEntries("flashers", tackle::CatalogueFlashers(), json);
  WriteEntries("lures", tackle::CatalogueLures(), json);
  json.End();
}

void WriteDefaults(JsonWriter& json) {
  json.Object("defaults");
  json.Number("line_on_reel_m", tackle::kLineOnReel_m);
  json.Number("largest_boom_angle_deg", Degrees(tackle::kLargestBoomAngle_rad));
  json.Number("rod_tip_tension_N", tackle::kRodTipTension_N);
  json.End();
}

}  // namespace

std::string AboutJson() {
  JsonWriter json;
  json.Text("question", "about");
  json.Text("version", OFFPLUMB_VERSION);
  WriteQuestions(json);
  json.Object("shown");
  for (std::size_t i = 0; i < kUnitWords.size(); ++i) {
    WriteShown(static_cast<DisplayUnits>(i), json);
  }
  json.End();
  WriteLimits(json);
  WriteCatalogue(json);
  WriteDefaults(json);
  json.Object("cautions");
  for (const QuestionEntry& entry : Questions()) {
    json.Texts(entry.word, CautionsFor(entry.question));
  }
  json.End();
  return json.Take();
}

}  // namespace offplumb::answers
