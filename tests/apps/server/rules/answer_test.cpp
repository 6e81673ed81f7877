#include "apps/server/rules/answer.h"

#include <array>
#include <string>

#include <gtest/gtest.h>

#include "apps/server/rules/head.h"

namespace offplumb::server {
namespace {

constexpr std::array<Asset, 3> kPage{
    Asset{"/index.html", "text/html; charset=utf-8", "h1", "<p>page</p>", "zipped"},
    Asset{"/assets/a-Dk3x9_aB.js", "text/javascript; charset=utf-8", "h2", "let a;", ""},
    Asset{"/empty.txt", "text/plain; charset=utf-8", "h3", "", ""}};

const Here kHere{"127.0.0.1", 8470};

Request Get(const std::string& target) {
  Request request;
  request.method = "GET";
  request.target = target;
  request.hosts = 1;
  request.host = "localhost:8470";
  return request;
}

Response Answered(const Request& request) { return AnswerTo(request, kHere, kPage); }

std::string HeaderOf(const Response& response, std::string_view name) {
  for (const Header& header : response.headers) {
    if (header.name == name) return header.value;
  }
  return "none";
}

TEST(Answer, AFileWithItsHeaders) {
  const Response response = Answered(Get("/assets/a-Dk3x9_aB.js"));
  EXPECT_EQ(response.status, 200);
  EXPECT_EQ(response.Body(), "let a;");
  EXPECT_EQ(HeaderOf(response, "Content-Type"), "text/javascript; charset=utf-8");
  EXPECT_EQ(HeaderOf(response, "Content-Length"), "6");
  EXPECT_EQ(HeaderOf(response, "ETag"), "\"h2\"");
  EXPECT_EQ(HeaderOf(response, "Cache-Control"), "public, max-age=31536000, immutable");
  EXPECT_EQ(HeaderOf(response, "Vary"), "none");
  EXPECT_EQ(HeaderOf(response, "Content-Encoding"), "none");
  EXPECT_FALSE(response.close);
}

TEST(Answer, TheRootIsTheIndex) { EXPECT_EQ(Answered(Get("/")).Body(), "<p>page</p>"); }

TEST(Answer, GzipWhereItIsTakenAndThere) {
  Request request = Get("/");
  request.accept_encoding = "gzip";
  const Response response = Answered(request);
  EXPECT_EQ(response.Body(), "zipped");
  EXPECT_EQ(HeaderOf(response, "Content-Encoding"), "gzip");
  EXPECT_EQ(HeaderOf(response, "Content-Length"), "6");
  EXPECT_EQ(HeaderOf(response, "ETag"), "\"h1-gzip\"");
  EXPECT_EQ(HeaderOf(response, "Vary"), "Accept-Encoding");
  request.target = "/assets/a-Dk3x9_aB.js";
  EXPECT_EQ(HeaderOf(Answered(request), "Content-Encoding"), "none");
}

TEST(Answer, VaryStandsOnThePlainFormToo) {
  EXPECT_EQ(HeaderOf(Answered(Get("/")), "Vary"), "Accept-Encoding");
}

TEST(Answer, HeadHasTheHeadersOfGetAndNoBody) {
  for (const char* target : {"/", "/empty.txt", "/nothing", "/%2e%2e/x"}) {
    Request request = Get(target);
    const Response got = Answered(request);
    request.method = "HEAD";
    const Response head = Answered(request);
    EXPECT_EQ(head.Body(), "");
    EXPECT_EQ(WriteHead(head, true, 0), WriteHead(got, true, 0)) << target;
  }
}

TEST(Answer, WhatTheBrowserHasIsNotSentAgain) {
  Request request = Get("/");
  request.if_none_match = "\"h1\"";
  const Response response = Answered(request);
  EXPECT_EQ(response.status, 304);
  EXPECT_EQ(response.Body(), "");
  EXPECT_EQ(HeaderOf(response, "ETag"), "\"h1\"");
  EXPECT_EQ(HeaderOf(response, "Cache-Control"), "no-cache");
  EXPECT_EQ(HeaderOf(response, "Vary"), "Accept-Encoding");
  EXPECT_EQ(HeaderOf(response, "Content-Length"), "none");
  request.accept_encoding = "gzip";  // The other form has another tag.
  EXPECT_EQ(Answered(request).status, 200);
}

TEST(Answer, AnEmptyFile) {
  const Response response = Answered(Get("/empty.txt"));
  EXPECT_EQ(response.status, 200);
  EXPECT_EQ(response.Body(), "");
  EXPECT_EQ(HeaderOf(response, "Content-Length"), "0");
}

/// A refusal in words, whose connection ends or stays.
void ExpectRefused(const Request& request, int status, bool close, const std::string& saying) {
  const Response response = Answered(request);
  EXPECT_EQ(response.status, status);
  EXPECT_EQ(response.close, close);
  EXPECT_NE(std::string(response.Body()).find(saying), std::string::npos) << response.Body();
  EXPECT_EQ(response.Body().back(), '\n');
  EXPECT_EQ(HeaderOf(response, "Content-Type"), "text/plain; charset=utf-8");
  EXPECT_EQ(HeaderOf(response, "Content-Length"), std::to_string(response.Body().size()));
  EXPECT_EQ(HeaderOf(response, "Cache-Control"), "no-store");
}

TEST(Answer, OnlyGetAndHead) {
  for (const char* method :
       {"POST", "PUT", "DELETE", "OPTIONS", "TRACE", "CONNECT", "PATCH", "get", "FETCH"}) {
    Request request = Get("/");
    request.method = method;
    ExpectRefused(request, 405, true, "GET and HEAD");
    EXPECT_EQ(HeaderOf(Answered(request), "Allow"), "GET, HEAD");
  }
}

TEST(Answer, NoBodyIsTaken) {
  Request request = Get("/");
  request.has_body = true;
  ExpectRefused(request, 413, true, "takes no data");
}

TEST(Answer, OneHost) {
  Request request = Get("/");
  request.hosts = 0;
  request.host.clear();
  ExpectRefused(request, 400, true, "name its host");
  request.hosts = 2;
  request.host = "localhost:8470";
  ExpectRefused(request, 400, true, "name its host");
  request.hosts = 1;
  request.host = "";
  ExpectRefused(request, 400, true, "name its host");
}

TEST(Answer, AnotherHostIsRefusedBeforeAnythingIsTold) {
  for (const char* target : {"/", "/nothing", "/../x", "http://localhost:8470/"}) {
    Request request = Get(target);
    request.host = "evil.example:8470";
    ExpectRefused(request, 421, false, "http://127.0.0.1:8470/");
  }
  ExpectRefused(Get("http://evil.example:8470/"), 421, false, "another host");
  EXPECT_EQ(Answered(Get("http://127.0.0.1:8470/")).status, 200);
}

TEST(Answer, UnknownAndUnreadableAddresses) {
  ExpectRefused(Get("/nothing"), 404, false, "nothing at this address");
  ExpectRefused(Get("/index.html/"), 404, false, "nothing at this address");
  ExpectRefused(Get("/INDEX.HTML"), 404, false, "nothing at this address");
  ExpectRefused(Get("/%2e%2e/index.html"), 400, false, "cannot be read");
  ExpectRefused(Get("*"), 400, false, "cannot be read");
}

TEST(Answer, WhatIsNoRequest) {
  EXPECT_EQ(AnswerTo(Unreadable::kNoHttp).status, 400);
  EXPECT_TRUE(AnswerTo(Unreadable::kNoHttp).close);
  EXPECT_EQ(AnswerTo(Unreadable::kTooLarge).status, 431);
  EXPECT_TRUE(AnswerTo(Unreadable::kTooLarge).close);
}

TEST(Head, AsItGoesOverTheWire) {
  Response response;
  response.status = 404;
  response.headers = {{"Content-Length", "3"}};
  // The moment of RFC 9110's own example of a date.
  const std::string head = WriteHead(response, false, 784111777);
  const std::string start =
      "HTTP/1.1 404 Not Found\r\nDate: Sun, 06 Nov 1994 08:49:37 GMT\r\nConnection: close\r\n"
      "Content-Length: 3\r\nContent-Security-Policy: default-src 'none'; ";
  EXPECT_EQ(head.substr(0, start.size()), start);
  EXPECT_EQ(head.substr(head.size() - 4), "\r\n\r\n");
  EXPECT_EQ(head.find("\r\n\r\n"), head.size() - 4);
  EXPECT_NE(WriteHead(response, true, 0).find("Connection: keep-alive\r\n"), std::string::npos);
}

}  // namespace
}  // namespace offplumb::server
