#include "bench/allocations.h"

#include <atomic>
#include <cstddef>
#include <cstdlib>

namespace {
std::atomic<long> allocations{0};
}  // namespace

// Eigen calls malloc and not operator new, so malloc itself is counted. Only the GNU C library lets
// it be replaced like this; calloc and realloc stay its own.
extern "C" void* __libc_malloc(std::size_t size);
extern "C" void* malloc(std::size_t size) {
  allocations.fetch_add(1, std::memory_order_relaxed);
  return __libc_malloc(size);
}

namespace offplumb::bench {

long Allocations() { return allocations.load(std::memory_order_relaxed); }

}  // namespace offplumb::bench
