/// \file
/// The problems that are benched: four sets of a thousand, drawn at random from the ranges of the
/// trade.
#pragma once

#include <string>
#include <vector>

#include "engine/tow/tree.h"

namespace offplumb::bench {

/// Cases of one kind.
struct CaseSet {
  std::string id;        ///< In the names of benchmarks: "tree/current".
  std::string words;     ///< For a person.
  double aim_per_s = 0;  ///< Shapes a second on one core.
  std::vector<tow::TreeProblem> problems;
  std::vector<tow::TreeProblem> neighbours;  ///< The same at a speed 1 % higher.
};

inline constexpr int kCases = 1000;

/// \return single lines and whole trees, each in a current that changes with depth and in still
/// water. Ranges: random_trees.h.
[[nodiscard]] std::vector<CaseSet> MakeCaseSets();

/// \return the cases of a set that have a steady shape, at their own speed and at the neighbour's;
/// or the others.
[[nodiscard]] CaseSet CasesWithShape(const CaseSet& set, bool with);

}  // namespace offplumb::bench
