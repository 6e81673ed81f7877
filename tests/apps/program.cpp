#include "tests/apps/program.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

namespace offplumb::cli {
namespace {

struct Pipe {
  int read = -1;
  int write = -1;
};

Pipe MakePipe() {
  std::array<int, 2> ends{};
  EXPECT_EQ(pipe2(ends.data(), O_CLOEXEC), 0);
  return {ends[0], ends[1]};
}

[[noreturn]] void Become(const std::vector<std::string>& words, const std::string& input, int out,
                         int err) {
  std::vector<char*> arguments;
  std::string program = OFFPLUMB_PROGRAM;
  arguments.push_back(program.data());
  std::vector<std::string> copies = words;
  for (std::string& word : copies) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  const int file = open(input.c_str(), O_RDONLY);
  dup2(file, STDIN_FILENO);
  dup2(out, STDOUT_FILENO);
  dup2(err, STDERR_FILENO);
  // For the sanitizer build; the program itself does not look at it.
  setenv("LSAN_OPTIONS",
         "suppressions=" OFFPLUMB_SOURCE_DIR "/tests/leaks.supp:print_suppressions=0", 0);
  if (chdir(OFFPLUMB_SOURCE_DIR) == 0) execv(program.c_str(), arguments.data());
  _exit(127);
}

/// Reads both pipes until both are closed.
void ReadBoth(int out, int err, Heard& heard) {
  std::array<pollfd, 2> watched{pollfd{out, POLLIN, 0}, pollfd{err, POLLIN, 0}};
  std::array<std::string*, 2> texts{&heard.out, &heard.err};
  for (int open = 2; open > 0;) {
    poll(watched.data(), watched.size(), -1);
    for (std::size_t i = 0; i < watched.size(); ++i) {
      if (watched[i].revents == 0) continue;
      std::array<char, 65536> buffer{};
      const ssize_t got = read(watched[i].fd, buffer.data(), buffer.size());
      if (got > 0) {
        texts[i]->append(buffer.data(), static_cast<std::size_t>(got));
      } else {
        close(watched[i].fd);
        watched[i].fd = -1;
        --open;
      }
    }
  }
}

double Seconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

}  // namespace

Heard Hear(const std::vector<std::string>& words, const std::string& input) {
  const Pipe out = MakePipe();
  const Pipe err = MakePipe();
  const pid_t child = fork();
  if (child == 0) Become(words, input, out.write, err.write);
  close(out.write);
  close(err.write);
  Heard heard;
  ReadBoth(out.read, err.read, heard);
  int status = 0;
  rusage usage{};
  EXPECT_EQ(wait4(child, &status, 0, &usage), child);
  if (WIFEXITED(status)) heard.exit_code = WEXITSTATUS(status);
  heard.seconds = Seconds(usage.ru_utime) + Seconds(usage.ru_stime);
  return heard;
}

std::vector<std::string> SplitCommand(const std::string& line) {
  std::vector<std::string> words;
  std::string word;
  bool quoted = false;
  bool any = false;
  for (const char c : line + " ") {
    if (c == '"') {
      quoted = !quoted;
      any = true;
    } else if (c == ' ' && !quoted) {
      if (any) words.push_back(word);
      word.clear();
      any = false;
    } else {
      word += c;
      any = true;
    }
  }
  return words;
}

TestFolder::TestFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "offplumb-test-XXXXXX").string();
  EXPECT_NE(mkdtemp(name.data()), nullptr);
  path_ = name;
}

TestFolder::~TestFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::string TestFolder::Write(const std::string& name, const std::string& text) const {
  std::ofstream(Path(name), std::ios::binary) << text;
  return Path(name);
}

std::string ReadWhole(const std::string& path) {
  std::ostringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

}  // namespace offplumb::cli
