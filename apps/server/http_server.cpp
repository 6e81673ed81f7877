#include "apps/server/http_server.h"

#include <fcntl.h>

#include <array>
#include <chrono>
#include <csignal>
#include <ctime>
#include <limits>
#include <memory>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/ip/v6_only.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>

#include "apps/server/rules/answer.h"
#include "apps/server/rules/head.h"

namespace offplumb::server {
namespace {

namespace beast = boost::beast;
namespace http = beast::http;
namespace net = boost::asio;
using net::ip::tcp;

// All judgement: far above what a browser needs, far below what would hurt.
constexpr std::uint32_t kLargestHead = 8192;          ///< Bytes of a request's line and headers.
constexpr std::size_t kMostConnections = 400;         ///< At once; more wait to be let in.
constexpr std::chrono::seconds kRequestWait{10};      ///< For a whole request, or for the next one.
constexpr std::chrono::seconds kSendWait{60};         ///< For a whole response to be taken.
constexpr std::chrono::seconds kFarewell{2};          ///< For the other side to close as well.
constexpr std::size_t kLargestFarewell = 65536;       ///< Bytes that still come and are dropped.
constexpr std::chrono::milliseconds kDoorPause{100};  ///< Before letting in is tried again.

/// What all connections share.
struct Shop {
  std::span<const Asset> assets;
  std::uint16_t port = 0;
  std::size_t connections = 0;
};

/// \return all values of a header, joined as one list.
std::string Joined(const http::fields& fields, http::field name) {
  std::string all;
  const auto [first, last] = fields.equal_range(name);
  for (auto field = first; field != last; ++field) {
    all.append(all.empty() ? "" : ", ").append(std::string(field->value()));
  }
  return all;
}

Request RequestFrom(const http::request_parser<http::empty_body>& parser) {
  const auto& read = parser.get();
  Request request;
  request.method = std::string(read.method_string());
  request.target = std::string(read.target());
  request.hosts = read.count(http::field::host);
  request.host = std::string(read[http::field::host]);
  request.accept_encoding = Joined(read, http::field::accept_encoding);
  request.if_none_match = Joined(read, http::field::if_none_match);
  request.has_body = parser.chunked() || parser.content_length().value_or(0) > 0;
  return request;
}

/// \return the address of this computer that a connection came in at; empty when it is gone.
std::string AddressOf(const tcp::socket& socket) {
  beast::error_code error;
  const net::ip::address address = socket.local_endpoint(error).address();
  if (error) return {};
  if (address.is_v6() && address.to_v6().is_v4_mapped()) {
    return net::ip::make_address_v4(net::ip::v4_mapped, address.to_v6()).to_string();
  }
  return address.to_string();
}

/// One connection: requests one after another, each read whole before it is answered. It lives as
/// long as an operation of it is under way.
class Connection : public std::enable_shared_from_this<Connection> {
 public:
  Connection(tcp::socket socket, Shop& shop)
      : shop_(shop),
        here_{AddressOf(socket), shop.port},
        stream_(std::move(socket)),
        buffer_(kLargestHead + 1024) {
    ++shop_.connections;
    beast::error_code ignored;
    stream_.socket().set_option(tcp::no_delay(true), ignored);
  }
  ~Connection() { --shop_.connections; }
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  void ReadRequest() {
    parser_ = std::make_unique<http::request_parser<http::empty_body>>();
    parser_->header_limit(kLargestHead);
    // A body is refused in our own words whatever its size; it is never read.
    parser_->body_limit(std::numeric_limits<std::uint64_t>::max());
    stream_.expires_after(kRequestWait);
    http::async_read_header(
        stream_, buffer_, *parser_,
        [self = shared_from_this()](beast::error_code error, std::size_t) { self->OnRead(error); });
  }

 private:
  void OnRead(beast::error_code error) {
    if (!error) {
      const bool keep_alive = parser_->get().keep_alive();
      Send(AnswerTo(RequestFrom(*parser_), here_, shop_.assets), keep_alive);
    } else if (error == http::error::header_limit || error == http::error::buffer_overflow) {
      Send(AnswerTo(Unreadable::kTooLarge), false);
    } else if (error.category() == make_error_code(http::error::bad_method).category() &&
               error != http::error::end_of_stream && error != http::error::partial_message) {
      Send(AnswerTo(Unreadable::kNoHttp), false);
    }
    // Otherwise the other side has gone, or took too long. Nothing holds this any more.
  }

  void Send(Response response, bool keep_alive) {
    response_ = std::move(response);
    keep_alive = keep_alive && !response_.close;
    head_ = WriteHead(response_, keep_alive, std::time(nullptr));
    const std::string_view body = response_.Body();
    const std::array<net::const_buffer, 2> parts{net::buffer(head_),
                                                 net::buffer(body.data(), body.size())};
    stream_.expires_after(kSendWait);
    net::async_write(stream_, parts,
                     [self = shared_from_this(), keep_alive](beast::error_code error, std::size_t) {
                       if (error) return;
                       if (keep_alive) {
                         self->ReadRequest();
                       } else {
                         self->SayFarewell();
                       }
                     });
  }

  /// Closing at once, while bytes still come in, could destroy the response on its way.
  void SayFarewell() {
    beast::error_code error;
    stream_.socket().shutdown(tcp::socket::shutdown_send, error);
    if (error) return;
    stream_.expires_after(kFarewell);
    Drop();
  }

  void Drop() {
    buffer_.clear();
    stream_.async_read_some(
        buffer_.prepare(kLargestHead),
        [self = shared_from_this()](beast::error_code error, std::size_t count) {
          self->dropped_ += count;
          if (!error && self->dropped_ < kLargestFarewell) self->Drop();
        });
  }

