#pragma once
// The characters of a YAML file made ready for the parser, and places in them.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "input/diagnostic.hpp"

namespace linewright {

/// A text without byte order mark whose lines all end in '\n', the last one too, whatever they
/// ended in before, and which turns byte offsets (what the parser counts) into lines and columns of
/// characters.
class YamlText {
 public:
  YamlText(std::string_view bytes, std::string file_name);

  const std::string& text() const { return text_; }
  /// The text by line, without line ends.
  std::vector<std::string> lines() const;

  /// Line and column of a byte. Offsets in the blank end of the text, or past it, give the place
  /// just after the last thing written.
  SourceLocation place(std::size_t offset) const;
  /// An error there, with its source line. Lines of more than 64 KiB are not carried along.
  Diagnostic error(std::size_t offset, std::string message, std::string suggestion = "") const;
  /// An error of the file as a whole.
  Diagnostic file_error(std::string message) const;

  /// The first thing that no text file should hold: bytes that are not UTF-8, or characters that
  /// steer a terminal or the reading direction.
  std::optional<Diagnostic> first_bad_character() const;

  /// Byte just after the key that starts at `offset` and reads `key`, and after its colon if any.
  std::size_t after_key(std::size_t offset, std::string_view key) const;
  /// Byte just after the last thing written before `offset`, blanks and comments left out.
  std::size_t after_previous(std::size_t offset) const;
  /// True where an offset holds a null written out: "~", "null".
  bool null_written_at(std::size_t offset) const;
  /// True where an offset holds a quote that no second quote closes.
  bool unclosed_quote_at(std::size_t offset) const;

 private:
  std::size_t line_index(std::size_t offset) const;
  std::string_view line(std::size_t index) const;
  std::size_t characters_before(std::size_t offset) const;
  std::size_t characters_between(std::size_t from, std::size_t to) const;
  std::optional<std::size_t> after_quoted(std::size_t offset) const;

  std::string file_name_;
  std::string text_;
  std::vector<std::size_t> line_starts_;
  std::vector<std::uint32_t> continuations_;  ///< continuation bytes before every 256th byte
  std::size_t content_end_ = 0;               ///< just after the last thing written
};

}  // namespace linewright
