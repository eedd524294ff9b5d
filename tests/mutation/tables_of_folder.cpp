// The catalogue's tables as they stand in the folder now, where the program has them built in: a
// changed figure needs no compiler.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <list>
#include <string>
#include <vector>

#include "catalogue/embedded_tables.hpp"

namespace linewright {

const std::vector<EmbeddedTable>& embedded_tables() {
  static std::list<std::string> kept;
  static const std::vector<EmbeddedTable> tables = [] {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(LINEWRIGHT_TABLES))
      if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<EmbeddedTable> read;
    for (const std::filesystem::path& path : paths) {
      std::ifstream file(path);
      const std::string& name = kept.emplace_back(path.filename().string());
      const std::string& text =
          kept.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
      read.push_back({name, text});
    }
    return read;
  }();
  return tables;
}

}  // namespace linewright
