#include "render/layout.hpp"

#include <algorithm>

#include "input/utf8.hpp"

namespace linewright {

namespace {

bool is_space(char c) {
  return c == ' ' || (c >= '\t' && c <= '\r');
}

}  // namespace

std::size_t columns_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xc0u) != 0x80u;
  }));
}

std::string one_line(std::string_view text) {
  std::string line;
  bool space = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (is_space(c)) {
      space = true;
      continue;
    }
    if (space && !line.empty()) line += ' ';
    space = false;
    const std::size_t length = utf8_length(text, i);
    const bool shows = length > 0 && !is_control_character(text, i, length) &&
                       !is_invisible_character(text, i, length);
    if (shows)
      line += text.substr(i, length);
    else
      line += '?';
    i += std::max<std::size_t>(length, 1) - 1;
  }
  return line;
}

namespace {

/// `text` after `lead`, with the lines after the first indented.
std::string broken_at_spaces(std::string_view lead, std::size_t indent, std::string_view text) {
  const std::string line = one_line(text);
  std::string result(lead);
  std::size_t column = columns_of(lead);
  bool first_word = true;
  for (std::size_t start = 0; start < line.size();) {
    const std::size_t end = std::min(line.find(' ', start), line.size());
    const std::string_view word = std::string_view(line).substr(start, end - start);
    const std::size_t width = columns_of(word);
    if (!first_word && column + 1 + width > text_columns) {
      result += '\n';
      result.append(indent, ' ');
      column = indent;
    } else if (!first_word) {
      result += ' ';
      ++column;
    }
    result += word;
    column += width;
    first_word = false;
    start = end + 1;
  }
  result += '\n';
  return result;
}

}  // namespace

std::string wrapped(std::string_view lead, std::string_view text) {
  return broken_at_spaces(lead, columns_of(lead), text);
}

std::string hanging(std::size_t indent, std::string_view text) {
  return broken_at_spaces("", indent, text);
}

std::string unwrapped(std::string_view text) {
  std::string result(text);
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool beside_another =
        (i > 0 && text[i - 1] == '\n') || text.substr(i + 1).starts_with('\n');
    if (text[i] == '\n' && !beside_another) result[i] = ' ';
  }
  return result;
}

std::string paragraphs(std::size_t indent, std::string_view text) {
  const std::string lead(indent, ' ');
  std::string result;
  while (!text.empty()) {
    const std::size_t gap = text.find("\n\n");
    const std::string_view paragraph = text.substr(0, gap);
    if (!one_line(paragraph).empty()) {
      if (!result.empty()) result += '\n';
      result += wrapped(lead, paragraph);
    }
    text.remove_prefix(gap == std::string_view::npos ? text.size() : gap + 2);
  }
  return result;
}

std::string left(std::string_view text, std::size_t columns) {
  std::string result(text);
  const std::size_t width = columns_of(text);
  if (width < columns) result.append(columns - width, ' ');
  return result;
}

std::string right(std::string_view text, std::size_t columns) {
  const std::size_t width = columns_of(text);
  std::string result(width < columns ? columns - width : 0, ' ');
  return result += text;
}

}  // namespace linewright
