#include "ports/files/text_file.h"

#include <filesystem>
#include <fstream>
#include <system_error>
#include <utility>

#include <fmt/format.h>

namespace offplumb::ports {
namespace {

tl::unexpected<Problem> Cannot(const std::string& path, std::string message, std::string remedy) {
  return tl::unexpected(
      Problem{ProblemKind::kBadInput, "file", std::move(message), std::move(remedy), path, 0});
}

}  // namespace

Expected<std::string> ReadTextFile(const std::string& path) {
  namespace fs = std::filesystem;
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) return Cannot(path, "There is no such file.", "Check the path.");
  if (fs::is_directory(status)) return Cannot(path, "This is a folder.", "Give a file in it.");
  if (!fs::is_regular_file(status))
    return Cannot(path, "This is no plain file.", "Give a text file.");
  const std::uintmax_t size = fs::file_size(path, error);
  if (!error && size > kLargestTextFile_bytes) {
    return Cannot(
        path,
        fmt::format("The file has {} bytes; at most {} are read.", size, kLargestTextFile_bytes),
        "Give a text file as docs/rig-file.md describes.");
  }
  std::ifstream stream(path, std::ios::binary);
  std::string text(error ? 0 : static_cast<std::size_t>(size), '\0');
  if (!stream || !stream.read(text.data(), static_cast<std::streamsize>(text.size()))) {
    return Cannot(path, "The file cannot be read.", "Check who may read it.");
  }
  return text;
}

}  // namespace offplumb::ports
