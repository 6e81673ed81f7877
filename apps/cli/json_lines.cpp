#include "apps/cli/json_lines.h"

#include <algorithm>
#include <istream>
#include <ostream>

#include "answers/asking/ask.h"
#include "answers/units/words.h"
#include "apps/cli/ask.h"
#include "ports/files/rig_door.h"

namespace offplumb::cli {
namespace {

constexpr std::string_view kHelp =
    "Questions as JSON, one a line, on standard input; answers as JSON, one a line, on standard\n"
    "output. For programs. Keys: docs/json.md, \"Asking in JSON\".\n\n"
    "Exit codes: the greatest of the answers': 0 answered; 1 cannot be done, and why; 2 something\n"
    "asked is wrong; 3 our fault.\n\n"
    "Example (in the source folder; ./run stands for offplumb):\n"
    "  echo '{\"question\": \"quantity\", \"text\": \"90 ft\", \"dimension\": \"length\"}' | "
    "offplumb ask\n";

int CodeOf(const answers::Reply& reply) {
  return reply.problem ? ExitCodeOf(*reply.problem) : kAnswered;
}

bool IsBlank(const std::string& line) {
  return line.find_first_not_of(" \t\r") == std::string::npos;
}

}  // namespace

int AskInLines(const std::vector<std::string>& words, std::istream& in, std::ostream& out,
               std::ostream& messages) {
  if (!words.empty()) {
    if (words[0] == "--help" || words[0] == "-h") {
      out << kHelp;
      return kAnswered;
    }
    messages << "offplumb: ask: " << answers::Quoted(words[0])
             << " is not taken here. Write the question on standard input; offplumb ask --help "
                "shows how.\n";
    return kBadInput;
  }
  const answers::RigTexts texts = ports::RigTextsOfToml();
  int worst = kAnswered;
  for (std::string line; std::getline(in, line);) {
    if (IsBlank(line)) continue;
    const answers::Reply reply = answers::ReplyTo(line, texts);
    out << reply.json << '\n' << std::flush;
    worst = std::max(worst, CodeOf(reply));
    if (!out) {
      messages << "offplumb: standard output: The answer cannot be written. Is the disk full?\n";
      return kBadInput;
    }
  }
  return worst;
}

}  // namespace offplumb::cli
