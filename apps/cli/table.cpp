#include "apps/cli/table.h"

#include <algorithm>

#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

constexpr std::size_t kGap = 2;

std::string Blanks(std::size_t count) { return std::string(count, ' '); }

/// \return a cell filled up with blanks. \param left whether the letters stand at the left.
std::string Padded(const std::string& cell, std::size_t width, bool left) {
  const std::string blanks = Blanks(width - std::min(width, LettersIn(cell)));
  return left ? cell + blanks : blanks + cell;
}

std::string WithoutTail(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

}  // namespace

std::size_t Table::WidthOf(std::size_t column) const {
  std::size_t widest = 0;
  for (const auto& row : rows_) {
    if (column < row.size()) widest = std::max(widest, LettersIn(row[column]));
  }
  return widest;
}

std::string Table::Block(std::size_t from, std::size_t to) const {
  std::string text;
  for (const auto& row : rows_) {
    std::string line = Padded(row[0], WidthOf(0), true);
    for (std::size_t column = from; column < to; ++column) {
      const std::string cell = column < row.size() ? row[column] : std::string();
      line += Blanks(kGap) + Padded(cell, WidthOf(column), false);
    }
    text += WithoutTail(std::move(line)) + "\n";
  }
  return text;
}

std::string Table::Text(std::size_t width) const {
  const std::size_t columns = rows_.front().size();
  std::string text;
  for (std::size_t from = 1; from < columns;) {
    std::size_t used = WidthOf(0);
    std::size_t to = from;
    while (to < columns && (to == from || used + kGap + WidthOf(to) <= width)) {
      used += kGap + WidthOf(to++);
    }
    if (from > 1) text += "\n";
    text += Block(from, to);
    from = to;
  }
  return text;
}

}  // namespace offplumb::cli
