#include "apps/server/serve.h"

#include <cstdio>

#include <fmt/format.h>

#include "apps/server/address.h"
#include "apps/server/browser.h"
#include "apps/server/http_server.h"
#include "apps/server/options.h"

namespace offplumb::server {
namespace {

void Say(const std::string& line) { std::fputs((line + "\n").c_str(), stderr); }

/// At once, so that a program which reads it need not wait.
void Tell(const std::string& text) {
  std::fputs(text.c_str(), stdout);
  std::fflush(stdout);
}

/// Problems here may quote what was typed: a control character must not reach the terminal.
std::string OneLine(std::string text) {
  for (char& c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7f) c = '?';
  }
  return text;
}

int Failed(const Problem& problem) {
  Say(OneLine(
      fmt::format("offplumb_serve: {}: {} {}", problem.subject, problem.message, problem.remedy)));
  return problem.kind == ProblemKind::kFault ? kFault : kBadInput;
}

/// Keeps quiet of what is as everyone expects.
void SayWhatDiffers(const Options& options, std::uint16_t port) {
  if (!options.port && port != kUsualPort) {
    Say(fmt::format(
        "Port {} is taken, so this is {}. A browser keeps what the page saved apart for "
        "each port.",
        kUsualPort, port));
  }
  if (!IsLoopback(options.address)) {
    Say("Others on the network can open this page. On their phones it gets no location and does "
        "not "
        "work offline: browsers allow both over https only.");
  }
}

int ServePage(const Options& options, std::span<const Asset> page) {
  auto server = HttpServer::Listen(options.address, options.port, page);
  if (!server) return Failed(server.error());
  const std::string url = UrlOf(options.address, server->port());
  const bool browser = options.browser && CanShowBrowser();
  SayWhatDiffers(options, server->port());
  Say(browser ? "The page opens in your browser. Ctrl-C ends this program. Its address:"
              : "Open this address in a browser. Ctrl-C ends this program.");
  Tell(url + "\n");
  if (browser) OpenBrowser(url);
  server->Run();
  return kEnded;
}

}  // namespace

int Serve(const std::vector<std::string>& words, std::span<const Asset> page) {
  const auto options = ReadOptions(words);
  if (!options) return Failed(options.error());
  switch (options->wish) {
    case Options::Wish::kHelp:
      Tell(HelpText());
      return kEnded;
    case Options::Wish::kVersion:
      Tell("offplumb_serve " OFFPLUMB_VERSION "\n");
      return kEnded;
    case Options::Wish::kServe:
      break;
  }
  return ServePage(*options, page);
}

}  // namespace offplumb::server
