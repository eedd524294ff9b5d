#include "catalogue/family.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numbers>
#include <stdexcept>
#include <string>
#include <utility>

#include "input/quantity.hpp"

namespace linewright {
namespace {

constexpr std::string_view size_slot = "SIZE";

constexpr std::array<std::string_view, 8> family_keys{
    "name", "usual_wall", "every", "density", "stretch_constant", "sources", "columns", "rows"};

YamlNode scalar(std::string text, const SourceLocation& where) {
  YamlNode node;
  node.kind = YamlNode::Kind::scalar;
  node.text = std::move(text);
  node.where = where;
  return node;
}

void put(YamlNode& map, std::string_view key, YamlNode value) {
  if (map.find(key)) refuse_table(value.where, fmt::format("'{}' is stated twice", key));
  const SourceLocation where = value.where;
  map.entries.push_back({std::string(key), where, std::move(value)});
}

/// `cell` as a value with the source of its column; a cell that states its own keeps it.
YamlNode with_source(YamlNode cell, const YamlNode* column_source) {
  if (!column_source || cell.kind == YamlNode::Kind::map) return cell;
  YamlNode value = *column_source;
  put(value, "value", std::move(cell));
  return value;
}

/// A value worked out from a family's constant, which lends its source.
YamlNode derived(const YamlNode& constant, double number, std::string_view unit) {
  YamlNode value;
  value.kind = YamlNode::Kind::map;
  value.where = constant.where;
  put(value, "value", scalar(fmt::format("{}{}", number, unit), constant.where));
  put(value, "source", wanted(constant, "source"));
  put(value, "mark", wanted(constant, "mark"));
  return value;
}

std::string named(const YamlNode& family, const YamlNode& size) {
  std::string name = wanted(family, "name").text;
  const auto slot = name.find(size_slot);
  if (slot == std::string::npos)
    refuse_table(family.where, fmt::format("the name '{}' has no {} in it", name, size_slot));
  return name.replace(slot, size_slot.size(), size.text);
}

/// Weight from the density over the section, axial stiffness from the stretch constant: a load W
/// stretches a cable by W G / D^2 per cent of its length, so AE = 100 D^2 / G.
void put_derived(YamlNode& entry, const YamlNode& family) {
  if (!family.find("density") && !family.find("stretch_constant")) return;
  const double outside = table_number(wanted(entry, "outside"));
  if (const YamlNode* density = family.find("density")) {
    const YamlNode* bore = entry.find("inside");
    const double inside = bore ? table_number(*bore) : 0;
    const double section = std::numbers::pi / 4 * (outside * outside - inside * inside);
    put(entry, "weight",
        derived(*density, section * table_number(wanted(*density, "value")), " lb/in"));
  }
  if (const YamlNode* constant = family.find("stretch_constant"))
    put(entry, "axial_stiffness",
        derived(*constant, 100 * outside * outside / table_number(wanted(*constant, "value")),
                " lbf"));
}

/// What a row says of its line apart from name and wall.
YamlNode row_entry(const YamlNode& family, const YamlNode& row) {
  const std::vector<YamlNode>& columns = wanted(family, "columns").items;
  if (row.items.size() != columns.size())
    refuse_table(row.where,
                 fmt::format("{}: a row of {} cells under {} columns", wanted(family, "name").text,
                             row.items.size(), columns.size()));
  const YamlNode* sources = family.find("sources");
  YamlNode entry;
  entry.kind = YamlNode::Kind::map;
  entry.where = row.where;
  for (const YamlEntry& shared : wanted(family, "every").entries)
    put(entry, shared.key, shared.value);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const std::string& column = columns[i].text;
    const YamlNode& cell = row.items[i];
    if (column == "size" || column == "walls" || cell.kind == YamlNode::Kind::null) continue;
    const YamlNode* source = sources ? sources->find(column) : nullptr;
    if (column == "pounds_per_100_feet")
      put(entry, "weight",
          with_source(scalar(fmt::format("{} lb/in", table_number(cell) / 1200), cell.where),
                      source));
    else
      put(entry, column, with_source(cell, source));
  }
  return entry;
}

const YamlNode* cell_of(const YamlNode& family, const YamlNode& row, std::string_view column) {
  const std::vector<YamlNode>& columns = wanted(family, "columns").items;
  const auto at = std::find_if(columns.begin(), columns.end(),
                               [&](const YamlNode& each) { return each.text == column; });
  if (at == columns.end()) return nullptr;
  return &row.items[static_cast<std::size_t>(at - columns.begin())];
}

YamlNode finished(YamlNode entry, const YamlNode& family, std::string name) {
  put_derived(entry, family);
  put(entry, "name", scalar(std::move(name), entry.where));
  return entry;
}

YamlNode with_wall(YamlNode entry, const YamlNode& wall) {
  const double outside = table_number(wanted(entry, "outside"));
  put(entry, "inside", scalar(fmt::format("{}", outside - 2 * table_number(wall)), wall.where));
  return entry;
}

void append_row(std::vector<YamlNode>& entries, const YamlNode& family, const YamlNode& row) {
  const YamlNode entry = row_entry(family, row);
  const YamlNode* size = cell_of(family, row, "size");
  if (!size) refuse_table(family.where, "a family has no 'size' column");
  const std::string name = named(family, *size);
  const YamlNode* walls = cell_of(family, row, "walls");
  if (!walls) {
    entries.push_back(finished(entry, family, name));
    return;
  }
  const std::string& usual = wanted(family, "usual_wall").text;
  const auto usual_wall = std::find_if(walls->items.begin(), walls->items.end(),
                                       [&](const YamlNode& wall) { return wall.text == usual; });
  if (usual_wall == walls->items.end())
    refuse_table(row.where,
                 fmt::format("{}: the usual wall {} is not among its walls", name, usual));
  entries.push_back(finished(with_wall(entry, *usual_wall), family, name));
  for (const YamlNode& wall : walls->items)
    entries.push_back(
        finished(with_wall(entry, wall), family, fmt::format("{}-{}", name, wall.text)));
}

}  // namespace

void refuse_table(const SourceLocation& where, std::string_view what) {
  throw std::logic_error(fmt::format("catalogue table {}:{}: {}", where.file, where.line, what));
}

const YamlNode& wanted(const YamlNode& map, std::string_view key) {
  const YamlNode* node = map.find(key);
  if (!node) refuse_table(map.where, fmt::format("'{}' is missing", key));
  return *node;
}

double table_number(const YamlNode& node) {
  const auto number = read_quantity(node.text, Dimension::plain, BareLength::inch);
  if (node.kind != YamlNode::Kind::scalar || !number)
    refuse_table(node.where, fmt::format("expected a number, found '{}'", node.text));
  return *number;
}

std::vector<YamlNode> entries_of_family(const YamlNode& family) {
  for (const YamlEntry& part : family.entries)
    if (std::find(family_keys.begin(), family_keys.end(), part.key) == family_keys.end())
      refuse_table(part.key_where, fmt::format("a family has no key '{}'", part.key));
  std::vector<YamlNode> entries;
  for (const YamlNode& row : wanted(family, "rows").items) append_row(entries, family, row);
  if (entries.empty()) refuse_table(family.where, "a family has no rows");
  return entries;
}

}  // namespace linewright
