#include "input/derive/yaml_writer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

namespace linewright {

namespace {

constexpr std::size_t longest_line = 100;

bool needs_quotes(const YamlNode& scalar) {
  const std::string& text = scalar.text;
  if (scalar.quoted || text.empty() || text.front() == ' ' || text.back() == ' ') return true;
  if (text.find_first_of(",[]{}#") != std::string::npos) return true;
  if (text.find(": ") != std::string::npos || text.back() == ':') return true;
  return std::string_view("&*!|>'\"%@`?").find(text.front()) != std::string_view::npos;
}

std::string scalar_text(const YamlNode& scalar) {
  if (!needs_quotes(scalar)) return scalar.text;
  std::string quoted = "\"";
  for (const char letter : scalar.text) {
    if (letter == '"' || letter == '\\') quoted += '\\';
    quoted += letter;
  }
  return quoted + '"';
}

std::string flow(const YamlNode& node) {
  std::string text;
  switch (node.kind) {
    case YamlNode::Kind::null:
    case YamlNode::Kind::unread:
      return "~";
    case YamlNode::Kind::scalar:
      return scalar_text(node);
    case YamlNode::Kind::sequence:
      for (const YamlNode& item : node.items) text += (text.empty() ? "" : ", ") + flow(item);
      return "[" + text + "]";
    case YamlNode::Kind::map:
      for (const YamlEntry& entry : node.entries)
        text += (text.empty() ? "" : ", ") + entry.key + ": " + flow(entry.value);
      return "{" + text + "}";
  }
  return text;
}

void collect_notes(const YamlNode& node, std::vector<std::string>& notes) {
  if (!node.note.empty() && std::find(notes.begin(), notes.end(), node.note) == notes.end())
    notes.push_back(node.note);
  for (const YamlNode& item : node.items) collect_notes(item, notes);
  for (const YamlEntry& entry : node.entries) collect_notes(entry.value, notes);
}

std::string comment(const std::vector<std::string>& notes) {
  std::string text;
  for (const std::string& note : notes) text += (text.empty() ? "  # " : "; ") + note;
  return text;
}

std::string notes_of(const YamlNode& node) {
  std::vector<std::string> notes;
  collect_notes(node, notes);
  return comment(notes);
}

bool holds_maps(const YamlNode& node) {
  return std::any_of(node.items.begin(), node.items.end(),
                     [](const YamlNode& item) { return item.kind == YamlNode::Kind::map; });
}

bool fits(const YamlNode& node, std::size_t indent) {
  const bool has_list_of_maps =
      std::any_of(node.entries.begin(), node.entries.end(),
                  [](const YamlEntry& entry) { return holds_maps(entry.value); });
  return !has_list_of_maps && indent + flow(node).size() <= longest_line;
}

void write_map(const YamlNode& map, std::size_t indent, std::string& text, bool first_on_line);

void write_items(const YamlNode& list, std::size_t indent, std::string& text) {
  const std::string blanks(indent, ' ');
  for (const YamlNode& item : list.items) {
    text += blanks + "- ";
    if (item.kind != YamlNode::Kind::map || item.entries.empty() || fits(item, indent + 2)) {
      text += flow(item) + notes_of(item) + "\n";
      continue;
    }
    write_map(item, indent + 2, text, true);
  }
}

/// `first_on_line`: the first key follows a dash.
void write_map(const YamlNode& map, std::size_t indent, std::string& text, bool first_on_line) {
  for (const YamlEntry& entry : map.entries) {
    const bool first = &entry == &map.entries.front();
    const YamlNode& value = entry.value;
    if (!(first && first_on_line)) text += std::string(indent, ' ');
    text += entry.key + ":";
    const std::string own = first && first_on_line && !map.note.empty() ? "  # " + map.note : "";
    if (value.kind == YamlNode::Kind::sequence && holds_maps(value)) {
      text += own +
              comment(value.note.empty() ? std::vector<std::string>{}
                                         : std::vector<std::string>{value.note}) +
              "\n";
      write_items(value, indent + 2, text);
    } else if (value.kind == YamlNode::Kind::map && !value.entries.empty() &&
               !fits(value, indent + entry.key.size() + 2)) {
      text += own + "\n";
      write_map(value, indent + 2, text, false);
    } else {
      text += " " + flow(value) + own + notes_of(value) + "\n";
    }
  }
}

}  // namespace

std::string yaml_text_of(const YamlNode& map) {
  std::string text;
  write_map(map, 0, text, false);
  return text;
}

}  // namespace linewright
