/// \file
/// Rig files as the questions meet them: texts, read by whoever knows their format.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "answers/asking/json_value.h"
#include "answers/asking/reply.h"
#include "engine/problem.h"
#include "engine/tackle/rig.h"

namespace offplumb::answers {

/// A rig as it was read from a text.
struct RigText {
  tackle::Rig rig;
  bool invented = false;          ///< The text says that its rig is an invented example.
  std::vector<int> rigger_lines;  ///< 1-based: where each of its riggers starts. As many.
};

/// Reads a rig. \return the rig, or a problem with its line.
using RigReader = std::function<Expected<RigText>(std::string_view toml)>;

/// How many rigs are remembered: those of a comparison on a page. Judgement.
inline constexpr std::size_t kRememberedRigs = 8;

/// \return a reader that remembers the last kRememberedRigs rigs it read, since a page asks the
/// same one again and again while a finger drags. Texts with a fault are read anew. Not for several
/// threads at once.
[[nodiscard]] RigReader Remembering(RigReader reader);

/// What is done with the text of a rig file, given by the program: nothing here knows its format.
struct RigTexts {
  RigReader read;  ///< Must be there.
  /// Answer "rig_read" and "rig_write". Must be there.
  std::function<Reply(std::string_view toml)> describe;
  std::function<Reply(const JsonValue& document)> write;
};

}  // namespace offplumb::answers
