// Any bytes as a request of the JSON door: always one answer, itself JSON, never a throw or a
// crash.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include "answers/asking/ask.h"
#include "ports/files/rig_door.h"

namespace {

using Json = nlohmann::ordered_json;

/// A request with the few draws that a fuzzer has time for; whatever else it is stays as it is.
std::string WithFewDraws(std::string_view request) {
  constexpr int kFew = 2;
  Json json = Json::parse(request, nullptr, false);
  if (!json.is_object()) return std::string(request);
  const Json question = json.value("question", Json());
  const bool solves =
      question == "depth" || question == "count" || question == "card" || question == "compare";
  if (!solves) return std::string(request);
  const Json draws = json.value("draws", Json());
  if (draws.is_null() || (draws.is_number() && draws > kFew && draws <= 128)) json["draws"] = kFew;
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const auto texts = offplumb::ports::RigTextsOfToml();
  const std::string request =
      WithFewDraws(std::string_view(reinterpret_cast<const char*>(data), size));
  const auto answer = Json::parse(offplumb::answers::Ask(request, texts), nullptr, false);
  if (!answer.is_object() || !answer.contains("question")) std::abort();
  return 0;
}
