#include "catalogue/read_tables.hpp"

#include <fmt/format.h>

#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

#include "catalogue/family.hpp"
#include "input/fitting_entry.hpp"
#include "input/keys/line_keys.hpp"
#include "input/line_entry.hpp"

namespace linewright {
namespace {

void append_lines(Catalogue& catalogue, const YamlNode& family) {
  for (const YamlNode& entry : entries_of_family(family)) {
    auto line = read_line_entry(entry, BareLength::inch, true);
    if (!line)
      refuse_table(line.error().front().where,
                   fmt::format("{}: {}", wanted(entry, "name").text, line.error().front().message));
    catalogue.lines.push_back(std::move(*line));
  }
}

void append_fittings(Catalogue& catalogue, const YamlNode& family) {
  for (const YamlNode& entry : entries_of_family(family)) {
    auto fitting = read_fitting_entry(entry, BareLength::inch, true);
    if (!fitting)
      refuse_table(fitting.error().front().where, fmt::format("{}: {}", wanted(entry, "name").text,
                                                              fitting.error().front().message));
    catalogue.fittings.push_back(std::move(*fitting));
  }
}

Mark mark_of(const YamlNode& map) {
  const YamlNode& written = wanted(map, "mark");
  for (const auto& each : source_marks)
    if (each.word == written.text) return each.value;
  refuse_table(written.where, fmt::format("no such mark as '{}'", written.text));
}

void append_clamps(Catalogue& catalogue, const YamlNode& clamps) {
  const Source source{wanted(clamps, "source").text, mark_of(clamps)};
  for (const YamlNode& written : wanted(clamps, "dashes").items) {
    const double dash = table_number(written);
    if (dash < 1 || dash > 64 || dash != static_cast<int>(dash))
      refuse_table(written.where, fmt::format("'{}' is no dash number", written.text));
    catalogue.clamps.push_back({fmt::format("clamp-{}", static_cast<int>(dash)),
                                static_cast<int>(dash), dash / 16, source});
  }
}

void refuse_repeated_names(const Catalogue& catalogue) {
  std::set<std::string_view> names;
  const auto add = [&](const std::string& name) {
    if (!names.insert(name).second)
      throw std::logic_error(fmt::format("the catalogue has '{}' twice", name));
  };
  for (const Line& line : catalogue.lines) add(line.name);
  for (const ClampSize& clamp : catalogue.clamps) add(clamp.name);
  for (const Fitting& fitting : catalogue.fittings) add(fitting.name);
}

void append_table(Catalogue& catalogue, const EmbeddedTable& table) {
  const YamlDocument document = read_yaml(table.text, std::string(table.name));
  if (!document.errors.empty())
    refuse_table(document.errors.front().where, document.errors.front().message);
  for (const YamlEntry& part : document.root.entries) {
    if (part.key == "families")
      for (const YamlNode& family : part.value.items) append_lines(catalogue, family);
    else if (part.key == "fittings")
      for (const YamlNode& family : part.value.items) append_fittings(catalogue, family);
    else if (part.key == "clamps")
      append_clamps(catalogue, part.value);
    else
      refuse_table(part.key_where, fmt::format("a table has no part '{}'", part.key));
  }
}

}  // namespace

Catalogue read_tables(const std::vector<EmbeddedTable>& tables) {
  Catalogue catalogue;
  for (const EmbeddedTable& table : tables) append_table(catalogue, table);
  refuse_repeated_names(catalogue);
  return catalogue;
}

}  // namespace linewright
