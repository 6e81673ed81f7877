/// \file
/// Aligned tables of text.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace offplumb::cli {

/// A table: the first column is aligned left, the others right.
class Table {
 public:
  /// \param heads of the columns; the first may be empty.
  explicit Table(std::vector<std::string> heads) : rows_{std::move(heads)} {}

  /// \param cells as many as there are heads, or fewer.
  void Add(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }

  /// \return the table's lines. When it is wider than `width` it comes in blocks one below the
  /// other, each with the first column and as many of the rest as fit.
  [[nodiscard]] std::string Text(std::size_t width) const;

 private:
  [[nodiscard]] std::size_t WidthOf(std::size_t column) const;
  [[nodiscard]] std::string Block(std::size_t from, std::size_t to) const;

  std::vector<std::vector<std::string>> rows_;
};

}  // namespace offplumb::cli
