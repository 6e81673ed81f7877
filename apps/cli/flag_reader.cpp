#include "apps/cli/flag_reader.h"

#include <fmt/format.h>

#include "answers/questions/series.h"
#include "answers/units/words.h"
#include "engine/constants.h"

namespace offplumb::cli {
namespace {

using answers::Dimension;
using answers::Range;

// A whole turn either way, a hair more so that "360 deg" is in.
constexpr Range kTurn{-2 * kPi - 1e-9, 2 * kPi + 1e-9};

}  // namespace

std::optional<double> FlagReader::Quantity(const std::string& flag, Dimension dimension,
                                           Range range) {
  const auto text = arguments_.Value(flag);
  if (!text) return std::nullopt;
  return Keep(answers::ParseQuantityWithin(*text, dimension, range, "--" + flag));
}

std::optional<double> FlagReader::Angle(const std::string& flag) {
  const auto text = arguments_.Value(flag);
  if (!text) return std::nullopt;
  return Keep(ParseAngle(*text, "--" + flag));
}

std::vector<double> FlagReader::Series(const std::string& flag, Dimension dimension, Range range) {
  const auto text = arguments_.Value(flag);
  if (!text) return {};
  return Keep(answers::ParseSeries(*text, dimension, range, "--" + flag))
      .value_or(std::vector<double>{});
}

bool FlagReader::SecondWord(const std::string& flag, std::string_view first,
                            std::string_view second, bool otherwise) {
  const auto text = arguments_.Value(flag);
  if (!text) return otherwise;
  if (answers::SameWord(*text, first)) return false;
  if (answers::SameWord(*text, second)) return true;
  Fail({ProblemKind::kBadInput,
        "--" + flag,
        fmt::format("{} is not a choice.", answers::Quoted(*text)),
        fmt::format("Write {} or {}.", first, second),
        {},
        0});
  return otherwise;
}

void FlagReader::Require(const std::string& flag, const std::string& what,
                         const std::string& example) {
  if (arguments_.Has(flag)) return;
  Fail({ProblemKind::kBadInput,
        "--" + flag,
        what + " is missing.",
        fmt::format("Give it: --{} {}.", flag, example),
        {},
        0});
}

Expected<double> ParseAngle(std::string_view text, const std::string& subject) {
  std::string written(answers::Trim(text));
  if (answers::ParseNumber(written, subject)) written += " deg";
  return answers::ParseQuantityWithin(written, Dimension::kAngle, kTurn, subject);
}

answers::Wanted ReadWanted(const Arguments& arguments, FlagReader& reader) {
  answers::Wanted wanted;
  wanted.bands = !reader.SecondWord("bands", "on", "off", false);
  if (const auto text = arguments.Value("units")) {
    wanted.units = reader.Keep(answers::ParseDisplayUnits(*text)).value_or(wanted.units);
  }
  return wanted;
}

}  // namespace offplumb::cli
