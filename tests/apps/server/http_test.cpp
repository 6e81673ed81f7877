// What goes over the wire, asked of the program itself.
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

#include <gtest/gtest.h>

#include "tests/apps/server/client.h"
#include "tests/apps/server/running.h"

namespace offplumb::server {
namespace {

class Http : public testing::Test {
 protected:
  void SetUp() override { ASSERT_NE(server_.port(), 0); }

  [[nodiscard]] Reply Got(const std::string& target, const std::string& headers = {}) {
    return Ask(server_.port(), "GET", target, headers);
  }

  Running server_;
};

/// What every reply carries, whatever it says.
void ExpectSafe(const Reply& reply) {
  EXPECT_EQ(
      reply["content-security-policy"],
      "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; "
      "style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; "
      "base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
  EXPECT_EQ(reply["x-content-type-options"], "nosniff");
  EXPECT_EQ(reply["referrer-policy"], "no-referrer");
  EXPECT_EQ(reply["cross-origin-opener-policy"], "same-origin");
  EXPECT_EQ(reply["cross-origin-resource-policy"], "same-origin");
  EXPECT_EQ(reply["permissions-policy"],
            "geolocation=(self), gyroscope=(self), accelerometer=(self), screen-wake-lock=(self)");
  EXPECT_EQ(reply["date"].size(), std::string("Sun, 06 Nov 1994 08:49:37 GMT").size());
}

void ExpectRefused(const Reply& reply, int status) {
  EXPECT_EQ(reply.status, status);
  EXPECT_EQ(reply["content-type"], "text/plain; charset=utf-8");
  EXPECT_GT(reply.body.size(), 10U);
  EXPECT_EQ(reply["etag"], "");
  ExpectSafe(reply);
}

TEST_F(Http, ThePage) {
  const Reply reply = Got("/");
  EXPECT_EQ(reply.status, 200);
  EXPECT_EQ(reply.body, PageFile("/index.html"));
  EXPECT_EQ(reply["content-type"], "text/html; charset=utf-8");
  EXPECT_EQ(reply["cache-control"], "no-cache");
  EXPECT_EQ(reply["connection"], "keep-alive");
  ExpectSafe(reply);
  EXPECT_EQ(Got("/index.html").body, reply.body);
  EXPECT_EQ(Got("/?from=home").body, reply.body);
}

TEST_F(Http, EachKindOfFile) {
  const std::string forever = "public, max-age=31536000, immutable";
  const std::vector<std::array<std::string, 3>> files{
      {"/assets/page-Dk3x9_aB.js", "text/javascript; charset=utf-8", forever},
      {"/assets/sheet-B7-k_q2x.css", "text/css; charset=utf-8", forever},
      {"/assets/worker.mjs", "text/javascript; charset=utf-8", "no-cache"},
      {"/sw.js", "text/javascript; charset=utf-8", "no-cache"},
      {"/engine.wasm", "application/wasm", "no-cache"},
      {"/manifest.webmanifest", "application/manifest+json", "no-cache"},
      {"/deep/er/note.txt", "text/plain; charset=utf-8", "no-cache"}};
  for (const auto& [path, type, caching] : files) {
    const Reply reply = Got(path);
    EXPECT_EQ(reply.status, 200) << path;
    EXPECT_EQ(reply.body, PageFile(path)) << path;
    EXPECT_EQ(reply["content-type"], type) << path;
    EXPECT_EQ(reply["cache-control"], caching) << path;
    EXPECT_EQ(reply["etag"].size(), 34U) << path;
    ExpectSafe(reply);
  }
}

/// \return what gzip makes of it.
std::string Unzipped(const std::string& bytes) {
  const std::string file = testing::TempDir() + "offplumb-served-" + std::to_string(getpid());
  std::ofstream(file, std::ios::binary) << bytes;
  std::string plain;
  FILE* output = popen(("gzip -dc <'" + file + "'").c_str(), "r");
  for (int c = std::fgetc(output); c != EOF; c = std::fgetc(output)) {
    plain += static_cast<char>(c);
  }
  EXPECT_EQ(pclose(output), 0);
  std::filesystem::remove(file);
  return plain;
}

TEST_F(Http, GzipWhereItIsSmallerAndTaken) {
  const Reply plain = Got("/");
  const Reply packed = Got("/", "Accept-Encoding: br;q=1, gzip\r\n");
  EXPECT_EQ(packed.status, 200);
  EXPECT_EQ(packed["content-encoding"], "gzip");
  EXPECT_LT(packed.body.size(), plain.body.size());
  EXPECT_EQ(Unzipped(packed.body), plain.body);
  EXPECT_EQ(packed["content-type"], plain["content-type"]);
  EXPECT_EQ(packed["vary"], "Accept-Encoding");
  EXPECT_EQ(plain["vary"], "Accept-Encoding");
  EXPECT_NE(packed["etag"], plain["etag"]);
  ExpectSafe(packed);
  EXPECT_EQ(Got("/", "Accept-Encoding: gzip;q=0\r\n")["content-encoding"], "");
  // Two headers count as one list.
  EXPECT_EQ(Got("/", "Accept-Encoding: br\r\nAccept-Encoding: gzip\r\n")["content-encoding"],
            "gzip");
  // Eight bytes do not get smaller.
  const Reply tiny = Got("/engine.wasm", "Accept-Encoding: gzip\r\n");
  EXPECT_EQ(tiny["content-encoding"], "");
  EXPECT_EQ(tiny["vary"], "");
  EXPECT_EQ(tiny.body, PageFile("/engine.wasm"));
}

TEST_F(Http, WhatTheBrowserHasIsNotSentAgain) {
  const std::string tag = Got("/")["etag"];
  const Reply reply = Got("/", "If-None-Match: \"other\", " + tag + "\r\n");
  EXPECT_EQ(reply.status, 304);
  EXPECT_EQ(reply["etag"], tag);
  EXPECT_EQ(reply["cache-control"], "no-cache");
  EXPECT_EQ(reply["content-type"], "");
  ExpectSafe(reply);
  EXPECT_EQ(Got("/", "If-None-Match: \"other\"\r\n").status, 200);
  EXPECT_EQ(Got("/sw.js", "If-None-Match: " + tag + "\r\n").status, 200);
  const std::string gzip = "Accept-Encoding: gzip\r\n";
  EXPECT_EQ(Got("/", gzip + "If-None-Match: " + tag + "\r\n").status, 200);
  EXPECT_EQ(Got("/", gzip + "If-None-Match: " + Got("/", gzip)["etag"] + "\r\n").status, 304);
}

TEST_F(Http, HeadAndNothingAfterIt) {
  Client client(server_.port());
  ASSERT_TRUE(client.Send(RequestText("HEAD", "/", server_.port()) +
                          RequestText("GET", "/", server_.port(), "Connection: close\r\n")));
  const Reply head = client.Read(true);
  EXPECT_EQ(head.status, 200);
  EXPECT_EQ(head["content-length"], std::to_string(PageFile("/index.html").size()));
  ExpectSafe(head);
  Reply got = client.Read();
  EXPECT_EQ(got.body, PageFile("/index.html"));
  EXPECT_EQ(got["connection"], "close");
  EXPECT_EQ(client.ReadToEnd(), "");
  got.headers["connection"] = "keep-alive";
  got.headers["date"] = head["date"];
  EXPECT_EQ(head.headers, got.headers);
}

TEST_F(Http, HeadOfWhatIsNotThere) {
  Client client(server_.port());
  ASSERT_TRUE(
      client.Send(RequestText("HEAD", "/nothing", server_.port(), "Connection: close\r\n")));
  EXPECT_EQ(client.Read(true).status, 404);
  EXPECT_EQ(client.ReadToEnd(), "");
}

TEST_F(Http, OnlyGetAndHead) {
  for (const char* method : {"POST", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "BREW"}) {
    const Reply reply = Ask(server_.port(), method, "/");
    ExpectRefused(reply, 405);
    EXPECT_EQ(reply["allow"], "GET, HEAD") << method;
    EXPECT_EQ(reply["connection"], "close") << method;
  }
  ExpectRefused(Ask(server_.port(), "CONNECT", "localhost:80"), 405);
}

TEST_F(Http, BodiesAreRefusedAndNotRead) {
  for (const char* headers :
       {"Content-Length: 5\r\n", "Content-Length: 18446744073709551615\r\n",
        "Transfer-Encoding: chunked\r\n", "Content-Length: 5\r\nExpect: 100-continue\r\n"}) {
    Client client(server_.port());
    // Were the body taken for a request of its own, a second reply would follow.
    ASSERT_TRUE(client.Send(RequestText("GET", "/", server_.port(), headers) +
                            RequestText("GET", "/sw.js", server_.port())));
    ExpectRefused(client.Read(), 413);
    EXPECT_EQ(client.ReadToEnd(), "") << headers;
  }
  EXPECT_EQ(Got("/", "Content-Length: 0\r\n").status, 200);
  ExpectRefused(Ask(server_.port(), "POST", "/", "Content-Length: 3\r\n"), 405);
}

TEST_F(Http, ALongBodyDoesNotCutTheAnswerShort) {
  Client client(server_.port());
  ASSERT_TRUE(client.Send(RequestText("POST", "/", server_.port(), "Content-Length: 60000\r\n") +
                          std::string(60000, 'x')));
  ExpectRefused(client.Read(), 405);
  EXPECT_EQ(client.ReadToEnd(), "");
  // A server that closed with bytes unread would tear the connection down, answer and all.
  EXPECT_FALSE(client.was_reset());
}

TEST_F(Http, NoWayOutOfThePage) {
  for (const char* target :
       {"/../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/..%2f..%2fetc/passwd", "/%2E./x",
        "/..\\..\\etc\\passwd", "/..%5c..%5cetc", "/%252e%252e/etc/passwd", "//etc/passwd",
        "/assets/../../etc/passwd", "/assets/..", "/%00", "/index.html%00", "/%c0%ae%c0%ae\\x",
        "/index.html%0d%0aSet-Cookie:%20a=b", "/%", "/%zz"}) {
    ExpectRefused(Got(target), 400);
  }
  // Bytes that are two dots only to a careless reader.
  ExpectRefused(Got("/%c0%ae%c0%ae/x"), 404);
}

TEST_F(Http, NothingThere) {
  for (const char* target : {"/nothing", "/assets", "/assets/", "/.hidden", "/INDEX.html",
                             "/index.html/", "/etc/passwd"}) {
    const Reply reply = Got(target);
    ExpectRefused(reply, 404);
    EXPECT_EQ(reply["connection"], "keep-alive");
  }
}

TEST_F(Http, OnlyItsOwnHost) {
  const std::string port = std::to_string(server_.port());
  const auto ask = [&](const std::string& hosts, const std::string& version = "1.1") {
    Client client(server_.port());
    EXPECT_TRUE(client.Send("GET / HTTP/" + version + "\r\n" + hosts + "\r\n"));
    return client.Read();
  };
  for (const std::string& host : {"localhost:" + port, "127.0.0.1:" + port, "[::1]:" + port}) {
    EXPECT_EQ(ask("Host: " + host + "\r\n").status, 200) << host;
  }
  for (const std::string& host :
       {"evil.example:" + port, std::string("evil.example"), std::string("localhost"),
        "192.0.2.7:" + port, "localhost.evil.example:" + port, "localhost:" + port + "0"}) {
    const Reply reply = ask("Host: " + host + "\r\n");
    ExpectRefused(reply, 421);
    EXPECT_EQ(reply.body.find("evil"), std::string::npos) << "what was sent comes back";
    EXPECT_NE(reply.body.find("http://127.0.0.1:" + port + "/"), std::string::npos);
  }
  ExpectRefused(ask(""), 400);
  ExpectRefused(ask("", "1.0"), 400);
  ExpectRefused(ask("Host:\r\n"), 400);
  ExpectRefused(ask("Host: localhost:" + port + "\r\nHost: evil.example\r\n"), 400);
}

TEST_F(Http, ATargetMayNameTheHost) {
  const std::string port = std::to_string(server_.port());
  EXPECT_EQ(Got("http://localhost:" + port + "/sw.js").body, PageFile("/sw.js"));
  ExpectRefused(Got("http://evil.example:" + port + "/sw.js"), 421);
}

TEST_F(Http, ManyRequestsOnOneConnection) {
  Client client(server_.port());
  std::string requests;
  for (int i = 0; i < 50; ++i) {
    requests += RequestText("GET", i % 2 == 0 ? "/" : "/nothing", server_.port());
  }
  ASSERT_TRUE(client.Send(requests));
  for (int i = 0; i < 50; ++i) EXPECT_EQ(client.Read().status, i % 2 == 0 ? 200 : 404) << i;
}

TEST_F(Http, AnOldClientIsAnsweredAndLetGo) {
  Client client(server_.port());
  ASSERT_TRUE(client.Send("GET / HTTP/1.0\r\nHost: 127.0.0.1:" + std::to_string(server_.port()) +
                          "\r\n\r\n"));
  const Reply reply = client.Read();
  EXPECT_EQ(reply.status, 200);
  EXPECT_EQ(reply["connection"], "close");
  EXPECT_EQ(client.ReadToEnd(), "");
}

TEST_F(Http, ByteByByte) {
  Client client(server_.port());
  for (const char c : RequestText("GET", "/sw.js", server_.port())) {
    ASSERT_TRUE(client.Send(std::string(1, c)));
  }
  EXPECT_EQ(client.Read().body, PageFile("/sw.js"));
}

TEST_F(Http, TheOtherLoopbackToo) {
  Client client(server_.port(), "::1");
  if (!client.connected()) GTEST_SKIP() << "no IPv6 here, or its port is another program's";
  ASSERT_TRUE(client.Send("GET /sw.js HTTP/1.1\r\nHost: [::1]:" + std::to_string(server_.port()) +
                          "\r\n\r\n"));
  EXPECT_EQ(client.Read().body, PageFile("/sw.js"));
}

}  // namespace
}  // namespace offplumb::server
