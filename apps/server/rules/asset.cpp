#include "apps/server/rules/asset.h"

#include <algorithm>

namespace offplumb::server {

const Asset* FindAsset(std::span<const Asset> assets, std::string_view path) {
  if (path == "/") path = "/index.html";
  const auto found = std::find_if(assets.begin(), assets.end(),
                                  [path](const Asset& asset) { return asset.path == path; });
  return found == assets.end() ? nullptr : &*found;
}

}  // namespace offplumb::server
