// A request may hold any bytes: it is answered with a file of the page or with a refusal in words,
// never with a file for another host, and no header line of ours holds what was sent.
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "apps/server/rules/answer.h"
#include "apps/server/rules/head.h"
#include "apps/server/rules/target.h"

namespace {

using namespace offplumb::server;

void Require(bool holds) {
  if (!holds) std::abort();
}

std::string TakeLine(std::string_view& text) {
  const std::size_t end = text.find('\n');
  const std::string line(text.substr(0, end));
  text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  return line;
}

void CheckPath(const std::string& path) {
  Require(path[0] == '/' && (path + "/").find("/../") == std::string::npos);
  Require((path + "/").find("/./") == std::string::npos);
  Require(path.find("//") == std::string::npos && path.find('\\') == std::string::npos);
  Require(path.find('%') == std::string::npos);
  for (const char c : path) Require(static_cast<unsigned char>(c) >= 0x20 && c != 0x7f);
}

/// The head is lines of ours, each ended once, and nothing after the empty line.
void CheckHead(const Response& response) {
  const std::string head = WriteHead(response, !response.close, 0);
  Require(head.find("\r\n\r\n") == head.size() - 4);
  for (std::size_t at = 0; at < head.size(); ++at) {
    const auto byte = static_cast<unsigned char>(head[at]);
    Require(byte >= 0x20 || byte == '\r' || byte == '\n');
    Require((byte == '\n') == (at > 0 && head[at - 1] == '\r'));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  constexpr std::array<Asset, 2> kPage{
      Asset{"/index.html", "text/html; charset=utf-8", "h1", "<p>page</p>", "zipped"},
      Asset{"/assets/a-Dk3x9_aB.js", "text/javascript; charset=utf-8", "h2", "let a;", ""}};
  std::string_view text(reinterpret_cast<const char*>(data), size);
  Request request;
  request.method = TakeLine(text);
  request.target = TakeLine(text);
  request.host = TakeLine(text);
  request.accept_encoding = TakeLine(text);
  request.if_none_match = TakeLine(text);
  request.hosts = 1;
  const Here here{"192.0.2.7", 8470};

  const auto target = ReadTarget(request.target);
  if (target) CheckPath(target->path);
  const bool ours = IsOurs(request.host, here);
  if (ours) {
    // Our four names, with one port.
    Require(request.host.size() >= std::string_view("[::1]:8470").size());
    Require(request.host.substr(request.host.size() - 5) == ":8470");
    Require(request.host.size() <= std::string_view("localhost:8470").size());
  }
  const Response response = AnswerTo(request, here, kPage);
  const bool given = response.status == 200 || response.status == 304;
  Require(!given || (ours && target && (request.method == "GET" || request.method == "HEAD")));
  Require(given || !response.words.empty());
  Require(request.method != "HEAD" || response.Body().empty());
  CheckHead(response);
  return 0;
}
