#pragma once
// Text laid out for a terminal of 80 columns.

#include <cstddef>
#include <string>
#include <string_view>

namespace linewright {

inline constexpr std::size_t text_columns = 80;

/// How many columns a UTF-8 text takes: one for each character.
std::size_t columns_of(std::string_view text);

/// The text on one line: runs of white space become one space, and '?' stands for other control
/// characters, for those that show nothing or turn the direction of reading and for bytes that are
/// not UTF-8, so that no name in a project or of a file can steer the terminal.
std::string one_line(std::string_view text);

/// `text` (made one line) broken at spaces to fit 80 columns, after `lead` on the first line and
/// indented by as many spaces as `lead` has columns on the rest. Ends with a line feed. A word too
/// long for a line, such as a path, stays whole.
std::string wrapped(std::string_view lead, std::string_view text);

/// The same without a lead: from the first column, the lines after the first indented.
std::string hanging(std::size_t indent, std::string_view text);

/// A text written over several lines, as one: a single line feed becomes a space, empty lines still
/// part its paragraphs.
std::string unwrapped(std::string_view text);

/// The paragraphs of `text`, parted by empty lines, each wrapped at this indent. A single line feed
/// within one is a space.
std::string paragraphs(std::size_t indent, std::string_view text);

/// Padded with spaces to this many columns; longer text is kept whole.
std::string left(std::string_view text, std::size_t columns);
std::string right(std::string_view text, std::size_t columns);

}  // namespace linewright
