/// \file
/// What there is to ask, and with what: for a page that builds its lists from it.
#pragma once

#include <string>

namespace offplumb::answers {

/// \return the answer to "about", as one line of JSON: version, questions, units shown, limits,
/// catalogue, defaults and cautions. Keys: docs/json.md.
[[nodiscard]] std::string AboutJson();

}  // namespace offplumb::answers
