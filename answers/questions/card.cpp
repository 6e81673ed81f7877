#include "answers/questions/card.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <utility>

#include <fmt/format.h>

#include "answers/questions/cautions.h"
#include "answers/questions/notes.h"
#include "answers/questions/sound.h"
#include "answers/units/unit_table.h"

namespace offplumb::answers {
namespace {

/// Evenly spaced values in a unit, in SI.
std::vector<double> Evenly(double first, double step, int count, const Unit& unit) {
  std::vector<double> values;
  for (int i = 0; i < count; ++i) values.push_back((first + i * step) * unit.factor);
  return values;
}

Expected<void> CheckIncreasing(const std::vector<double>& values, std::size_t most,
                               const char* subject) {
  if (values.size() > most) {
    return BadInput(
        subject,
        fmt::format("There are {} {}; a card has at most {}.", values.size(), subject, most),
        "Leave some out, or take a larger step.");
  }
  if (std::adjacent_find(values.begin(), values.end(), std::greater_equal<>()) != values.end()) {
    return BadInput(subject, fmt::format("The {} do not increase from one to the next.", subject),
                    "Write each once, from the smallest up.");
  }
  return {};
}

double ShortestReel_m(const std::vector<tackle::Rigger>& riggers) {
  double shortest = riggers.front().line_on_reel_m;
  for (const tackle::Rigger& rigger : riggers) shortest = std::min(shortest, rigger.line_on_reel_m);
  return shortest;
}

double HighestClip_m(const std::vector<tackle::Rigger>& riggers) {
  double highest = 0;
  for (const tackle::Rigger& rigger : riggers) {
    for (const tackle::Clip& clip : rigger.clips) highest = std::max(highest, clip.above_ball_m);
  }
  return highest;
}

void FillUsual(CardAnswer& answer) {
  CardRequest& request = answer.request;
  const DisplayUnits units = request.wanted.units;
  if (request.speeds_mps.empty()) request.speeds_mps = UsualSpeeds_mps(units);
  if (request.counts_m.empty()) {
    request.counts_m =
        UsualCounts_m(units, ShortestReel_m(answer.rigged), HighestClip_m(answer.rigged));
  }
}

/// A count with a clip above the water leaves a cell empty; one beyond the reel is a problem.
Expected<void> CheckRiggers(const CardAnswer& answer) {
  for (const tackle::Rigger& rigger : answer.rigged) {
    auto checked = plan::CheckRigger(rigger);
    for (const double count_m : answer.request.counts_m) {
      if (!checked) return checked;
      checked = plan::CheckCount(rigger, count_m);
      if (!checked && checked.error().kind == ProblemKind::kCannotBeDone) checked = {};
    }
    if (!checked) return checked;
  }
  return {};
}

/// The speeds are checked one by one by MakeConditions; the first one's conditions are kept.
Expected<void> FillConditions(CardAnswer& answer) {
  Sea sea = answer.request.sea;
  for (auto speed = answer.request.speeds_mps.rbegin(); speed != answer.request.speeds_mps.rend();
       ++speed) {
    sea.speed_mps = *speed;
    auto conditions = MakeConditions(sea, answer.request.rig.rig);
    if (!conditions) return tl::unexpected<Problem>(conditions.error());
    answer.conditions = std::move(*conditions);
  }
  return {};
}

/// One rigger's card, speed by speed so that progress can be told.
plan::Card MakeOne(const tackle::Rigger& rigger, const CardAnswer& answer,
                   const learn::Ensemble* ensemble, const Progress& row_done) {
  plan::Card card;
  for (const double speed_mps : answer.request.speeds_mps) {
    plan::Card row =
        plan::MakeCard(rigger, answer.conditions, {speed_mps}, answer.request.counts_m, ensemble);
    card.cells.push_back(std::move(row.cells.front()));
    if (row_done) {
      row_done(static_cast<double>(card.cells.size()) /
               static_cast<double>(answer.request.speeds_mps.size()));
    }
  }
  card.rigger = rigger.name;
  card.speeds_mps = answer.request.speeds_mps;
  card.counts_m = answer.request.counts_m;
  return card;
}

bool AllSound(const plan::Card& card) {
  for (const auto& row : card.cells) {
    for (const plan::CardCell& cell : row) {
      if (!cell.solved) continue;
      if (!Sound(cell.ball_depth_m)) return false;
      if (!std::all_of(cell.lure_depth_m.begin(), cell.lure_depth_m.end(), Sound)) return false;
    }
  }
  return true;
}

Expected<void> MakeAll(CardAnswer& answer, const Progress& progress) {
  const auto ensemble = MakeEnsemble(answer.request.wanted);
  const double riggers = static_cast<double>(answer.rigged.size());
  for (const tackle::Rigger& rigger : answer.rigged) {
    const double before = static_cast<double>(answer.cards.size());
    const Progress row_done = [&](double part) {
      if (progress) progress((before + part) / riggers);
    };
    answer.cards.push_back(MakeOne(rigger, answer, Pointer(ensemble), row_done));
    if (!AllSound(answer.cards.back())) return UnsoundFigure(rigger.name);
  }
  return {};
}

bool HasDashes(const plan::Card& card) {
  return std::any_of(card.cells.begin(), card.cells.end(), [](const auto& row) {
    return std::any_of(row.begin(), row.end(), [](const plan::CardCell& cell) {
      return !cell.solved || cell.beyond_angle;
    });
  });
}

Remarks Remark(const CardAnswer& answer) {
  const CardRequest& request = answer.request;
  Remarks remarks;
  remarks.cautions = CautionsFor(Question::kCard);
  remarks.notes =
      NotesOnSetting(request.rig, request.sea, request.wanted, answer.rigged, answer.conditions);
  if (std::any_of(answer.cards.begin(), answer.cards.end(), HasDashes)) {
    remarks.notes.emplace_back(
        "A dash: the line would lean more at the boom than the rig allows, the gear has no steady "
        "place, or a clip would be above the water.");
  }
  return remarks;
}

}  // namespace

std::vector<double> UsualSpeeds_mps(DisplayUnits units) {
  constexpr int kSpeeds = 7;
  const Unit& unit = *FindUnit(Dimension::kSpeed, ShownUnit(Shown::kSpeed, units));
  if (units == DisplayUnits::kMetric) return Evenly(0.9, 0.1, kSpeeds, unit);
  if (units == DisplayUnits::kFeetKnots) return Evenly(1.8, 0.2, kSpeeds, unit);
  return Evenly(2.0, 0.2, kSpeeds, unit);
}

std::vector<double> UsualCounts_m(DisplayUnits units, double line_on_reel_m,
                                  double highest_clip_m) {
  constexpr int kCounts = 12;
  constexpr auto kFeet = std::to_array<double>({20, 15, 10, 5, 2, 1});
  constexpr auto kMetres = std::to_array<double>({6, 5, 3, 2, 1, 0.5});
  const Unit& unit = *FindUnit(Dimension::kLength, ShownUnit(Shown::kDepth, units));
  const auto& steps = units == DisplayUnits::kMetric ? kMetres : kFeet;
  const double clip = highest_clip_m / unit.factor;
  // The first whole step above the clip.
  const auto first = [clip](double step) { return step * (std::floor(clip / step + 1e-9) + 1); };
  const auto fits = std::find_if(steps.begin(), steps.end(), [&](double step) {
    return (first(step) + (kCounts - 1) * step) * unit.factor <= line_on_reel_m;
  });
  if (fits == steps.end()) return {line_on_reel_m};
  return Evenly(first(*fits), *fits, kCounts, unit);
}

Expected<CardAnswer> Answer(const CardRequest& request, const Progress& progress) {
  CardAnswer answer;
  answer.request = request;
  auto riggers = ChooseRiggers(request.rig);
  if (!riggers) return tl::unexpected<Problem>(riggers.error());
  answer.rigged = std::move(*riggers);
  FillUsual(answer);
  auto done = CheckIncreasing(answer.request.speeds_mps, kMostSpeeds, "speeds");
  if (done) done = CheckIncreasing(answer.request.counts_m, kMostCounts, "counts");
  if (done) done = FillConditions(answer);
  if (done) done = CheckRiggers(answer);
  if (done) done = MakeAll(answer, progress);
  if (!done) return tl::unexpected<Problem>(done.error());
  answer.remarks = Remark(answer);
  return answer;
}

}  // namespace offplumb::answers
