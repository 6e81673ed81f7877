#include "bench/summary.h"

#include <algorithm>
#include <cstdio>

#include <fmt/core.h>

namespace offplumb::bench {
namespace {

/// A printed card with bands should not keep anyone waiting.
constexpr double kCardAim_s = 2.0;

/// Seconds in the unit that suits them.
std::string Words(double seconds) {
  if (seconds < 1e-3) return fmt::format("{:.2f} us", seconds * 1e6);
  return fmt::format("{:.2f} ms", seconds * 1e3);
}

double SecondsAnItem(const benchmark::BenchmarkReporter::Run& run) {
  const auto rate = run.counters.find("items_per_second");
  return rate == run.counters.end() || !(rate->second > 0) ? 0 : 1 / rate->second;
}

Timing TimingOf(std::vector<double> seconds) {
  std::sort(seconds.begin(), seconds.end());
  return {seconds.front(), seconds[seconds.size() / 2]};
}

const Timing* Find(const std::map<std::string, Timing>& timings, const std::string& name) {
  const auto found = timings.find(name);
  return found == timings.end() ? nullptr : &found->second;
}

const char* Verdict(bool met) { return met ? "met" : "NOT met"; }

void PrintShapeAim(const CaseSet& set, const std::map<std::string, Timing>& timings) {
  const Timing* cold = Find(timings, "shapes/" + set.id + "/cold");
  if (!cold) return;
  const double per_s = 1 / cold->best_s;
  fmt::print("  {:<41} {:>9.0f}/s  aim {:>7.0f}/s  {}\n", set.words, per_s, set.aim_per_s,
             Verdict(per_s >= set.aim_per_s));
}

void PrintCardAim(const char* water, const std::map<std::string, Timing>& timings) {
  const Timing* card = Find(timings, std::string("questions/card/") + water);
  if (!card) return;
  fmt::print(
      "  card of 12 counts, 7 speeds, 128 draws, {:<7} {:>6.2f} s    aim under {:.0f} s  {}\n",
      water, card->best_s, kCardAim_s, Verdict(card->best_s < kCardAim_s));
}

void PrintRatio(const CaseSet& set, const std::map<std::string, Timing>& timings) {
  const Timing* cold = Find(timings, "shapes/" + set.id + "/cold");
  const Timing* peer = Find(timings, "shapes/" + set.id + "/peer");
  if (!cold || !peer) return;
  fmt::print("  {:<41} {:>11} {:>11} {:>7.1f}\n", set.words, Words(cold->best_s),
             Words(peer->best_s), peer->best_s / cold->best_s);
}

}  // namespace

bool Reporter::ReportContext(const Context& /*context*/) {
  fmt::print("Processor time of one shape or answer\n");
  fmt::print("  {:<32} {:>11} {:>11} {:>12}\n", "", "best", "median", "best, per s");
  return true;
}

void Reporter::ReportRuns(const std::vector<Run>& runs) {
  std::vector<double> seconds;
  for (const Run& run : runs) {
    if (run.error_occurred) {
      failed_ = true;
      fmt::print("  {:<32} {}\n", run.run_name.function_name, run.error_message);
      return;
    }
    if (run.run_type == Run::RT_Iteration) seconds.push_back(SecondsAnItem(run));
  }
  if (seconds.empty()) return;
  const std::string& name = runs.front().run_name.function_name;
  const Timing timing = TimingOf(std::move(seconds));
  timings_[name] = timing;
  fmt::print("  {:<32} {:>11} {:>11} {:>12.1f}\n", name, Words(timing.best_s),
             Words(timing.median_s), 1 / timing.best_s);
  std::fflush(stdout);
}

void PrintSummary(const std::vector<CaseSet>& sets, const std::map<std::string, Timing>& timings) {
  fmt::print("\nAims, on one core (best)\n");
  for (const CaseSet& set : sets) PrintShapeAim(set, timings);
  for (const char* water : {"still", "current"}) PrintCardAim(water, timings);
  fmt::print("\nBeside the peer at an accuracy of about 1e-6 (best)\n");
  fmt::print("  {:<41} {:>11} {:>11} {:>7}\n", "", "solver", "peer", "ratio");
  for (const CaseSet& set : sets) PrintRatio(set, timings);
}

}  // namespace offplumb::bench
