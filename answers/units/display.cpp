#include "answers/units/display.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "answers/units/unit_table.h"
#include "answers/units/words.h"

namespace offplumb::answers {
namespace {

/// In which unit and with how many digits after the point something is shown.
struct Rule {
  Dimension dimension = Dimension::kLength;
  std::string_view unit;
  int decimals = 0;
  double whole_from = 1e300;  ///< From here on, in that unit, no digits after the point.
};

/// One row of the list of rules: something shown in feet, in feet and knots, in metric units.
struct Row {
  Shown shown;
  std::array<Rule, 3> rules;
};

constexpr Rule kFeetDepth{Dimension::kLength, "ft", 0};
constexpr Rule kFeetLength{Dimension::kLength, "ft", 1};
constexpr Rule kMillimetres{Dimension::kLength, "mm", 2};
constexpr Rule kPoundForce{Dimension::kForce, "lb", 1, 10};
constexpr Rule kPounds{Dimension::kMass, "lb", 1};
constexpr Rule kDegrees{Dimension::kAngle, "deg", 0};
constexpr Rule kSeconds{Dimension::kTime, "s", 0};

constexpr auto kRows = std::to_array<Row>({
    {Shown::kDepth, {kFeetDepth, kFeetDepth, Rule{Dimension::kLength, "m", 1}}},
    {Shown::kLength, {kFeetLength, kFeetLength, Rule{Dimension::kLength, "m", 2}}},
    {Shown::kDiameter, {kMillimetres, kMillimetres, kMillimetres}},
    {Shown::kSpeed,
     {Rule{Dimension::kSpeed, "mph", 1}, Rule{Dimension::kSpeed, "kn", 1},
      Rule{Dimension::kSpeed, "m/s", 2}}},
    {Shown::kForce, {kPoundForce, kPoundForce, Rule{Dimension::kForce, "N", 1, 10}}},
    {Shown::kMass, {kPounds, kPounds, Rule{Dimension::kMass, "kg", 1}}},
    {Shown::kAngle, {kDegrees, kDegrees, kDegrees}},
    {Shown::kTime, {kSeconds, kSeconds, kSeconds}},
});

const Rule& RuleFor(Shown shown, DisplayUnits units) {
  const auto row = std::find_if(kRows.begin(), kRows.end(),
                                [shown](const Row& candidate) { return candidate.shown == shown; });
  return row->rules[static_cast<std::size_t>(units)];
}

/// A number with a fixed count of digits; "-0" is written "0".
std::string Fixed(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
  return text;
}

/// Digits after the point for values about as large as this one.
int DecimalsFor(double value, const Rule& rule) {
  return std::abs(value) >= rule.whole_from ? 0 : rule.decimals;
}

std::string Digits(double value, int decimals) {
  return std::isfinite(value) ? Fixed(value, decimals) : "-";
}

double In(double si, const Rule& rule) {
  const Unit* unit = FindUnit(rule.dimension, rule.unit);
  return (si - unit->offset) / unit->factor;
}

}  // namespace

Expected<DisplayUnits> ParseDisplayUnits(std::string_view text) {
  const std::string_view word = Trim(text);
  for (std::size_t i = 0; i < kUnitWords.size(); ++i) {
    if (SameWord(word, kUnitWords[i])) return static_cast<DisplayUnits>(i);
  }
  return BadInput("units", fmt::format("{} is not a choice of units.", Quoted(text)),
                  "Write feet (feet, pounds, mph), knots (feet, pounds, knots) or metric.");
}

std::string_view ShownUnit(Shown shown, DisplayUnits units) { return RuleFor(shown, units).unit; }

ShownAs HowShown(Shown shown, DisplayUnits units) {
  const Rule& rule = RuleFor(shown, units);
  ShownAs as{rule.unit, FindUnit(rule.dimension, rule.unit)->factor, rule.decimals, std::nullopt};
  if (rule.whole_from < Rule{}.whole_from) as.whole_from = rule.whole_from;
  return as;
}

double InShownUnit(double si, Shown shown, DisplayUnits units) {
  return In(si, RuleFor(shown, units));
}

std::string FormatNumber(double si, Shown shown, DisplayUnits units) {
  const Rule& rule = RuleFor(shown, units);
  const double value = In(si, rule);
  return Digits(value, DecimalsFor(value, rule));
}

std::string FormatQuantity(double si, Shown shown, DisplayUnits units) {
  return fmt::format("{} {}", FormatNumber(si, shown, units), ShownUnit(shown, units));
}

std::string FormatBand(const Band& band, Shown shown, DisplayUnits units) {
  const Rule& rule = RuleFor(shown, units);
  const int decimals = DecimalsFor(In(band.median, rule), rule);
  const std::string median = Digits(In(band.median, rule), decimals);
  const std::string low = Digits(In(band.low, rule), decimals);
  const std::string high = Digits(In(band.high, rule), decimals);
  const std::string value = fmt::format("{} {}", median, rule.unit);
  if (low == median && high == median) return value;
  return fmt::format("{}, {} to {}", value, low, high);
}

std::optional<std::string> GiveOrTake(const Band& band, Shown shown, DisplayUnits units) {
  const double below = band.median - band.low;
  const double above = band.high - band.median;
  if (!(std::abs(above - below) < 0.2 * std::max(above, below))) return std::nullopt;
  const Rule& rule = RuleFor(shown, units);
  const int decimals = DecimalsFor(In(band.median, rule), rule);
  const std::string half = Digits((In(band.high, rule) - In(band.low, rule)) / 2, decimals);
  if (half.find_first_not_of("0.") != std::string::npos) return "give or take " + half;
  return "give or take less than " + Fixed(std::pow(10.0, -decimals), decimals);
}

}  // namespace offplumb::answers
