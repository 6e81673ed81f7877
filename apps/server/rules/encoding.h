/// \file
/// Which form of a file a browser can take.
#pragma once

#include <string_view>

namespace offplumb::server {

/// \param accept_encoding the value of that header; empty when there is none.
/// \return whether gzip is among what it takes (RFC 9110, section 12.5.3).
[[nodiscard]] bool AcceptsGzip(std::string_view accept_encoding);

}  // namespace offplumb::server
