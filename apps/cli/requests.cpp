#include "apps/cli/requests.h"

#include <cmath>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "answers/units/quantity.h"
#include "answers/units/words.h"
#include "apps/cli/flag_reader.h"
#include "ports/files/current_file.h"
#include "ports/files/water_text.h"

namespace offplumb::cli {
namespace {

using answers::Dimension;
using answers::Range;

constexpr Range kSpeeds{0, plan::kLargestSpeed_mps};
constexpr Range kCounts{0, plan::kLargestCount_m};
// From a tenth of a foot: a depth of nothing is no wish.
constexpr Range kDepths{0.03048, plan::kLargestCount_m};

std::vector<ports::RigFile> ReadRigs(const Arguments& arguments, FlagReader& reader) {
  reader.Require("rig", "The rig file", "examples/rigs/one-rigger.toml");
  std::vector<ports::RigFile> rigs;
  const auto given = arguments.values.find("rig");
  if (given == arguments.values.end()) return rigs;
  for (const std::string& path : given->second) {
    auto rig = reader.Keep(ports::ReadRigFile(path));
    if (rig) rigs.push_back(std::move(*rig));
  }
  return rigs;
}

answers::RigChoice Choice(const ports::RigFile& file, const Arguments& arguments) {
  answers::RigChoice choice;
  choice.rig = file.rig;
  choice.rigger = arguments.Value("rigger").value_or("");
  choice.invented = file.invented;
  return choice;
}

bool IsFile(const std::string& path) {
  std::error_code ignored;
  return std::filesystem::exists(path, ignored);
}

/// What "0.4 kn" or "0.4 kn from 200" should have been.
Problem WithoutToward(std::string_view text) {
  constexpr std::string_view kFrom = " from ";
  const std::size_t from = text.find(kFrom);
  std::string toward = "200";
  if (from != std::string_view::npos) {
    const auto degrees = answers::ParseNumber(text.substr(from + kFrom.size()), "current");
    if (degrees) toward = fmt::format("{:.4g}", std::fmod(std::fmod(*degrees, 360) + 540, 360));
  }
  const std::string speed(answers::Trim(text.substr(0, from)));
  return {ProblemKind::kBadInput,
          "--current",
          "Say which way the water goes:",
          fmt::format("{} (degrees from true north, where it goes to).",
                      answers::Quoted(speed + " toward " + toward)),
          {},
          0};
}

/// The slips that are made with a current in a phrase; a file is left to its reader.
std::optional<Problem> SlipOfCurrent(const std::string& text) {
  constexpr std::string_view kToward = " toward ";
  const std::size_t at = text.find(kToward);
  if (at == std::string::npos) {
    const bool digit = !text.empty() && text[0] >= '0' && text[0] <= '9';
    if (digit && !IsFile(text)) return WithoutToward(text);
    return std::nullopt;
  }
  const std::string_view way = answers::Trim(std::string_view(text).substr(at + kToward.size()));
  if (way.empty() || way.find_first_not_of("NESWnesw") != std::string_view::npos) {
    return std::nullopt;
  }
  return Problem{ProblemKind::kBadInput,
                 "--current",
                 fmt::format("{} is no number of degrees.", answers::Quoted(way)),
                 "Write degrees: north is 0, east 90.",
                 {},
                 0};
}

Expected<water::Current> ReadCurrent(const std::string& text) {
  const auto slip = SlipOfCurrent(text);
  if (slip) return tl::unexpected<Problem>(*slip);
  return ports::ReadCurrent(text);
}

answers::Sea ReadSea(const Arguments& arguments, FlagReader& reader) {
  answers::Sea sea;
  if (arguments.Has("over-ground")) sea.speed_kind = plan::SpeedKind::kOverGround;
  sea.speed_mps = reader.Quantity("speed", Dimension::kSpeed, kSpeeds);
  sea.course_rad = reader.Angle("course");
  sea.heading_rad = reader.Angle("heading");
  if (const auto text = arguments.Value("current")) {
    sea.current = reader.Keep(ReadCurrent(*text)).value_or(water::Current{});
  }
  if (const auto text = arguments.Value("water")) {
    sea.water = reader.Keep(ports::ParseWater(*text));
  }
  return sea;
}

template <typename Request>
Asked<Request> ReadShared(const Arguments& arguments, FlagReader& reader) {
  Asked<Request> asked;
  asked.request.wanted = ReadWanted(arguments, reader);
  asked.request.sea = ReadSea(arguments, reader);
  asked.rigs = ReadRigs(arguments, reader);
  return asked;
}

/// The same for a question about one rig.
template <typename Request>
Asked<Request> ReadOneRig(const Arguments& arguments, FlagReader& reader) {
  auto asked = ReadShared<Request>(arguments, reader);
  if (!asked.rigs.empty()) asked.request.rig = Choice(asked.rigs.front(), arguments);
  return asked;
}

template <typename Request>
Expected<Asked<Request>> Finish(Asked<Request> asked, const FlagReader& reader) {
  if (reader.first()) return tl::unexpected<Problem>(*reader.first());
  return asked;
}

/// Rigs of one name are told apart by their file.
std::string NameApart(const std::vector<ports::RigFile>& rigs, std::size_t i) {
  for (std::size_t j = 0; j < rigs.size(); ++j) {
    if (j != i && rigs[j].rig.name == rigs[i].rig.name && rigs[j].file != rigs[i].file) {
      return fmt::format("{} ({})", rigs[i].rig.name, rigs[i].file);
    }
  }
  return rigs[i].rig.name;
}

}  // namespace

Expected<Asked<answers::DepthRequest>> ReadDepthRequest(const Arguments& arguments) {
  FlagReader reader(arguments);
  reader.Require("count", "The count", "\"100 ft\"");
  auto asked = ReadOneRig<answers::DepthRequest>(arguments, reader);
  asked.request.count_m = reader.Quantity("count", Dimension::kLength, kCounts).value_or(0);
  return Finish(std::move(asked), reader);
}

Expected<Asked<answers::CountRequest>> ReadCountRequest(const Arguments& arguments) {
  FlagReader reader(arguments);
  reader.Require("depth", "The wanted depth", "\"90 ft\"");
  auto asked = ReadOneRig<answers::CountRequest>(arguments, reader);
  asked.request.depth_m = reader.Quantity("depth", Dimension::kLength, kDepths).value_or(0);
  const bool lure = reader.SecondWord("of", "ball", "lure", false);
  asked.request.of = lure ? plan::DepthOf::kLure : plan::DepthOf::kBall;
  asked.request.clip = arguments.Value("clip").value_or("");
  if (arguments.Has("clip") && !arguments.Has("of")) asked.request.of = plan::DepthOf::kLure;
  return Finish(std::move(asked), reader);
}

Expected<Asked<answers::CardRequest>> ReadCardRequest(const Arguments& arguments) {
  FlagReader reader(arguments);
  auto asked = ReadOneRig<answers::CardRequest>(arguments, reader);
  asked.request.counts_m = reader.Series("counts", Dimension::kLength, kCounts);
  asked.request.speeds_mps = reader.Series("speeds", Dimension::kSpeed, kSpeeds);
  return Finish(std::move(asked), reader);
}

Expected<Asked<answers::CompareRequest>> ReadCompareRequest(const Arguments& arguments) {
  FlagReader reader(arguments);
  auto asked = ReadShared<answers::CompareRequest>(arguments, reader);
  for (std::size_t i = 0; i < asked.rigs.size(); ++i) {
    asked.request.rigs.push_back(Choice(asked.rigs[i], arguments));
    asked.request.rigs.back().rig.name = NameApart(asked.rigs, i);
  }
  asked.request.counts_m = reader.Series("counts", Dimension::kLength, kCounts);
  asked.request.gains_count_m = reader.Quantity("count", Dimension::kLength, kCounts);
  return Finish(std::move(asked), reader);
}

void Locate(const std::vector<ports::RigFile>& rigs, Problem& problem) {
  if (!problem.file.empty()) return;
  for (const ports::RigFile& file : rigs) {
    for (std::size_t i = 0; i < file.rig.riggers.size(); ++i) {
      const std::string& name = file.rig.riggers[i].name;
      if (problem.subject != "rigger \"" + name + "\"") continue;
      problem.file = file.file;
      problem.line = file.LineOf(fmt::format("riggers[{}]", i));
      return;
    }
  }
}

}  // namespace offplumb::cli
