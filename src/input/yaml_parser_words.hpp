#pragma once
// What the YAML parser complains of, in the words of someone who writes a project by hand.

#include <string>
#include <string_view>

namespace linewright {

struct ParserWords {
  std::string message;
  std::string suggestion;
  /// The complaint is that something opened earlier is not closed.
  bool bracket_open = false;
  bool quote_open = false;
};

/// Rewords a parser's message. `source_before` is the source line up to the place, `at_end` tells
/// that the text ended there.
ParserWords reword_parser_message(std::string_view message, std::string_view source_before,
                                  bool at_end);

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
