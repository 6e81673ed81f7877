/// \file
/// What a request line asks for.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace offplumb::server {

/// The target of a request, taken apart (RFC 9112, section 3.2).
struct Target {
  std::string authority;  ///< "localhost:8470" where the target names it; else empty.
  std::string path;       ///< Begins with "/", its escapes undone. The query is left out.
};

/// Reads a target: "/a%20b?c" or "http://localhost:8470/a".
/// \return nothing when it is of another form, or when its path could mean another file than it
/// says: "." or ".." as a step, an empty step, a backslash, a control character, an escaped slash,
/// an escape that is broken or that hides another escape.
[[nodiscard]] std::optional<Target> ReadTarget(std::string_view text);

}  // namespace offplumb::server
