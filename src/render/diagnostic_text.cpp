#include "render/diagnostic_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <vector>

#include "input/utf8.hpp"

namespace linewright {
namespace {

constexpr std::size_t widest_line = 100;
constexpr std::size_t longest_message = 1000;
constexpr std::size_t tab_width = 4;
constexpr std::string_view indent = "  ";
constexpr std::string_view ellipsis = "\xE2\x80\xA6";

/// A source line as shown: one element a screen cell, and the cell of the wanted column.
struct ShownLine {
  std::vector<std::string> cells;
  std::size_t caret = 0;
};

ShownLine lay_out(std::string_view line, std::size_t column) {
  ShownLine shown;
  std::size_t character = 1;
  for (std::size_t offset = 0; offset < line.size(); ++character) {
    if (character == column) shown.caret = shown.cells.size();
    const std::size_t length = std::max<std::size_t>(1, utf8_length(line, offset));
    if (line[offset] == '\t')
      shown.cells.resize(shown.cells.size() + tab_width - shown.cells.size() % tab_width, " ");
    else
      shown.cells.push_back(printable(line.substr(offset, length), 1));
    offset += length;
  }
  if (column >= character) shown.caret = shown.cells.size();  // just after the line's end
  return shown;
}

/// Keeps a window of `widest_line` cells around the caret, with an ellipsis at each cut end.
void cut_around_caret(ShownLine& shown) {
  const std::size_t size = shown.cells.size();
  if (size <= widest_line) return;
  const std::size_t half = widest_line / 2;
  const std::size_t first = std::min(shown.caret - std::min(shown.caret, half), size - widest_line);
  const std::size_t end = first + widest_line;
  std::vector<std::string> window(shown.cells.begin() + static_cast<std::ptrdiff_t>(first),
                                  shown.cells.begin() + static_cast<std::ptrdiff_t>(end));
  if (first > 0) window.front() = ellipsis;
  if (end < size) window.back() = ellipsis;
  shown.cells = std::move(window);
  shown.caret -= first;
}

std::string source_with_caret(const Diagnostic& diagnostic) {
  const auto column = static_cast<std::size_t>(std::max(diagnostic.where.column, 0));
  ShownLine shown = lay_out(diagnostic.source_line, column);
  cut_around_caret(shown);
  std::string text(indent);
  for (const std::string& cell : shown.cells) text += cell;
  text.erase(text.find_last_not_of(' ') + 1);
  text += '\n';
  if (column > 0) text += fmt::format("{}{}^\n", indent, std::string(shown.caret, ' '));
  return text;
}

}  // namespace

std::string diagnostic_text(const Diagnostic& diagnostic, const std::string& path_prefix) {
  const SourceLocation& where = diagnostic.where;
  std::string text = printable(path_prefix + where.file, longest_message);
  if (where.line > 0) text += fmt::format(":{}", where.line);
  if (where.line > 0 && where.column > 0) text += fmt::format(":{}", where.column);
  text += fmt::format(": error: {}\n", printable(diagnostic.message, longest_message));
  if (where.line > 0 && !diagnostic.source_line.empty()) text += source_with_caret(diagnostic);
  if (!diagnostic.suggestion.empty())
    text += fmt::format("help: {}\n", printable(diagnostic.suggestion, longest_message));
  return text;
}

}  // namespace linewright
