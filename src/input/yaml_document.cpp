#include "input/yaml_document.hpp"

#include <fmt/format.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <cstddef>
#include <exception>
#include <optional>
#include <sstream>
#include <tuple>
#include <vector>

#include "input/yaml_parser_words.hpp"
#include "input/yaml_slips.hpp"
#include "input/yaml_text.hpp"
#include "input/yaml_tree_builder.hpp"

namespace linewright {
namespace {

/// The parser reads a whole bracketed list into memory before its first event, so texts that are
/// sure to be refused later are refused before it starts. Counts every character that can begin a
/// value, in comments and texts too, and is therefore laxer than the exact limits.
std::optional<Diagnostic> refuse_by_count(const YamlText& text) {
  constexpr std::size_t most_indicators = 2 * most_nodes;
  constexpr int rough_depth = 16 * deepest_nesting;
  std::size_t indicators = 0;
  std::size_t too_deep_offset = 0;
  int depth = 0;
  for (std::size_t offset = 0; offset < text.text().size(); ++offset) {
    const char letter = text.text()[offset];
    if (letter == '[' || letter == '{') {
      if (++depth == deepest_nesting + 1) too_deep_offset = offset;
      if (depth > rough_depth)
        return text.error(too_deep_offset, nested_too_deeply(), std::string(too_deep_help));
    } else if (letter == ']' || letter == '}') {
      depth = std::max(depth - 1, 0);
    }
    if (std::string_view("[{,:?\"'!&*").find(letter) == std::string_view::npos) continue;
    if (++indicators > most_indicators)
      return text.error(offset, too_many_values(), std::string(too_many_help));
  }
  return std::nullopt;
}

void report_parser_error(const YAML::Exception& error, const YamlText& text, YamlTreeBuilder& tree,
                         std::vector<Diagnostic>& errors) {
  const std::size_t size = text.text().size();
  const bool placed = !error.mark.is_null() && error.mark.pos >= 0;
  std::size_t offset =
      placed ? std::min(static_cast<std::size_t>(error.mark.pos), size) : tree.last_offset();
  const std::size_t line_start = offset == 0 ? 0 : text.text().rfind('\n', offset - 1) + 1;
  const auto before = std::string_view(text.text()).substr(line_start, offset - line_start);
  const ParserWords words = reword_parser_message(error.msg, before, offset == size);
  // The parser notices a bad alias or anchor after its '*' or '&'.
  if (words.message == alias_refused || words.message == anchor_refused)
    offset = line_start + std::min(before.find_last_of("*&"), offset - line_start);
  if (const auto slip = likely_slip(error.msg, text.text(), offset))
    return tree.report(slip->offset, slip->message, slip->suggestion);
  const auto bracket = tree.open_bracket();
  std::string suggestion = words.suggestion;
  if (words.opened_earlier == OpenedEarlier::bracket_to_close) {
    // What breaks off at the end of the text was found wanting only because it breaks off there.
    std::erase_if(errors, [&](const Diagnostic& at) { return at.where == text.place(size); });
    offset = bracket.value_or(offset);
  } else if (words.opened_earlier == OpenedEarlier::bracket_around && bracket) {
    suggestion = fmt::format("the bracket opened in line {}, column {} is not closed yet",
                             text.place(*bracket).line, text.place(*bracket).column);
  }
  tree.report(offset, words.message, suggestion);
}

void parse(const YamlText& text, YamlDocument& document) {
  YamlTreeBuilder tree(text, document.errors);
  std::istringstream stream(text.text());
  try {
    YAML::Parser parser(stream);
    // What a second call finds is a second document or text after the first; the events stop it.
    if (parser.HandleNextDocument(tree)) parser.HandleNextDocument(tree);
  } catch (const StopParsing&) {
  } catch (const YAML::Exception& error) {
    try {
      report_parser_error(error, text, tree, document.errors);
    } catch (const StopParsing&) {
    }
  } catch (const std::exception& error) {
    document.errors.push_back(
        text.file_error(fmt::format("the YAML parser gave up: {}", error.what())));
  }
  document.root = tree.take_root();
  if (document.errors.empty() && document.root.kind == YamlNode::Kind::null)
    document.errors.push_back(text.file_error("the file is empty"));
}

/// In order of place; what concerns the whole file last.
void sort_by_place(std::vector<Diagnostic>& errors) {
  std::stable_sort(errors.begin(), errors.end(), [](const Diagnostic& a, const Diagnostic& b) {
    const bool a_whole = a.where.line == 0;
    const bool b_whole = b.where.line == 0;
    return std::tie(a_whole, a.where.line, a.where.column) <
           std::tie(b_whole, b.where.line, b.where.column);
  });
}

}  // namespace

const YamlNode* YamlNode::find(std::string_view key) const {
  for (const YamlEntry& entry : entries)
    if (entry.key == key) return &entry.value;
  return nullptr;
}

YamlNode* YamlNode::find(std::string_view key) {
  for (YamlEntry& entry : entries)
    if (entry.key == key) return &entry.value;
  return nullptr;
}

YamlDocument read_yaml(std::string_view bytes, const std::string& file_name) {
  YamlDocument document;
  if (bytes.size() > largest_file_bytes) {
    document.errors.push_back({{file_name, 0, 0},
                               fmt::format("the file is too large: more than {} MiB are not read",
                                           largest_file_bytes >> 20),
                               "",
                               ""});
    return document;
  }
  const YamlText text(bytes, file_name);
  document.lines = text.lines();
  if (const auto bad_character = text.first_bad_character())
    document.errors.push_back(*bad_character);
  else if (const auto too_much = refuse_by_count(text))
    document.errors.push_back(*too_much);
  else
    parse(text, document);
  sort_by_place(document.errors);
  return document;
}

}  // namespace linewright
