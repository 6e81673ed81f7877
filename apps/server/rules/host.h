/// \file
/// Whether a request was meant for this server. A page of somebody else's can make a browser send
/// requests here under a name of its own (DNS rebinding); such a request names that host.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace offplumb::server {

/// Where a connection came in.
struct Here {
  std::string address;     ///< Of this computer, without brackets: "127.0.0.1", "::1".
  std::uint16_t port = 0;  ///< The one listened on.
};

/// \param host the value of a Host header, or the authority of a target: "localhost:8470".
/// \return whether it is localhost, 127.0.0.1, [::1] or the address the connection came in at,
/// with the port listened on. Without a port it means port 80.
[[nodiscard]] bool IsOurs(std::string_view host, const Here& here);

/// \return an address as it stands in a URL: with brackets around one that holds colons.
[[nodiscard]] std::string InUrl(std::string_view address);

}  // namespace offplumb::server
