/// \file
/// How long a browser may keep a file, and whether the one it has is still good.
#pragma once

#include <string>
#include <string_view>

namespace offplumb::server {

/// \return the Cache-Control of a file. One under /assets/ whose name ends in a hash of its
/// content, "page-Dk3x9_aB.js", never changes; any other is asked for anew each time.
[[nodiscard]] std::string_view CacheControl(std::string_view path);

/// \return the entity tag of one form of a file, quotes included (RFC 9110, section 8.8.3).
/// \param hash of the content. \param gzip for the compressed form, which has other bytes.
[[nodiscard]] std::string EntityTag(std::string_view hash, bool gzip);

/// \param if_none_match the value of that header: "*" or a list of tags; empty when there is none.
/// \return whether a tag is in it. Weak marks do not count (RFC 9110, section 13.1.2).
[[nodiscard]] bool HasTag(std::string_view if_none_match, std::string_view tag);

}  // namespace offplumb::server
