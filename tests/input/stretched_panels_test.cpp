// Panels that are stretched over frames.

#include <gtest/gtest.h>

#include <string>

#include "input/load_project.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

/// Frames F1 to F3 at 100, 120 and 150, each a foot wide at its foot and narrower above.
LoadResult loaded(const std::string& panel,
                  const std::string& third = "[[-6, 0], [6, 0], [3, 9]]") {
  const ProjectFolder folder;
  folder.write(
      "project.yaml",
      "linewright: 1\nname: t\nstructure:\n"
      "  panels: [{name: skin, thickness: 0.025, " +
          panel +
          "}]\n"
          "  channels: [{name: c, path: [[0, 0, 0], [9, 0, 0]], section: [[0, 0], [0, 1]], "
          "thickness: "
          "0.025}]\n"
          "  frames:\n"
          "    - {name: F1, station: 100, thickness: 0.03, outline: [[-6, 0], [6, 0], [6, 9]]}\n"
          "    - {name: F2, station: 120, thickness: 0.03, outline: [[-6, 0], [6, 0], [5, 9]]}\n"
          "    - {name: F3, station: 150, thickness: 0.03, outline: " +
          third + "}\n");
  return load_project(folder.path() / "project.yaml", small_catalogue());
}

std::string error_of(const LoadResult& result) {
  return result.errors.size() == 1 ? result.errors[0].message : shown(result.errors);
}

TEST(StretchedPanels, RunFromCornerToCornerOfEachTwoFrames) {
  const LoadResult result = loaded("over: [F1, F2, F3], corners: [2, 3]");
  ASSERT_EQ(shown(result.errors), "");
  const Panel& panel = result.project->structure.panels.at(0);
  EXPECT_TRUE(panel.corners.empty());
  ASSERT_EQ(panel.bays.size(), 2u);
  EXPECT_EQ(panel.bays[0], (std::vector<Vec3>{{100, 6, 0}, {100, 6, 9}, {120, 5, 9}, {120, 6, 0}}));
  EXPECT_EQ(panel.bays[1], (std::vector<Vec3>{{120, 6, 0}, {120, 5, 9}, {150, 3, 9}, {150, 6, 0}}));
}

TEST(StretchedPanels, NeedTwoFramesAndTwoOfTheirCorners) {
  EXPECT_EQ(error_of(loaded("over: [F1], corners: [2, 3]")),
            "a panel is stretched over two frames or more, found 1");
  EXPECT_EQ(error_of(loaded("over: [F1, c], corners: [2, 3]")),
            "'c' is no frame: a panel is stretched over frames");
  EXPECT_EQ(error_of(loaded("over: [F1, F9], corners: [2, 3]")), "there is no part 'F9'");
  EXPECT_EQ(error_of(loaded("over: [F1, F2], corners: [3, 4]")),
            "frame 'F1' has 3 corners, counted from 1: there is no corner 4");
  EXPECT_EQ(error_of(loaded("over: [F1, F2], corners: [2, 2]")), "the two corners must differ");
  for (const std::string corners : {"[0, 1]", "[1, 1.5]"})
    EXPECT_EQ(
        error_of(loaded("over: [F1, F2], corners: " + corners)).find("a corner, counted from 1,"),
        0u)
        << corners;
  EXPECT_NE(error_of(loaded("over: [F1, F2], corners: [[0, 0, 0], [1, 0, 0], [1, 1, 0]]"))
                .find("two corners of the frames' outlines, counted from 1"),
            std::string::npos);
}

TEST(StretchedPanels, DoNotCrossThemselves) {
  EXPECT_EQ(
      error_of(loaded("over: [F1, F1], corners: [2, 3]")).find("between frames 'F1' and 'F1': "),
      0u);
  // Drawn from another corner and the other way round: its corners 2 and 3 are the other's 3 and 2.
  EXPECT_EQ(error_of(loaded("over: [F2, F3], corners: [2, 3]", "[[-6, 0], [3, 9], [6, 0]]")),
            "between frames 'F2' and 'F3': the two corners stand the other way round, and the "
            "panel would cross itself");
}

}  // namespace
}  // namespace linewright
