/// \file
/// What a measurement was made on.
#pragma once

namespace offplumb::bench {

/// Prints processor, system load, compiler and flags.
void PrintMachine();

}  // namespace offplumb::bench
