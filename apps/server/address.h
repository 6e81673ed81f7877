/// \file
/// The addresses this program can listen on.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace offplumb::server {

/// \param text "127.0.0.1", "::1", "[::1]" or "localhost".
/// \return the address without brackets, in its usual form; nothing when it is none.
[[nodiscard]] std::optional<std::string> ReadAddress(const std::string& text);

/// \param address as `ReadAddress` gives it.
/// \return whether only programs on this computer can reach it.
[[nodiscard]] bool IsLoopback(const std::string& address);

/// \return where a browser on this computer finds the page, ending in a slash. For an address that
/// stands for all of them, 0.0.0.0 or ::, that is this computer's own.
[[nodiscard]] std::string UrlOf(const std::string& address, std::uint16_t port);

}  // namespace offplumb::server
