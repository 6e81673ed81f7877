#include "apps/cli/outputs.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

#include <fmt/format.h>

#include "answers/units/words.h"
#include "ports/drawings/painter.h"

namespace offplumb::cli {
namespace {

namespace fs = std::filesystem;

Problem CannotWrite(const std::string& path, const std::string& why) {
  return {ProblemKind::kBadInput,
          path,
          fmt::format("This file cannot be written: {}.", why),
          "Give a file in a folder that exists and is yours to write in.",
          {},
          0};
}

bool SameFile(const std::string& a, const std::string& b) {
  std::error_code ignored;
  return fs::equivalent(a, b, ignored) ||
         fs::weakly_canonical(a, ignored) == fs::weakly_canonical(b, ignored);
}

/// Opens the file as it will be opened, without a change to it.
Expected<void> TryOpen(const std::string& path) {
  std::error_code ignored;
  if (path.empty()) return tl::unexpected<Problem>(CannotWrite("output", "it has no name"));
  const std::string name = fs::path(path).filename().string();
  if (name == "-" || name == ".svg" || name == ".png" || name == ".pdf" || name == ".csv") {
    return tl::unexpected<Problem>(CannotWrite(path, "it has no name of its own"));
  }
  if (fs::is_directory(path, ignored)) {
    return tl::unexpected<Problem>(CannotWrite(path, "it is a folder"));
  }
  const bool existed = fs::exists(path, ignored);
  errno = 0;
  const bool opened = std::ofstream(path, std::ios::app).is_open();
  const int error = errno;
  if (opened && !existed) fs::remove(path, ignored);
  if (!opened) return tl::unexpected<Problem>(CannotWrite(path, std::strerror(error)));
  return {};
}

Expected<void> CheckOne(const std::string& path, const std::vector<std::string>& inputs) {
  for (const std::string& input : inputs) {
    if (!SameFile(path, input)) continue;
    return BadInput(path, "This file is also read; it would be written over.",
                    "Give another name for what is written.");
  }
  return TryOpen(path);
}

}  // namespace

Expected<void> CheckOutputs(const Arguments& arguments, const std::vector<std::string>& inputs,
                            const std::vector<std::string>& drawings) {
  std::vector<std::string> outputs = drawings;
  if (const auto csv = arguments.Value("csv")) {
    outputs.push_back(*csv);
    for (const std::string& drawing : drawings) {
      if (!SameFile(*csv, drawing)) continue;
      return BadInput(*csv, "The figures and the drawing cannot be one file.", "Give two names.");
    }
  }
  for (const std::string& path : outputs) {
    auto checked = CheckOne(path, inputs);
    if (!checked) return checked;
  }
  if (drawings.empty()) return {};
  const auto format = ports::FormatOf(drawings.front());
  if (format) return {};
  Problem problem = format.error();
  problem.subject = "--draw";
  return tl::unexpected<Problem>(problem);
}

Expected<void> WriteFile(const std::string& path, const std::string& text) {
  errno = 0;
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  file << text;
  file.close();
  if (!file) return tl::unexpected<Problem>(CannotWrite(path, std::strerror(errno)));
  return {};
}

}  // namespace offplumb::cli
