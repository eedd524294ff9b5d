#pragma once
// Blanks of one line: spaces and tabs.

#include <string_view>

namespace linewright {

/// The part of a text without the blanks at its ends; an empty part at its end where all are blank.
inline std::string_view without_blanks(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return text.substr(text.size());
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

}  // namespace linewright
