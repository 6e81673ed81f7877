/// \file
/// Reading the values of flags, one by one.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "answers/questions/setting.h"
#include "answers/units/quantity.h"
#include "apps/cli/arguments.h"
#include "engine/problem.h"

namespace offplumb::cli {

/// Reads the flags of one question, keeping the first problem. The readers below return nothing for
/// a flag that is not given or is wrong.
class FlagReader {
 public:
  explicit FlagReader(const Arguments& arguments) : arguments_(arguments) {}

  [[nodiscard]] const std::optional<Problem>& first() const { return first_; }

  void Fail(Problem problem) {
    if (!first_) first_ = std::move(problem);
  }

  template <typename T>
  std::optional<T> Keep(Expected<T> read) {
    if (read) return std::move(*read);
    Fail(read.error());
    return std::nullopt;
  }

  std::optional<double> Quantity(const std::string& flag, answers::Dimension dimension,
                                 answers::Range range);
  /// Degrees may be left bare. \return radians.
  std::optional<double> Angle(const std::string& flag);
  std::vector<double> Series(const std::string& flag, answers::Dimension dimension,
                             answers::Range range);
  /// \return whether the second of two words was given. \param otherwise when neither was.
  bool SecondWord(const std::string& flag, std::string_view first, std::string_view second,
                  bool otherwise);
  /// A flag that must be there.
  void Require(const std::string& flag, const std::string& what, const std::string& example);

 private:
  const Arguments& arguments_;
  std::optional<Problem> first_;
};

/// Reads an angle within a whole turn either way; degrees may be left bare. \return radians.
[[nodiscard]] Expected<double> ParseAngle(std::string_view text, const std::string& subject);

/// How the answer is wanted: bands and units.
[[nodiscard]] answers::Wanted ReadWanted(const Arguments& arguments, FlagReader& reader);

}  // namespace offplumb::cli
