#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "answers/units/quantity.h"

namespace offplumb::answers {
namespace {

/// Any unit of the table.
rc::Gen<const Unit*> AnyUnit() {
  return rc::gen::map(rc::gen::inRange<std::size_t>(0, Units().size()),
                      [](std::size_t i) { return &Units()[i]; });
}

RC_GTEST_PROP(QuantityProperty, WhatIsWrittenInAUnitReadsBackToTheLastDigits, ()) {
  const Unit* unit = *AnyUnit();
  const double number = *rc::gen::inRange(-1000000, 1000000) / 128.0;
  const std::string written = fmt::format("{} {}", number, unit->name);
  const auto si = ParseQuantity(written, unit->dimension, "x");
  RC_ASSERT(si.has_value());
  // One product and one sum on the way there, one difference and one quotient back: a few roundings
  // of the larger.
  const double back = (*si - unit->offset) / unit->factor;
  const double scale = std::max(1.0, std::abs(number) + std::abs(unit->offset / unit->factor));
  RC_ASSERT(std::abs(back - number) <= 8 * 2.3e-16 * scale);
}

RC_GTEST_PROP(QuantityProperty, AnyTextGivesAFiniteNumberOrAProblemThatSaysSo,
              (const std::string& text)) {
  const Unit* unit = *AnyUnit();
  const auto si = ParseQuantity(text, unit->dimension, "x");
  if (si) {
    RC_ASSERT(std::isfinite(*si));
  } else {
    RC_ASSERT(!si.error().message.empty());
    RC_ASSERT(!si.error().remedy.empty());
  }
}

RC_GTEST_PROP(QuantityProperty, AUnitOfNoDimensionIsRefused, ()) {
  const Unit* unit = *AnyUnit();
  const std::string written = fmt::format("1 {}x", unit->name);
  RC_ASSERT(!ParseQuantity(written, unit->dimension, "x").has_value());
}

}  // namespace
}  // namespace offplumb::answers
