#include "answers/asking/quantity_question.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "answers/asking/request_fields.h"
#include "answers/questions/json_writer.h"
#include "answers/units/quantity.h"

namespace offplumb::answers {
namespace {

/// What is asked for.
struct QuantityRequest {
  std::string text;
  Dimension dimension = Dimension::kLength;
  std::string subject;
  std::optional<Range> range;
};

std::optional<Range> ReadRange(const RequestFields& fields) {
  if (!fields.Has("low") && !fields.Has("high")) return std::nullopt;
  constexpr NumberRule kAny{{-1e12, 1e12}, ""};
  fields.Require("low", "The lower end of the range", "0");
  fields.Require("high", "The upper end of the range", "300");
  const Range range{fields.Number("low", kAny).value_or(0),
                    fields.Number("high", kAny).value_or(0)};
  if (range.low > range.high) fields.Fail("low", "The range is the wrong way round.", {});
  return range;
}

Expected<QuantityRequest> ReadRequest(const JsonValue& json) {
  constexpr auto kKeys =
      std::to_array<std::string_view>({"question", "text", "dimension", "subject", "low", "high"});
  std::optional<Problem> first;
  const RequestFields fields(json, {}, first);
  fields.CheckKeys(kKeys, "a request for quantity");
  fields.Require("text", "The text", "\"90 ft\"");
  fields.Require("dimension", "What it measures", "\"length\"");
  QuantityRequest request;
  request.text = fields.Text("text").value_or("");
  request.dimension = static_cast<Dimension>(fields.Word("dimension", DimensionIds()).value_or(0));
  request.subject = fields.Text("subject").value_or("quantity");
  request.range = ReadRange(fields);
  if (first) return tl::unexpected<Problem>(*first);
  return request;
}

}  // namespace

Expected<std::string> QuantityJson(const JsonValue& request) {
  const auto asked = ReadRequest(request);
  if (!asked) return tl::unexpected<Problem>(asked.error());
  const auto value = asked->range ? ParseQuantityWithin(asked->text, asked->dimension,
                                                        *asked->range, asked->subject)
                                  : ParseQuantity(asked->text, asked->dimension, asked->subject);
  if (!value) return tl::unexpected<Problem>(value.error());
  JsonWriter json;
  json.Text("question", "quantity");
  json.Number("value", *value);
  json.Text("dimension", DimensionIds()[static_cast<std::size_t>(asked->dimension)]);
  return json.Take();
}

}  // namespace offplumb::answers
