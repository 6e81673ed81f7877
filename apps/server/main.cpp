#include <cstdio>
#include <exception>

#include "apps/server/serve.h"

/// Nothing is thrown for an ordinary failure: what arrives here is a fault of ours, or no memory.
int main(int argc, char** argv) {
  try {
    return offplumb::server::Serve({argv + 1, argv + argc}, offplumb::server::PageAssets());
  } catch (const std::exception& error) {
    std::fprintf(stderr, "offplumb_serve: A fault of ours: %s. Please report what was typed.\n",
                 error.what());
    return offplumb::server::kFault;
  }
}
