#include "answers/questions/json_answers.h"
#include "answers/questions/json_sheet.h"
#include "answers/questions/json_values.h"
#include "answers/questions/sheets.h"

namespace offplumb::answers {
namespace {

/// One value for each speed and count; null where a cell is empty.
template <typename WriteCell>
void WriteGrid(std::string_view key, const plan::Card& card, const WriteCell& write_cell,
               JsonWriter& json) {
  json.List(key);
  for (const auto& row : card.cells) {
    json.ListItem();
    for (const plan::CardCell& cell : row) {
      if (cell.solved) {
        write_cell(cell);
      } else {
        json.NullItem();
      }
    }
    json.End();
  }
  json.End();
}

void WriteBalls(const plan::Card& card, JsonWriter& json) {
  WriteGrid(
      "ball_depth_m", card,
      [&](const plan::CardCell& cell) { WriteBandItem(cell.ball_depth_m, json); }, json);
}

void WriteLures(std::string_view key, const plan::Card& card, std::size_t clip, JsonWriter& json) {
  WriteGrid(
      key, card,
      [&](const plan::CardCell& cell) {
        if (clip < cell.lure_depth_m.size()) return WriteBandItem(cell.lure_depth_m[clip], json);
        json.NullItem();
      },
      json);
}

/// Ends with the object still open, for the sheet.
void StartRigger(const tackle::Rigger& rigger, const plan::Card& card, JsonWriter& json) {
  json.ObjectItem();
  json.Text("name", card.rigger);
  WriteBalls(card, json);
  json.List("lures");
  for (std::size_t i = 0; i < rigger.clips.size(); ++i) {
    json.ObjectItem();
    json.Text("clip", rigger.clips[i].name);
    WriteLures("depth_m", card, i, json);
    json.End();
  }
  json.End();
  WriteGrid(
      "beyond_angle", card, [&](const plan::CardCell& cell) { json.FlagItem(cell.beyond_angle); },
      json);
}

}  // namespace

void Write(const CardAnswer& answer, JsonWriter& json) {
  const CardRequest& request = answer.request;
  json.Text("question", EntryOf(Question::kCard).word);
  json.Text("rig", request.rig.rig.name);
  json.Object("inputs");
  WriteChoice(request.rig, json);
  json.Numbers("speeds_mps", request.speeds_mps);
  json.Numbers("counts_m", request.counts_m);
  WriteConditions(answer.conditions, request.wanted, json);
  json.End();
  json.Texts("axes", {"speed", "count"});
  json.Numbers("speeds_mps", request.speeds_mps);
  json.Numbers("counts_m", request.counts_m);
  WriteBalls(answer.cards.front(), json);
  WriteLures("lure_depth_m", answer.cards.front(), 0, json);
  json.List("riggers");
  for (std::size_t i = 0; i < answer.cards.size(); ++i) {
    StartRigger(answer.rigged[i], answer.cards[i], json);
    if (request.wanted.sheet) WriteSheet(CardSheetOf(answer, i, request.wanted.date), json);
    json.End();
  }
  json.End();
  WriteRemarks(answer.remarks, json);
}

}  // namespace offplumb::answers
