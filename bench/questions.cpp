#include "bench/questions.h"

#include <string>

#include <benchmark/benchmark.h>
#include <fmt/core.h>

#include "answers/questions/card.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"
#include "ports/files/current_file.h"
#include "ports/files/rig_file.h"

namespace offplumb::bench {
namespace {

constexpr double kFoot_m = 0.3048;
constexpr double kMph_mps = 0.44704;
constexpr double kHeading_rad = 0.35;  // About against the example's current.
constexpr int kRepetitions = 5;
const std::string kExamples = OFFPLUMB_SOURCE_DIR "/examples/";

/// Asks over and over. A question that gets no answer is an error, not a time.
template <typename Request>
void Ask(benchmark::State& state, const Request& request) {
  for (auto _ : state) {
    const auto answer = answers::Answer(request);
    if (!answer) {
      state.SkipWithError(answer.error().message.c_str());
      return;
    }
    benchmark::DoNotOptimize(answer->rigged.size());
  }
  state.SetItemsProcessed(state.iterations());
}

template <typename Request>
void Register(const std::string& name, Request request, const answers::RigChoice& rig,
              const water::Current& current) {
  request.rig = rig;
  request.sea.current = current;
  request.sea.heading_rad = kHeading_rad;
  benchmark::RegisterBenchmark(name.c_str(),
                               [request](benchmark::State& state) { Ask(state, request); })
      ->Unit(benchmark::kMillisecond)
      ->Repetitions(kRepetitions);
}

/// The three questions in one water. A card's sizes are its usual ones: 12 counts, 7 speeds, 128
/// draws.
void RegisterAll(const std::string& water, const answers::RigChoice& rig,
                 const water::Current& current) {
  Register("questions/card/" + water, answers::CardRequest{}, rig, current);
  answers::DepthRequest depth;
  depth.sea.speed_mps = 2.7 * kMph_mps;
  depth.count_m = 100 * kFoot_m;
  Register("questions/depth/" + water, depth, rig, current);
  answers::CountRequest count;
  count.sea.speed_mps = 2.7 * kMph_mps;
  count.depth_m = 80 * kFoot_m;
  Register("questions/count/" + water, count, rig, current);
}

}  // namespace

bool RegisterQuestions() {
  const auto file = ports::ReadRigFile(kExamples + "rigs/one-rigger.toml");
  const auto current = ports::ReadCurrentFile(kExamples + "currents/spindrift-sound.toml");
  if (!file || !current) {
    fmt::print("{}\n", !file ? file.error().message : current.error().message);
    return false;
  }
  const answers::RigChoice rig{file->rig, "", file->invented};
  RegisterAll("still", rig, {});
  RegisterAll("current", rig, *current);
  return true;
}

}  // namespace offplumb::bench
