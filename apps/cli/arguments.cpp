#include "apps/cli/arguments.h"

#include <algorithm>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "answers/units/words.h"
#include "apps/cli/flags.h"
#include "engine/tackle/nearest_word.h"

namespace offplumb::cli {
namespace {

using answers::Question;
using answers::Quoted;

std::string SeeHelp(Question question) {
  return fmt::format("offplumb {} --help shows the flags.", answers::EntryOf(question).typed);
}

Problem WrongQuestion(const Flag& flag, Question question) {
  return {
      ProblemKind::kBadInput,
      "--" + std::string(flag.name),
      fmt::format("This flag goes with {}, not with {}.",
                  answers::JoinWords(QuestionsOf(flag), "and"), answers::EntryOf(question).typed),
      SeeHelp(question),
      {},
      0};
}

/// A word that no flag took.
Problem Unexpected(const std::string& word, Question question) {
  const std::string ending = ".toml";
  const bool file = word.size() > ending.size() && word[0] != '-' &&
                    word.compare(word.size() - ending.size(), ending.size(), ending) == 0;
  if (file) {
    return {ProblemKind::kBadInput,
            "arguments",
            fmt::format("{} stands without a flag.", Quoted(word)),
            fmt::format("If it is the rig, write --rig {}.", word),
            {},
            0};
  }
  if (word.empty() || word[0] != '-') {
    return {ProblemKind::kBadInput,
            "arguments",
            fmt::format("{} belongs to no flag.", Quoted(word)),
            "Put values after their flag, and quotes around a value and its unit: --count \"100 "
            "ft\".",
            {},
            0};
  }
  const std::string name = word.substr(0, word.find('='));
  const std::size_t dashes = name.find_first_not_of('-');
  if (dashes != std::string::npos) {
    const Flag* elsewhere = FindFlag(std::string_view(name).substr(dashes));
    if (elsewhere != nullptr && !GoesWith(*elsewhere, question)) {
      return WrongQuestion(*elsewhere, question);
    }
  }
  const std::string nearest = tackle::NearestWord(name, FlagNames(question));
  const std::string meant =
      nearest.empty() ? std::string() : fmt::format(" Did you mean {}?", nearest);
  return {ProblemKind::kBadInput,
          "arguments",
          fmt::format("There is no flag {}.{}", Quoted(name), meant),
          SeeHelp(question),
          {},
          0};
}

/// Turns the parser's own complaint ("--count: 1 required TEXT missing") into ours.
Problem Translate(const CLI::ParseError& error, Question question) {
  const std::string said = error.what();
  const std::string flag = said.substr(0, said.find(':'));
  if (flag.rfind("--", 0) == 0 && FindFlag(flag.substr(2)) != nullptr) {
    const Flag& known = *FindFlag(flag.substr(2));
    const std::string message =
        known.value.empty() ? "This flag takes no value." : "This flag needs a value after it.";
    const std::string remedy = known.value.empty()
                                   ? fmt::format("Write {} alone.", flag)
                                   : fmt::format("Write it like {} {}.", flag, known.value);
    return {ProblemKind::kBadInput, flag, message, remedy, {}, 0};
  }
  return {ProblemKind::kBadInput, "arguments", said + ".", SeeHelp(question), {}, 0};
}

Expected<void> CheckRepeats(const Arguments& arguments) {
  for (const auto& [name, values] : arguments.values) {
    const Flag& flag = *FindFlag(name);
    const bool many = flag.repeatable && arguments.question == Question::kCompare;
    if (values.size() > 1 && !many) {
      return BadInput("--" + name, fmt::format("This flag is given {} times.", values.size()),
                      "Give it once.");
    }
  }
  return {};
}

Expected<Arguments> ParseFlags(Question question, std::vector<std::string> words) {
  CLI::App app;
  app.allow_extras();
  std::map<std::string, std::vector<std::string>> values;
  std::map<std::string, bool> switches;
  for (const Flag& flag : Flags()) {
    if (!GoesWith(flag, question)) continue;
    const std::string name(flag.name);
    if (flag.value.empty()) {
      app.add_flag("--" + name, switches[name]);
    } else {
      app.add_option("--" + name, values[name])->allow_extra_args(false);
    }
  }
  Arguments arguments;
  arguments.question = question;
  try {
    // This parser takes its words from the last to the first.
    std::reverse(words.begin(), words.end());
    app.parse(std::move(words));
  } catch (const CLI::CallForHelp&) {
    arguments.wish = Arguments::Wish::kHelp;
    return arguments;
  } catch (const CLI::ParseError& error) {
    return tl::unexpected<Problem>(Translate(error, question));
  }
  const auto unexpected = app.remaining();
  if (!unexpected.empty()) {
    return tl::unexpected<Problem>(Unexpected(unexpected.front(), question));
  }
  for (const auto& [name, given] : values) {
    if (!given.empty()) arguments.values[name] = given;
  }
  for (const auto& [name, given] : switches) {
    if (given) arguments.values[name] = {};
  }
  const auto checked = CheckRepeats(arguments);
  if (!checked) return tl::unexpected<Problem>(checked.error());
  return arguments;
}

bool IsOneOf(const std::string& word, std::initializer_list<const char*> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

std::optional<std::string> Arguments::Value(const std::string& flag) const {
  const auto found = values.find(flag);
  if (found == values.end() || found->second.empty()) return std::nullopt;
  return found->second.front();
}

Expected<Arguments> ParseArguments(const std::vector<std::string>& words) {
  Arguments arguments;
  if (words.empty()) {
    const auto all = answers::FindQuestion("");
    return BadInput("question", "No question was asked.", all.error().remedy);
  }
  if (IsOneOf(words[0], {"--version", "-V"})) {
    arguments.wish = Arguments::Wish::kVersion;
    return arguments;
  }
  if (IsOneOf(words[0], {"--help", "-h", "help"})) {
    arguments.wish = Arguments::Wish::kHelp;
    if (words.size() == 1) return arguments;
    const auto asked = answers::FindQuestion(words[1]);
    if (!asked) return tl::unexpected<Problem>(asked.error());
    arguments.question = *asked;
    return arguments;
  }
  const auto question = answers::FindQuestion(words[0]);
  if (!question) return tl::unexpected<Problem>(question.error());
  return ParseFlags(*question, {words.begin() + 1, words.end()});
}

}  // namespace offplumb::cli
