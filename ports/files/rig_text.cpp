#include "ports/files/rig_text.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "ports/files/rig_rules.h"

namespace offplumb::ports {
namespace {

using Kind = TomlValue::Kind;

constexpr std::string_view kHead = "# Written by Offplumb. Every key: docs/rig-file.md";

/// The keys of the table or tables under a key; none for a key that holds no table.
Keys KeysUnder(std::string_view key) {
  for (const rig_rules::PartRule& part : rig_rules::kParts) {
    if (part.key == key) return part.keys;
  }
  return {};
}

/// Where a key stands in the manual; unknown ones behind all known.
std::size_t Rank(Keys keys, std::string_view key) {
  return static_cast<std::size_t>(std::find(keys.begin(), keys.end(), key) - keys.begin());
}

bool MayStandForFrom(Keys keys) { return Rank(keys, "from") < keys.size(); }

TomlValue Canonical(const TomlValue& value, Keys keys);

TomlValue CanonicalTable(const TomlValue& table, Keys keys) {
  std::vector<std::size_t> order(table.keys.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return Rank(keys, table.keys[a]) < Rank(keys, table.keys[b]);
  });
  TomlValue sorted;
  for (const std::size_t i : order) {
    const std::string& key = table.keys[i];
    const Keys under = Rank(keys, key) < keys.size() ? KeysUnder(key) : Keys{};
    sorted.keys.push_back(key);
    sorted.items.push_back(Canonical(table.items[i], under));
  }
  return sorted;
}

/// \param keys those of the table or tables that the value may be; empty for a plain value.
TomlValue Canonical(const TomlValue& value, Keys keys) {
  if (value.kind == Kind::kTable) return CanonicalTable(value, keys);
  if (value.kind == Kind::kText && MayStandForFrom(keys)) {
    TomlValue table;
    table.keys.push_back("from");
    table.items.push_back(value);
    return table;
  }
  TomlValue same = value;
  for (TomlValue& item : same.items) {
    if (item.kind == Kind::kTable) item = CanonicalTable(item, keys);
  }
  return same;
}

// Values within a line.

bool IsBareKey(std::string_view key) {
  constexpr std::string_view kBare =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-";
  return !key.empty() && key.find_first_not_of(kBare) == std::string_view::npos;
}

/// A basic string of TOML: what may not stand in it is escaped, everything else as it is.
std::string TomlString(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < 0x20 || byte == 0x7F) {
      out += fmt::format("\\u{:04X}", byte);
    } else {
      out += c;
    }
  }
  return out + '"';
}

std::string TomlKey(const std::string& key) { return IsBareKey(key) ? key : TomlString(key); }

/// Shortest digits that read back as the same number.
std::string TomlNumber(double number) {
  // Without a point it would be read as a whole number, and those have no negative zero.
  if (number == 0 && std::signbit(number)) return "-0.0";
  return fmt::format("{}", number);
}

std::string Inline(const TomlValue& value);

std::string InlineItems(const TomlValue& value) {
  std::string out;
  for (std::size_t i = 0; i < value.items.size(); ++i) {
    if (i > 0) out += ", ";
    if (value.kind == Kind::kTable) out += TomlKey(value.keys[i]) + " = ";
    out += Inline(value.items[i]);
  }
  return out;
}

std::string Inline(const TomlValue& value) {
  switch (value.kind) {
    case Kind::kNumber:
      return TomlNumber(value.number);
    case Kind::kFlag:
      return value.flag ? "true" : "false";
    case Kind::kList:
      return value.items.empty() ? "[]" : fmt::format("[ {} ]", InlineItems(value));
    case Kind::kTable:
      return value.items.empty() ? "{}" : fmt::format("{{ {} }}", InlineItems(value));
    case Kind::kText:
    case Kind::kDate:
      break;
  }
  return TomlString(value.text);
}

// Lines.

bool IsTable(const TomlValue& value) { return value.kind == Kind::kTable; }

/// Whether a value is a list of tables, each of which may stand under a heading or on its line.
bool IsListOfTables(const TomlValue& value) {
  return value.kind == Kind::kList && !value.items.empty() &&
         std::all_of(value.items.begin(), value.items.end(), IsTable);
}

std::string PathOf(const std::string& table, const std::string& key) {
  return table.empty() ? key : fmt::format("{}.{}", table, key);
}

class Writer {
 public:
  WrittenRig Write(const TomlValue& document) && {
    Line(kHead);
    Line("");
    // Headings in the order of their levels; a table's own keys come before its first heading.
    WriteTable(document, "", "riggers");
    return std::move(out_);
  }

 private:
  void Line(std::string_view line, std::string path = {}) {
    out_.text.append(line).append("\n");
    out_.paths.push_back(std::move(path));
  }

  /// A table's keys, a line each, then its list of tables under headings.
  /// \param headed the key of that list; empty for none.
  void WriteTable(const TomlValue& table, const std::string& path, std::string_view headed) {
    const auto has_headings = [&](std::size_t i) {
      return !headed.empty() && table.keys[i] == headed && IsListOfTables(table.items[i]);
    };
    for (std::size_t i = 0; i < table.keys.size(); ++i) {
      if (!has_headings(i)) WriteKey(table.keys[i], table.items[i], PathOf(path, table.keys[i]));
    }
    for (std::size_t i = 0; i < table.keys.size(); ++i) {
      if (has_headings(i)) WriteHeaded(table.keys[i], table.items[i], path);
    }
  }

  void WriteKey(const std::string& key, const TomlValue& value, const std::string& path) {
    if (!IsListOfTables(value)) {
      Line(fmt::format("{} = {}", TomlKey(key), Inline(value)), path);
      return;
    }
    Line(fmt::format("{} = [", TomlKey(key)), path);
    for (std::size_t i = 0; i < value.items.size(); ++i) {
      Line(fmt::format("  {},", Inline(value.items[i])), fmt::format("{}[{}]", path, i));
    }
    Line("]", path);
  }

  void WriteHeaded(const std::string& key, const TomlValue& list, const std::string& above) {
    const std::string heading = above.empty() ? key : "riggers." + key;
    for (std::size_t i = 0; i < list.items.size(); ++i) {
      const std::string path = fmt::format("{}[{}]", PathOf(above, key), i);
      if (!out_.paths.back().empty()) Line("");
      Line(fmt::format("[[{}]]", heading), path);
      WriteTable(list.items[i], path, above.empty() ? "clips" : "");
    }
  }

  WrittenRig out_;
};

}  // namespace

TomlValue CanonicalRig(const TomlValue& document) {
  return Canonical(document, rig_rules::kRigKeys);
}

std::string WrittenRig::PathAt(int line) const {
  const auto index = static_cast<std::size_t>(line) - 1;
  return line > 0 && index < paths.size() ? paths[index] : std::string();
}

WrittenRig WriteRig(const TomlValue& document) { return Writer().Write(document); }

}  // namespace offplumb::ports
