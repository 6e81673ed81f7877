/// \file
/// docs/coefficients.md as text, from the engine's own lists. write_coefficients.cpp writes it; a
/// test of tests/engine/plan compares it with the page that is committed.
#pragma once

#include <string>
#include <vector>

#include <fmt/format.h>

#include "engine/learn/coefficients.h"
#include "engine/plan/coefficients.h"
#include "engine/tackle/catalogue.h"
#include "engine/tow/coefficients.h"

namespace offplumb::tools {

/// One section of the page: a room of the engine, or two that keep one list.
struct Section {
  std::string title;
  std::vector<tackle::Coefficient> coefficients;
};

inline std::vector<Section> Sections() {
  return {
      {"Water and tackle", tackle::Coefficients()},
      {"The tree (tow)", tow::Coefficients()},
      {"The prior (learn)", learn::Coefficients()},
      {"Questions (plan)", plan::Coefficients()},
  };
}

/// "published: ..." or the mark alone.
inline std::string SourceOrMark(const tackle::Coefficient& coefficient) {
  const std::string mark(tackle::MarkText(coefficient.mark));
  return coefficient.source.empty() ? mark : mark + ": " + coefficient.source;
}

inline std::string SectionText(const Section& section) {
  std::string text = "\n## " + section.title + "\n\n";
  text += "| what | value | unit | source or mark |\n|---|---|---|---|\n";
  for (const tackle::Coefficient& c : section.coefficients) {
    text += fmt::format("| {} | {:.10g} | {} | {} |\n", c.name, c.value, c.unit, SourceOrMark(c));
  }
  return text;
}

/// The whole page.
inline std::string CoefficientsPage() {
  std::string text =
      "# Coefficients and defaults\n\n"
      "Every coefficient and default of the engine, in SI units. This page is made from the "
      "engine's own lists;\n"
      "do not edit it. `cmake --build build/release --target coefficients_page` writes it anew, "
      "and a test fails\n"
      "when it differs from the engine or when a figure has neither source nor mark.\n\n"
      "- **published**: the publication is named.\n"
      "- **worked out**: follows from definitions or geometry, and it says how.\n"
      "- **from memory**: a published value recalled, not looked up again.\n"
      "- **common practice, no source**: a habit of the trade.\n"
      "- **judgement**: ours, and it says on what grounds.\n";
  for (const Section& section : Sections()) text += SectionText(section);
  return text;
}

}  // namespace offplumb::tools
