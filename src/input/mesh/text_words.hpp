#pragma once
// The words of a mesh file in text, one after the other, each with its place.

#include <cstddef>
#include <string>
#include <string_view>

namespace linewright {

struct TextWord {
  std::string_view text;   ///< empty where there is none
  std::size_t offset = 0;  ///< of its first byte in the file
};

/// Walks through a text. Blanks, tabs and the returns of "\r\n" part words; so do line ends.
class TextWords {
 public:
  /// Starts after a UTF-8 byte order mark.
  explicit TextWords(std::string_view text);

  /// The next word, on whatever line; empty at the end of the text.
  TextWord next();
  /// The next word on this line; empty at its end. A backslash at the line's end joins the next
  /// line to it.
  TextWord next_on_line();
  /// What is left of this line, without blanks at its ends. Goes on to the next line.
  TextWord rest_of_line();
  /// True when nothing is left.
  bool at_end() const { return at_ >= text_.size(); }

 private:
  TextWord word();
  /// Where the line ends when only blanks stand between `offset` and its end; npos otherwise.
  std::size_t end_of_line_after(std::size_t offset) const;

  std::string_view text_;
  std::size_t at_ = 0;
};

/// True when both are the same but for the case of A to Z. `lower` is in lower case.
bool is_word(std::string_view text, std::string_view lower);

/// A name made safe to show, of a length that fits into messages.
std::string part_name(std::string_view written);

}  // namespace linewright
