#include "apps/server/rules/target.h"

#include <optional>
#include <string>

#include <gtest/gtest.h>

namespace offplumb::server {
namespace {

/// \return the path that is read; "refused" when there is none.
std::string PathOf(std::string_view target) {
  const auto read = ReadTarget(target);
  return read ? read->path : "refused";
}

TEST(Target, PlainPaths) {
  EXPECT_EQ(PathOf("/"), "/");
  EXPECT_EQ(PathOf("/index.html"), "/index.html");
  EXPECT_EQ(PathOf("/assets/page-Dk3x9_aB.js"), "/assets/page-Dk3x9_aB.js");
  EXPECT_EQ(PathOf("/a/"), "/a/");
  EXPECT_EQ(PathOf("/..a/.b/c.."), "/..a/.b/c..");
}

TEST(Target, TheQueryIsLeftOut) {
  EXPECT_EQ(PathOf("/index.html?rig=1"), "/index.html");
  EXPECT_EQ(PathOf("/?/../x"), "/");
  EXPECT_EQ(PathOf("/?"), "/");
}

TEST(Target, EscapesAreUndoneOnce) {
  EXPECT_EQ(PathOf("/%69ndex.html"), "/index.html");
  EXPECT_EQ(PathOf("/a%20b"), "/a b");
  EXPECT_EQ(PathOf("/%C3%A9"), "/\xC3\xA9");
  EXPECT_EQ(PathOf("/%3F"), "/?");
}

TEST(Target, ClimbingIsRefusedHoweverItIsWritten) {
  for (const char* target : {"/..",
                             "/../etc/passwd",
                             "/a/../b",
                             "/a/..",
                             "/.",
                             "/./a",
                             "/a/.",
                             "/%2e%2e/etc/passwd",
                             "/%2E%2E/x",
                             "/.%2e/x",
                             "/a/%2e",
                             "/..%2fetc",
                             "/%2fetc/passwd",
                             "/a%2Fb",
                             "/..\\etc",
                             "/a\\b",
                             "/..%5cetc",
                             "/%252e%252e/x",
                             "/%25",
                             "//etc/passwd",
                             "/a//b",
                             "//"}) {
    EXPECT_EQ(PathOf(target), "refused") << target;
  }
}

TEST(Target, ControlCharactersAreRefused) {
  for (const char* target : {"/%00", "/index.html%00.js", "/%0a", "/a%0d%0ab", "/%7f", "/%1f"}) {
    EXPECT_EQ(PathOf(target), "refused") << target;
  }
  EXPECT_EQ(PathOf(std::string_view("/a\0b", 4)), "refused");
  EXPECT_EQ(PathOf("/a\nb"), "refused");
}

TEST(Target, BrokenEscapesAreRefused) {
  for (const char* target : {"/%", "/%4", "/%zz", "/%4g", "/a%", "/%-1", "/%+1"}) {
    EXPECT_EQ(PathOf(target), "refused") << target;
  }
}

TEST(Target, OtherFormsAreRefused) {
  for (const char* target : {"", "*", "index.html", "localhost:8470", "https://localhost/", "?a",
                             "/a#b", "http://", "http:///a", "ftp://localhost/", "\\"}) {
    EXPECT_EQ(PathOf(target), "refused") << target;
  }
}

TEST(Target, MayNameItsHost) {
  const auto read = ReadTarget("HTTP://localhost:8470/a/b?c");
  ASSERT_TRUE(read);
  EXPECT_EQ(read->authority, "localhost:8470");
  EXPECT_EQ(read->path, "/a/b");
  const auto bare = ReadTarget("http://localhost:8470?c");
  ASSERT_TRUE(bare);
  EXPECT_EQ(bare->authority, "localhost:8470");
  EXPECT_EQ(bare->path, "/");
  EXPECT_EQ(PathOf("http://localhost:8470/../x"), "refused");
  EXPECT_EQ(ReadTarget("/a")->authority, "");
}

}  // namespace
}  // namespace offplumb::server
