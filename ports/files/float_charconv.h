/// \file
/// std::from_chars and std::to_chars for double where the compiler's library has none, as that of
/// the WebAssembly compiler (libc++ 13). The TOML library is built on them; without them it takes
/// string streams, which drag the whole of std::locale into the page: a third of its engine.
///
/// Adding to namespace std is against the letter of the standard. It is done for this one library,
/// in one translation unit, and only where these functions are missing.
#pragma once

#if defined(_LIBCPP_VERSION) && _LIBCPP_VERSION < 14000

#include <charconv>
#include <cstdlib>
#include <string>
#include <system_error>

#include <fmt/format.h>

#undef TOML_INT_CHARCONV
#undef TOML_FLOAT_CHARCONV
#define TOML_INT_CHARCONV 1
#define TOML_FLOAT_CHARCONV 1

namespace std {

/// \param first decimal number without a sign or blanks, as the TOML library hands it over.
inline from_chars_result from_chars(const char* first, const char* last, double& value) {
  const string text(first, last);
  char* end = nullptr;
  const double read = strtod(text.c_str(), &end);
  if (end == text.c_str()) return {first, errc::invalid_argument};
  const char* const stop = first + (end - text.c_str());
  if (!(read <= __DBL_MAX__ && read >= -__DBL_MAX__)) return {stop, errc::result_out_of_range};
  value = read;
  return {stop, errc{}};
}

/// Copies a number that was written.
inline to_chars_result PutChars(char* first, char* last, const string& text) {
  if (static_cast<size_t>(last - first) < text.size()) return {last, errc::value_too_large};
  return {text.copy(first, text.size()) + first, errc{}};
}

/// The shortest text that reads back as the value.
inline to_chars_result to_chars(char* first, char* last, double value) {
  return PutChars(first, last, fmt::format("{}", value));
}

inline to_chars_result to_chars(char* first, char* last, double value, chars_format format) {
  return PutChars(
      first, last,
      format == chars_format::hex ? fmt::format("{:a}", value) : fmt::format("{:g}", value));
}

inline to_chars_result to_chars(char* first, char* last, double value, chars_format,
                                int precision) {
  return PutChars(first, last, fmt::format("{:.{}g}", value, precision));
}

}  // namespace std

#endif
