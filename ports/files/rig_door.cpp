#include "ports/files/rig_door.h"

#include <cstddef>
#include <utility>

#include <fmt/format.h>

#include "ports/files/rig_document.h"
#include "ports/files/rig_file.h"

namespace offplumb::ports {
namespace {

Expected<answers::RigText> Read(std::string_view toml) {
  auto file = ReadRigText(toml, kUnnamedRig);
  if (!file) return tl::unexpected<Problem>(file.error());
  answers::RigText text;
  for (std::size_t i = 0; i < file->rig.riggers.size(); ++i) {
    text.rigger_lines.push_back(file->LineOf(fmt::format("riggers[{}]", i)));
  }
  text.rig = std::move(file->rig);
  text.invented = file->invented;
  return text;
}

}  // namespace

answers::RigTexts RigTextsOfToml() {
  return {answers::Remembering(Read), ReplyToRigRead, ReplyToRigWrite};
}

}  // namespace offplumb::ports
