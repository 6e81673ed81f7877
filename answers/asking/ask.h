/// \file
/// The one function behind the page, the local server and `offplumb ask`: a question as JSON in,
/// its answer as JSON out.
#pragma once

#include <string>
#include <string_view>

#include "answers/asking/reply.h"
#include "answers/asking/rig_texts.h"

namespace offplumb::answers {

/// Answers one request. Never throws: what is thrown on the way becomes a problem of kind kFault.
/// \param request_json an object with "question" and the keys of docs/json.md. Any bytes are safe.
[[nodiscard]] Reply ReplyTo(std::string_view request_json, const RigTexts& texts);

/// The JSON of ReplyTo alone.
[[nodiscard]] inline std::string Ask(std::string_view request_json, const RigTexts& texts) {
  return ReplyTo(request_json, texts).json;
}

}  // namespace offplumb::answers
