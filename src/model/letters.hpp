#pragma once
// Letters as builders write them, large or small. Those beyond ASCII count as they are.

#include <algorithm>
#include <string_view>

namespace linewright {

constexpr char lower_letter(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

/// True where `word`, in small letters, stands anywhere in the text, however that is written.
constexpr bool holds_word(std::string_view text, std::string_view word) {
  return word.empty() || std::search(text.begin(), text.end(), word.begin(), word.end(),
                                     [](char written, char wanted) {
                                       return lower_letter(written) == wanted;
                                     }) != text.end();
}

}  // namespace linewright
