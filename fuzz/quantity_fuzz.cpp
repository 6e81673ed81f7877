// A quantity may be written any way: reading it ends in a finite number or in a problem that says
// what to write.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "answers/units/display.h"
#include "answers/units/quantity.h"
#include "engine/tackle/catalogue.h"

namespace {

void Require(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace offplumb;
  if (size == 0) return 0;
  const auto units = answers::Units();
  const auto dimension = units[data[0] % units.size()].dimension;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const auto quantity = answers::ParseQuantityWithin(text, dimension, {-100, 1e9}, "fuzz");
  if (quantity) {
    Require(*quantity >= -100 && *quantity <= 1e9);
    Require(
        !answers::FormatQuantity(*quantity, answers::Shown::kDepth, answers::DisplayUnits::kFeet)
             .empty());
  } else {
    Require(!quantity.error().message.empty() && !quantity.error().remedy.empty());
  }
  const auto pull = answers::ParsePull(text, "fuzz");
  Require(!pull || (pull->force_N > 0 && pull->speed_mps > 0));
  const auto line = tackle::MakeLine(text);
  Require(!line || line->diameter_m > 0);
  return 0;
}
