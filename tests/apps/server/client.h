/// \file
/// A client that says exactly what a test wants it to, byte by byte.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>

namespace offplumb::server {

/// What came back, taken apart.
struct Reply {
  int status = 0;                              ///< 0 when nothing whole came.
  std::map<std::string, std::string> headers;  ///< Names in small letters.
  std::string body;

  /// \return a header's value; empty when there is none.
  [[nodiscard]] std::string operator[](const std::string& name) const;
};

/// One connection. A failure of the connection itself is a test's failure, except where said.
class Client {
 public:
  /// \param address of the server, IPv4 or IPv6.
  explicit Client(std::uint16_t port, const std::string& address = "127.0.0.1");
  ~Client();
  Client(Client&& other) noexcept;
  Client& operator=(Client&& other) noexcept;
  Client(const Client&) = delete;
  Client& operator=(const Client&) = delete;

  [[nodiscard]] bool connected() const { return socket_ >= 0; }

  /// \return whether all of it went out: not when the server has closed.
  bool Send(std::string_view bytes) const;
  /// Sends what goes out without waiting. \return how much that was; nothing when it is full.
  std::size_t SendSome(std::string_view bytes) const;
  /// Says that no more comes, and still listens.
  void FinishSending() const;
  /// Reads one reply; the next one stays. \param without_body for what answers HEAD.
  [[nodiscard]] Reply Read(bool without_body = false);
  /// \return all that comes until the server closes.
  [[nodiscard]] std::string ReadToEnd();
  /// \return whether reading met a connection that was torn down instead of closed.
  [[nodiscard]] bool was_reset() const { return was_reset_; }
  /// \return whether something is there to be read, without waiting.
  [[nodiscard]] bool HasSomething() const;
  /// \return whether the server has closed, without waiting.
  [[nodiscard]] bool IsClosed() const;

 private:
  bool ReadMore();

  int socket_ = -1;
  std::string read_;
  bool was_reset_ = false;
};

/// \return a request with a Host of this port and further header lines, each with its line end.
[[nodiscard]] std::string RequestText(const std::string& method, const std::string& target,
                                      std::uint16_t port, const std::string& headers = {});

/// Asks on a connection of its own.
[[nodiscard]] Reply Ask(std::uint16_t port, const std::string& method, const std::string& target,
                        const std::string& headers = {});

}  // namespace offplumb::server
