/// \file
/// Rig files for requests in JSON: what the page, the server and `offplumb ask` give to
/// answers::ReplyTo.
#pragma once

#include "answers/asking/rig_texts.h"

namespace offplumb::ports {

/// \return the readers of rig files. The last few rigs that were read are remembered; one copy a
/// thread.
[[nodiscard]] answers::RigTexts RigTextsOfToml();

}  // namespace offplumb::ports
