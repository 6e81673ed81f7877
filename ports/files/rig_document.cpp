#include "ports/files/rig_document.h"

#include <fmt/format.h>

#include "answers/questions/json_problem.h"
#include "answers/questions/json_writer.h"
#include "ports/files/document.h"
#include "ports/files/rig_facts.h"
#include "ports/files/rig_file.h"
#include "ports/files/rig_text.h"
#include "ports/files/text_file.h"
#include "ports/files/toml_document.h"

namespace offplumb::ports {
namespace {

/// A rig that was written and read back.
struct Rewritten {
  WrittenRig written;
  TomlValue document;
  RigFile file;
};

using Outcome = tl::expected<Rewritten, DocumentProblem>;

tl::unexpected<DocumentProblem> Refuse(const Problem& problem, const std::string& path) {
  return tl::unexpected(DocumentProblem{problem, path});
}

/// Writes a document and reads it back.
Outcome Rewrite(const TomlValue& document) {
  WrittenRig written = WriteRig(CanonicalRig(document));
  const auto parsed = ParseToml(written.text, kUnnamedRig);
  if (!parsed) return Refuse(parsed.error(), written.PathAt(parsed.error().line));
  auto file = ReadRigDocument(*parsed, kUnnamedRig);
  if (!file) return Refuse(file.error().problem, file.error().path);
  return Rewritten{std::move(written), CanonicalRig(*parsed), std::move(*file)};
}

Outcome Read(std::string_view toml) {
  if (toml.size() > kLargestTextFile_bytes) {
    return Refuse({ProblemKind::kBadInput,
                   "file",
                   fmt::format("The text has {} bytes; at most {} are read.", toml.size(),
                               kLargestTextFile_bytes),
                   "Give a text file as docs/rig-file.md describes.",
                   {},
                   0},
                  {});
  }
  const auto parsed = ParseToml(toml, kUnnamedRig);
  if (!parsed) return Refuse(parsed.error(), {});
  const auto file = ReadRigDocument(*parsed, kUnnamedRig);
  if (!file) return Refuse(file.error().problem, file.error().path);
  return Rewrite(*parsed);
}

Outcome Write(const answers::JsonValue& json) {
  const auto document = DocumentOf(json);
  if (!document) return tl::unexpected(document.error());
  Outcome outcome = Rewrite(*document);
  // The person has not seen the text whose line it is.
  if (!outcome) outcome.error().problem.line = 0;
  return outcome;
}

answers::Reply ReplyOn(std::string_view question, const Outcome& outcome) {
  answers::JsonWriter json;
  json.Text("question", question);
  if (outcome) {
    json.Text("toml", outcome->written.text);
    answers::WriteJson("document", JsonOf(outcome->document), json);
    WriteFacts(outcome->file, outcome->written, json);
  } else {
    answers::WriteProblem("problem", outcome.error().problem, outcome.error().path, json);
  }
  answers::Reply reply{json.Take(), std::nullopt};
  if (!outcome) reply.problem = outcome.error().problem.kind;
  return reply;
}

}  // namespace

answers::Reply ReplyToRigRead(std::string_view toml) { return ReplyOn("rig_read", Read(toml)); }

answers::Reply ReplyToRigWrite(const answers::JsonValue& document) {
  return ReplyOn("rig_write", Write(document));
}

}  // namespace offplumb::ports
