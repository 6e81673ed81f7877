/// \file
/// Reading the keys of a request one by one: every key known, every value of the right kind and in
/// range.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "answers/asking/json_value.h"
#include "answers/units/quantity.h"
#include "engine/problem.h"

namespace offplumb::answers {

/// What a number of a request may be: its range, ends included, and its unit for messages.
struct NumberRule {
  Range range;
  std::string_view unit;  ///< "m"; empty for a bare number.
};

/// One object of a request. Getters return nothing both for a key that is not there (or null) and
/// for one that is wrong; the first problem found is then noted.
class RequestFields {
 public:
  /// \param object must be one, and outlive this. \param path of the object from the top of the
  /// request: "current.points[2]"; empty for the top. \param first gets the first problem.
  RequestFields(const JsonValue& object, std::string path, std::optional<Problem>& first)
      : object_(object), path_(std::move(path)), first_(first) {}

  /// \return whether the key is there and not null.
  [[nodiscard]] bool Has(std::string_view key) const { return Find(key) != nullptr; }
  /// \return whether the key is there, be it null.
  [[nodiscard]] bool Given(std::string_view key) const;
  /// Notes a problem of a key, unless there is one already.
  void Fail(std::string_view key, std::string message, std::string remedy) const;
  /// Notes a problem that has its name.
  void Fail(const Problem& problem) const;
  /// Notes a problem found elsewhere, named by the key.
  void Fail(std::string_view key, const Problem& problem) const;
  /// Notes that a key must be there. \param what it is. \param example of its value.
  void Require(std::string_view key, std::string_view what, std::string_view example) const;
  /// Refuses every key but these. \param where they belong, for the message: "current".
  void CheckKeys(std::span<const std::string_view> keys, std::string_view where) const;

  [[nodiscard]] std::optional<double> Number(std::string_view key, const NumberRule& rule) const;
  /// A whole number.
  [[nodiscard]] std::optional<int> Whole(std::string_view key, const NumberRule& rule) const;
  [[nodiscard]] std::vector<double> Numbers(std::string_view key, const NumberRule& rule,
                                            std::size_t most) const;
  [[nodiscard]] std::optional<bool> Flag(std::string_view key) const;
  [[nodiscard]] std::optional<std::string> Text(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> Texts(std::string_view key, std::size_t most) const;
  /// \return the place of the key's text among the words; nothing if it is none of them.
  [[nodiscard]] std::optional<std::size_t> Word(std::string_view key,
                                                std::span<const std::string_view> words) const;
  [[nodiscard]] std::optional<RequestFields> Object(std::string_view key) const;
  [[nodiscard]] std::vector<RequestFields> Objects(std::string_view key, std::size_t most) const;

 private:
  [[nodiscard]] const JsonValue* Find(std::string_view key) const;
  [[nodiscard]] std::string PathOf(std::string_view key) const;
  void WrongKind(std::string_view key, const JsonValue& value, std::string_view wanted) const;
  [[nodiscard]] std::optional<double> NumberOf(std::string_view key, const JsonValue& value,
                                               const NumberRule& rule) const;
  [[nodiscard]] const JsonValue* List(std::string_view key, std::string_view of,
                                      std::size_t most) const;

  const JsonValue& object_;
  std::string path_;
  std::optional<Problem>& first_;
};

}  // namespace offplumb::answers
