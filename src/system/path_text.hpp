#pragma once
// Paths are made of text here alone: the library takes what it is given as letters of the system's
// own code page, which on Windows are other than ours.

#include <filesystem>
#include <string>
#include <string_view>

namespace linewright {

/// The path that `text`, in UTF-8, writes. Throws std::filesystem::filesystem_error where the
/// system cannot write such letters in a name.
inline std::filesystem::path path_of(std::string_view text) {
  return std::u8string(text.begin(), text.end());
}

/// A path as it is shown, in UTF-8, with slashes.
inline std::string text_of(const std::filesystem::path& path) {
  const std::u8string text = path.generic_u8string();
  return {text.begin(), text.end()};
}

}  // namespace linewright
