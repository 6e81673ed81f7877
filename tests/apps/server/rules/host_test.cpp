#include "apps/server/rules/host.h"

#include <gtest/gtest.h>

namespace offplumb::server {
namespace {

TEST(Host, ThisComputerByItsUsualNames) {
  const Here here{"127.0.0.1", 8470};
  for (const char* host : {"localhost:8470", "LocalHost:8470", "127.0.0.1:8470", "[::1]:8470"}) {
    EXPECT_TRUE(IsOurs(host, here)) << host;
  }
}

TEST(Host, AnyOtherNameIsRefused) {
  const Here here{"127.0.0.1", 8470};
  for (const char* host : {"",
                           ":8470",
                           "evil.example:8470",
                           "localhost.evil.example:8470",
                           "evil.localhost:8470",
                           "localhost",
                           "127.0.0.1",
                           "[::1]",
                           "localhost:80",
                           "localhost:",
                           "localhost:08470",
                           "localhost:84700",
                           "localhost:8470:8470",
                           "localhost :8470",
                           " localhost:8470",
                           "localhost.:8470",
                           "127.0.0.2:8470",
                           "127.1:8470",
                           "2130706433:8470",
                           "0.0.0.0:8470",
                           "::1:8470",
                           "[::1:8470",
                           "::1]:8470",
                           "[::1]]:8470",
                           "[::2]:8470",
                           "user@localhost:8470",
                           "localhost:8470/",
                           "localhost:8470@evil.example"}) {
    EXPECT_FALSE(IsOurs(host, here)) << host;
  }
}

TEST(Host, TheAddressOfTheConnectionIsOurs) {
  EXPECT_TRUE(IsOurs("192.0.2.7:8470", {"192.0.2.7", 8470}));
  EXPECT_FALSE(IsOurs("192.0.2.8:8470", {"192.0.2.7", 8470}));
  EXPECT_TRUE(IsOurs("[2001:db8::7]:8470", {"2001:db8::7", 8470}));
  EXPECT_TRUE(IsOurs("[2001:DB8::7]:8470", {"2001:db8::7", 8470}));
  EXPECT_FALSE(IsOurs("2001:db8::7:8470", {"2001:db8::7", 8470}));
}

TEST(Host, AnUnknownAddressMatchesNothing) {
  EXPECT_FALSE(IsOurs(":8470", {"", 8470}));
  EXPECT_TRUE(IsOurs("localhost:8470", {"", 8470}));
}

TEST(Host, WithoutAPortItMeansPort80) {
  EXPECT_TRUE(IsOurs("localhost", {"127.0.0.1", 80}));
  EXPECT_TRUE(IsOurs("[::1]", {"127.0.0.1", 80}));
  EXPECT_TRUE(IsOurs("localhost:80", {"127.0.0.1", 80}));
}

TEST(Host, InUrlPutsBracketsAroundColons) {
  EXPECT_EQ(InUrl("127.0.0.1"), "127.0.0.1");
  EXPECT_EQ(InUrl("::1"), "[::1]");
}

}  // namespace
}  // namespace offplumb::server
