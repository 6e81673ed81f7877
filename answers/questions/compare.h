/// \file
/// The question `compare`: rigs side by side, and what each pound or tenth of a millimetre buys.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "answers/questions/setting.h"
#include "engine/plan/compare.h"

namespace offplumb::answers {

/// The most counts of one comparison. Judgement: more than a page can hold.
inline constexpr std::size_t kMostComparedCounts = 12;

struct CompareRequest {
  std::vector<RigChoice> rigs;  ///< At least one. Every rigger meant gets a row.
  Sea sea;                      ///< The same for all.
  Wanted wanted;
  std::vector<double> counts_m;         ///< Increasing; empty: 50, 100, 150 and 200 ft, or near it.
  std::optional<double> gains_count_m;  ///< At which gains are told; left out: 100 ft, or near it.
};

struct CompareAnswer {
  CompareRequest request;    ///< With the usual counts filled in.
  double gains_count_m = 0;  ///< At which gains are told.
  plan::Conditions conditions;
  std::vector<tackle::Rigger> rigged;   ///< One for each row.
  std::vector<plan::ComparedRig> rows;  ///< Each with a name of its own.
  Remarks remarks;
};

/// \return the counts compared where none are given.
[[nodiscard]] std::vector<double> UsualComparedCounts_m(DisplayUnits units);

/// \param progress may be empty.
/// \return a problem when the request is at fault or a rigger has no steady shape at any count.
[[nodiscard]] Expected<CompareAnswer> Answer(const CompareRequest& request,
                                             const Progress& progress = {});

/// \return what a gain's change is, for a person: "a ball 1 lb heavier", "a ball 0.45 kg heavier".
[[nodiscard]] std::string GainText(const std::string& id, DisplayUnits units);

}  // namespace offplumb::answers
