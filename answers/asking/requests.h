/// \file
/// From a request in JSON to the typed requests: values read and checked, nothing solved yet. Keys:
/// docs/json.md.
#pragma once

#include <string>
#include <string_view>

#include "answers/asking/request_fields.h"
#include "answers/asking/rig_texts.h"
#include "answers/questions/card.h"
#include "answers/questions/compare.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"
#include "answers/questions/two_way.h"

namespace offplumb::answers {

/// A request and the rigs it came from.
template <typename Request>
struct Asked {
  Request request;
  std::vector<RigText> rigs;
};

/// Each returns the first problem found: named by its key, or by the line of a rig's text.
[[nodiscard]] Expected<Asked<DepthRequest>> ReadDepthRequest(const JsonValue& json,
                                                             const RigTexts& texts);
[[nodiscard]] Expected<Asked<CountRequest>> ReadCountRequest(const JsonValue& json,
                                                             const RigTexts& texts);
[[nodiscard]] Expected<Asked<CardRequest>> ReadCardRequest(const JsonValue& json,
                                                           const RigTexts& texts);
[[nodiscard]] Expected<Asked<CompareRequest>> ReadCompareRequest(const JsonValue& json,
                                                                 const RigTexts& texts);

/// This one needs no rig.
[[nodiscard]] Expected<Asked<TwoWayRequest>> ReadTwoWayRequest(const JsonValue& json);

}  // namespace offplumb::answers
