#include "system/whole_file.hpp"

#include <system_error>

#include "system/file_words.hpp"

namespace linewright {

std::string write_all_or_none(const std::vector<NewFile>& files) {
  std::error_code ignored;
  for (const NewFile& file : files)
    if (std::filesystem::exists(std::filesystem::symlink_status(file.path, ignored)))
      return already_there_words(file.path);
  std::vector<std::filesystem::path> written;
  std::string error;
  for (const NewFile& file : files) {
    error = write_whole_file(file, false);
    if (!error.empty()) break;
    written.push_back(file.path);
  }
  if (error.empty()) return {};
  for (const std::filesystem::path& path : written) std::filesystem::remove(path, ignored);
  return error;
}

}  // namespace linewright
