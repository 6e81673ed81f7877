/// \file
/// Counts what the program takes from the heap.
#pragma once

namespace offplumb::bench {

/// \return calls of malloc since the start, from every library: operator new and Eigen end there.
[[nodiscard]] long Allocations();

}  // namespace offplumb::bench
