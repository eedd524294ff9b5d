#include "input/mesh/text_words.hpp"

#include <algorithm>
#include <array>

#include "input/utf8.hpp"

namespace linewright {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::size_t longest_part_name = 100;

enum class Kind : unsigned char { part_of_word, blank, line_end };

/// By a table: most of the time of reading text goes into this.
constexpr std::array<Kind, 256> kinds = [] {
  std::array<Kind, 256> table{};
  for (const char c : {' ', '\t', '\r', '\v', '\f'})
    table[static_cast<unsigned char>(c)] = Kind::blank;
  table['\n'] = Kind::line_end;
  return table;
}();

constexpr bool is_blank(char c) {
  return kinds[static_cast<unsigned char>(c)] == Kind::blank;
}

constexpr bool is_space(char c) {
  return kinds[static_cast<unsigned char>(c)] != Kind::part_of_word;
}

constexpr char lower_case(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

}  // namespace

TextWords::TextWords(std::string_view text) : text_(text) {
  if (text.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
}

TextWord TextWords::word() {
  const std::size_t first = at_;
  while (at_ < text_.size() && !is_space(text_[at_])) ++at_;
  return {text_.substr(first, at_ - first), first};
}

TextWord TextWords::next() {
  while (at_ < text_.size() && is_space(text_[at_])) ++at_;
  return word();
}

TextWord TextWords::next_on_line() {
  while (at_ < text_.size()) {
    if (is_blank(text_[at_])) {
      ++at_;
      continue;
    }
    if (text_[at_] != '\\') break;
    const std::size_t end = end_of_line_after(at_ + 1);
    if (end == std::string_view::npos) break;
    at_ = std::min(end + 1, text_.size());
  }
  TextWord found = word();
  if (found.text.size() > 1 && found.text.back() == '\\' &&
      end_of_line_after(at_) != std::string_view::npos) {
    found.text.remove_suffix(1);
    --at_;
  }
  return found;
}

std::size_t TextWords::end_of_line_after(std::size_t offset) const {
  while (offset < text_.size() && is_blank(text_[offset])) ++offset;
  const bool at_end_of_line = offset >= text_.size() || text_[offset] == '\n';
  return at_end_of_line ? offset : std::string_view::npos;
}

TextWord TextWords::rest_of_line() {
  while (at_ < text_.size() && is_blank(text_[at_])) ++at_;
  const std::size_t first = at_;
  at_ = std::min(text_.find('\n', first), text_.size());
  std::size_t last = at_;
  while (last > first && is_blank(text_[last - 1])) --last;
  if (at_ < text_.size()) ++at_;
  return {text_.substr(first, last - first), first};
}

bool is_word(std::string_view text, std::string_view lower) {
  return text == lower ||
         std::equal(text.begin(), text.end(), lower.begin(), lower.end(),
                    [](char written, char wanted) { return lower_case(written) == wanted; });
}

std::string part_name(std::string_view written) {
  return printable(written, longest_part_name);
}

}  // namespace linewright
