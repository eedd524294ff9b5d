// Every project under fixtures/broken is wrong on purpose in the way its name says. Beside each
// lies what must be said of it: place, message and suggestion, one error a line.

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "input/project_folder.hpp"

namespace linewright {
namespace {

namespace fs = std::filesystem;

const fs::path broken_projects = fs::path(LINEWRIGHT_SOURCE_DIR) / "tests/input/fixtures/broken";

std::vector<std::string> broken_project_names() {
  std::vector<std::string> names;
  for (const fs::directory_entry& entry : fs::directory_iterator(broken_projects))
    if (entry.path().extension() == ".expected") names.push_back(entry.path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::string test_name(const testing::TestParamInfo<std::string>& info) {
  std::string name = info.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

class BrokenProject : public testing::TestWithParam<std::string> {};

TEST_P(BrokenProject, IsRefusedWithPlaceMessageAndSuggestion) {
  const fs::path folder = broken_projects / GetParam();
  const fs::path project = fs::is_directory(folder) ? folder : fs::path(folder) += ".yaml";
  const LoadResult result = load_project(project, small_catalogue());
  EXPECT_FALSE(result.project.has_value());
  EXPECT_EQ(shown(result.errors), bytes_of(broken_projects / (GetParam() + ".expected")));
}

TEST_P(BrokenProject, ShowsTheLineOfEveryPlace) {
  const fs::path folder = broken_projects / GetParam();
  const bool is_folder = fs::is_directory(folder);
  const fs::path project = is_folder ? folder : fs::path(folder) += ".yaml";
  const std::vector<Diagnostic> errors = load_project(project, small_catalogue()).errors;
  ASSERT_FALSE(errors.empty());
  for (const Diagnostic& error : errors) {
    const std::string text = bytes_of((is_folder ? folder : broken_projects) / error.where.file);
    if (error.where.line == 0) continue;
    EXPECT_FALSE(error.source_line.empty()) << error.message;
    EXPECT_NE(text.find(error.source_line), std::string::npos) << error.message;
  }
}

INSTANTIATE_TEST_SUITE_P(LoadProject, BrokenProject, testing::ValuesIn(broken_project_names()),
                         test_name);

TEST(BrokenProjects, EachHasItsExpectedMessages) {
  std::size_t projects = 0;
  for (const fs::directory_entry& entry : fs::directory_iterator(broken_projects)) {
    const bool is_project = entry.path().extension() == ".yaml" ||
                            (entry.is_directory() && fs::exists(entry.path() / "project.yaml"));
    if (!is_project) continue;
    ++projects;
    EXPECT_TRUE(fs::exists(fs::path(broken_projects / entry.path().stem()) += ".expected"))
        << entry.path();
  }
  EXPECT_EQ(projects, broken_project_names().size());
  EXPECT_GT(projects, 100u);
}

}  // namespace
}  // namespace linewright
