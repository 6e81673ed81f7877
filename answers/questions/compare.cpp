#include "answers/questions/compare.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include <fmt/format.h>

#include "answers/questions/cautions.h"
#include "answers/questions/notes.h"
#include "answers/questions/sound.h"
#include "answers/units/unit_table.h"
#include "answers/units/words.h"

namespace offplumb::answers {
namespace {

/// A rigger to compare, with the name of its row and the conditions in its rig's water.
struct Row {
  std::string name;
  tackle::Rigger rigger;
  plan::Conditions conditions;
};

/// Adds the riggers of one rig: a lone one is called by its rig, several by rig and rigger.
Expected<void> AddRows(const RigChoice& choice, const Sea& sea, std::vector<Row>& rows) {
  const auto riggers = ChooseRiggers(choice);
  if (!riggers) return tl::unexpected<Problem>(riggers.error());
  const auto conditions = MakeConditions(sea, choice.rig);
  if (!conditions) return tl::unexpected<Problem>(conditions.error());
  for (const tackle::Rigger& rigger : *riggers) {
    const auto checked = plan::CheckRigger(rigger);
    if (!checked) return checked;
    const bool lone = choice.rig.riggers.size() == 1;
    rows.push_back({lone ? choice.rig.name : fmt::format("{}: {}", choice.rig.name, rigger.name),
                    rigger, *conditions});
  }
  return {};
}

/// Rows of one name get a number, so that each can be told from the others.
void TellApart(std::vector<Row>& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    int number = 1;
    for (std::size_t j = i + 1; j < rows.size(); ++j) {
      if (rows[j].name == rows[i].name) rows[j].name += fmt::format(" ({})", ++number);
    }
    if (number > 1) rows[i].name += " (1)";
  }
}

bool AllSound(const plan::ComparedRig& row) {
  const auto sound = [](const plan::Band& band) { return Sound(band); };
  return Sound(row.reach_depth_m) && std::isfinite(row.reach_count_m) &&
         std::all_of(row.depth_m.begin(), row.depth_m.end(), sound) &&
         std::all_of(row.tension_boom_N.begin(), row.tension_boom_N.end(), sound) &&
         std::all_of(row.gains.begin(), row.gains.end(),
                     [](const plan::Gain& gain) { return std::isfinite(gain.depth_m); });
}

Expected<void> CompareAll(const std::vector<Row>& rows, CompareAnswer& answer,
                          const Progress& progress) {
  const auto ensemble = MakeEnsemble(answer.request.wanted);
  for (const Row& row : rows) {
    auto compared = plan::CompareRig(row.name, row.rigger, row.conditions, answer.request.counts_m,
                                     answer.gains_count_m, Pointer(ensemble));
    if (!compared) return tl::unexpected<Problem>(compared.error());
    if (!AllSound(*compared)) return UnsoundFigure(row.rigger.name);
    answer.rows.push_back(std::move(*compared));
    answer.rigged.push_back(row.rigger);
    if (progress) {
      progress(static_cast<double>(answer.rows.size()) / static_cast<double>(rows.size()));
    }
  }
  return {};
}

Expected<void> CheckCounts(const CompareRequest& request) {
  const auto& counts = request.counts_m;
  if (counts.size() > kMostComparedCounts) {
    return BadInput("counts",
                    fmt::format("There are {} counts; at most {} are compared.", counts.size(),
                                kMostComparedCounts),
                    "Leave some out, or take a larger step.");
  }
  if (std::adjacent_find(counts.begin(), counts.end(), std::greater_equal<>()) != counts.end()) {
    return BadInput("counts", "The counts do not increase from one to the next.",
                    "Write each once, from the smallest up.");
  }
  const bool in_range = std::all_of(counts.begin(), counts.end(), [](double count_m) {
    return count_m >= 0 && count_m <= plan::kLargestCount_m;
  });
  if (!in_range) {
    return BadInput("counts",
                    fmt::format("A count lies outside 0 to {:.0f} m.", plan::kLargestCount_m),
                    "Give what the counter reads.");
  }
  return {};
}

/// A count that was asked for must fit every rig, as in the question `depth`.
Expected<void> CheckGainsCount(const CompareRequest& request, const std::vector<Row>& rows) {
  if (!request.gains_count_m) return {};
  for (const Row& row : rows) {
    auto checked = plan::CheckCount(row.rigger, *request.gains_count_m);
    if (!checked) return checked;
  }
  return {};
}

/// The count at which gains are told where none is given: 100 ft (30 m) if it is compared, else the
/// middle one.
double UsualGainsCount_m(const CompareRequest& request) {
  const double usual = UsualComparedCounts_m(request.wanted.units)[1];
  const auto& counts = request.counts_m;
  const bool compared = std::find(counts.begin(), counts.end(), usual) != counts.end();
  return compared ? usual : counts[counts.size() / 2];
}

Remarks Remark(const CompareAnswer& answer) {
  const CompareRequest& request = answer.request;
  Remarks remarks;
  remarks.cautions = CautionsFor(Question::kCompare);
  for (RigChoice rig : request.rigs) {
    if (rig.invented) AddNew(remarks.notes, {rig.rig.name + " is an invented example."});
    rig.invented = false;  // Said by name, since there may be others.
    AddNew(remarks.notes,
           NotesOnSetting(rig, request.sea, request.wanted, answer.rigged, answer.conditions));
  }
  for (const plan::ComparedRig& row : answer.rows) {
    if (std::find(row.solved.begin(), row.solved.end(), 0) == row.solved.end()) continue;
    remarks.notes.push_back(fmt::format(
        "{}: An empty place: more than the line on the reel, a clip above the water, or no steady "
        "shape.",
        row.name));
  }
  return remarks;
}

}  // namespace

