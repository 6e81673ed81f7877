#include "apps/server/rules/host.h"

#include "apps/server/rules/letters.h"

namespace offplumb::server {
namespace {

constexpr std::string_view kPortOfHttp = "80";

/// Takes ":8470" off the end of a host. \return the port's text.
std::string_view TakePort(std::string_view& host) {
  const std::size_t colon = host.rfind(':');
  const std::size_t bracket = host.rfind(']');
  const bool inside_brackets = bracket != std::string_view::npos && colon < bracket;
  if (colon == std::string_view::npos || inside_brackets) return kPortOfHttp;
  const std::string_view port = host.substr(colon + 1);
  host = host.substr(0, colon);
  return port;
}

}  // namespace

bool IsOurs(std::string_view host, const Here& here) {
  if (TakePort(host) != std::to_string(here.port)) return false;
  return EqualIgnoringCase(host, "localhost") || host == "127.0.0.1" || host == "[::1]" ||
         (!here.address.empty() && EqualIgnoringCase(host, InUrl(here.address)));
}

std::string InUrl(std::string_view address) {
  const std::string text(address);
  return address.find(':') == std::string_view::npos ? text : "[" + text + "]";
}

}  // namespace offplumb::server
