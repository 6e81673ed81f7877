/// \file
/// The files of the page, as they lie inside the program.
#pragma once

#include <span>
#include <string_view>

namespace offplumb::server {

/// One file of the page. All of it lives as long as the program.
struct Asset {
  std::string_view path;   ///< As a browser asks for it: "/assets/page-Dk3x9_aB.js".
  std::string_view type;   ///< Its media type: "text/html; charset=utf-8".
  std::string_view hash;   ///< Letters and digits that change with the bytes.
  std::string_view bytes;  ///< The file as it is.
  std::string_view gzip;   ///< The same, compressed; empty where that would not be smaller.
};

/// \return the page this program was linked with, written by cmake/EmbedFolder.cmake.
[[nodiscard]] std::span<const Asset> PageAssets();

/// \param path as in `Asset::path`; "/" stands for "/index.html".
/// \return nothing when there is no such file.
[[nodiscard]] const Asset* FindAsset(std::span<const Asset> assets, std::string_view path);

}  // namespace offplumb::server
