#include "answers/questions/series.h"

#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "answers/units/words.h"

namespace offplumb::answers {
namespace {

constexpr std::string_view kTo = " to ";
constexpr std::string_view kBy = " by ";

Expected<std::vector<double>> ParseList(std::string_view text, Dimension dimension, Range range,
                                        std::string_view subject) {
  std::vector<double> values;
  for (bool more = true; more && values.size() <= kMostOfSeries;) {
    const std::size_t comma = text.find(',');
    const auto value = ParseQuantityWithin(text.substr(0, comma), dimension, range, subject);
    if (!value) return tl::unexpected<Problem>(value.error());
    values.push_back(*value);
    more = comma != std::string_view::npos;
    if (more) text.remove_prefix(comma + 1);
  }
  return values;
}

Expected<std::vector<double>> Steps(double first, double last, double step, std::string_view text,
                                    std::string_view subject) {
  // A hair of slack, so that "1.5 mph to 4.5 mph by 0.1 mph" ends where it says.
  const double count = std::floor((last - first) / step + 1e-9) + 1;
  if (!(step > 0 && last >= first && count <= static_cast<double>(kMostOfSeries))) {
    return BadInput(
        std::string(subject),
        fmt::format("{} does not lead from its first value up to its last in 1 to {} steps.",
                    Quoted(text), kMostOfSeries),
        "Write it like \"20 ft to 240 ft by 20 ft\".");
  }
  std::vector<double> values;
  for (int i = 0; i < static_cast<int>(count); ++i) values.push_back(first + i * step);
  return values;
}

}  // namespace

Expected<std::vector<double>> ParseSeries(std::string_view text, Dimension dimension, Range range,
                                          std::string_view subject) {
  const std::size_t to = text.find(kTo);
  if (to == std::string_view::npos) return ParseList(text, dimension, range, subject);
  const std::size_t by = text.find(kBy, to);
  if (by == std::string_view::npos) {
    return BadInput(std::string(subject), fmt::format("{} has no step.", Quoted(text)),
                    "Write it like \"20 ft to 240 ft by 20 ft\".");
  }
  const std::size_t second = to + kTo.size();
  const auto first = ParseQuantityWithin(text.substr(0, to), dimension, range, subject);
  if (!first) return tl::unexpected<Problem>(first.error());
  const auto last =
      ParseQuantityWithin(text.substr(second, by - second), dimension, range, subject);
  if (!last) return tl::unexpected<Problem>(last.error());
  const auto step = ParseQuantity(text.substr(by + kBy.size()), dimension, subject);
  if (!step) return tl::unexpected<Problem>(step.error());
  return Steps(*first, *last, *step, text, subject);
}

}  // namespace offplumb::answers
