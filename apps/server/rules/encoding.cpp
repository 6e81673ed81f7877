#include "apps/server/rules/encoding.h"

#include "apps/server/rules/letters.h"

namespace offplumb::server {
namespace {

/// \param weight "q=0.5", or empty. \return false for "q=0", "q=0.0", "q=0.000" and for no weight.
bool IsWanted(std::string_view weight) {
  if (weight.empty()) return true;
  if (!StartsWithIgnoringCase(weight, "q=")) return false;
  const std::string_view number = Trimmed(weight.substr(2));
  return !number.empty() && number.find_first_not_of("0123456789.") == std::string_view::npos &&
         number.find_first_not_of("0.") != std::string_view::npos;
}

}  // namespace

bool AcceptsGzip(std::string_view accept_encoding) {
  bool any = false;
  while (!accept_encoding.empty()) {
    std::string_view entry = TakeUntil(',', accept_encoding);
    const std::string_view name = TakeUntil(';', entry);
    const bool wanted = IsWanted(Trimmed(entry));
    if (EqualIgnoringCase(name, "gzip") || EqualIgnoringCase(name, "x-gzip")) return wanted;
    if (name == "*") any = wanted;
  }
  return any;
}

}  // namespace offplumb::server
