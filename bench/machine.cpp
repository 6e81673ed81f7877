#include "bench/machine.h"

#include <cstdlib>
#include <fstream>
#include <string>
#include <thread>

#include <fmt/core.h>

namespace offplumb::bench {
namespace {

/// The value of a line "key : value" of a system file; empty when there is none.
std::string ValueOf(const char* path, const std::string& key) {
  std::ifstream file(path);
  for (std::string line; std::getline(file, line);) {
    if (line.rfind(key, 0) != 0) continue;
    const std::size_t colon = line.find(": ");
    if (colon != std::string::npos) return line.substr(colon + 2);
  }
  return "";
}

std::string Compiler() {
#if defined(__clang__)
  return "clang " __clang_version__;
#elif defined(__GNUC__)
  return "g++ " __VERSION__;
#else
  return "unknown";
#endif
}

}  // namespace

void PrintMachine() {
  const std::string processor = ValueOf("/proc/cpuinfo", "model name");
  double load[1] = {-1};
  getloadavg(load, 1);
  fmt::print("Machine\n");
  fmt::print("  processor  {}, {} of them; one is used\n",
             processor.empty() ? "unknown" : processor, std::thread::hardware_concurrency());
  fmt::print(
      "  load       {:.1f} at the start; above 1, others were at work and times are too long\n",
      load[0]);
  fmt::print("  compiler   {}\n", Compiler());
  fmt::print("  flags      {}\n\n", OFFPLUMB_FLAGS);
}

}  // namespace offplumb::bench
