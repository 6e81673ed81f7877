/// \file
/// Reading the fields of a file's tables one by one: every key known, every quantity with a unit
/// and in range.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "answers/units/quantity.h"
#include "engine/problem.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {

/// What reading one file has found so far. Reading goes on after a problem; the first one counts.
class Report {
 public:
  explicit Report(std::string_view file) : file_(file) {}

  /// What is at fault: as messages call it, its key from the top of the file, its line.
  struct Culprit {
    std::string subject;
    std::string path;
    int line = 0;
  };

  /// Notes a problem, unless there is one already.
  void Fail(Culprit culprit, std::string message, std::string remedy);
  /// The same for a problem found by a function that knows neither file nor line.
  void Fail(Culprit culprit, const Problem& problem);
  void Place(const std::string& key, int line) { lines_[key] = line; }

  [[nodiscard]] const std::optional<Problem>& first() const { return first_; }
  /// \return the key of the first problem, lists counted as they are written.
  [[nodiscard]] const std::string& first_path() const { return first_path_; }
  [[nodiscard]] const std::map<std::string, int>& lines() const { return lines_; }

 private:
  std::string file_;
  std::optional<Problem> first_;
  std::string first_path_;
  std::map<std::string, int> lines_;
};

/// The keys a table may have.
using Keys = std::span<const std::string_view>;

/// A quantity a file may state: its dimension and allowed range (SI, ends included).
struct QuantityRule {
  answers::Dimension dimension;
  answers::Range range;
};

/// Where a table stands, from the top of the file: "riggers[0].ball"; empty for the top.
struct TablePath {
  std::string sorted;   ///< With lists counted in the order they are sorted in.
  std::string written;  ///< With lists counted as they are written.
};

/// One table of a file. Getters return nothing both for a key that is not written and for one that
/// is wrong; the report then holds the problem.
class Fields {
 public:
  /// \param value the table; a text "x" stands for { from = "x" } where `keys` has "from".
  /// \param keys all keys the table may have; any other is a problem, noted here.
  /// \param owner whose table it is, in words: "rigger \"port\", clip 2"; empty for the top.
  Fields(Report& report, const TomlValue& value, TablePath path, Keys keys, std::string owner = {});

  [[nodiscard]] bool Has(std::string_view key) const { return table_.Find(key) != nullptr; }
  /// \return the key's path from the top.
  [[nodiscard]] TablePath PathOf(std::string_view key) const;
  /// \return the line the key, else the table, stands on.
  [[nodiscard]] int LineOf(std::string_view key) const;
  /// \return the key as messages name it: "rigger \"port\", clip \"low\": setback".
  [[nodiscard]] std::string SubjectOf(std::string_view key) const;
  void Fail(std::string_view key, std::string message, std::string remedy) const;
  void Fail(std::string_view key, const Problem& problem) const;
  /// Notes that a key must be there. \param example what to write.
  void FailMissing(std::string_view key, std::string_view example) const;

  /// \return whether the key is the text of this one word.
  [[nodiscard]] bool IsWord(std::string_view key, std::string_view word) const;
  [[nodiscard]] std::optional<std::string> Text(std::string_view key) const;
  /// \return the text of a key as the person wrote it; empty if it is not there or no text. Notes
  /// nothing.
  [[nodiscard]] std::string Written(std::string_view key) const;
  [[nodiscard]] std::optional<bool> Flag(std::string_view key) const;
  [[nodiscard]] std::optional<double> Number(std::string_view key, answers::Range range) const;
  [[nodiscard]] std::optional<double> Quantity(std::string_view key,
                                               const QuantityRule& rule) const;
  /// The same for a key that must be there; 0 when it is not.
  [[nodiscard]] double Required(std::string_view key, const QuantityRule& rule,
                                std::string_view example) const;

  /// \return the table of a key.
  [[nodiscard]] std::optional<Fields> Part(std::string_view key, Keys keys) const;
  /// \return the tables of a key that holds a list. \param order_by a length by which they are
  /// sorted first.
  [[nodiscard]] std::vector<Fields> Parts(std::string_view key, Keys keys,
                                          std::string_view order_by = {}) const;

 private:
  const TomlValue* Get(std::string_view key, TomlValue::Kind kind, std::string_view wanted) const;
  void CheckKeys(Keys keys) const;
  [[nodiscard]] Report::Culprit CulpritAt(std::string_view key) const;
  const TomlValue* GetList(std::string_view key) const;
  std::string OwnerOf(std::string_view key, const TomlValue& item, std::size_t number) const;

  Report* report_;
  TomlValue table_;
  TablePath path_;
  std::string owner_;
};

}  // namespace offplumb::ports
