#pragma once
// Why a file cannot be read or written, in the same words on every system.

#include <filesystem>
#include <string>

namespace linewright {

/// Why a file cannot be read, by the number that errno has for it.
std::string cannot_read_words(int error);
/// Why `path` cannot be written, by the number that errno has for it.
std::string cannot_write_words(const std::filesystem::path& path, int error);
std::string already_there_words(const std::filesystem::path& path);
std::string not_regular_words(const std::filesystem::path& path);

}  // namespace linewright
