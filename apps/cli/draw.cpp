#include "apps/cli/draw.h"

#include <ctime>
#include <filesystem>

#include <fmt/format.h>

#include "answers/questions/sheets.h"
#include "ports/drawings/painter.h"

namespace offplumb::cli {
namespace {

/// \return today, as a card is dated: "2024-05-17".
std::string Today() {
  const std::time_t now = std::time(nullptr);
  std::tm day{};
  localtime_r(&now, &day);
  return fmt::format("{:04}-{:02}-{:02}", day.tm_year + 1900, day.tm_mon + 1, day.tm_mday);
}

}  // namespace

std::vector<std::string> DrawnFiles(const std::string& path, std::size_t sheets) {
  std::vector<std::string> files{path};
  const std::filesystem::path whole(path);
  for (std::size_t i = 2; i <= sheets; ++i) {
    std::filesystem::path name = whole.stem();
    name += fmt::format("-{}", i);
    name += whole.extension();
    files.push_back((whole.parent_path() / name).string());
  }
  return files;
}

Expected<void> Draw(const answers::DepthAnswer& answer, const std::string& path) {
  const auto drawing = answers::SideViewOf(answer);
  if (!drawing) return tl::unexpected<Problem>(drawing.error());
  return ports::Paint(*drawing, path);
}

Expected<void> Draw(const answers::CardAnswer& answer, const std::string& path) {
  const auto files = DrawnFiles(path, answer.cards.size());
  for (std::size_t i = 0; i < files.size(); ++i) {
    const auto sheet = answers::CardSheetOf(answer, i, Today());
    if (!sheet) return tl::unexpected<Problem>(sheet.error());
    auto painted = ports::Paint(*sheet, files[i], ports::Palette::kPrint);
    if (!painted) return painted;
  }
  return {};
}

}  // namespace offplumb::cli
