#include "input/yaml_slips.hpp"

#include <fmt/format.h>
#include <yaml-cpp/exceptions.h>

#include <algorithm>
#include <vector>

#include "input/utf8.hpp"

namespace linewright {
namespace {

constexpr std::size_t longest_shown = 60;

/// What stands on a line: from its first character that is no blank to its end.
struct WrittenLine {
  std::size_t offset = 0;
  std::string_view words;

  bool is_written() const { return !words.empty() && words[0] != '#'; }
  bool is_item() const { return words == "-" || words.starts_with("- "); }
  bool is_bracket() const { return words.starts_with('{') || words.starts_with('['); }
  bool has_colon() const { return words.ends_with(':') || words.find(": ") != words.npos; }
};

WrittenLine line_around(std::string_view text, std::size_t offset) {
  const std::size_t before = offset == 0 ? text.npos : text.rfind('\n', offset - 1);
  const std::size_t start = before == text.npos ? 0 : before + 1;
  const std::size_t end = std::min(text.find('\n', start), text.size());
  const std::size_t first = std::min(text.find_first_not_of(' ', start), end);
  std::string_view words = text.substr(first, end - first);
  words = words.substr(0, words.find(" #"));
  words = words.substr(0, words.find_last_not_of(" \t") + 1);
  return {first, words};
}

/// The last line before this one that says something.
std::optional<WrittenLine> line_before(std::string_view text, const WrittenLine& line) {
  std::size_t start = text.rfind('\n', line.offset);
  while (start != text.npos && start > 0) {
    const WrittenLine before = line_around(text, start);
    if (before.is_written()) return before;
    start = text.rfind('\n', start - 1);
  }
  return std::nullopt;
}

int line_number(std::string_view text, std::size_t offset) {
  return 1 + static_cast<int>(std::count(text.begin(),
                                         text.begin() + static_cast<std::ptrdiff_t>(offset), '\n'));
}

std::string shown(std::string_view words) {
  return fmt::format("'{}'", printable(words, longest_shown));
}

/// The brackets that are open at a byte, innermost last. A bracket or quote within a word is a
/// letter.
std::vector<std::size_t> open_brackets(std::string_view text, std::size_t offset) {
  std::vector<std::size_t> open;
  char before = '\n';  // the last character that is no blank
  for (std::size_t i = 0; i < offset; ++i) {
    const char letter = text[i];
    const bool begins = std::string_view("\n:-,[{?").find(before) != std::string_view::npos;
    const bool after_blank = i == 0 || text[i - 1] == ' ' || text[i - 1] == '\n';
    if (letter == '#' && after_blank) {
      i = std::min(text.find('\n', i), offset) - 1;
      continue;
    }
    if ((letter == '"' || letter == '\'') && begins) {
      const std::size_t end = text.find(letter, i + 1);
      if (end == text.npos || end >= offset) return open;
      i = end;
    } else if ((letter == '[' || letter == '{') && begins) {
      open.push_back(i);
    } else if ((letter == ']' || letter == '}') && !open.empty()) {
      open.pop_back();
    }
    if (letter != ' ' && letter != '\t') before = letter;
  }
  return open;
}

std::string place_of_bracket(std::string_view text, std::size_t offset) {
  return fmt::format("the '{}' opened in line {}", text[offset], line_number(text, offset));
}

/// A bracket of an earlier line within which no more can come.
std::optional<YamlSlip> unclosed_bracket(std::string_view text, std::size_t offset) {
  const std::vector<std::size_t> open = open_brackets(text, offset);
  if (open.empty() || line_number(text, open.back()) == line_number(text, offset))
    return std::nullopt;
  return YamlSlip{
      open.back(), fmt::format("a '{}' is not closed", text[open.back()]),
      fmt::format("line {} cannot stand in it: close it before", line_number(text, offset))};
}

std::optional<YamlSlip> missing_colon(const WrittenLine& line) {
  if (line.has_colon() || line.is_bracket()) return std::nullopt;
  const std::size_t colon = line.words.find(':');
  const bool is_closed_up = colon != line.words.npos && colon > 0;
  const std::string_view key =
      line.is_item() ? line.words.substr(std::min<std::size_t>(2, line.words.size())) : line.words;
  return YamlSlip{line.offset + line.words.size() - key.size(),
                  fmt::format("expected 'key: value', found {}", shown(key)),
                  is_closed_up ? "put a space after the ':'" : "a ':' is missing after the key"};
}

/// Of a ':' that follows no key: the line before has none, and was read as the start of this key.
std::optional<YamlSlip> missing_colon_before(std::string_view text, std::size_t offset) {
  const auto before = line_before(text, line_around(text, offset));
  return before ? missing_colon(*before) : std::nullopt;
}

/// Where an item of a list was expected.
std::optional<YamlSlip> no_item(const WrittenLine& line) {
  if (line.is_item() || !(line.is_bracket() || line.has_colon())) return std::nullopt;
  return YamlSlip{line.offset, "expected an item ('- ') in the column of the items above",
                  "put '- ' before it, or check the indentation"};
}

/// Where keys were expected: an item after what lacks its dash, or a key that lacks its colon.
std::optional<YamlSlip> no_key(std::string_view text, std::size_t offset) {
  const WrittenLine line = line_around(text, offset);
  if (line.is_bracket()) return no_item(line);
  if (!line.is_item()) return missing_colon(line);
  const auto before = line_before(text, line);
  if (!before || !before->is_bracket()) return std::nullopt;
  return YamlSlip{before->offset,
                  fmt::format("expected an item ('- '), found {}", shown(before->words)),
                  "put '- ' before it"};
}

}  // namespace

std::optional<YamlSlip> likely_slip(std::string_view parser_message, std::string_view text,
                                    std::size_t offset) {
  const auto says = [&](std::string_view start) { return parser_message.starts_with(start); };
  if (says(YAML::ErrorMsg::FLOW_END)) {
    const std::vector<std::size_t> open = open_brackets(text, offset);
    if (open.empty()) return std::nullopt;
    return YamlSlip{offset, "a closing bracket that matches no opening one",
                    place_of_bracket(text, open.back()) + " is not closed yet"};
  }
  const bool is_block = says(YAML::ErrorMsg::END_OF_MAP) || says(YAML::ErrorMsg::END_OF_SEQ) ||
                        says(YAML::ErrorMsg::MAP_VALUE) || says(YAML::ErrorMsg::BLOCK_ENTRY);
  const bool is_flow =
      says(YAML::ErrorMsg::END_OF_MAP_FLOW) || says(YAML::ErrorMsg::END_OF_SEQ_FLOW);
  if (!is_block || is_flow) return std::nullopt;
  if (says(YAML::ErrorMsg::MAP_VALUE)) return missing_colon_before(text, offset);
  if (auto bracket = unclosed_bracket(text, offset)) return bracket;
  if (says(YAML::ErrorMsg::END_OF_MAP)) return no_key(text, offset);
  if (says(YAML::ErrorMsg::END_OF_SEQ)) return no_item(line_around(text, offset));
  return std::nullopt;
}

}  // namespace linewright
