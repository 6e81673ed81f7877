/// \file
/// The server itself, started as a person would, with the page of tests/apps/server/page in it.
#pragma once

#include <sys/types.h>

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace offplumb::server {

/// How to start it.
struct Start {
  std::vector<std::string> words;                  ///< After the program's name.
  std::map<std::string, std::string> environment;  ///< Set for it; an empty text unsets.
  bool on_terminal = false;                        ///< Standard output is a terminal.
  unsigned most_files = 0;                         ///< How many it may hold open; 0 as usual.
};

/// What it said and how it ended.
struct Ended {
  int exit_code = -1;  ///< -1 when a signal ended it.
  std::string out;     ///< All of standard output.
  std::string err;     ///< All of standard error.
};

/// One run of the program. It is killed at the end if it still runs.
class Running {
 public:
  explicit Running(const Start& start);
  /// On any free port, and no browser.
  Running() : Running(Start{{"--port", "0", "--no-browser"}, {}, false, 0}) {}
  ~Running();
  Running(const Running&) = delete;
  Running& operator=(const Running&) = delete;

  /// Waits for the first line of standard output. \return it, without its end.
  [[nodiscard]] const std::string& address();
  /// \return the port in `address()`; 0 when it never began to listen.
  [[nodiscard]] std::uint16_t port();

  /// Sends a signal and waits for the end; with 0 only waits.
  [[nodiscard]] Ended End(int signal = 0);

 private:
  pid_t child_ = -1;
  int out_ = -1;
  int err_ = -1;
  std::string said_;
  std::string address_;
};

/// \return the bytes of a file of the test's page, "/index.html".
[[nodiscard]] std::string PageFile(const std::string& path);

}  // namespace offplumb::server
