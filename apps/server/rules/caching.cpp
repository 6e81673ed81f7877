#include "apps/server/rules/caching.h"

#include <algorithm>

#include "apps/server/rules/letters.h"

namespace offplumb::server {
namespace {

/// How many letters of a hash the page's bundler puts at the end of a file's name.
constexpr std::size_t kHashLetters = 8;

bool IsDigitOrCapital(char c) { return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z'); }

bool IsHashLetter(char c) {
  return IsDigitOrCapital(c) || (c >= 'a' && c <= 'z') || c == '-' || c == '_';
}

/// A word of small letters is taken for a word ("-settings.js"), even if it may be a hash: asking
/// for a file too often costs less than keeping a stale one for a year.
bool EndsInHash(std::string_view name) {
  const std::string_view stem = name.substr(0, name.rfind('.'));
  if (stem.size() < kHashLetters + 2 || stem[stem.size() - kHashLetters - 1] != '-') return false;
  const std::string_view hash = stem.substr(stem.size() - kHashLetters);
  return std::all_of(hash.begin(), hash.end(), IsHashLetter) &&
         std::any_of(hash.begin(), hash.end(), IsDigitOrCapital);
}

}  // namespace

std::string_view CacheControl(std::string_view path) {
  constexpr std::string_view kFolder = "/assets/";
  const bool hashed =
      path.substr(0, kFolder.size()) == kFolder && EndsInHash(path.substr(path.rfind('/') + 1));
  return hashed ? "public, max-age=31536000, immutable" : "no-cache";
}

std::string EntityTag(std::string_view hash, bool gzip) {
  return "\"" + std::string(hash) + (gzip ? "-gzip\"" : "\"");
}

bool HasTag(std::string_view if_none_match, std::string_view tag) {
  std::string_view rest = Trimmed(if_none_match);
  if (rest == "*") return true;
  while (!rest.empty()) {
    if (rest.substr(0, 2) == "W/") rest.remove_prefix(2);
    const std::size_t end = rest[0] == '"' ? rest.find('"', 1) : std::string_view::npos;
    if (end == std::string_view::npos) return false;  // Not a list of tags.
    if (rest.substr(0, end + 1) == tag) return true;
    rest = Trimmed(rest.substr(end + 1));
    if (!rest.empty() && rest[0] != ',') return false;
    rest = rest.empty() ? rest : Trimmed(rest.substr(1));
  }
  return false;
}

}  // namespace offplumb::server
