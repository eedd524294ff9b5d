#include "system/file_words.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <system_error>

#include "system/path_text.hpp"

namespace linewright {

std::string cannot_read_words(int error) {
  switch (error) {
    case ENOENT:
      return "there is no such file";
    case ENOTDIR:
      return "there is no such file: a part of its path is not a folder";
    case EACCES:
      return "cannot read the file: permission denied";
    case ELOOP:
      return "cannot read the file: its symbolic links go round in a circle";
    case ENAMETOOLONG:
      return "there is no such file: the name is too long";
    default:
      return "cannot read the file: " + std::generic_category().message(error);
  }
}

std::string cannot_write_words(const std::filesystem::path& path, int error) {
  return fmt::format("cannot write '{}': {}", text_of(path),
                     std::generic_category().message(error));
}

std::string already_there_words(const std::filesystem::path& path) {
  return fmt::format("'{}' is already there and is not overwritten", text_of(path));
}

std::string not_regular_words(const std::filesystem::path& path) {
  return fmt::format("'{}' is not a regular file and is not replaced", text_of(path));
}

}  // namespace linewright
