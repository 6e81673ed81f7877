/// \file
/// What this server says to a request: a file of the page, or in plain words why not.
#pragma once

#include <span>

#include "apps/server/rules/asset.h"
#include "apps/server/rules/host.h"
#include "apps/server/rules/message.h"

namespace offplumb::server {

/// Answers a request that could be read. Never fails: a refusal is an answer too.
/// 200, or 304 when the browser has the file already; 400 for a missing Host or a target that could
/// mean another file than it says; 404; 405 for anything but GET and HEAD; 413 for a request with a
/// body; 421 for one that was meant for another host.
[[nodiscard]] Response AnswerTo(const Request& request, const Here& here,
                                std::span<const Asset> assets);

/// Why a request could not be read at all.
enum class Unreadable {
  kNoHttp,    ///< It is not HTTP/1.
  kTooLarge,  ///< Its line and headers are longer than any browser's.
};

/// \return 400 or 431; the connection ends with it.
[[nodiscard]] Response AnswerTo(Unreadable why);

}  // namespace offplumb::server
