#include "input/utf8.hpp"

#include <algorithm>
#include <iterator>

namespace linewright {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";
constexpr std::string_view ellipsis = "\xE2\x80\xA6";

unsigned char byte_at(std::string_view text, std::size_t offset) {
  return static_cast<unsigned char>(text[offset]);
}

bool all_continue(std::string_view text, std::size_t first, std::size_t end) {
  if (end > text.size()) return false;
  return std::none_of(text.begin() + static_cast<std::ptrdiff_t>(first),
                      text.begin() + static_cast<std::ptrdiff_t>(end), starts_character);
}

}  // namespace

// The second byte's range excludes overlong forms (E0, F0), surrogates (ED) and what lies beyond
// U+10FFFF (F4): RFC 3629, section 4.
std::size_t utf8_length(std::string_view text, std::size_t offset) {
  if (offset >= text.size()) return 0;
  const unsigned char lead = byte_at(text, offset);
  if (lead < 0x80) return 1;
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || !all_continue(text, offset + 1, offset + length)) return 0;
  const unsigned char second = byte_at(text, offset + 1);
  const bool misformed = (lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F) ||
                         (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F);
  return misformed ? 0 : length;
}

char32_t code_point(std::string_view text, std::size_t offset, std::size_t length) {
  const unsigned char lead = byte_at(text, offset);
  if (length == 1) return lead;
  char32_t point = lead & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) point = point << 6 | (byte_at(text, offset + i) & 0x3Fu);
  return point;
}

std::size_t character_count(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t offset = 0; offset < text.size(); ++count)
    offset += std::max<std::size_t>(1, utf8_length(text, offset));
  return count;
}

bool is_control_character(std::string_view text, std::size_t offset, std::size_t length) {
  const unsigned char lead = byte_at(text, offset);
  if (length == 1) return lead < 0x20 || lead == 0x7F;
  const unsigned char second = byte_at(text, offset + 1);
  if (length == 2) return lead == 0xC2 && second < 0xA0;
  if (length != 3 || lead != 0xE2) return false;
  const unsigned char third = byte_at(text, offset + 2);
  const bool embeds = second == 0x80 && third >= 0xAA && third <= 0xAE;    // U+202A to U+202E
  const bool isolates = second == 0x81 && third >= 0xA6 && third <= 0xA9;  // U+2066 to U+2069
  return embeds || isolates;
}

bool is_invisible_character(std::string_view text, std::size_t offset, std::size_t length) {
  struct Range {
    char32_t first, last;
  };
  constexpr Range invisible[] = {
      {0xAD, 0xAD},       {0x34F, 0x34F},    {0x61C, 0x61C},   {0x115F, 0x1160}, {0x17B4, 0x17B5},
      {0x180B, 0x180F},   {0x200B, 0x200F},  {0x2028, 0x2029}, {0x2060, 0x206F}, {0x3164, 0x3164},
      {0xFE00, 0xFE0F},   {0xFEFF, 0xFEFF},  {0xFFA0, 0xFFA0}, {0xFFF9, 0xFFFB}, {0x1BCA0, 0x1BCA3},
      {0x1D173, 0x1D17A}, {0xE0000, 0xE0FFF}};
  const char32_t point = code_point(text, offset, length);
  return std::any_of(std::begin(invisible), std::end(invisible),
                     [&](const Range& r) { return r.first <= point && point <= r.last; });
}

std::string printable(std::string_view text, std::size_t most_characters) {
  std::string shown;
  std::size_t count = 0;
  for (std::size_t offset = 0; offset < text.size(); ++count) {
    if (count == most_characters) return shown.append(ellipsis);
    const std::size_t length = utf8_length(text, offset);
    if (length == 0 || is_control_character(text, offset, length) ||
        is_invisible_character(text, offset, length))
      shown.append(replacement);
    else
      shown.append(text.substr(offset, length));
    offset += std::max<std::size_t>(1, length);
  }
  return shown;
}

}  // namespace linewright
