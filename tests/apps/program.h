/// \file
/// Starting the program itself, as a person would.
#pragma once

#include <string>
#include <vector>

namespace offplumb::cli {

/// What one run of the program said and took.
struct Heard {
  int exit_code = -1;  ///< -1 when it did not end by itself.
  std::string out;     ///< Standard output.
  std::string err;     ///< Standard error.
  double seconds = 0;  ///< Processor time, user and system: other programs do not lengthen it.
};

/// \param words after the program's name, as the shell would hand them over. It runs in the
/// repository's top folder, so that examples/... can be named.
/// \param input the file it reads as standard input.
[[nodiscard]] Heard Hear(const std::vector<std::string>& words,
                         const std::string& input = "/dev/null");

/// \return the words of a command line with "..." quotes, as in help and docs.
[[nodiscard]] std::vector<std::string> SplitCommand(const std::string& line);

/// A folder of its own for one test, removed with all in it at the end.
class TestFolder {
 public:
  TestFolder();
  ~TestFolder();
  TestFolder(const TestFolder&) = delete;
  TestFolder& operator=(const TestFolder&) = delete;

  /// \return the path of a file in it.
  [[nodiscard]] std::string Path(const std::string& name) const { return path_ + "/" + name; }
  /// Writes a file. \return its path.
  [[nodiscard]] std::string Write(const std::string& name, const std::string& text) const;

 private:
  std::string path_;
};

/// \return a file's text; empty if there is none.
[[nodiscard]] std::string ReadWhole(const std::string& path);

}  // namespace offplumb::cli
