#include "engine/tackle/nearest_word.h"

#include <algorithm>
#include <cstddef>

namespace offplumb::tackle {
namespace {

/// Levenshtein's distance: insertions, deletions and replacements that turn one word into the
/// other.
std::size_t EditDistance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({replaced, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row[b.size()];
}

/// The numbers of a word, each with a blank behind it: "1 7 0.8 " of "wire-1x7-0.8mm".
std::string Numbers(std::string_view word) {
  std::string numbers;
  bool inside = false;
  for (const char c : word) {
    const bool part = (c >= '0' && c <= '9') || (inside && c == '.');
    if (part) numbers += c;
    if (inside && !part) numbers += ' ';
    inside = part;
  }
  return inside ? numbers + ' ' : numbers;
}

}  // namespace

std::string NearestWord(std::string_view word, const std::vector<std::string>& candidates) {
  // A word that shares less than half its letters is no slip of the finger.
  constexpr std::size_t kLongestWord = 60;
  if (word.size() > kLongestWord) return {};
  const std::string numbers = Numbers(word);
  std::string nearest;
  std::size_t least = word.size() / 2 + 1;
  for (const std::string& candidate : candidates) {
    if (Numbers(candidate) != numbers) continue;
    const std::size_t distance = EditDistance(word, candidate);
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

}  // namespace offplumb::tackle
