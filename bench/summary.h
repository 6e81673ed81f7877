/// \file
/// What the benchmarks measured: a table while they run, and what it comes to.
#pragma once

#include <map>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

#include "bench/case_sets.h"

namespace offplumb::bench {

/// Processor time of one item (a shape or an answer).
struct Timing {
  double best_s = 0;  ///< Of all repetitions: nearest to a machine with nothing else to do.
  double median_s = 0;
};

/// Prints one line a benchmark and keeps the times.
class Reporter : public benchmark::BenchmarkReporter {
 public:
  bool ReportContext(const Context& context) override;
  void ReportRuns(const std::vector<Run>& runs) override;

  /// By benchmark name: "shapes/tree/still/cold".
  [[nodiscard]] const std::map<std::string, Timing>& timings() const { return timings_; }
  [[nodiscard]] bool failed() const { return failed_; }

 private:
  std::map<std::string, Timing> timings_;
  bool failed_ = false;
};

/// Prints each aim beside what was measured, and how many times quicker the solver is than the
/// peer. What was left out by
/// --benchmark_filter is left out here.
void PrintSummary(const std::vector<CaseSet>& sets, const std::map<std::string, Timing>& timings);

}  // namespace offplumb::bench
