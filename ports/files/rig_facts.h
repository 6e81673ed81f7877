/// \file
/// What a page shows of a rig, as JSON.
#pragma once

#include "answers/questions/json_writer.h"
#include "ports/files/rig_file.h"
#include "ports/files/rig_text.h"

namespace offplumb::ports {

/// Writes the facts of docs/json.md "rig_read" under the key "facts". \param file read from the
/// text of `written`, whose lines say where in the document each clip stands.
void WriteFacts(const RigFile& file, const WrittenRig& written, answers::JsonWriter& json);

}  // namespace offplumb::ports
