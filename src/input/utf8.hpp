#pragma once
// Characters in UTF-8 text: places in files and cut-offs in messages count these, not bytes.

#include <cstddef>
#include <string>
#include <string_view>

namespace linewright {

/// Length in bytes of the well-formed UTF-8 character at `offset`; 0 where the bytes are none
/// (stray or missing continuation, overlong form, surrogate, beyond U+10FFFF) or the text ends.
std::size_t utf8_length(std::string_view text, std::size_t offset);

/// The number of the well-formed character of `length` bytes at `offset`; of a byte that is none,
/// the byte.
char32_t code_point(std::string_view text, std::size_t offset, std::size_t length);

/// True for bytes that begin a character rather than continue one.
constexpr bool starts_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0u) != 0x80u;
}

/// Number of characters in `text`; a byte that is no part of a character counts one.
std::size_t character_count(std::string_view text);

/// True where the character at `offset` (of `length` bytes) steers the terminal or the reading
/// direction instead of showing something: C0 and C1 controls, DEL, bidirectional overrides.
bool is_control_character(std::string_view text, std::size_t offset, std::size_t length);

/// True where the character at `offset` (of `length` bytes) shows nothing and takes no room, so
/// that two texts that differ look alike: joiners, marks of direction, soft hyphens, fillers, tags.
/// [Unicode 15, Default_Ignorable_Code_Point without what is_control_character has, from memory]
bool is_invisible_character(std::string_view text, std::size_t offset, std::size_t length);

/// `text` made safe to show: control and invisible characters and bytes that are not UTF-8
/// become U+FFFD, and
/// after `most_characters` characters the rest becomes "…".
std::string printable(std::string_view text, std::size_t most_characters);

}  // namespace linewright
