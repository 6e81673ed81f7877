/// \file
/// A rig file for a form: read into a document of tables, lists and texts, and written from it.
/// What the questions "rig_read" and "rig_write" answer; docs/rig-file.md, "Export and editing".
#pragma once

#include <string_view>

#include "answers/asking/json_value.h"
#include "answers/asking/reply.h"

namespace offplumb::ports {

/// What a rig is called in answers where neither its text nor a file gives it a name.
inline constexpr std::string_view kUnnamedRig = "rig";

/// Reads a rig file's text, at most 1 MB, as ReadRigText does. No file is touched.
/// \return JSON on one line: `toml`, its canonical text; `document`, what it holds; `facts`, what a
/// page shows of the rig, in SI. A text with a fault gives `problem`: with the line, and as `path`
/// the key at fault. Never throws for want of sense in the text.
[[nodiscard]] answers::Reply ReplyToRigRead(std::string_view toml);

/// Writes a rig file from a document as ReplyToRigRead gives it, edited or made anew, and reads
/// what was written. \param document an object. A key whose value is null or "" is left out; a
/// number keeps its value, a text its letters. \return the same as ReplyToRigRead for the text
/// written. A `problem` has no line; its `path` counts lists as `document` does:
/// "riggers[0].clips[1].setback".
[[nodiscard]] answers::Reply ReplyToRigWrite(const answers::JsonValue& document);

}  // namespace offplumb::ports