std::vector<double> UsualComparedCounts_m(DisplayUnits units) {
  const double step =
      units == DisplayUnits::kMetric ? 15 : 50 * FindUnit(Dimension::kLength, "ft")->factor;
  return {step, 2 * step, 3 * step, 4 * step};
}

Expected<CompareAnswer> Answer(const CompareRequest& request, const Progress& progress) {
  CompareAnswer answer;
  answer.request = request;
  CompareRequest& filled = answer.request;
  if (filled.counts_m.empty()) filled.counts_m = UsualComparedCounts_m(filled.wanted.units);
  answer.gains_count_m = filled.gains_count_m.value_or(UsualGainsCount_m(filled));
  auto done = CheckCounts(filled);
  std::vector<Row> rows;
  for (const RigChoice& rig : filled.rigs) {
    if (done) done = AddRows(rig, filled.sea, rows);
  }
  if (!done) return tl::unexpected<Problem>(done.error());
  if (rows.empty()) return BadInput("rig", "There is no rig to compare.", "Give --rig FILE.");
  done = CheckGainsCount(request, rows);
  if (!done) return tl::unexpected<Problem>(done.error());
  TellApart(rows);
  answer.conditions = rows.front().conditions;
  done = CompareAll(rows, answer, progress);
  if (!done) return tl::unexpected<Problem>(done.error());
  answer.remarks = Remark(answer);
  return answer;
}

std::string GainText(const std::string& id, DisplayUnits units) {
  const bool metric = units == DisplayUnits::kMetric;
  if (id == "ball_1_lb_heavier") return metric ? "a ball 0.45 kg heavier" : "a ball 1 lb heavier";
  if (id == "line_0.1_mm_thinner") return "a line 0.1 mm thinner";
  if (id == "speed_0.1_mph_slower") {
    if (metric) return "0.045 m/s slower";
    return units == DisplayUnits::kFeetKnots ? "0.087 kn slower" : "0.1 mph slower";
  }
  if (id == "no_flasher") return "no flasher";
  return id;
}

}  // namespace offplumb::answers
