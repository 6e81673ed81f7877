/// \file
/// Benchmarks of whole questions about the example rig, as the programs ask them.
#pragma once

namespace offplumb::bench {

/// Registers questions/card, /depth and /count, each with bands, in still water and in the
/// example's current. \return false when the examples cannot be read; the reason is printed.
bool RegisterQuestions();

}  // namespace offplumb::bench
