/// \file
/// The part of the {fmt} library that engine, answers and rig files use, for the page: the whole of
/// it would be a fifth of what a phone loads. Native builds use the library itself, which checks
/// every format string when it is compiled; tests compare the answers of both builds letter by
/// letter.
///
/// Known: {}, {:.4g}, {:.{}f}, {:a}, {:04X} and the like: flags, width, precision and type of
/// printf. A text takes none of them.
#pragma once

#include <string>
#include <string_view>
#include <type_traits>

namespace fmt {

/// One value to be written.
class Value {
 public:
  enum class Kind { kText, kWhole, kNumber, kLetter };

  template <typename T>
  Value(const T& value) {  // NOLINT(google-explicit-constructor): as the library does.
    if constexpr (std::is_same_v<T, char>) {
      kind = Kind::kLetter;
      whole = value;
    } else if constexpr (std::is_floating_point_v<T>) {
      static_assert(!std::is_same_v<T, long double>, "not known here");
      kind = Kind::kNumber;
      number = value;
    } else if constexpr (std::is_integral_v<T>) {
      static_assert(!std::is_same_v<T, bool>, "not known here");
      kind = Kind::kWhole;
      whole = static_cast<long long>(value);
    } else {
      text = std::string_view(value);
    }
  }

  Kind kind = Kind::kText;
  std::string_view text;
  long long whole = 0;
  double number = 0;
};

/// \return the text with its values put in. A text that is not known here is thrown as
/// std::invalid_argument.
std::string FormatAll(std::string_view text, const Value* values, std::size_t count);

template <typename... T>
[[nodiscard]] std::string format(std::string_view text, const T&... values) {
  if constexpr (sizeof...(values) == 0) {
    return FormatAll(text, nullptr, 0);
  } else {
    const Value all[] = {Value(values)...};
    return FormatAll(text, all, sizeof...(values));
  }
}

}  // namespace fmt
