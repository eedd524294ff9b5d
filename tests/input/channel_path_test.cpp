// Paths that a section can be carried along.

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

TEST(ChannelPaths, MayTurnCornersOnAnyAxis) {
  EXPECT_EQ(shown(errors_of_path("[[100, 0, 10], [112.5, 0, 10], [112.5, 10, 10]]")), "");
  EXPECT_EQ(shown(errors_of_path("[[0, 0, 0], [0, 0, -9], [0, -4, -9]]")), "");
  EXPECT_EQ(shown(errors_of_path("[[0, 4, 0], [0, 0, 0], [0, 0, 9], [3, 0, 9]]")), "");
  EXPECT_EQ(shown(errors_of_path("[[9, 0, 0], [0, 0, 0], [2, 0, 6]]")), "");
}

TEST(ChannelPaths, MayRunStraightAtAnyAngle) {
  EXPECT_EQ(shown(errors_of_path("[[0, 0, 0], [10, 2, 0], [20, 5, 3]]")), "");
  EXPECT_EQ(shown(errors_of_path("[[0, 0, 0], [1, 1, 1]]")), "");
  EXPECT_EQ(shown(errors_of_path("[[0, 0, 0], [1, -1, 0]]")), "");
}

TEST(ChannelPaths, FoldNoSectionOverItself) {
  // To the right at FS 12.5, on the side of the flange that is 0.75 in wide, and aft again 1.4 in
  // on: the inner corner takes 0.75 in of that leg, and the outer nothing.
  const auto fits = "[[100, 0, 10], [112.5, 0, 10], [112.5, 0.8, 10]]";
  EXPECT_EQ(shown(errors_of_path(fits)), "");
  const auto errors = errors_of_path("[[100, 0, 10], [112.5, 0, 10], [112.5, 0.7, 10]]");
  ASSERT_EQ(errors.size(), 1u);
  EXPECT_EQ(errors[0].where.line, 4);
  EXPECT_EQ(errors[0].where.column, 61);
  EXPECT_EQ(errors[0].message,
            "the section folds over itself on the leg that ends here: its turns take 0.75 in of "
            "the section's corner 3, and the leg has 0.7 in; describe it as a channel of its own, "
            "or draw the path along the inside of its turns");
}

TEST(ChannelPaths, DoNotTurnRightBack) {
  const auto errors = errors_of_path("[[0, 0, 0], [20, 0, 0], [5, 0.1, 0]]");
  ASSERT_EQ(errors.size(), 1u);
  EXPECT_EQ(errors[0].message,
            "the path turns right back here, and its section would fold over itself: describe each "
            "leg as a channel of its own");
}

}  // namespace
}  // namespace linewright
