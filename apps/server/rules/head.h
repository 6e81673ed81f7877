/// \file
/// The head of a response, as it goes over the wire.
#pragma once

#include <ctime>
#include <span>
#include <string>

#include "apps/server/rules/message.h"

namespace offplumb::server {

/// What every response says to the browser: the page may fetch and run only what this server gives
/// it, nobody may put it in a frame, and of the devices it may ask for place, motion and a screen
/// that stays on.
[[nodiscard]] std::span<const Header> SafetyHeaders();

/// \return status line, headers and the empty line. \param keep_alive whether the connection stays.
/// \param now seconds since 1970, UTC, for the Date header.
[[nodiscard]] std::string WriteHead(const Response& response, bool keep_alive, std::time_t now);

}  // namespace offplumb::server
