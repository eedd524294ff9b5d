#pragma once
// Files that appear whole or not at all.

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace linewright {

struct NewFile {
  std::filesystem::path path;
  std::string text;
};

/// Writes `file` beside its place, then gives it its name when all is written: it is there whole or
/// not at all, whenever the program ends. Without `overwrite` a
/// file that is already there stays, even one that appears meanwhile; with it, only a regular file
/// is replaced and keeps its permissions. Returns what went wrong, empty for nothing.
std::string write_whole_file(const NewFile& file, bool overwrite);

/// Writes all the files or none, overwriting nothing. Returns what went wrong, empty for nothing.
std::string write_all_or_none(const std::vector<NewFile>& files);

}  // namespace linewright
