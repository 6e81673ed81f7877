#include "apps/server/options.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "apps/server/address.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::server {
namespace {

constexpr const char* kSeeHelp = "offplumb_serve --help shows the options.";

Expected<std::uint16_t> ReadPort(const std::string& text) {
  constexpr long kHighest = 65535;
  const bool digits = !text.empty() && text.size() <= 5 &&
                      text.find_first_not_of("0123456789") == std::string::npos;
  const long port = digits ? std::stol(text) : -1;
  if (port < 0 || port > kHighest) {
    return BadInput("--port", fmt::format("\"{}\" is no port.", text),
                    fmt::format("Give a whole number from 0 to {}, as in --port 8470; 0 takes any "
                                "free one.",
                                kHighest));
  }
  return static_cast<std::uint16_t>(port);
}

Expected<void> SetValue(const std::string& name, const std::string& value, Options& options) {
  if (name == "--port") {
    const auto port = ReadPort(value);
    if (!port) return tl::unexpected<Problem>(port.error());
    options.port = *port;
    return {};
  }
  const auto address = ReadAddress(value);
  if (!address) {
    return BadInput("--address", fmt::format("\"{}\" is no address of a computer.", value),
                    "Give it in numbers: --address 127.0.0.1 for this computer alone, 0.0.0.0 for "
                    "all of the network.");
  }
  options.address = *address;
  return {};
}

/// \return whether a word stands alone, with no value after it.
bool SetSwitch(const std::string& name, Options& options) {
  if (name == "--no-browser") {
    options.browser = false;
  } else if (name == "--help" || name == "-h") {
    options.wish = Options::Wish::kHelp;
  } else if (name == "--version" || name == "-V") {
    options.wish = Options::Wish::kVersion;
  } else {
    return false;
  }
  return true;
}

tl::unexpected<Problem> UnknownOption(const std::string& name) {
  const std::string nearest =
      tackle::NearestWord(name, {"--port", "--address", "--no-browser", "--help", "--version"});
  const std::string meant =
      nearest.empty() ? std::string() : fmt::format(" Did you mean {}?", nearest);
  return BadInput("options", fmt::format("There is no option \"{}\".{}", name, meant), kSeeHelp);
}

}  // namespace

Expected<Options> ReadOptions(const std::vector<std::string>& words) {
  Options options;
  std::set<std::string> given;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::size_t equals = words[i].find('=');
    const std::string name = words[i].substr(0, equals);
    if (SetSwitch(words[i], options)) continue;
    if (name != "--port" && name != "--address") return UnknownOption(name);
    if (!given.insert(name).second) {
      return BadInput(name, "This option is given twice.", "Give it once.");
    }
    if (equals == std::string::npos && i + 1 == words.size()) {
      return BadInput(name, "This option needs a value after it.", kSeeHelp);
    }
    const std::string value =
        equals == std::string::npos ? words[++i] : words[i].substr(equals + 1);
    const auto set = SetValue(name, value, options);
    if (!set) return tl::unexpected<Problem>(set.error());
  }
  return options;
}

std::string HelpText() {
  return "Serves Offplumb's page to a browser on this computer. The page works everything out by\n"
         "itself; this program only hands it out, and takes nothing in.\n"
         "\n"
         "  offplumb_serve [OPTIONS]        in the source folder: ./run serve [OPTIONS]\n"
         "\n"
         "  --port N       listen on this port; left out, 8470 or the next free one; 0 any free "
         "one\n"
         "  --address A    listen on this address; left out, 127.0.0.1: this computer alone.\n"
         "                 0.0.0.0 lets others on the network open the page; phones then get no\n"
         "                 location and no offline use, which need https\n"
         "  --no-browser   do not open a browser\n"
         "  --help         this text\n"
         "  --version      the program's version\n"
         "\n"
         "The address comes on standard output. Ctrl-C ends the program.\n"
         "Exit codes: 0 ended as asked; 2 something typed is wrong, or the port is taken; 3 our "
         "fault.\n";
}

}  // namespace offplumb::server
