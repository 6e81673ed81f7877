// cmake/EmbedFolder.cmake: what it makes of a folder, and what it refuses. That the program then
// holds the files is seen by asking it for them.
#include <sys/wait.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace offplumb::server {
namespace {

using testing::HasSubstr;
using testing::Not;

class EmbedFolder : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = testing::TempDir() + "offplumb-embed-XXXXXX";
    ASSERT_NE(mkdtemp(name.data()), nullptr);
    folder_ = name;
    std::filesystem::create_directories(page_ = folder_ / "a page");
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  void Write(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((page_ / name).parent_path());
    std::ofstream(page_ / name, std::ios::binary) << text;
  }

  /// Runs the script. \return its exit code.
  int Embed() {
    const std::string command = "'" OFFPLUMB_CMAKE "' '-DFOLDER=" + page_.string() +
                                "' '-DOUTPUT=" + (folder_ / "out").string() +
                                "' -DGZIP=gzip -P '" OFFPLUMB_SOURCE_DIR
                                "/cmake/EmbedFolder.cmake' 2>&1";
    said_.clear();
    FILE* output = popen(command.c_str(), "r");
    for (int c = std::fgetc(output); c != EOF; c = std::fgetc(output)) {
      said_ += static_cast<char>(c);
    }
    return WEXITSTATUS(pclose(output));
  }

  [[nodiscard]] std::string Written(const std::string& name) const {
    std::ostringstream text;
    text << std::ifstream(folder_ / "out" / name).rdbuf();
    return text.str();
  }

  std::filesystem::path folder_;
  std::filesystem::path page_;
  std::string said_;
};

TEST_F(EmbedFolder, TheFilesOfAllFoldersButHiddenOnes) {
  Write("index.html", "<p>");
  Write("a/b/c-1.2.mjs", std::string(1000, ' '));
  Write(".hidden.txt", "no");
  Write(".git/config.txt", "no");
  ASSERT_EQ(Embed(), 0) << said_;
  const std::string source = Written("assets.cpp");
  EXPECT_THAT(source, HasSubstr("std::array<Asset, 2>"));
  EXPECT_THAT(source, HasSubstr("\"/index.html\", \"text/html; charset=utf-8\""));
  EXPECT_THAT(source, HasSubstr("\"/a/b/c-1.2.mjs\", \"text/javascript; charset=utf-8\""));
  EXPECT_THAT(source, Not(HasSubstr("hidden.txt")));
  EXPECT_THAT(source, Not(HasSubstr("config.txt")));
  // Only the longer one is smaller compressed.
  EXPECT_THAT(source, HasSubstr("Between(offplumb_asset_0_gzip_begin, offplumb_asset_0_gzip_end)"));
  EXPECT_THAT(source, Not(HasSubstr("offplumb_asset_1_gzip")));
}

TEST_F(EmbedFolder, WhatItDependsOn) {
  Write("index.html", "<p>");
  Write("a/b/c.js", "let c;");
  ASSERT_EQ(Embed(), 0) << said_;
  const std::string needed = Written("assets.d");
  for (const char* name : {"/a\\ page ", "/a\\ page/a ", "/a\\ page/a/b ", "/a\\ page/a/b/c.js ",
                           "/a\\ page/index.html\n"}) {
    EXPECT_THAT(needed, HasSubstr(name));
  }
}

TEST_F(EmbedFolder, TheSameFilesGiveTheSameSource) {
  Write("index.html", "<p>");
  ASSERT_EQ(Embed(), 0) << said_;
  const std::string first = Written("assets.cpp");
  ASSERT_EQ(Embed(), 0) << said_;
  EXPECT_EQ(Written("assets.cpp"), first);
  Write("index.html", "<q>");
  ASSERT_EQ(Embed(), 0) << said_;
  EXPECT_NE(Written("assets.cpp"), first) << "another content has another hash";
}

TEST_F(EmbedFolder, NoPageYet) {
  Write("other.html", "<p>");
  EXPECT_NE(Embed(), 0);
  EXPECT_THAT(said_, HasSubstr("./run serve"));
  EXPECT_EQ(Written("assets.cpp"), "");
}

TEST_F(EmbedFolder, AFileWhoseTypeIsUnknown) {
  Write("index.html", "<p>");
  Write("film.xyz", "?");
  EXPECT_NE(Embed(), 0);
  EXPECT_THAT(said_, HasSubstr("film.xyz"));
  EXPECT_THAT(said_, HasSubstr(".xyz"));
  EXPECT_EQ(Written("assets.cpp"), "");
}

TEST_F(EmbedFolder, ANameThatCouldBeReadAmiss) {
  Write("index.html", "<p>");
  Write("a \"b\".js", "let a;");
  EXPECT_NE(Embed(), 0);
  EXPECT_THAT(said_, HasSubstr("letters, digits"));
}

}  // namespace
}  // namespace offplumb::server
