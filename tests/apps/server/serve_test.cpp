// Starting and ending the program: what it says, and how it leaves.
#include <csignal>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/apps/server/client.h"
#include "tests/apps/server/running.h"

namespace offplumb::server {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::MatchesRegex;
using testing::StartsWith;

Ended RunOf(const std::vector<std::string>& words) {
  return Running(Start{words, {}, false, 0}).End();
}

TEST(Serve, SaysItsAddressAndNothingElseOnStandardOutput) {
  Running server;
  EXPECT_THAT(server.address(), MatchesRegex("http://127\\.0\\.0\\.1:[0-9]+/"));
  const std::string address = server.address();
  EXPECT_EQ(Ask(server.port(), "GET", "/").status, 200);
  const Ended ended = server.End(SIGTERM);
  EXPECT_EQ(ended.exit_code, 0);
  EXPECT_EQ(ended.out, address + "\n");
  EXPECT_EQ(ended.err, "Open this address in a browser. Ctrl-C ends this program.\n");
}

TEST(Serve, EndsQuietlyInTheMiddleOfThings) {
  for (const int signal : {SIGINT, SIGTERM}) {
    Running server;
    Client idle(server.port());
    Client halfway(server.port());
    ASSERT_TRUE(halfway.Send("GET / HT"));
    EXPECT_EQ(Ask(server.port(), "GET", "/").status, 200);
    const Ended ended = server.End(signal);
    EXPECT_EQ(ended.exit_code, 0);
    EXPECT_EQ(std::count(ended.err.begin(), ended.err.end(), '\n'), 1) << ended.err;
    EXPECT_EQ(idle.ReadToEnd(), "");
    EXPECT_EQ(halfway.ReadToEnd(), "");
  }
}

TEST(Serve, HelpAndVersion) {
  const Ended help = RunOf({"--help"});
  EXPECT_EQ(help.exit_code, 0);
  EXPECT_THAT(help.out, HasSubstr("--no-browser"));
  EXPECT_EQ(help.err, "");
  const Ended version = RunOf({"--version"});
  EXPECT_EQ(version.exit_code, 0);
  EXPECT_THAT(version.out, MatchesRegex("offplumb_serve [0-9.]+\n"));
}

void ExpectRefused(const std::vector<std::string>& words, const std::string& saying) {
  const Ended ended = RunOf(words);
  EXPECT_EQ(ended.exit_code, 2);
  EXPECT_EQ(ended.out, "");
  EXPECT_THAT(ended.err, StartsWith("offplumb_serve: "));
  EXPECT_THAT(ended.err, HasSubstr(saying));
  EXPECT_EQ(ended.err.find('\n'), ended.err.size() - 1) << ended.err;
}

TEST(Serve, RefusesWhatItCannotDo) {
  ExpectRefused({"--port", "99999"}, "from 0 to 65535");
  ExpectRefused({"--prot", "80"}, "--port?");
  ExpectRefused({"a\nb\033[31m"}, "a?b?[31m");
  // An address kept for documentation (RFC 5737): no computer has it.
  ExpectRefused({"--address", "203.0.113.9", "--port", "0"}, "no address of this computer");
}

TEST(Serve, ATakenPortThatWasAskedFor) {
  Running first;
  ExpectRefused({"--port", std::to_string(first.port())}, "Another program listens");
  ExpectRefused({"--port", std::to_string(first.port())}, "leave --port out");
}

TEST(Serve, ATakenPortThatWasNotAskedFor) {
  const Start usual{{"--no-browser"}, {}, false, 0};
  Running first(usual);
  ASSERT_NE(first.port(), 0);  // It has its port before the second one looks for one.
  Running second(usual);
  EXPECT_NE(first.port(), second.port());
  for (Running* server : {&first, &second}) {
    EXPECT_GE(server->port(), 8470);
    EXPECT_LT(server->port(), 8490);
    EXPECT_EQ(Ask(server->port(), "GET", "/").status, 200);
  }
  const std::uint16_t port = second.port();
  const Ended ended = second.End(SIGTERM);
  EXPECT_THAT(ended.err, HasSubstr("Port 8470 is taken, so this is " + std::to_string(port)));
}

TEST(Serve, ItsPortIsFreeAgainAtOnce) {
  Running first;
  const std::string port = std::to_string(first.port());
  Client client(first.port());
  ASSERT_TRUE(client.Send(RequestText("GET", "/", first.port())));
  EXPECT_EQ(client.Read().status, 200);
  EXPECT_EQ(first.End(SIGTERM).exit_code, 0);
  Running second(Start{{"--port", port, "--no-browser"}, {}, false, 0});
  EXPECT_EQ(std::to_string(second.port()), port);
}

/// Asks at one address under the name of another.
int StatusAt(std::uint16_t port, const std::string& address, const std::string& host) {
  Client client(port, address);
  EXPECT_TRUE(client.connected()) << address;
  EXPECT_TRUE(
      client.Send("GET / HTTP/1.1\r\nHost: " + host + ":" + std::to_string(port) + "\r\n\r\n"));
  return client.Read().status;
}

TEST(Serve, AnotherLoopbackAddress) {
  Running server(Start{{"--address", "127.0.0.5", "--port", "0"}, {}, false, 0});
  EXPECT_THAT(server.address(), StartsWith("http://127.0.0.5:"));
  EXPECT_EQ(StatusAt(server.port(), "127.0.0.5", "127.0.0.5"), 200);
  EXPECT_EQ(StatusAt(server.port(), "127.0.0.5", "127.0.0.6"), 421);
  EXPECT_THAT(server.End(SIGTERM).err, Not(HasSubstr("Others")));
}

TEST(Serve, AllAddresses) {
  Running server(Start{{"--address", "0.0.0.0", "--port", "0"}, {}, false, 0});
  EXPECT_THAT(server.address(), StartsWith("http://127.0.0.1:"));
  EXPECT_EQ(StatusAt(server.port(), "127.0.0.1", "localhost"), 200);
  EXPECT_EQ(StatusAt(server.port(), "127.0.0.7", "127.0.0.7"), 200);
  // Another address, even if it may be this computer's, is not the one the request came to.
  EXPECT_EQ(StatusAt(server.port(), "127.0.0.1", "192.0.2.7"), 421);
  EXPECT_EQ(StatusAt(server.port(), "127.0.0.1", "evil.example"), 421);
  const Ended ended = server.End(SIGTERM);
  EXPECT_THAT(ended.err, HasSubstr("Others on the network can open this page"));
  EXPECT_THAT(ended.err, HasSubstr("https"));
}

/// A folder with a stand-in for the desktop's browser starter, which writes down what it is given.
class Browser : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = testing::TempDir() + "offplumb-browser-XXXXXX";
    ASSERT_NE(mkdtemp(name.data()), nullptr);
    folder_ = name;
    std::ofstream(folder_ / "xdg-open") << "#!/bin/sh\nprintf '%s' \"$*\" >\"$0.new\"\n"
                                           "mv \"$0.new\" \"$0.got\"\n";
    std::filesystem::permissions(folder_ / "xdg-open", std::filesystem::perms::owner_all);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  [[nodiscard]] Start With(std::vector<std::string> words, bool terminal,
                           const std::string& display) const {
    words.insert(words.end(), {"--port", "0"});
    return {words,
            {{"PATH", folder_.string() + ":/usr/bin:/bin"},
             {"DISPLAY", display},
             {"WAYLAND_DISPLAY", ""}},
            terminal,
            0};
  }

