#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "apps/cli/flag_reader.h"
#include "apps/cli/requests.h"

namespace offplumb::cli {
namespace {

using answers::Dimension;
using answers::Range;

/// How long a leg is taken to be when it is not told: a minute, as the manual asks for.
constexpr double kUsualLeg_s = 60;

/// One value for each leg.
using Pair = std::array<double, 2>;

/// "3.1 mph toward 40".
struct OverGround {
  double speed_mps = 0;
  double course_rad = 0;
};

Expected<OverGround> ParseOverGround(std::string_view text, const std::string& subject) {
  constexpr std::string_view kToward = " toward ";
  const std::size_t at = text.find(kToward);
  if (at == std::string_view::npos) {
    return BadInput(subject,
                    fmt::format("{} does not say which way the boat went.", answers::Quoted(text)),
                    "Write speed and course over ground like \"3.1 mph toward 40\" (degrees from "
                    "true north).");
  }
  const auto speed = answers::ParseQuantityWithin(text.substr(0, at), Dimension::kSpeed,
                                                  {0, plan::kLargestGroundSpeed_mps}, subject);
  if (!speed) return tl::unexpected<Problem>(speed.error());
  const auto course = ParseAngle(text.substr(at + kToward.size()), subject);
  if (!course) return tl::unexpected<Problem>(course.error());
  return OverGround{*speed, *course};
}

void ReadOverGround(const Arguments& arguments, const std::string& flag, const std::string& what,
                    const std::string& example, FlagReader& reader, plan::Leg& leg) {
  reader.Require(flag, what, example);
  const auto text = arguments.Value(flag);
  if (!text) return;
  const auto read = reader.Keep(ParseOverGround(*text, "--" + flag));
  if (!read) return;
  leg.ground_speed_mps = read->speed_mps;
  leg.course_rad = read->course_rad;
}

/// One value that holds for both legs, or two.
std::optional<Pair> PairOf(const std::vector<double>& values, const std::string& flag,
                           FlagReader& reader) {
  if (values.empty()) return std::nullopt;
  if (values.size() <= 2) return Pair{values.front(), values.back()};
  reader.Fail({ProblemKind::kBadInput,
               "--" + flag,
               fmt::format("There are {} values, and two legs.", values.size()),
               "Give one value for both legs, or two: out, back.",
               {},
               0});
  return std::nullopt;
}

/// Two headings; degrees may be bare.
std::optional<Pair> ReadHeadings(const Arguments& arguments, FlagReader& reader) {
  const auto text = arguments.Value("headings");
  if (!text) return std::nullopt;
  const std::string_view words = *text;
  const std::size_t comma = words.find(',');
  if (comma == std::string_view::npos || words.find(',', comma + 1) != std::string_view::npos) {
    reader.Fail({ProblemKind::kBadInput,
                 "--headings",
                 fmt::format("{} is no pair of headings.", answers::Quoted(words)),
                 "Write both, out and back: --headings \"38, 219\".",
                 {},
                 0});
    return std::nullopt;
  }
  const auto out = reader.Keep(ParseAngle(words.substr(0, comma), "--headings"));
  const auto back = reader.Keep(ParseAngle(words.substr(comma + 1), "--headings"));
  if (!out || !back) return std::nullopt;
  return Pair{*out, *back};
}

}  // namespace

Expected<Asked<answers::TwoWayRequest>> ReadTwoWayRequest(const Arguments& arguments) {
  FlagReader reader(arguments);
  Asked<answers::TwoWayRequest> asked;
  plan::TwoLegs& legs = asked.request.legs;
  asked.request.wanted = ReadWanted(arguments, reader);
  ReadOverGround(arguments, "out", "The way out", "\"3.1 mph toward 40\"", reader, legs[0]);
  ReadOverGround(arguments, "back", "The way back", "\"2.3 mph toward 222\"", reader, legs[1]);
  const auto headings = ReadHeadings(arguments, reader);
  const auto series = [&](const std::string& flag, Dimension dimension, Range range) {
    return PairOf(reader.Series(flag, dimension, range), flag, reader);
  };
  const auto log =
      series("log", Dimension::kSpeed, {plan::kSlowestRun_mps, 2 * plan::kLargestSpeed_mps});
  const auto held = series("held", Dimension::kTime, {plan::kShortestLeg_s, plan::kLongestLeg_s});
  const auto spread = series("spread", Dimension::kSpeed, {0, plan::kLargestSpread_mps});
  for (std::size_t i = 0; i < legs.size(); ++i) {
    if (headings) legs[i].heading_rad = (*headings)[i];
    if (log) legs[i].log_mps = (*log)[i];
    if (spread) legs[i].spread_mps = (*spread)[i];
    legs[i].duration_s = held ? (*held)[i] : kUsualLeg_s;
  }
  if (reader.first()) return tl::unexpected<Problem>(*reader.first());
  return asked;
}

}  // namespace offplumb::cli
