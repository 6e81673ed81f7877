// Errors, speed and the peer in one run: ./run bench. Flags are those of Google Benchmark, such as
// --benchmark_filter=tree or --benchmark_list_tests.
#include <cstdio>

#include <benchmark/benchmark.h>

#include "bench/case_sets.h"
#include "bench/errors.h"
#include "bench/machine.h"
#include "bench/questions.h"
#include "bench/shapes.h"
#include "bench/summary.h"

int main(int argc, char** argv) {
  using namespace offplumb::bench;
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;

  PrintMachine();
  const std::vector<CaseSet> sets = MakeCaseSets();
  const bool meshes_agree = PrintErrors(sets);
  const bool peer_agrees = PrintAgreement(sets);
  std::fflush(stdout);

  RegisterShapes(sets);
  if (!RegisterQuestions()) return 1;
  Reporter reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  PrintSummary(sets, reporter.timings());
  benchmark::Shutdown();
  return meshes_agree && peer_agrees && !reporter.failed() ? 0 : 1;
}
