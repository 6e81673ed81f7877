#include "tests/apps/server/client.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <utility>

#include <gtest/gtest.h>

namespace offplumb::server {
namespace {

int Connect(const std::string& address, std::uint16_t port) {
  sockaddr_in v4{};
  v4.sin_family = AF_INET;
  v4.sin_port = htons(port);
  sockaddr_in6 v6{};
  v6.sin6_family = AF_INET6;
  v6.sin6_port = htons(port);
  const bool is_v4 = inet_pton(AF_INET, address.c_str(), &v4.sin_addr) == 1;
  if (!is_v4) {
    EXPECT_EQ(inet_pton(AF_INET6, address.c_str(), &v6.sin6_addr), 1) << address;
  }
  const int made = socket(is_v4 ? AF_INET : AF_INET6, SOCK_STREAM | SOCK_CLOEXEC, 0);
  const auto* where =
      is_v4 ? reinterpret_cast<const sockaddr*>(&v4) : reinterpret_cast<const sockaddr*>(&v6);
  const socklen_t size = is_v4 ? sizeof v4 : sizeof v6;
  if (made >= 0 && connect(made, where, size) == 0) return made;
  if (made >= 0) close(made);
  return -1;
}

std::string Lower(std::string text) {
  for (char& c : text) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return text;
}

/// \param head without the empty line.
Reply ParseHead(const std::string& head) {
  Reply reply;
  const std::string start = "HTTP/1.1 ";
  EXPECT_EQ(head.substr(0, start.size()), start) << head;
  if (head.size() < start.size() + 3) return reply;
  reply.status = std::atoi(head.c_str() + start.size());
  for (std::size_t at = head.find("\r\n"); at != std::string::npos;) {
    const std::size_t from = at + 2;
    at = head.find("\r\n", from);
    const std::string line = head.substr(from, at == std::string::npos ? at : at - from);
    const std::size_t colon = line.find(": ");
    EXPECT_NE(colon, std::string::npos) << line;
    if (colon == std::string::npos) continue;
    const bool is_new =
        reply.headers.emplace(Lower(line.substr(0, colon)), line.substr(colon + 2)).second;
    EXPECT_TRUE(is_new) << "twice: " << line;
  }
  return reply;
}

}  // namespace

std::string Reply::operator[](const std::string& name) const {
  const auto found = headers.find(name);
  return found == headers.end() ? std::string() : found->second;
}

Client::Client(std::uint16_t port, const std::string& address) : socket_(Connect(address, port)) {}

Client::~Client() {
  if (socket_ >= 0) close(socket_);
}

Client::Client(Client&& other) noexcept
    : socket_(std::exchange(other.socket_, -1)), read_(std::move(other.read_)) {}

Client& Client::operator=(Client&& other) noexcept {
  std::swap(socket_, other.socket_);
  std::swap(read_, other.read_);
  return *this;
}

bool Client::Send(std::string_view bytes) const {
  while (!bytes.empty()) {
    const ssize_t sent = send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    if (sent <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(sent));
  }
  return true;
}

std::size_t Client::SendSome(std::string_view bytes) const {
  const ssize_t sent = send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL | MSG_DONTWAIT);
  return sent > 0 ? static_cast<std::size_t>(sent) : 0;
}

void Client::FinishSending() const { shutdown(socket_, SHUT_WR); }

bool Client::ReadMore() {
  std::array<char, 65536> buffer{};
  const ssize_t got = recv(socket_, buffer.data(), buffer.size(), 0);
  if (got < 0) was_reset_ = true;
  if (got <= 0) return false;
  read_.append(buffer.data(), static_cast<std::size_t>(got));
  return true;
}

Reply Client::Read(bool without_body) {
  std::size_t end = 0;
  while ((end = read_.find("\r\n\r\n")) == std::string::npos) {
    if (!ReadMore()) return {};
  }
  Reply reply = ParseHead(read_.substr(0, end));
  read_.erase(0, end + 4);
  if (without_body || reply.status == 304) return reply;
  const auto length = static_cast<std::size_t>(std::atoll(reply["content-length"].c_str()));
  while (read_.size() < length) {
    if (!ReadMore()) return {};
  }
  reply.body = read_.substr(0, length);
  read_.erase(0, length);
  return reply;
}

std::string Client::ReadToEnd() {
  while (ReadMore()) {
  }
  return std::exchange(read_, {});
}

bool Client::HasSomething() const {
  char byte = 0;
  return recv(socket_, &byte, 1, MSG_PEEK | MSG_DONTWAIT) > 0;
}

bool Client::IsClosed() const {
  char byte = 0;
  const ssize_t got = recv(socket_, &byte, 1, MSG_PEEK | MSG_DONTWAIT);
  return got == 0 || (got < 0 && errno != EAGAIN && errno != EWOULDBLOCK);
}

std::string RequestText(const std::string& method, const std::string& target, std::uint16_t port,
                        const std::string& headers) {
  return method + " " + target + " HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(port) + "\r\n" +
         headers + "\r\n";
}

Reply Ask(std::uint16_t port, const std::string& method, const std::string& target,
          const std::string& headers) {
  Client client(port);
  EXPECT_TRUE(client.connected());
  EXPECT_TRUE(client.Send(RequestText(method, target, port, headers)));
  return client.Read(method == "HEAD");
}

}  // namespace offplumb::server
