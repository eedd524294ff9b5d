#include "render/keys_page.hpp"

#include <fmt/format.h>

#include <string_view>

#include "input/keys.hpp"
#include "render/keys_text.hpp"

namespace linewright {

namespace {

constexpr std::string_view introduction =
    "# Every key\n"
    "\n"
    "Written by `linewright explain keys` from the tables by which files are read. Keys in bold "
    "are\n"
    "needed; those in italics are needed or not as the map's other keys have it: a hole is a "
    "`centre`\n"
    "with a `diameter`, or an `outline`. `linewright explain KEY` tells one.\n";

/// A bar would end the cell.
std::string cell(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (c == '|') safe += '\\';
    safe += c;
  }
  return safe;
}

/// What keys an inner map has stands under its own heading.
std::string value_words(const KeySpec& key) {
  if (key.kind == KeyKind::map) return std::string(key.map->name);
  if (key.kind == KeyKind::maps) return fmt::format("a list, each {}", key.map->name);
  if (key.kind == KeyKind::named_maps)
    return fmt::format("a map, in it {} under each name", key.map->name);
  return key_value_words(key);
}

std::string row(const KeySpec& key) {
  const std::string_view mark = key.need == Need::always      ? "**"
                                : key.need == Need::sometimes ? "*"
                                                              : "";
  const std::string of = key.of.empty() ? "" : fmt::format(" (only of {})", key.of);
  return fmt::format("| {}`{}`{} | {}{} | {} |\n", mark, key.name, mark, cell(key.says), of,
                     cell(value_words(key)));
}

}  // namespace

std::string keys_page() {
  std::string page{introduction};
  for (const MapSpec* map : all_maps()) {
    const std::string in = place_of_map(*map);
    page += fmt::format("\n## {}\n\n{}| key | says | value |\n|---|---|---|\n", map->name,
                        in.empty() ? std::string() : fmt::format("In {}.\n\n", in));
    for (const KeySpec& key : map->keys) page += row(key);
  }
  return page;
}

}  // namespace linewright
