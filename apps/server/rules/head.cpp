#include "apps/server/rules/head.h"

#include <array>

#include <fmt/format.h>

namespace offplumb::server {
namespace {

std::string_view ReasonOf(int status) {
  switch (status) {
    case 200:
      return "OK";
    case 304:
      return "Not Modified";
    case 400:
      return "Bad Request";
    case 404:
      return "Not Found";
    case 405:
      return "Method Not Allowed";
    case 413:
      return "Content Too Large";
    case 421:
      return "Misdirected Request";
    case 431:
      return "Request Header Fields Too Large";
    default:
      return "Unknown";
  }
}

/// "Sun, 06 Nov 1994 08:49:37 GMT" (RFC 9110, section 5.6.7), in any locale.
std::string HttpDate(std::time_t now) {
  constexpr std::array<std::string_view, 7> kDays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  constexpr std::array<std::string_view, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                     "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  std::tm utc{};
  gmtime_r(&now, &utc);
  return fmt::format("{}, {:02} {} {:04} {:02}:{:02}:{:02} GMT",
                     kDays[static_cast<std::size_t>(utc.tm_wday)], utc.tm_mday,
                     kMonths[static_cast<std::size_t>(utc.tm_mon)], utc.tm_year + 1900, utc.tm_hour,
                     utc.tm_min, utc.tm_sec);
}

}  // namespace

std::span<const Header> SafetyHeaders() {
  static const std::array<Header, 6> headers{
      Header{"Content-Security-Policy",
             "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; "
             "style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
             "manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"},
      Header{"X-Content-Type-Options", "nosniff"},
      Header{"Referrer-Policy", "no-referrer"},
      Header{"Cross-Origin-Opener-Policy", "same-origin"},
      Header{"Cross-Origin-Resource-Policy", "same-origin"},
      Header{"Permissions-Policy",
             "geolocation=(self), gyroscope=(self), accelerometer=(self), "
             "screen-wake-lock=(self)"}};
  return headers;
}

std::string WriteHead(const Response& response, bool keep_alive, std::time_t now) {
  std::string head =
      fmt::format("HTTP/1.1 {} {}\r\nDate: {}\r\nConnection: {}\r\n", response.status,
                  ReasonOf(response.status), HttpDate(now), keep_alive ? "keep-alive" : "close");
  for (const Header& header : response.headers) {
    head += fmt::format("{}: {}\r\n", header.name, header.value);
  }
  for (const Header& header : SafetyHeaders()) {
    head += fmt::format("{}: {}\r\n", header.name, header.value);
  }
  return head + "\r\n";
}

}  // namespace offplumb::server
