// Any bytes as a request of the JSON door: always one answer, itself JSON, never a throw or a
// crash.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include <nlohmann/json.hpp>

#include "answers/asking/ask.h"
#include "ports/files/rig_door.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const auto texts = offplumb::ports::RigTextsOfToml();
  const std::string_view request(reinterpret_cast<const char*>(data), size);
  const auto answer = nlohmann::json::parse(offplumb::answers::Ask(request, texts), nullptr, false);
  if (!answer.is_object() || !answer.contains("question")) std::abort();
  return 0;
}
