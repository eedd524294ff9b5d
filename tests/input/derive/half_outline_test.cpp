// Outlines of which a project states what lies right of BL 0.

#include <string>
#include <vector>

#include "input/derive/derived_project.hpp"

namespace linewright {
namespace {

LoadResult frames(const std::string& list) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: a\nstructure:\n  frames:\n" + list);
  return load_project(folder.path(), small_catalogue());
}

/// The frame at FS 100, thickness 0.04, with those keys.
std::string at_station(const std::string& keys) {
  return "    - {name: F, station: 100, thickness: 0.04, " + keys + "}\n";
}

std::vector<Vec2> outline_of(const std::string& list) {
  const LoadResult result = frames(list);
  EXPECT_EQ(shown(result.errors), "");
  return result.project ? result.project->structure.frames.front().outline : std::vector<Vec2>();
}

using Corners = std::vector<Vec2>;

TEST(HalfOutline, IsFollowedByItsMirrorImageTheLastCornerFirst) {
  EXPECT_EQ(outline_of(at_station("half: true, outline: [[14, 0], [12, 26]]")),
            (Corners{{14, 0}, {12, 26}, {-12, 26}, {-14, 0}}));
}

TEST(HalfOutline, HasACornerOnBlZeroOnce) {
  EXPECT_EQ(outline_of(at_station("half: true, outline: [[0, 0], [14, 2], [0, 26]]")),
            (Corners{{0, 0}, {14, 2}, {0, 26}, {-14, 2}}));
  // One end on BL 0, the other joined straight across.
  EXPECT_EQ(outline_of(at_station("half: true, outline: [[14, 2], [0, 26]]")),
            (Corners{{14, 2}, {0, 26}, {-14, 2}}));
}

TEST(HalfOutline, ReadsLengthsAsTheyStandOnATape) {
  EXPECT_EQ(outline_of(at_station("half: true, outline: [[10 3/8, 0], [1 ft, 26]]")),
            (Corners{{10.375, 0}, {12, 26}, {-12, 26}, {-10.375, 0}}));
}

TEST(HalfOutline, IsOfAFloorsBlToo) {
  EXPECT_EQ(outline_of("    - {name: F, waterline: 2, thickness: 0.04, half: true, outline: [[180, "
                       "10], [190, 9]]}\n"),
            (Corners{{180, 10}, {190, 9}, {190, -9}, {180, -10}}));
}

TEST(HalfOutline, IsOfASlantedFrameThatIsTheSameOnBothSides) {
  EXPECT_EQ(outline_of("    - {name: F, plane: {point: [140, 0, 10], normal: [1, 0, 0.2], up: [0, "
                       "0, 1]}, thickness: 0.04, half: true, outline: [[3, -3], [3, 3]]}\n"),
            (Corners{{3, -3}, {3, 3}, {-3, 3}, {-3, -3}}));
}

TEST(HalfOutline, IsOfAHole) {
  const LoadResult result =
      frames(at_station("half: true, outline: [[14, 0], [14, 26]], holes: [{name: h, half: true, "
                        "outline: [[3, 4], [2, 9]], edge: bare}]"));
  ASSERT_EQ(shown(result.errors), "");
  EXPECT_EQ(std::get<Corners>(result.project->structure.frames.front().holes.front().shape),
            (Corners{{3, 4}, {2, 9}, {-2, 9}, {-3, 4}}));
}

TEST(HalfOutline, IsAllOfItWhereHalfIsFalse) {
  EXPECT_EQ(outline_of(at_station("half: false, outline: [[14, 0], [12, 26], [-3, 4]]")),
            (Corners{{14, 0}, {12, 26}, {-3, 4}}));
}

/// What is wrong with the frame: one error, with its place.
std::string fault(const std::string& list) {
  return shown(frames(list).errors);
}

TEST(HalfOutline, HasNoCornerLeftOfBlZero) {
  EXPECT_EQ(fault(at_station("half: true, outline: [[14, 0], [-14, 0], [-14, 26]]")),
            "project.yaml:5:79: corner 2 of half an outline must not lie left of BL 0 | give the "
            "corners right of BL 0 alone: their mirror images are added\n");
}

TEST(HalfOutline, SaysNoMoreOfAnOutlineThatIsRefused) {
  EXPECT_EQ(frames(at_station("half: true, outline: [[14, 0], [-14, 0]], holes: [{name: h, centre: "
                              "[2, 5], diameter: 1, edge: bare}]"))
                .errors.size(),
            1u);
}

TEST(HalfOutline, NeedsAFrameAcrossBlZero) {
  EXPECT_EQ(fault("    - {name: R, buttock_line: 40, thickness: 0.04, half: true, outline: [[180, "
                  "4], [190, 4], [190, 9]]}\n"),
            "project.yaml:5:58: half of this outline says nothing of the other half: its frame "
            "does not stand square across BL 0 | leave 'half' out, and give all corners\n");
}

TEST(HalfOutline, IsNotOfARoundHole) {
  EXPECT_EQ(fault(at_station("outline: [[-14, 0], [14, 0], [14, 26]], holes: [{name: h, half: "
                             "true, centre: [2, 5], diameter: 1, edge: bare}]")),
            "project.yaml:5:112: 'half' is of an 'outline', which this hole has not | leave 'half' "
            "out: a round hole is described whole\n");
}

TEST(HalfOutline, HasNoTwinBesideItself) {
  EXPECT_EQ(fault(at_station("outline: [[-14, 0], [14, 0], [14, 26]], holes: [{name: h, half: "
                             "true, outline: [[3, 4], [3, 9]], edge: bare, mirror: g}]")),
            "project.yaml:5:165: a hole that is on both sides of BL 0 has no twin | leave out "
            "'mirror', or 'half' where the outline is all of the hole\n");
}

TEST(HalfOutline, SaysWhatIsNeitherTrueNorFalse) {
  EXPECT_EQ(fault(at_station("half: left, outline: [[-14, 0], [14, 0], [14, 26]]")),
            "project.yaml:5:54: expected true or false, found 'left'\n");
}

TEST(HalfOutline, OfOneCornerIsNoOutline) {
  EXPECT_EQ(frames(at_station("half: true, outline: [[14, 0]]")).errors.size(), 1u);
}

TEST(HalfOutline, TouchesBlZeroAtItsEndsOnly) {
  EXPECT_EQ(frames(at_station("half: true, outline: [[14, 0], [0, 9], [14, 26]]")).errors.size(),
            1u);
}

}  // namespace
}  // namespace linewright
