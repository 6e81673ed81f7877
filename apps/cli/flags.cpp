#include "apps/cli/flags.h"

#include <algorithm>
#include <array>

namespace offplumb::cli {
namespace {

constexpr std::string_view kAll = "depth count card compare";
constexpr std::string_view kEvery = "depth count card compare two-way";

constexpr auto kFlags = std::to_array<Flag>({
    {"rig", "FILE", kAll, "the rig file; with compare once for each rig", true},
    {"rigger", "NAME", kAll, "one rigger of the rig; left out: all of them"},
    {"count", "\"100 ft\"", "depth compare",
     "what the counter reads; with compare: where to tell what each change buys"},
    {"depth", "\"90 ft\"", "count", "the wanted depth"},
    {"of", "ball|lure", "count", "whose depth; left out: the ball's"},
    {"clip", "NAME", "count", "whose lure, by its clip's name, or 1, 2 from the lowest"},
    {"speed", "\"2.7 mph\"", "depth count compare", "the boat's speed, through the water"},
    {"counts", "LIST", "card compare", "\"20 ft, 40 ft\", or \"20 ft to 240 ft by 20 ft\""},
    {"speeds", "LIST", "card", "\"2 mph, 3 mph\", or \"1.5 mph to 4.5 mph by 0.5 mph\""},
    {"out", "\"3.1 mph toward 40\"", "two-way",
     "speed and course over ground on the first heading"},
    {"back", "\"2.3 mph toward 222\"", "two-way", "the same on the reverse heading"},
    {"headings", "\"38, 219\"", "two-way",
     "of the bow by compass, out and back; left out: opposite"},
    {"log", "\"2.7 mph\"", "two-way", "what the boat's log read; or two values, out and back"},
    {"held", "\"90 s\"", "two-way", "how long each heading was held; left out: 60 s"},
    {"spread", "\"0.2 mph\"", "two-way", "how far the ground speed jumps about; left out: 0.2 mph"},
    {"over-ground", "", kAll, "the speed is over ground"},
    {"course", "\"20 deg\"", kAll, "the way over ground, from true north"},
    {"heading", "\"20 deg\"", kAll, "the way the bow points; left out: the course"},
    {"current", "FILE", kAll, "current against depth; or a value, \"0.4 kn toward 200\""},
    {"water", "salt|fresh", kAll, "or \"10 C 30 psu\"; left out: the rig's, else salt"},
    {"bands", "on|off", kEvery, "5 % and 95 % beside each figure; left out: on"},
    {"units", "feet|knots|metric", kEvery,
     "feet and mph, feet and knots, or metres; left out: feet"},
    {"json", "", kEvery, "the answer as JSON, in SI units (docs/json.md)"},
    {"csv", "FILE", kEvery, "write the figures as CSV too"},
    {"draw", "FILE", "depth card", "draw the side view, or the sheet: .svg, .pdf or .png"},
});

}  // namespace

std::span<const Flag> Flags() { return kFlags; }

std::vector<std::string_view> QuestionsOf(const Flag& flag) {
  std::vector<std::string_view> words;
  for (std::string_view rest = flag.questions; !rest.empty();) {
    const std::size_t blank = rest.find(' ');
    words.push_back(rest.substr(0, blank));
    rest.remove_prefix(blank == std::string_view::npos ? rest.size() : blank + 1);
  }
  return words;
}

bool GoesWith(const Flag& flag, answers::Question question) {
  const auto words = QuestionsOf(flag);
  const std::string_view typed = answers::EntryOf(question).typed;
  return std::find(words.begin(), words.end(), typed) != words.end();
}

const Flag* FindFlag(std::string_view name) {
  const auto found = std::find_if(kFlags.begin(), kFlags.end(),
                                  [name](const Flag& flag) { return flag.name == name; });
  return found == kFlags.end() ? nullptr : &*found;
}

std::vector<std::string> FlagNames(answers::Question question) {
  std::vector<std::string> names;
  for (const Flag& flag : kFlags) {
    if (GoesWith(flag, question)) names.push_back("--" + std::string(flag.name));
  }
  return names;
}

}  // namespace offplumb::cli
