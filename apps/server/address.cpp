#include "apps/server/address.h"

#include <arpa/inet.h>

#include <array>

#include <fmt/format.h>

#include "apps/server/rules/host.h"

namespace offplumb::server {
namespace {

constexpr const char* kOwn4 = "127.0.0.1";
constexpr const char* kOwn6 = "::1";

template <typename Address>
std::optional<std::string> ReadAs(int family, const std::string& text) {
  Address address{};
  if (inet_pton(family, text.c_str(), &address) != 1) return std::nullopt;
  std::array<char, INET6_ADDRSTRLEN> usual{};
  if (inet_ntop(family, &address, usual.data(), usual.size()) == nullptr) return std::nullopt;
  return usual.data();
}

}  // namespace

std::optional<std::string> ReadAddress(const std::string& text) {
  if (text == "localhost") return kOwn4;
  if (auto read = ReadAs<in_addr>(AF_INET, text)) return read;
  const bool brackets = text.size() > 2 && text.front() == '[' && text.back() == ']';
  return ReadAs<in6_addr>(AF_INET6, brackets ? text.substr(1, text.size() - 2) : text);
}

bool IsLoopback(const std::string& address) {
  return address.rfind("127.", 0) == 0 || address == kOwn6;
}

std::string UrlOf(const std::string& address, std::uint16_t port) {
  const std::string own = address == "0.0.0.0" ? kOwn4 : address == "::" ? kOwn6 : address;
  return fmt::format("http://{}:{}/", InUrl(own), port);
}

}  // namespace offplumb::server
