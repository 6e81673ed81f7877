/// \file
/// Benchmarks of single shapes: the solver cold and warm, and the peer.
#pragma once

#include <vector>

#include "bench/case_sets.h"

namespace offplumb::bench {

/// Registers shapes/ID/cold, /warm and /peer of every set, over the cases that have a steady shape:
/// one iteration is all of them. Cases that have none take longer to give up; they are
/// shapes/ID/refused.
void RegisterShapes(const std::vector<CaseSet>& sets);

}  // namespace offplumb::bench