  Shop& shop_;
  Here here_;
  beast::tcp_stream stream_;
  beast::flat_buffer buffer_;
  std::unique_ptr<http::request_parser<http::empty_body>> parser_;
  Response response_;
  std::string head_;
  std::size_t dropped_ = 0;
};

/// Lets connections in at one address.
class Door {
 public:
  Door(tcp::acceptor acceptor, Shop& shop)
      : acceptor_(std::move(acceptor)), pause_(acceptor_.get_executor()), shop_(shop) {}

  void LetIn() {
    if (shop_.connections >= kMostConnections) {
      Pause();
      return;
    }
    acceptor_.async_accept([this](beast::error_code error, tcp::socket socket) {
      if (error == net::error::operation_aborted) return;
      if (error) {
        // Mostly: this computer has no file handle left. It will have.
        Pause();
        return;
      }
      std::make_shared<Connection>(std::move(socket), shop_)->ReadRequest();
      LetIn();
    });
  }

 private:
  void Pause() {
    pause_.expires_after(kDoorPause);
    pause_.async_wait([this](beast::error_code error) {
      if (!error) LetIn();
    });
  }

  tcp::acceptor acceptor_;
  net::steady_timer pause_;
  Shop& shop_;
};

/// A socket that listens, or why not.
struct Opened {
  tcp::acceptor acceptor;
  beast::error_code error;
};

Opened Open(net::io_context& context, const tcp::endpoint& endpoint, bool v6_only) {
  Opened opened{tcp::acceptor(context), {}};
  auto& [acceptor, error] = opened;
  acceptor.open(endpoint.protocol(), error);
  if (error) return opened;
  // The browser that this program may start must not inherit the port.
  fcntl(acceptor.native_handle(), F_SETFD, FD_CLOEXEC);
  acceptor.set_option(tcp::acceptor::reuse_address(true), error);
  if (!error && endpoint.protocol() == tcp::v6()) {
    acceptor.set_option(net::ip::v6_only(v6_only), error);
  }
  if (!error) acceptor.bind(endpoint, error);
  if (!error) acceptor.listen(net::socket_base::max_listen_connections, error);
  return opened;
}

tl::unexpected<Problem> CannotListen(const std::string& address, std::uint16_t port,
                                     const beast::error_code& error, bool chosen) {
  const std::string place = fmt::format("{}:{}", InUrl(address), port);
  if (error == net::error::address_in_use && chosen) {
    return BadInput("--port", fmt::format("Another program listens on {} already.", place),
                    "Give another port, or leave --port out: then the next free one is taken.");
  }
  if (error == net::error::address_in_use) {
    return BadInput("port", fmt::format("All ports from {} to {} are taken.", kUsualPort, port),
                    "Give another one, as in --port 9000, or --port 0 for any free one.");
  }
  if (error == net::error::access_denied) {
    return BadInput("--port", fmt::format("This user may not listen on {}.", place),
                    "Give a port from 1024 up, as in --port 8470.");
  }
  if (error == boost::system::errc::address_not_available ||
      error == net::error::address_family_not_supported) {
    return BadInput("--address", fmt::format("{} is no address of this computer.", address),
                    "`ip address` lists them; 127.0.0.1 is there always.");
  }
  return tl::unexpected<Problem>(Problem{ProblemKind::kFault,
                                         "listening",
                                         fmt::format("{}: {}.", place, error.message()),
                                         "Please report this.",
                                         {},
                                         0});
}

}  // namespace

// The shop stands first: it outlives the connections, which the context holds.
struct HttpServer::Parts {
  Shop shop;
  net::io_context context{1};
  net::signal_set ends{context, SIGINT, SIGTERM};
  std::vector<std::unique_ptr<Door>> doors;
};

HttpServer::HttpServer(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
HttpServer::HttpServer(HttpServer&&) noexcept = default;
HttpServer& HttpServer::operator=(HttpServer&&) noexcept = default;
HttpServer::~HttpServer() = default;

Expected<HttpServer> HttpServer::Listen(const std::string& address,
                                        std::optional<std::uint16_t> port,
                                        std::span<const Asset> assets) {
  auto parts = std::make_unique<Parts>();
  const net::ip::address parsed = net::ip::make_address(address);
  std::uint16_t tried = port.value_or(kUsualPort);
  Opened opened = Open(parts->context, {parsed, tried}, false);
  while (!port && opened.error == net::error::address_in_use &&
         tried < kUsualPort + kPortsTried - 1) {
    opened = Open(parts->context, {parsed, ++tried}, false);
  }
  if (opened.error) return CannotListen(address, tried, opened.error, port.has_value());

  parts->shop = {assets, opened.acceptor.local_endpoint().port(), 0};
  parts->doors.push_back(std::make_unique<Door>(std::move(opened.acceptor), parts->shop));
  if (parsed == net::ip::address(net::ip::address_v4::loopback())) {
    // Best effort: a browser that knows "localhost" may try this one first.
    Opened beside = Open(parts->context, {net::ip::address_v6::loopback(), parts->shop.port}, true);
    if (!beside.error) {
      parts->doors.push_back(std::make_unique<Door>(std::move(beside.acceptor), parts->shop));
    }
  }
  return HttpServer(std::move(parts));
}

std::uint16_t HttpServer::port() const { return parts_->shop.port; }

void HttpServer::Run() {
  parts_->ends.async_wait([this](beast::error_code, int) { parts_->context.stop(); });
  for (const auto& door : parts_->doors) door->LetIn();
  parts_->context.run();
}

}  // namespace offplumb::server
