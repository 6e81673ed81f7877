// A form may send any document, and a person any text: each gives a rig whose text and document
// lead back to themselves, or a problem that is not ours.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include "ports/files/rig_document.h"
#include "ports/files/rig_file.h"

namespace {

using Json = nlohmann::ordered_json;
using offplumb::ports::ReadRigText;
using offplumb::ports::ReplyToRigRead;
using offplumb::ports::ReplyToRigWrite;

void Require(bool holds) {
  if (!holds) std::abort();
}

/// \param document JSON of an object.
std::string Written(std::string_view document) {
  return ReplyToRigWrite(*offplumb::answers::ParseJsonObject(document)).json;
}

void CheckProblem(const Json& problem) {
  Require(problem["kind"] == "bad_input");
  Require(!problem["message"].get<std::string>().empty());
  Require(problem["path"].is_null() || !problem["path"].get<std::string>().empty());
}

/// \return whether the text or document gave a rig.
bool Check(const Json& answer) {
  if (answer.contains("problem")) {
    CheckProblem(answer["problem"]);
    return false;
  }
  const std::string toml = answer["toml"];
  Require(ReadRigText(toml, "fuzz.toml").has_value());
  const Json read = Json::parse(ReplyToRigRead(toml).json);
  const Json written = Json::parse(Written(answer["document"].dump()));
  for (const Json& again : {read, written}) {
    Require(again["toml"] == toml);
    Require(again["document"] == answer["document"]);
    Require(again["facts"] == answer["facts"]);
  }
  return true;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const bool is_rig = Check(Json::parse(ReplyToRigRead(text).json));
  Require(is_rig == ReadRigText(text, "fuzz.toml").has_value());
  if (offplumb::answers::ParseJsonObject(text)) Check(Json::parse(Written(text)));
  return 0;
}
