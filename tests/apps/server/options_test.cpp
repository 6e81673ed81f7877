#include "apps/server/options.h"

#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "apps/server/address.h"

namespace offplumb::server {
namespace {

using Words = std::vector<std::string>;

TEST(Options, NothingTyped) {
  const auto options = ReadOptions({});
  ASSERT_TRUE(options);
  EXPECT_EQ(options->wish, Options::Wish::kServe);
  EXPECT_FALSE(options->port);
  EXPECT_EQ(options->address, "127.0.0.1");
  EXPECT_TRUE(options->browser);
}

TEST(Options, AllOfThem) {
  for (const Words& words : {Words{"--port", "9000", "--address", "0.0.0.0", "--no-browser"},
                             Words{"--no-browser", "--address=0.0.0.0", "--port=9000"}}) {
    const auto options = ReadOptions(words);
    ASSERT_TRUE(options);
    EXPECT_EQ(options->port, 9000);
    EXPECT_EQ(options->address, "0.0.0.0");
    EXPECT_FALSE(options->browser);
  }
}

TEST(Options, Wishes) {
  EXPECT_EQ(ReadOptions({"--help"})->wish, Options::Wish::kHelp);
  EXPECT_EQ(ReadOptions({"-h"})->wish, Options::Wish::kHelp);
  EXPECT_EQ(ReadOptions({"--version"})->wish, Options::Wish::kVersion);
}

TEST(Options, PortsAtTheEnds) {
  EXPECT_EQ(ReadOptions({"--port", "0"})->port, 0);
  EXPECT_EQ(ReadOptions({"--port", "65535"})->port, 65535);
}

/// A refusal about one thing, which says what to do.
void ExpectRefused(const Words& words, const std::string& subject, const std::string& saying) {
  const auto options = ReadOptions(words);
  ASSERT_FALSE(options) << words[0];
  EXPECT_EQ(options.error().kind, ProblemKind::kBadInput);
  EXPECT_EQ(options.error().subject, subject);
  EXPECT_NE(options.error().message.find(saying), std::string::npos) << options.error().message;
  EXPECT_FALSE(options.error().remedy.empty());
}

TEST(Options, WhatIsNoPort) {
  for (const char* port :
       {"", "x", "65536", "-1", "+1", "1.5", " 80", "80 ", "99999999999999999999", "0x50"}) {
    ExpectRefused({"--port", port}, "--port", "is no port");
  }
}

TEST(Options, WhatIsNoAddress) {
  for (const char* address : {"", "boat", "1.2.3", "1.2.3.4.5", "256.0.0.1", "127.0.0.1:80", "[::1",
                              "http://127.0.0.1/", "*"}) {
    ExpectRefused({"--address", address}, "--address", "no address");
  }
}

TEST(Options, UnknownOnes) {
  ExpectRefused({"--prot", "80"}, "options", "Did you mean --port?");
  ExpectRefused({"--no-brower"}, "options", "Did you mean --no-browser?");
  ExpectRefused({"8470"}, "options", "\"8470\"");
  ExpectRefused({"--no-browser=1"}, "options", "no option");
}

TEST(Options, MissingAndDoubled) {
  ExpectRefused({"--port"}, "--port", "needs a value");
  ExpectRefused({"--address"}, "--address", "needs a value");
  ExpectRefused({"--port", "1", "--port=2"}, "--port", "twice");
}

TEST(Options, HelpNamesEachOption) {
  for (const char* option : {"--port", "--address", "--no-browser", "--help", "--version"}) {
    EXPECT_NE(HelpText().find(option), std::string::npos) << option;
  }
}

TEST(Address, IsReadInItsUsualForm) {
  EXPECT_EQ(ReadAddress("localhost"), "127.0.0.1");
  EXPECT_EQ(ReadAddress("192.0.2.7"), "192.0.2.7");
  EXPECT_EQ(ReadAddress("[::1]"), "::1");
  EXPECT_EQ(ReadAddress("0:0:0:0:0:0:0:1"), "::1");
  EXPECT_EQ(ReadAddress("2001:DB8::7"), "2001:db8::7");
}

TEST(Address, Loopback) {
  EXPECT_TRUE(IsLoopback("127.0.0.1"));
  EXPECT_TRUE(IsLoopback("127.0.0.5"));
  EXPECT_TRUE(IsLoopback("::1"));
  for (const char* address : {"0.0.0.0", "::", "192.0.2.7", "2001:db8::7", "12.7.0.1"}) {
    EXPECT_FALSE(IsLoopback(address)) << address;
  }
}

TEST(Address, AsUrl) {
  EXPECT_EQ(UrlOf("127.0.0.1", 8470), "http://127.0.0.1:8470/");
  EXPECT_EQ(UrlOf("::1", 8470), "http://[::1]:8470/");
  EXPECT_EQ(UrlOf("0.0.0.0", 9000), "http://127.0.0.1:9000/");
  EXPECT_EQ(UrlOf("::", 9000), "http://[::1]:9000/");
  EXPECT_EQ(UrlOf("192.0.2.7", 80), "http://192.0.2.7:80/");
}

}  // namespace
}  // namespace offplumb::server
