// Data flows one way: what a folder of the sources may include, and nothing else.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace linewright {
namespace {

using Folders = std::set<std::string>;

const std::filesystem::path sources = std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / "src";

/// What each folder may include besides itself, the folders within one another named apart.
const std::map<std::string, Folders> allowed{
    {"model", {}},
    {"system", {"model"}},
    {"system/posix", {"model", "system"}},
    {"system/windows", {"model", "system"}},
    {"words", {"model"}},
    {"physics", {"model"}},
    {"geometry", {"model", "system"}},
    {"geometry/plane", {"model", "geometry"}},
    {"geometry/mesh", {"model", "geometry"}},
    {"geometry/structure", {"model", "geometry", "geometry/plane", "geometry/mesh"}},
    {"lines", {"model", "physics", "geometry", "geometry/plane", "geometry/structure"}},
    {"lines/near", {"model", "geometry", "geometry/structure", "lines"}},
    {"lines/motion", {"model", "physics", "geometry", "lines", "lines/near"}},
    {"lines/access",
     {"model", "geometry", "geometry/plane", "geometry/structure", "geometry/mesh", "lines"}},
    {"rules", {"model", "system", "words", "geometry", "lines", "lines/near", "lines/motion"}},
    {"rules/words", {"model", "words", "geometry/structure", "lines"}},
    {"rules/line", {"model", "physics", "lines", "lines/motion", "rules", "rules/words"}},
    {"rules/space",
     {"model", "geometry/plane", "lines", "lines/access", "lines/near", "lines/motion", "rules",
      "rules/words"}},
    {"rules/air", {"model", "physics", "lines", "rules", "rules/words"}},
    {"rules/cable",
     {"model", "physics", "geometry/plane", "lines", "lines/motion", "rules", "rules/words"}},
    {"planning",
     {"model", "words", "physics", "geometry", "geometry/plane", "geometry/structure", "lines",
      "lines/access", "lines/motion"}},
    {"input", {"model", "system", "input/keys", "input/mesh", "input/derive"}},
    {"input/derive", {"model", "system", "input", "input/keys"}},
    {"input/keys", {"model", "input"}},
    {"input/mesh", {"model", "system", "geometry/plane", "input"}},
    {"catalogue", {"model", "input", "input/keys"}},
    {"render", {"model", "system", "words", "physics", "input", "input/keys", "planning", "rules"}},
    {"render/report", {"model", "words", "input", "planning", "render"}},
    {"render/chart", {"model", "planning", "render", "render/draw", "render/report", "words"}},
    {"render/export", {"model", "words", "planning", "render"}},
    {"render/draw", {"model", "words", "input", "planning", "render", "render/report"}},
};

std::string folder_of(const std::filesystem::path& file) {
  return file.parent_path().generic_string();
}

/// Own headers that a source includes, by their path below the sources.
std::vector<std::string> own_includes(const std::filesystem::path& file) {
  static const std::regex include("^#include \"([^\"]+)\"");
  std::vector<std::string> found;
  std::ifstream text(file);
  std::string line;
  std::smatch match;
  while (std::getline(text, line))
    if (std::regex_search(line, match, include)) found.push_back(match[1]);
  return found;
}

TEST(Layers, ALowerFolderNeverIncludesAHigherOne) {
  int arrows = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(sources)) {
    const std::string extension = entry.path().extension().string();
    if (extension != ".cpp" && extension != ".hpp") continue;
    const std::filesystem::path file = std::filesystem::relative(entry.path(), sources);
    const std::string folder = folder_of(file);
    // The commands call everything; so does what starts them, here and in a browser.
    if (folder.empty() || folder == "page" || folder.starts_with("commands")) continue;
    ASSERT_TRUE(allowed.contains(folder)) << "say what " << folder << " may include";
    for (const std::string& include : own_includes(entry.path())) {
      const std::string other = folder_of(include);
      if (other == folder) continue;
      ++arrows;
      EXPECT_TRUE(allowed.at(folder).contains(other)) << file << " includes " << include;
    }
  }
  EXPECT_GT(arrows, 300);
}

}  // namespace
}  // namespace linewright
