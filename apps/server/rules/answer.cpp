#include "apps/server/rules/answer.h"

#include <fmt/format.h>

#include "apps/server/rules/caching.h"
#include "apps/server/rules/encoding.h"
#include "apps/server/rules/target.h"

namespace offplumb::server {
namespace {

Response Refusal(int status, std::string words) {
  Response response;
  response.status = status;
  response.words = std::move(words) + "\n";
  response.headers = {{"Content-Type", "text/plain; charset=utf-8"},
                      {"Content-Length", std::to_string(response.words.size())},
                      {"Cache-Control", "no-store"}};
  return response;
}

/// A refusal after which what the client sends next could be read amiss.
Response LastRefusal(int status, std::string words) {
  Response response = Refusal(status, std::move(words));
  response.close = true;
  return response;
}

Response MethodRefusal() {
  Response response = LastRefusal(405, "This server only hands out the page: GET and HEAD.");
  response.headers.push_back({"Allow", "GET, HEAD"});
  return response;
}

Response HostRefusal(const Here& here) {
  return Refusal(421, fmt::format("This request was meant for another host. The page is at "
                                  "http://{}:{}/",
                                  InUrl(here.address), here.port));
}

Response FileResponse(const Asset& asset, const Request& request) {
  const bool gzip = !asset.gzip.empty() && AcceptsGzip(request.accept_encoding);
  const std::string tag = EntityTag(asset.hash, gzip);
  Response response;
  response.headers = {{"ETag", tag}, {"Cache-Control", std::string(CacheControl(asset.path))}};
  if (!asset.gzip.empty()) response.headers.push_back({"Vary", "Accept-Encoding"});
  if (HasTag(request.if_none_match, tag)) {
    response.status = 304;
    response.without_body = true;
    return response;
  }
  response.file = gzip ? asset.gzip : asset.bytes;
  response.headers.push_back({"Content-Type", std::string(asset.type)});
  response.headers.push_back({"Content-Length", std::to_string(response.file.size())});
  if (gzip) response.headers.push_back({"Content-Encoding", "gzip"});
  return response;
}

Response Answer(const Request& request, const Here& here, std::span<const Asset> assets) {
  if (request.method != "GET" && request.method != "HEAD") return MethodRefusal();
  if (request.has_body) {
    return LastRefusal(413, "This server only hands out the page and takes no data.");
  }
  if (request.hosts != 1 || request.host.empty()) {
    return LastRefusal(400, "The request must name its host, once.");
  }
  const auto target = ReadTarget(request.target);
  if (!IsOurs(request.host, here)) return HostRefusal(here);
  if (!target) return Refusal(400, "This address cannot be read. The page is at /");
  if (!target->authority.empty() && !IsOurs(target->authority, here)) return HostRefusal(here);
  const Asset* asset = FindAsset(assets, target->path);
  if (asset == nullptr) return Refusal(404, "There is nothing at this address. The page is at /");
  return FileResponse(*asset, request);
}

}  // namespace

Response AnswerTo(const Request& request, const Here& here, std::span<const Asset> assets) {
  Response response = Answer(request, here, assets);
  if (request.method == "HEAD") response.without_body = true;
  return response;
}

Response AnswerTo(Unreadable why) {
  if (why == Unreadable::kTooLarge) {
    return LastRefusal(431, "The request's line and headers are too long.");
  }
  return LastRefusal(400, "This is not an HTTP/1 request. Open the page with http://, not https.");
}

}  // namespace offplumb::server
