/// \file
/// What a terminal can show: width, letters, colour, a progress bar.
#pragma once

#include <chrono>
#include <string>
#include <string_view>

namespace offplumb::cli {

/// Marks inside a text for strong and faint letters and their end. `Render` turns them into what
/// the output can show.
inline constexpr std::string_view kStrong = "\x01";
inline constexpr std::string_view kFaint = "\x02";
inline constexpr std::string_view kPlain = "\x03";

/// What an output stream can show.
struct Screen {
  bool colour = false;
  std::size_t width = 80;  ///< In letters.
};

/// \return what standard output can show: colour on a terminal only, and not when the environment
/// has NO_COLOR.
[[nodiscard]] Screen StandardOutput();

/// \return a text fit for a screen: marks as colour or gone, and any other control character (a
/// name from a file may hold some) as "?".
[[nodiscard]] std::string Render(std::string_view text, bool colour);

/// \return how many letters a UTF-8 text shows.
[[nodiscard]] std::size_t LettersIn(std::string_view text);

/// Breaks a text between words. \param hang blanks before every line but the first.
[[nodiscard]] std::string Wrap(std::string_view text, std::size_t width, std::size_t hang);

/// A bar on standard error for what takes longer than a second; nothing unless that is a terminal.
class ProgressBar {
 public:
  ProgressBar();
  ~ProgressBar();
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;

  /// \param done in [0, 1].
  void Show(double done);

 private:
  std::chrono::steady_clock::time_point start_;
  bool terminal_ = false;
  bool shown_ = false;
};

}  // namespace offplumb::cli
