#include "answers/questions/json.h"

#include "answers/questions/json_answers.h"

namespace offplumb::answers {
namespace {

constexpr int kIndent = 2;

template <typename Answer>
std::string Print(const Answer& answer, JsonLayout layout) {
  const bool lines = layout == JsonLayout::kLines;
  JsonWriter json(lines ? kIndent : 0);
  Write(answer, json);
  return json.Take() + (lines ? "\n" : "");
}

}  // namespace

std::string ToJson(const DepthAnswer& answer, JsonLayout layout) { return Print(answer, layout); }
std::string ToJson(const CountAnswer& answer, JsonLayout layout) { return Print(answer, layout); }
std::string ToJson(const CardAnswer& answer, JsonLayout layout) { return Print(answer, layout); }
std::string ToJson(const CompareAnswer& answer, JsonLayout layout) { return Print(answer, layout); }
std::string ToJson(const TwoWayAnswer& answer, JsonLayout layout) { return Print(answer, layout); }

}  // namespace offplumb::answers
