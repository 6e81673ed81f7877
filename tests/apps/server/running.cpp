#include "tests/apps/server/running.h"

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

namespace offplumb::server {
namespace {

struct Ends {
  int ours = -1;
  int theirs = -1;
};

Ends MakePipe() {
  std::array<int, 2> ends{};
  EXPECT_EQ(pipe2(ends.data(), O_CLOEXEC), 0);
  return {ends[0], ends[1]};
}

Ends MakeTerminal() {
  const int ours = posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
  EXPECT_EQ(grantpt(ours), 0);
  EXPECT_EQ(unlockpt(ours), 0);
  std::array<char, 128> name{};
  EXPECT_EQ(ptsname_r(ours, name.data(), name.size()), 0);
  return {ours, open(name.data(), O_RDWR | O_NOCTTY | O_CLOEXEC)};
}

[[noreturn]] void Become(const Start& start, int out, int err) {
  std::string program = OFFPLUMB_SERVE_PROGRAM;
  std::vector<std::string> copies = start.words;
  std::vector<char*> arguments{program.data()};
  for (std::string& word : copies) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  for (const auto& [name, value] : start.environment) {
    value.empty() ? unsetenv(name.c_str()) : setenv(name.c_str(), value.c_str(), 1);
  }
  if (start.most_files > 0) {
    const rlimit limit{start.most_files, start.most_files};
    setrlimit(RLIMIT_NOFILE, &limit);
  }
  dup2(open("/dev/null", O_RDONLY), STDIN_FILENO);
  dup2(out, STDOUT_FILENO);
  dup2(err, STDERR_FILENO);
  execv(program.c_str(), arguments.data());
  _exit(127);
}

/// A terminal gives an error, not an end, when its other side has gone.
bool ReadSome(int file, std::string& text) {
  std::array<char, 4096> buffer{};
  const ssize_t got = read(file, buffer.data(), buffer.size());
  if (got > 0) text.append(buffer.data(), static_cast<std::size_t>(got));
  return got > 0;
}

}  // namespace

Running::Running(const Start& start) {
  const Ends out = start.on_terminal ? MakeTerminal() : MakePipe();
  const Ends err = MakePipe();
  child_ = fork();
  if (child_ == 0) Become(start, out.theirs, err.theirs);
  close(out.theirs);
  close(err.theirs);
  out_ = out.ours;
  err_ = err.ours;
}

Running::~Running() {
  if (child_ > 0) {
    kill(child_, SIGKILL);
    waitpid(child_, nullptr, 0);
  }
  close(out_);
  close(err_);
}

const std::string& Running::address() {
  while (address_.empty() && said_.find('\n') == std::string::npos) {
    if (!ReadSome(out_, said_)) return address_;
  }
  if (address_.empty()) address_ = said_.substr(0, said_.find_first_of("\r\n"));
  return address_;
}

std::uint16_t Running::port() {
  const std::size_t colon = address().rfind(':');
  if (colon == std::string::npos) return 0;
  return static_cast<std::uint16_t>(std::atoi(address_.c_str() + colon + 1));
}

Ended Running::End(int signal) {
  if (signal != 0) kill(child_, signal);
  Ended ended;
  while (ReadSome(out_, said_)) {
  }
  ended.out = said_;
  while (ReadSome(err_, ended.err)) {
  }
  int status = 0;
  EXPECT_EQ(waitpid(child_, &status, 0), child_);
  child_ = -1;
  if (WIFEXITED(status)) ended.exit_code = WEXITSTATUS(status);
  return ended;
}

std::string PageFile(const std::string& path) {
  std::ostringstream text;
  text << std::ifstream(OFFPLUMB_SOURCE_DIR "/tests/apps/server/page" + path, std::ios::binary)
              .rdbuf();
  return text.str();
}

}  // namespace offplumb::server
