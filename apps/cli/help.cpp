#include "apps/cli/help.h"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>

#include "apps/cli/flags.h"

namespace offplumb::cli {
namespace {

using answers::Question;

/// What is told of a question beside its flags.
struct Words {
  std::string_view about;
  std::string_view example;
};

Words WordsOn(Question question) {
  switch (question) {
    case Question::kDepth:
      return {
          "The line never hangs plumb behind a moving boat: it bows aft, and the ball rides\n"
          "higher than the counter says. This tells how high: depth of ball, clips and lures,\n"
          "how far they trail, the water's speed past them, and the pulls.\n",
          "offplumb depth --rig examples/rigs/one-rigger.toml --count \"100 ft\" --speed \"2.75 "
          "mph\""};
    case Question::kCount:
      return {
          "The other way round: you say how deep, this says what the counter must read. When\n"
          "no count gets there it says how deep the rig can go, and what would get deeper; the\n"
          "exit code is then 1.\n",
          "offplumb count --rig examples/rigs/one-rigger.toml --depth \"90 ft\" --of lure --speed "
          "\"2.75 mph\""};
    case Question::kCard:
      return {
          "A table for the wheelhouse: counts down the side, speeds across. Left out, there\n"
          "are 12 counts and 7 speeds. With --draw it becomes a sheet to print and laminate.\n",
          "offplumb card --rig examples/rigs/one-rigger.toml --counts \"40 ft to 160 ft by 40 "
          "ft\" --speeds \"2 mph, 2.5 mph, 3 mph\""};
    case Question::kCompare:
      return {
          "Each rig, and each rigger of a rig, side by side at the same counts and speed: how\n"
          "deep the ball rides, how deep the rig can go, what the boom bears, and what a pound\n"
          "more or a tenth of a millimetre less would buy.\n",
          "offplumb compare --rig examples/rigs/one-rigger.toml --rig "
          "examples/rigs/two-riggers.toml --speed \"2.5 mph\""};
    case Question::kTwoWay:
      return {
          "Hold one heading at trolling speed for a minute or two and note what the phone says\n"
          "over ground; turn to the reverse heading, same throttle, and note it again. The\n"
          "current helps one way what it hinders the other: this tells the current, the speed\n"
          "through the water, and what the boat's log is off by. No rig is needed. Hold the\n"
          "headings by compass or far marks, not by the phone's course.\n",
          "offplumb two-way --out \"3.1 mph toward 40\" --back \"2.3 mph toward 222\" --log "
          "\"2.9 mph\" --held \"90 s\""};
  }
  return {};
}

std::string FlagWithValue(const Flag& flag) {
  std::string text = "--" + std::string(flag.name);
  if (!flag.value.empty()) text += " " + std::string(flag.value);
  return text;
}

std::string FlagLines(Question question) {
  std::size_t widest = 0;
  for (const Flag& flag : Flags()) {
    if (GoesWith(flag, question)) widest = std::max(widest, FlagWithValue(flag).size());
  }
  std::string lines;
  for (const Flag& flag : Flags()) {
    if (!GoesWith(flag, question)) continue;
    lines += fmt::format("  {:<{}}  {}\n", FlagWithValue(flag), widest, flag.words);
  }
  return lines;
}

constexpr std::string_view kMeanings =
    "Every quantity carries its unit: \"100 ft\", \"2.7 mph\", \"1.2 kn\", \"30 m\". Angles may "
    "be\n"
    "bare degrees. Count: what the counter reads, zeroed with the ball's eye at the waterline.\n"
    "Speed: through the surface water, unless --over-ground. Bands: in 9 of 10 cases the true\n"
    "figure lies between the two numbers.\n"
    "Exit codes: 0 answered; 1 cannot be done, and why; 2 something typed is wrong; 3 our fault.\n";

}  // namespace

std::string HelpOverview() {
  std::string text =
      "Offplumb tells a small-boat salmon troller where the ball and the lure really are.\n\n"
      "  offplumb QUESTION --rig FILE ...\n\nQuestions:\n";
  for (const auto& entry : answers::Questions()) {
    text += fmt::format("  {:<8} {}\n", entry.typed, entry.summary);
  }
  return text +
         "\nFor programs:\n  ask      The same questions as JSON, one a line: offplumb ask --help\n"
         "\nEach has its own help with an example: offplumb depth --help\n"
         "In the source folder ./run stands for offplumb.\n"
         "  --version  the program's version\n";
}

std::string HelpOn(Question question) {
  const auto& entry = answers::EntryOf(question);
  const Words words = WordsOn(question);
  return fmt::format(
      "{}\n\n{}\nFlags:\n{}\n{}\nExample (in the source folder; ./run stands for offplumb):\n  "
      "{}\n",
      entry.summary, words.about, FlagLines(question), kMeanings, words.example);
}

}  // namespace offplumb::cli
