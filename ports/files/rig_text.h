/// \file
/// Writing a rig file: the canonical TOML text of a document, and which line holds which key.
#pragma once

#include <string>
#include <vector>

#include "ports/files/toml_document.h"

namespace offplumb::ports {

/// A document in the form that is exported: the keys of each table in the manual's order, unknown
/// ones behind them, and a part that was written as a text "x" as the table { from = "x" }. Lists
/// keep their order, values stay as they are.
[[nodiscard]] TomlValue CanonicalRig(const TomlValue& document);

/// A written rig file.
struct WrittenRig {
  std::string text;  ///< UTF-8, every line ended by a line feed.
  std::vector<std::string>
      paths;  ///< Line by line the key it holds, "riggers[0].clips[1].setback";
              ///< empty for a remark or a blank line.

  /// \return the key that a line holds; empty for none. \param line 1-based.
  [[nodiscard]] std::string PathAt(int line) const;
};

/// Writes a canonical document. Any document is written, one with unknown keys or values of the
/// wrong kind too: reading it back then says what is wrong with it.
/// \param document a table without dates, its texts UTF-8.
[[nodiscard]] WrittenRig WriteRig(const TomlValue& document);

}  // namespace offplumb::ports
