#include "apps/server/rules/caching.h"

#include <gtest/gtest.h>

namespace offplumb::server {
namespace {

TEST(Caching, AFileNamedByItsContentIsKept) {
  for (const char* path : {"/assets/page-Dk3x9_aB.js", "/assets/sheet-B7-k_q2x.css",
                           "/assets/deep/engine-0aZ_-9bc.wasm"}) {
    EXPECT_EQ(CacheControl(path), "public, max-age=31536000, immutable") << path;
  }
}

TEST(Caching, AnyOtherFileIsAskedForAnew) {
  for (const char* path :
       {"/", "/index.html", "/sw.js", "/page-Dk3x9_aB.js", "/other/assets/page-Dk3x9_aB.js",
        "/assets/worker.mjs", "/assets/page-settings.js", "/assets/page-Dk3x9_a.js",
        "/assets/page-Dk3x9_aBc.js", "/assets/-Dk3x9_aB.js", "/assets/page-Dk3x.9aB.js", "/assets/",
        "/assets/page-Dk3x9 aB.js"}) {
    EXPECT_EQ(CacheControl(path), "no-cache") << path;
  }
}

TEST(Caching, EachFormHasItsOwnTag) {
  EXPECT_EQ(EntityTag("abc", false), "\"abc\"");
  EXPECT_EQ(EntityTag("abc", true), "\"abc-gzip\"");
}

TEST(Caching, ATagIsFoundInAList) {
  for (const char* list : {"*", " * ", "\"abc\"", "W/\"abc\"", "\"x\", \"abc\"", "\"x\",W/\"abc\"",
                           " \"a,b\" , \"abc\" ", "\"abc\", \"x"}) {
    EXPECT_TRUE(HasTag(list, "\"abc\"")) << list;
  }
}

TEST(Caching, WhatIsNotInTheListIsNotFound) {
  for (const char* list :
       {"", "abc", "\"abd\"", "\"abc-gzip\"", "\"ABC\"", "\"abc", "abc\"", "\"\"", "\"x\" \"abc\"",
        "\"x, \"abc\"", "*, \"x\"", "w/\"abc\"", "W/", ","}) {
    EXPECT_FALSE(HasTag(list, "\"abc\"")) << list;
  }
}

}  // namespace
}  // namespace offplumb::server
