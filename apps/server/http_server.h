/// \file
/// The sockets: everything that Boost.Beast and Asio do here.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>

#include "apps/server/rules/asset.h"
#include "engine/problem.h"

namespace offplumb::server {

/// The port that is tried first when none is given, and how many after it.
inline constexpr std::uint16_t kUsualPort = 8470;
inline constexpr std::uint16_t kPortsTried = 20;

/// A server of the page, on one thread.
class HttpServer {
 public:
  /// Begins to listen. On 127.0.0.1 it listens on [::1] too, where it can.
  /// \param address as `ReadAddress` gives it.
  /// \param port 0 takes any free one; nothing takes `kUsualPort` or the next free one.
  /// \return a problem that says why it cannot listen there and what to do.
  [[nodiscard]] static Expected<HttpServer> Listen(const std::string& address,
                                                   std::optional<std::uint16_t> port,
                                                   std::span<const Asset> assets);

  HttpServer(HttpServer&&) noexcept;
  HttpServer& operator=(HttpServer&&) noexcept;
  ~HttpServer();

  [[nodiscard]] std::uint16_t port() const;

  /// Serves until SIGINT or SIGTERM comes; one that came since `Listen` counts.
  void Run();

 private:
  struct Parts;
  explicit HttpServer(std::unique_ptr<Parts> parts);
  std::unique_ptr<Parts> parts_;
};

}  // namespace offplumb::server
