#pragma once
// Where the slip is that the YAML parser notices only later: a bracket that was left open, a dash
// or a colon that was left out.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace linewright {

/// An error in the words of someone who writes a project by hand, at the slip itself.
struct YamlSlip {
  std::size_t offset = 0;  ///< byte of the text
  std::string message;
  std::string suggestion;
};

/// The likely cause of what the parser says of a byte of the text; nothing where none is seen.
/// Lines all end in '\n'.
std::optional<YamlSlip> likely_slip(std::string_view parser_message, std::string_view text,
                                    std::size_t offset);

}  // namespace linewright
