/// \file
/// The rig file: a rig as a person writes it, in TOML, with a unit on every quantity. Format:
/// docs/rig-file.md.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "engine/problem.h"
#include "engine/tackle/rig.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {

/// A rig and where each of its parts stands in its file.
struct RigFile {
  tackle::Rig rig;
  std::string file;       ///< As messages name it.
  bool invented = false;  ///< The file says that its rig is an invented example.
  std::map<std::string, int>
      lines;  ///< 1-based, by key: "riggers[0].clips[1].setback". Clips from the lowest up.

  /// \return the line on which a key stands; of the part that holds it if the key is not written; 0
  /// if neither.
  [[nodiscard]] int LineOf(std::string_view key) const;
};

/// A problem of a rig and the key at fault.
struct RigProblem {
  Problem problem;
  std::string path;  ///< "riggers[0].clips[1].setback", lists counted as they are written; empty
                     ///< where the text as a whole is at fault.
};

/// Reads a rig from a TOML text that is parsed already. \param file_name for messages.
[[nodiscard]] tl::expected<RigFile, RigProblem> ReadRigDocument(const TomlValue& document,
                                                                std::string_view file_name);

/// Reads a rig. No file is touched.
/// \param text the whole file, UTF-8. \param file_name for messages.
/// \return the rig with every range checked (docs/rig-file.md lists them), clips sorted from the
/// lowest up; else the
///         first problem found, with file, line, key, value, allowed range and what to do.
[[nodiscard]] Expected<RigFile> ReadRigText(std::string_view text, std::string_view file_name);

/// Reads a rig from a file of at most 1 MB.
[[nodiscard]] Expected<RigFile> ReadRigFile(const std::string& path);

}  // namespace offplumb::ports
