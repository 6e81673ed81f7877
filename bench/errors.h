/// \file
/// How wrong the solver is, and what it uses: measured, not claimed.
#pragma once

#include <vector>

#include "bench/case_sets.h"

namespace offplumb::bench {

/// Solves every case as the program does and again with six times the steps to a tolerance of
/// 1e-11, and prints the differences; then the passes it took, the calls of malloc, and the cases
/// without a steady shape. \return false when a case was solved in one way and not in the other.
bool PrintErrors(const std::vector<CaseSet>& sets);

/// Solves every case with the peer too, as it is timed and much finer, and prints how far the two
/// are apart. \return false when the finer peer gives another answer somewhere.
bool PrintAgreement(const std::vector<CaseSet>& sets);

}  // namespace offplumb::bench
