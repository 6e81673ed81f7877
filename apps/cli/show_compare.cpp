#include <algorithm>

#include <fmt/format.h>

#include "apps/cli/phrases.h"
#include "apps/cli/show.h"
#include "apps/cli/table.h"
#include "apps/cli/terminal.h"

namespace offplumb::cli {
namespace {

using plan::ComparedRig;

/// Rigs are called A, B, C in the tables; a legend says who they are.
std::string Letter(std::size_t i) { return std::string(1, static_cast<char>('A' + i % 26)); }

std::vector<std::string> Heads(const std::string& first, std::size_t rigs) {
  std::vector<std::string> heads{first};
  for (std::size_t i = 0; i < rigs; ++i) heads.push_back(Letter(i));
  return heads;
}

std::string Legend(const answers::CompareAnswer& answer) {
  std::string text;
  for (std::size_t i = 0; i < answer.rows.size(); ++i) {
    const tackle::Rigger& rigger = answer.rigged[i];
    text += fmt::format("{}  {} ({}, {})\n", Letter(i), answer.rows[i].name, rigger.line.name,
                        rigger.ball.name);
  }
  return text;
}

/// One line of the table for each count. \param cell a row's figure at a count.
template <typename Cell>
void AddCounts(const answers::CompareAnswer& answer, const Cell& cell, Table& table) {
  const DisplayUnits units = answer.request.wanted.units;
  for (std::size_t i = 0; i < answer.request.counts_m.size(); ++i) {
    std::vector<std::string> cells{Echo(answer.request.counts_m[i], Shown::kDepth, units)};
    for (const ComparedRig& row : answer.rows) {
      cells.push_back(row.solved[i] ? cell(row, i) : std::string("-"));
    }
    table.Add(std::move(cells));
  }
}

std::string Depths(const answers::CompareAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  Table table(Heads("at a count of", answer.rows.size()));
  AddCounts(
      answer,
      [units](const ComparedRig& row, std::size_t i) {
        return Words(row.depth_m[i], Shown::kDepth, units);
      },
      table);
  std::vector<std::string> reach{"the deepest"};
  std::vector<std::string> count{"its count"};
  std::vector<std::string> end{"what ends it"};
  for (const ComparedRig& row : answer.rows) {
    reach.push_back(Words(row.reach_depth_m, Shown::kDepth, units));
    count.push_back(answers::FormatQuantity(row.reach_count_m, Shown::kDepth, units));
    end.emplace_back(row.line_limits ? "end of the line" : "largest lean");
  }
  table.Add(std::move(reach));
  table.Add(std::move(count));
  table.Add(std::move(end));
  return Strong("Depth of the ball") + table.Text(width);
}

std::string Loads(const answers::CompareAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  Table table(Heads("at a count of", answer.rows.size()));
  AddCounts(
      answer,
      [units](const ComparedRig& row, std::size_t i) {
        return Words(row.tension_boom_N[i], Shown::kForce, units);
      },
      table);
  return Strong("Pull of the line at the boom") + table.Text(width);
}

/// \return what a change gains for a row, with its sign; "-" when it does not apply.
std::string GainOf(const ComparedRig& row, const std::string& id, DisplayUnits units) {
  for (const plan::Gain& gain : row.gains) {
    if (gain.id != id) continue;
    const std::string text = answers::FormatQuantity(gain.depth_m, Shown::kLength, units);
    return text[0] == '-' ? text : "+" + text;
  }
  return "-";
}

std::vector<std::string> GainIds(const std::vector<ComparedRig>& rows) {
  std::vector<std::string> ids;
  for (const ComparedRig& row : rows) {
    for (const plan::Gain& gain : row.gains) {
      if (std::find(ids.begin(), ids.end(), gain.id) == ids.end()) ids.push_back(gain.id);
    }
  }
  return ids;
}

std::string Gains(const answers::CompareAnswer& answer, std::size_t width) {
  const DisplayUnits units = answer.request.wanted.units;
  const std::vector<std::string> ids = GainIds(answer.rows);
  if (ids.empty()) return {};
  Table table(Heads("", answer.rows.size()));
  for (const std::string& id : ids) {
    std::vector<std::string> cells{answers::GainText(id, units)};
    for (const ComparedRig& row : answer.rows) cells.push_back(GainOf(row, id, units));
    table.Add(std::move(cells));
  }
  return "\n" +
         Strong(fmt::format("What a change buys, in depth of the ball at a count of {}",
                            Echo(answer.gains_count_m, Shown::kDepth, units))) +
         table.Text(width);
}

}  // namespace

std::string Show(const answers::CompareAnswer& answer, std::size_t width) {
  const std::string way = WayAndCurrent(answer.conditions, true, answer.request.wanted.units);
  return Wrap("Compared at " + way, width, 2) + "\n" + Legend(answer) + "\n" +
         Depths(answer, width) + "\n" + Loads(answer, width) + Gains(answer, width) +
         Foot(answer.remarks, width);
}

}  // namespace offplumb::cli
