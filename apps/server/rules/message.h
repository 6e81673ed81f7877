/// \file
/// A request as far as this server looks at it, and what it answers.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace offplumb::server {

/// What came in, headers as they stand; empty where there is none.
struct Request {
  std::string method;     ///< "GET".
  std::string target;     ///< "/index.html?x".
  std::size_t hosts = 0;  ///< How many Host headers there are.
  std::string host;
  std::string accept_encoding;
  std::string if_none_match;
  bool has_body = false;
};

struct Header {
  std::string_view name;
  std::string value;
};

/// What goes out. The body is either a file of the page or a sentence.
struct Response {
  int status = 200;
  std::vector<Header> headers;
  std::string_view file;
  std::string words;
  bool without_body = false;  ///< For HEAD and 304: the head only.
  bool close = false;         ///< The connection ends with it: what follows cannot be trusted.

  /// \return the bytes that follow the head.
  [[nodiscard]] std::string_view Body() const {
    if (without_body) return {};
    return words.empty() ? file : std::string_view(words);
  }
};

}  // namespace offplumb::server
