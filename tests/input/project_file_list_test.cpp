// Which files a project consists of, for who has to know when one of them changes.

#include <gtest/gtest.h>

#include <algorithm>

#include "input/project_folder.hpp"

namespace linewright {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> files_of(const ProjectFolder& folder) {
  std::vector<std::string> names;
  for (const fs::path& file : load_project(folder.path(), small_catalogue()).files)
    names.push_back(file.lexically_relative(folder.path()).generic_string());
  return names;
}

using Names = std::vector<std::string>;

TEST(ProjectFileList, HasTheProjectFileItsIncludesAndMeshes) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: a\ninclude: [wing/wing.yaml]\n");
  folder.write("wing/wing.yaml",
               "linewright: 1\nstructure:\n  meshes:\n    - {name: skin, file: ../skin.stl}\n");
  folder.write("skin.stl", "");
  EXPECT_EQ(files_of(folder), (Names{"project.yaml", "wing/wing.yaml", "skin.stl"}));
}

TEST(ProjectFileList, HasFilesThatAreMissing) {
  const ProjectFolder folder;
  EXPECT_EQ(files_of(folder), Names{"project.yaml"});
  folder.write("project.yaml",
               "linewright: 1\nname: a\ninclude: [gone/wing.yaml]\n"
               "structure:\n  meshes:\n    - {name: skin, file: skin.stl}\n");
  EXPECT_EQ(files_of(folder), (Names{"project.yaml", "gone/wing.yaml", "skin.stl"}));
}

TEST(ProjectFileList, HasFilesWithErrors) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: a\ninclude: [wing.yaml]\n");
  folder.write("wing.yaml", "linewright: 1\nstructure: {frames: [\n");
  EXPECT_EQ(files_of(folder), (Names{"project.yaml", "wing.yaml"}));
}

TEST(ProjectFileList, HasALinkAndWhatItLeadsTo) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: a\ninclude: [wing.yaml]\n");
  folder.write("kept/wing.yaml", "linewright: 1\n");
  fs::create_symlink("kept/wing.yaml", folder.path() / "wing.yaml");
  EXPECT_EQ(files_of(folder), (Names{"project.yaml", "wing.yaml", "kept/wing.yaml"}));
}

TEST(ProjectFileList, IsAbsoluteWhereverTheProjectIsCalledFrom) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: a\n");
  const fs::path relative = fs::relative(folder.path());
  const LoadResult result = load_project(relative, small_catalogue());
  ASSERT_EQ(result.files.size(), 1u);
  EXPECT_EQ(result.files[0], folder.path() / "project.yaml");
}

}  // namespace
}  // namespace linewright
