#include "ports/files/rig_document.h"

#include <cstddef>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "ports/files/json_document.h"
#include "ports/files/rig_facts.h"
#include "ports/files/rig_file.h"
#include "ports/files/rig_text.h"
#include "ports/files/text_file.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {
namespace {

using Json = nlohmann::ordered_json;
using Kind = TomlValue::Kind;

std::string Finish(std::string_view question, Json answer) {
  Json json;
  json["question"] = question;
  json.update(answer);
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// Problems.

std::string_view KindId(ProblemKind kind) {
  switch (kind) {
    case ProblemKind::kBadInput:
      return "bad_input";
    case ProblemKind::kCannotBeDone:
      return "cannot_be_done";
    case ProblemKind::kFault:
      break;
  }
  return "fault";
}

/// \param path of the key at fault; empty: null.
Json ProblemJson(const Problem& problem, const std::string& path) {
  return {{"problem",
           {{"kind", KindId(problem.kind)},
            {"subject", problem.subject},
            {"message", problem.message},
            {"remedy", problem.remedy},
            {"line", problem.line},
            {"path", path.empty() ? Json(nullptr) : Json(path)}}}};
}

// Answers.

Json DocumentJson(const TomlValue& value) {
  switch (value.kind) {
    case Kind::kNumber:
      return value.number;
    case Kind::kFlag:
      return value.flag;
    case Kind::kList: {
      Json list = Json::array();
      for (const TomlValue& item : value.items) list.push_back(DocumentJson(item));
      return list;
    }
    case Kind::kTable: {
      Json table = Json::object();
      for (std::size_t i = 0; i < value.keys.size(); ++i) {
        table[value.keys[i]] = DocumentJson(value.items[i]);
      }
      return table;
    }
    case Kind::kText:
    case Kind::kDate:
      break;
  }
  return value.text;
}

/// Writes a document and reads it back.
/// \return the answer, or what is wrong with the document.
Json AnswerFor(const TomlValue& document) {
  const WrittenRig written = WriteRig(CanonicalRig(document));
  const auto parsed = ParseToml(written.text, kUnnamedRig);
  if (!parsed) return ProblemJson(parsed.error(), written.PathAt(parsed.error().line));
  const auto file = ReadRigDocument(*parsed, kUnnamedRig);
  if (!file) return ProblemJson(file.error().problem, file.error().path);
  return {{"toml", written.text},
          {"document", DocumentJson(CanonicalRig(*parsed))},
          {"facts", RigFacts(*file, written)}};
}

Json ReadAnswer(std::string_view toml) {
  if (toml.size() > kLargestTextFile_bytes) {
    return ProblemJson({ProblemKind::kBadInput,
                        "file",
                        fmt::format("The text has {} bytes; at most {} are read.", toml.size(),
                                    kLargestTextFile_bytes),
                        "Give a text file as docs/rig-file.md describes.",
                        {},
                        0},
                       {});
  }
  const auto parsed = ParseToml(toml, kUnnamedRig);
  if (!parsed) return ProblemJson(parsed.error(), {});
  const auto file = ReadRigDocument(*parsed, kUnnamedRig);
  if (!file) return ProblemJson(file.error().problem, file.error().path);
  return AnswerFor(*parsed);
}

Json WriteAnswer(std::string_view document_json) {
  const auto document = ParseJson(document_json, "document");
  if (!document) return ProblemJson(document.error().problem, document.error().path);
  Json answer = AnswerFor(*document);
  // The person has not seen the text whose line it is.
  if (answer.contains("problem")) answer["problem"]["line"] = 0;
  return answer;
}

}  // namespace

std::string RigReadJson(std::string_view toml) { return Finish("rig_read", ReadAnswer(toml)); }

std::string RigWriteJson(std::string_view document_json) {
  return Finish("rig_write", WriteAnswer(document_json));
}

}  // namespace offplumb::ports
