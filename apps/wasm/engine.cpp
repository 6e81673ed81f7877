/// \file
/// The engine in a page: the one function that JavaScript calls.
#include <new>
#include <string>

#include "answers/asking/ask.h"
#include "ports/files/rig_door.h"

namespace {

/// The answer given last; JavaScript copies it before it asks again.
std::string& LastAnswer() {
  static std::string answer;
  return answer;
}

const offplumb::answers::RigTexts& Texts() {
  static const offplumb::answers::RigTexts kTexts = offplumb::ports::RigTextsOfToml();
  return kTexts;
}

}  // namespace

extern "C" {

/// Answers one request: see answers::ReplyTo.
/// \param request_json UTF-8, ended by a zero. \return the answer as JSON, UTF-8, ended by a zero;
/// it stays until the next call.
const char* offplumb_ask(const char* request_json) {
  LastAnswer() = offplumb::answers::Ask(request_json, Texts());
  return LastAnswer().c_str();
}

}  // extern "C"