  /// \return what the stand-in was given, once it has it.
  [[nodiscard]] std::string Opened() const {
    const auto got = folder_ / "xdg-open.got";
    while (!std::filesystem::exists(got)) std::this_thread::sleep_for(std::chrono::milliseconds(5));
    std::ostringstream text;
    text << std::ifstream(got).rdbuf();
    return text.str();
  }

  [[nodiscard]] bool NothingOpened() const {
    return !std::filesystem::exists(folder_ / "xdg-open.got") &&
           !std::filesystem::exists(folder_ / "xdg-open.new");
  }

  std::filesystem::path folder_;
};

TEST_F(Browser, OpensForAPerson) {
  Running server(With({}, true, ":0"));
  EXPECT_EQ(Ask(server.port(), "GET", "/").status, 200);
  EXPECT_EQ(Opened(), server.address());
  const Ended ended = server.End(SIGINT);
  EXPECT_EQ(ended.exit_code, 0);
  EXPECT_THAT(ended.err, StartsWith("The page opens in your browser."));
}

TEST_F(Browser, StaysClosedOtherwise) {
  for (const Start& start :
       {With({"--no-browser"}, true, ":0"), With({}, false, ":0"), With({}, true, "")}) {
    Running server(start);
    // Once it answers it is past the point where it would have opened one.
    EXPECT_EQ(Ask(server.port(), "GET", "/").status, 200);
    EXPECT_THAT(server.End(SIGTERM).err, StartsWith("Open this address in a browser."));
    EXPECT_TRUE(NothingOpened());
  }
}

TEST_F(Browser, DoesWithoutTheStarter) {
  std::filesystem::remove(folder_ / "xdg-open");
  Start start = With({}, true, ":0");
  start.environment["PATH"] = folder_.string();
  Running server(start);
  EXPECT_EQ(Ask(server.port(), "GET", "/").status, 200);
  EXPECT_EQ(server.End(SIGTERM).exit_code, 0);
}

TEST_F(Browser, DoesNotHoldThePort) {
  // The browser stays open after the server has gone.
  std::ofstream(folder_ / "xdg-open", std::ios::app) << "exec sleep 5\n";
  Running first(With({}, true, ":0"));
  const std::string port = std::to_string(first.port());
  EXPECT_EQ(Opened(), first.address());
  EXPECT_EQ(first.End(SIGTERM).exit_code, 0);
  Running second(Start{{"--port", port, "--no-browser"}, {}, false, 0});
  EXPECT_EQ(std::to_string(second.port()), port);
}

}  // namespace
}  // namespace offplumb::server
