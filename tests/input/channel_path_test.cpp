// Paths that a section can be swept along.

#include <gtest/gtest.h>

#include <string>

#include "input/load_project.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

std::vector<Diagnostic> errors_of_path(const std::string& path) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               "linewright: 1\nname: t\nstructure:\n  channels: [{name: c, path: " + path +
                   ", section: [[0, 0.6], [0, 0], [0.75, 0]], thickness: 0.025, "
                   "edge: bare}]\n");
  return load_project(folder.path() / "project.yaml", small_catalogue()).errors;
}

TEST(ChannelPaths, TurnNoCornerForTheirSectionDoesNot) {
  const auto errors = errors_of_path("[[100, 0, 10], [112.5, 0, 10], [112.5, 10, 10]]");
  ASSERT_EQ(errors.size(), 1u);
  EXPECT_EQ(errors[0].where.line, 4);
  EXPECT_EQ(
      errors[0].message,
      "a channel's path must stay within 60 deg of the axis that its section is drawn across, "
      "FS here: found a leg at 90 deg to it; describe that leg as a channel of its own");
}

TEST(ChannelPaths, TurnNoCornerOnAnyAxisNorBackwards) {
  EXPECT_EQ(errors_of_path("[[0, 0, 0], [0, 0, -9], [0, -4, -9]]").size(), 1u);
  EXPECT_EQ(errors_of_path("[[0, 4, 0], [0, 0, 0], [0, 0, 9], [3, 0, 9]]").size(), 1u);
  EXPECT_EQ(errors_of_path("[[9, 0, 0], [0, 0, 0], [-0.5, 0, 2]]").size(), 1u);
}

TEST(ChannelPaths, MayKinkAndMayRunStraightAtAnyAngle) {
  EXPECT_EQ(shown(errors_of_path("[[0, 0, 0], [10, 2, 0], [20, 5, 3]]")), "");
  EXPECT_EQ(shown(errors_of_path("[[0, 0, 0], [1, 1, 1]]")), "");
  EXPECT_EQ(shown(errors_of_path("[[0, 0, 0], [1, -1, 0]]")), "");
}

}  // namespace
}  // namespace linewright
