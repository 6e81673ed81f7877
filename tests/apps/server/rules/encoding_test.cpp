#include "apps/server/rules/encoding.h"

#include <gtest/gtest.h>

namespace offplumb::server {
namespace {

TEST(Encoding, GzipIsTaken) {
  for (const char* header : {"gzip", "GZIP", "x-gzip", "gzip, deflate, br, zstd", "br , gzip;q=0.1",
                             "deflate;q=1,gzip; q=0.001", "*", "br;q=0, *;q=0.5", "gzip;q=1.0"}) {
    EXPECT_TRUE(AcceptsGzip(header)) << header;
  }
}

TEST(Encoding, GzipIsNotTaken) {
  for (const char* header :
       {"", "identity", "br", "gzip;q=0", "gzip; q=0.000", "*;q=0", "gzip;q=0, *", "*, gzip;q=0",
        "gzipped", "not-gzip", ",,,", ";", "gzip;q=", "gzip;q=x", "gzip;level=9"}) {
    EXPECT_FALSE(AcceptsGzip(header)) << header;
  }
}

}  // namespace
}  // namespace offplumb::server
