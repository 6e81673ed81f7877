/// \file
/// A rig's document in and out as JSON text, for tests.
#pragma once

#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "answers/asking/json_value.h"
#include "ports/files/document.h"
#include "ports/files/rig_document.h"

namespace offplumb::ports::testing {

/// \param document JSON of an object.
inline std::string WriteRigJson(std::string_view document) {
  const auto value = answers::ParseJsonObject(document);
  EXPECT_TRUE(value) << document;
  return value ? ReplyToRigWrite(*value).json : std::string();
}

/// \return the document of a JSON object, or the problem.
inline tl::expected<TomlValue, DocumentProblem> DocumentOfText(std::string_view json) {
  const auto value = answers::ParseJsonObject(json);
  EXPECT_TRUE(value) << json;
  return DocumentOf(value.value_or(answers::JsonValue()));
}

}  // namespace offplumb::ports::testing
