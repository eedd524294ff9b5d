#include "input/yaml_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "input/utf8.hpp"

namespace linewright {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::size_t block_bytes = 256;
constexpr std::size_t longest_carried_line = 64u << 10;

std::string with_plain_line_ends(std::string_view bytes) {
  if (bytes.substr(0, byte_order_mark.size()) == byte_order_mark)
    bytes.remove_prefix(byte_order_mark.size());
  std::string text;
  text.reserve(bytes.size());
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    if (bytes[i] != '\r')
      text += bytes[i];
    else if (i + 1 == bytes.size() || bytes[i + 1] != '\n')
      text += '\n';
  }
  if (!text.empty() && text.back() != '\n') text += '\n';
  return text;
}

bool continues_character(char byte) {
  return !starts_character(byte);
}

bool is_blank(char letter) {
  return letter == ' ' || letter == '\t' || letter == '\n';
}

bool is_quote(char letter) {
  return letter == '"' || letter == '\'';
}

/// What a line says, without a comment and the blanks before it.
std::string_view without_comment(std::string_view line) {
  std::size_t hash = line.find('#');
  while (hash != std::string_view::npos && hash > 0 && !is_blank(line[hash - 1]))
    hash = line.find('#', hash + 1);
  line = line.substr(0, hash);
  return line.substr(0, line.find_last_not_of(" \t") + 1);
}

}  // namespace

// Counting characters from the line's start for every node would take the square of the length of
// a long line, so continuation bytes are counted once and summed by block.
YamlText::YamlText(std::string_view bytes, std::string file_name)
    : file_name_(std::move(file_name)), text_(with_plain_line_ends(bytes)), line_starts_{0} {
  std::uint32_t continuations = 0;
  for (std::size_t offset = 0; offset < text_.size(); ++offset) {
    if (offset % block_bytes == 0) continuations_.push_back(continuations);
    if (continues_character(text_[offset])) ++continuations;
    if (text_[offset] == '\n' && offset + 1 < text_.size()) line_starts_.push_back(offset + 1);
    if (!is_blank(text_[offset])) content_end_ = offset + 1;
  }
  continuations_.push_back(continuations);
}

std::vector<std::string> YamlText::lines() const {
  std::vector<std::string> all;
  if (text_.empty()) return all;
  all.reserve(line_starts_.size());
  for (std::size_t index = 0; index < line_starts_.size(); ++index) all.emplace_back(line(index));
  return all;
}

std::size_t YamlText::line_index(std::size_t offset) const {
  const auto next = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  return static_cast<std::size_t>(next - line_starts_.begin()) - 1;
}

std::string_view YamlText::line(std::size_t index) const {
  const std::size_t start = line_starts_[index];
  const std::size_t end = std::min(text_.find('\n', start), text_.size());
  return std::string_view(text_).substr(start, end - start);
}

std::size_t YamlText::characters_before(std::size_t offset) const {
  const std::size_t block = offset / block_bytes;
  const std::size_t from = block * block_bytes;
  return from - continuations_[block] + characters_between(from, offset);
}

std::size_t YamlText::characters_between(std::size_t from, std::size_t to) const {
  const std::string_view part = std::string_view(text_).substr(from, to - from);
  return part.size() -
         static_cast<std::size_t>(std::count_if(part.begin(), part.end(), continues_character));
}

SourceLocation YamlText::place(std::size_t offset) const {
  offset = std::min(offset, content_end_);
  const std::size_t index = line_index(offset);
  const std::size_t start = line_starts_[index];
  const std::size_t column = offset - start < block_bytes
                                 ? characters_between(start, offset)
                                 : characters_before(offset) - characters_before(start);
  return {file_name_, static_cast<int>(index) + 1, static_cast<int>(column) + 1};
}

Diagnostic YamlText::error(std::size_t offset, std::string message, std::string suggestion) const {
  const std::string_view source = line(line_index(std::min(offset, content_end_)));
  return {place(offset), std::move(message), std::move(suggestion),
          source.size() <= longest_carried_line ? std::string(source) : std::string()};
}

Diagnostic YamlText::file_error(std::string message) const {
  return {{file_name_, 0, 0}, std::move(message), "", ""};
}

std::optional<Diagnostic> YamlText::first_bad_character() const {
  const std::string_view start = std::string_view(text_).substr(0, 2);
  if (start == "\xFF\xFE" || start == "\xFE\xFF")
    return error(0, "the file is not UTF-8 but looks like UTF-16", "save the file as UTF-8");
  for (std::size_t offset = 0; offset < text_.size();) {
    const auto byte = static_cast<unsigned char>(text_[offset]);
    const std::size_t length = utf8_length(text_, offset);
    if (length == 0)
      return error(offset, fmt::format("a byte that is not UTF-8: 0x{:02X}", byte),
                   "save the file as UTF-8");
    if (byte == 0) return error(offset, "a NUL byte: this is not a text file");
    if (text_[offset] != '\n' && text_[offset] != '\t' &&
        is_control_character(text_, offset, length))
      return error(offset, length == 1 ? fmt::format("a control character: 0x{:02X}", byte)
                                       : "a character that steers the terminal or hides text");
    offset += length;
  }
  return std::nullopt;
}

std::optional<std::size_t> YamlText::after_quoted(std::size_t offset) const {
  const char quote = text_[offset];
  for (std::size_t i = offset + 1; i < text_.size(); ++i) {
    if (quote == '"' && text_[i] == '\\')
      ++i;
    else if (text_[i] == quote && quote == '\'' && i + 1 < text_.size() && text_[i + 1] == quote)
      ++i;
    else if (text_[i] == quote)
      return i + 1;
  }
  return std::nullopt;
}

std::size_t YamlText::after_key(std::size_t offset, std::string_view key) const {
  if (offset >= text_.size()) return text_.size();
  std::size_t end = offset;
  if (is_quote(text_[offset]))
    end = after_quoted(offset).value_or(text_.size());
  else if (std::string_view(text_).substr(offset, key.size()) == key)
    end += key.size();
  const std::size_t colon = text_.find_first_not_of(" \t", end);
  return colon != std::string::npos && text_[colon] == ':' ? colon + 1 : end;
}

std::size_t YamlText::after_previous(std::size_t offset) const {
  std::size_t end = std::min(offset, text_.size());
  while (true) {
    const std::size_t start = end == 0 ? 0 : text_.rfind('\n', end - 1) + 1;
    const auto said = without_comment(std::string_view(text_).substr(start, end - start));
    if (!said.empty()) return start + said.size();
    if (start == 0) return offset;
    end = start - 1;
  }
}

bool YamlText::null_written_at(std::size_t offset) const {
  const auto rest = std::string_view(text_).substr(std::min(offset, text_.size()));
  for (const std::string_view word : {"~", "null", "Null", "NULL"}) {
    if (!rest.starts_with(word)) continue;
    const char next = rest.size() == word.size() ? '\n' : rest[word.size()];
    return is_blank(next) || std::string_view(",]}").find(next) != std::string_view::npos;
  }
  return false;
}

bool YamlText::unclosed_quote_at(std::size_t offset) const {
  return offset < text_.size() && is_quote(text_[offset]) && !after_quoted(offset);
}

}  // namespace linewright
