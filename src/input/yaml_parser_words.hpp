#pragma once
// What the YAML parser complains of, in the words of someone who writes a project by hand.

#include <string>
#include <string_view>

namespace linewright {

/// What a complaint is about, other than its own place: a bracket that was opened earlier.
enum class OpenedEarlier { nothing, bracket_to_close, bracket_around };

struct ParserWords {
  std::string message;
  std::string suggestion;
  OpenedEarlier opened_earlier = OpenedEarlier::nothing;
};

/// Rewords a parser's message. `source_before` is the source line up to the place, `at_end` tells
/// that the text ended there.
ParserWords reword_parser_message(std::string_view message, std::string_view source_before,
                                  bool at_end);

/// For text whose quote is never closed.
inline constexpr std::string_view quote_not_closed = "a quoted text is never closed";

/// Messages shared with what is found without the parser's help.
inline constexpr std::string_view alias_refused = "an alias ('*name') is not read here";
inline constexpr std::string_view alias_help =
    "write the value out; put text that starts with '*' in quotes";
inline constexpr std::string_view anchor_refused = "an anchor ('&name') is not read here";
inline constexpr std::string_view anchor_help =
    "leave it out; put text that starts with '&' in quotes";
inline constexpr std::string_view tag_refused = "a tag ('!name') is not read here";
inline constexpr std::string_view tag_help =
    "leave it out; put text that starts with '!' in quotes";

}  // namespace linewright
