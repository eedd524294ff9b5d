// Frames of the shape of another.

#include <string>
#include <vector>

#include "input/derive/derived_project.hpp"

namespace linewright {
namespace {

LoadResult like_frames(const std::string& list) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: a\nstructure:\n  frames:\n" + list);
  return load_project(folder.path(), small_catalogue());
}

const std::string rib =
    "    - {name: R1, buttock_line: 46, thickness: 0.025, outline: [[80, 8.3], [89, 8.3], [89, "
    "12.3], "
    "[80, 12.3]], holes: [{name: R1-pitot, centre: [84, 10.3], diameter: 1/2, edge: grommet, bore: "
    "5/16}]}\n";

TEST(LikeFrames, TakeOverOutlineThicknessAndHolesUnderTheirOwnName) {
  const LoadResult result = like_frames(rib + "    - {name: R2, buttock_line: 24, like: R1}\n");
  ASSERT_EQ(shown(result.errors), "");
  const std::vector<Frame>& frames = result.project->structure.frames;
  ASSERT_EQ(frames.size(), 2u);
  EXPECT_EQ(frames[1].name, "R2");
  EXPECT_EQ(frames[1].plane.in_space({80, 9}).y, 24);
  EXPECT_EQ(frames[1].outline, frames[0].outline);
  EXPECT_EQ(frames[1].thickness_in, 0.025);
  ASSERT_EQ(frames[1].holes.size(), 1u);
  EXPECT_EQ(frames[1].holes[0].name, "R2-pitot");
  EXPECT_EQ(frames[1].holes[0].edge, EdgeGuard::grommet);
  EXPECT_EQ(frames[1].holes[0].bore_in, 0.3125);
}

TEST(LikeFrames, AreMovedInTheirPlaneHolesAndAll) {
  const LoadResult result =
      like_frames(rib + "    - {name: R2, buttock_line: 24, like: R1, moved: [1/2, -1.1]}\n");
  ASSERT_EQ(shown(result.errors), "");
  const Frame& moved = result.project->structure.frames[1];
  // 8.3 - 1.1 is 7.2 on a tape, though not to the last digit of a processor.
  EXPECT_EQ(moved.outline,
            (std::vector<Vec2>{{80.5, 7.2}, {89.5, 7.2}, {89.5, 11.2}, {80.5, 11.2}}));
  EXPECT_EQ(std::get<Circle>(moved.holes[0].shape).centre, (Vec2{84.5, 9.2}));
}

TEST(LikeFrames, KeepWhatTheyStateThemselves) {
  const LoadResult result = like_frames(
      rib + "    - {name: R2, buttock_line: 24, like: R1, thickness: 0.04, holes: []}\n" +
      "    - {name: R3, buttock_line: 12, like: R1, outline: [[80, 8], [89, 8], [89, 13], [80, "
      "13]]}\n");
  ASSERT_EQ(shown(result.errors), "");
  const std::vector<Frame>& frames = result.project->structure.frames;
  EXPECT_EQ(frames[1].thickness_in, 0.04);
  EXPECT_TRUE(frames[1].holes.empty());
  EXPECT_EQ(frames[2].outline.front(), (Vec2{80, 8}));
  EXPECT_EQ(frames[2].holes[0].name, "R3-pitot");
}

TEST(LikeFrames, MayBeLikeOneThatIsLikeAnotherInWhateverOrder) {
  const LoadResult result = like_frames(
      "    - {name: R3, buttock_line: 12, like: R2, moved: [0, -1]}\n"
      "    - {name: R2, buttock_line: 24, like: R1, moved: [0, -1]}\n" +
      rib);
  ASSERT_EQ(shown(result.errors), "");
  const Frame& third = result.project->structure.frames[0];
  EXPECT_EQ(third.outline.front(), (Vec2{80, 6.3}));
  EXPECT_EQ(third.holes[0].name, "R3-pitot");
}

TEST(LikeFrames, HaveTwinsOfTheirOwn) {
  const std::string both =
      "    - {name: L1, buttock_line: -46, mirror: R1, thickness: 0.025, outline: [[80, 8], [89, "
      "8], "
      "[89, 12], [80, 12]], holes: [{name: L1-pitot, centre: [84, 10], diameter: 1/2, mirror: "
      "R1-pitot}]}\n";
  const LoadResult result =
      like_frames(both + "    - {name: L2, buttock_line: -24, mirror: R2, like: L1}\n" +
                  "    - {name: L3, buttock_line: -12, like: L1}\n");
  ASSERT_EQ(shown(result.errors), "");
  const std::vector<Frame>& frames = result.project->structure.frames;
  ASSERT_EQ(frames.size(), 5u);
  EXPECT_EQ(frames[3].name, "R2");
  EXPECT_EQ(frames[3].plane.in_space({80, 9}).y, 24);
  EXPECT_EQ(frames[3].holes[0].name, "R2-pitot");
  EXPECT_EQ(frames[4].name, "L3");
  EXPECT_EQ(frames[4].holes[0].name, "L3-pitot");
}

TEST(LikeFrames, TakeOverTheWholeOfAHalfOutline) {
  const LoadResult result = like_frames(
      "    - {name: F1, station: 100, thickness: 0.04, half: true, outline: [[14, 0], [12, 26]], "
      "holes: [{name: F1-left, centre: [-8, 14], diameter: 1, mirror: F1-right}]}\n"
      "    - {name: F2, station: 120, like: F1}\n");
  ASSERT_EQ(shown(result.errors), "");
  const Frame& second = result.project->structure.frames[1];
  EXPECT_EQ(second.outline, (std::vector<Vec2>{{14, 0}, {12, 26}, {-12, 26}, {-14, 0}}));
  ASSERT_EQ(second.holes.size(), 2u);
  EXPECT_EQ(second.holes[1].name, "F2-right");
}

TEST(LikeFrames, ReadLengthsInTheUnitsOfTheFileThatStatesThem) {
  const ProjectFolder folder;
  folder.write("ribs.yaml",
               "linewright: 1\nunits: mm\nstructure:\n  frames:\n"
               "    - {name: R1, buttock_line: 254, thickness: 1, outline: [[2540, 0], "
               "[2794, 0], [2794, 254]], holes: [{name: R1-a, centre: [2667, 25.4], "
               "diameter: 12.7}]}\n");
  folder.write("project.yaml",
               "linewright: 1\nname: a\nunits: in\ninclude: [ribs.yaml]\n"
               "structure:\n  frames:\n"
               "    - {name: R2, buttock_line: 20, like: R1, moved: [1, 0]}\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(shown(result.errors), "");
  // Lengths that are worked out are written to a billionth of an inch.
  for (const Frame& frame : result.project->structure.frames) {
    if (frame.name != "R2") continue;
    EXPECT_NEAR(frame.thickness_in, 1 / 25.4, 1e-9);
    EXPECT_EQ(frame.outline, (std::vector<Vec2>{{101, 0}, {111, 0}, {111, 10}}));
    EXPECT_EQ(std::get<Circle>(frame.holes[0].shape).centre, (Vec2{106, 1}));
    EXPECT_EQ(std::get<Circle>(frame.holes[0].shape).diameter_in, 0.5);
  }
}

TEST(LikeFrames, ExpandToWhatSaysTheSameAndWhatItCameFrom) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               "linewright: 1\nname: a\nstructure:\n  frames:\n" + rib +
                   "    - {name: R2, buttock_line: 24, like: R1, moved: [0, -1]}\n");
  const auto expanded = expand_project(folder.path(), small_catalogue());
  ASSERT_TRUE(expanded);
  EXPECT_NE(expanded->find("[[80, 7.3], [89, 7.3], [89, 11.3], [80, 11.3]]  # like R1"),
            std::string::npos)
      << *expanded;
  EXPECT_EQ(expanded->find("like:"), std::string::npos);
  EXPECT_EQ(expanded->find("moved:"), std::string::npos);
}

/// What is wrong with a frame of those keys beside R1.
std::string fault_of_frame(const std::string& keys) {
  return shown(like_frames(rib + "    - {name: R2, " + keys + "}\n").errors);
}

TEST(LikeFrames, RefuseWhatIsNoFrameOnceAndWithItsPlace) {
  EXPECT_EQ(fault_of_frame("buttock_line: 24, like: R11"),
            "project.yaml:6:42: there is no frame 'R11' | did you mean 'R1'?\n");
  EXPECT_EQ(fault_of_frame("buttock_line: 24, like: [R1]"),
            "project.yaml:6:42: 'like' must be the name of a frame\n");
  EXPECT_EQ(fault_of_frame("buttock_line: 24, like: R2"),
            "project.yaml:6:42: frame 'R2' is like itself | describe one of them by its own "
            "'outline'\n");
  EXPECT_EQ(
      fault_of_frame("buttock_line: 24, like: R3}\n    - {name: R3, buttock_line: 12, like: R2"),
      "project.yaml:7:42: frame 'R3' is like itself, by way of 'R2' | describe one of them by "
      "its own 'outline'\n");
}

TEST(LikeFrames, RefuseOneThatIsDrawnInOtherCoordinates) {
  EXPECT_EQ(
      fault_of_frame("station: 24, like: R1"),
      "project.yaml:6:37: frame 'R2' is drawn in BL and WL, and 'R1' in FS and WL: neither has "
      "the shape of the other | name a frame that stands the same way, or give this one its own "
      "'outline'\n");
}

TEST(LikeFrames, RefuseToBeMovedWhereNothingIsToMove) {
  EXPECT_EQ(
      fault_of_frame("buttock_line: 24, like: R1, moved: [1]"),
      "project.yaml:6:53: 'moved' must be two lengths, drawn as the frame is | say 'moved: [0, "
      "-1.1]' where it stands 1.1 lower or farther left\n");
  EXPECT_EQ(fault_of_frame("buttock_line: 24, like: R1, moved: [0, 20000]"),
            "project.yaml:6:53: 'moved' must not be beyond 10000 in\n");
  EXPECT_EQ(
      fault_of_frame("buttock_line: 24, thickness: 0.04, outline: [[1, 2], [3, 4], [5, 9]], "
                     "moved: [1, 2]"),
      "project.yaml:6:95: 'moved' is of a frame that is 'like' another | leave 'moved' out, or "
      "say which frame it is 'like'\n");
}

TEST(Frames, ThatAreLikeNoneNeedAShapeOfTheirOwn) {
  EXPECT_EQ(
      fault_of_frame("buttock_line: 24, thickness: 0.04"),
      "project.yaml:6:7: a frame needs 'outline' | corners of its web, the last joined to the "
      "first; needed where it is not `like` another\n");
  EXPECT_EQ(
      fault_of_frame("buttock_line: 24, outline: [[1, 2], [3, 4], [5, 9]]"),
      "project.yaml:6:7: a frame needs 'thickness' | of its web; needed where it is not `like` "
      "another frame\n");
}

TEST(LikeFrames, RefuseAHoleWhoseCopyHasNoName) {
  const std::string holes = ", holes: [{name: a, centre: [84, 10.3], diameter: 1/2}]";
  EXPECT_EQ(
      shown(like_frames("    - {name: R1, buttock_line: 46, thickness: 0.025, outline: [[80, "
                        "8], [89, 8], [89, 12], [80, 12]]" +
                        holes + "}\n    - {name: R2, buttock_line: 24, like: R1}\n")
                .errors),
      "project.yaml:6:42: nothing tells what the copy of hole 'a' is called: its name does not "
      "begin with its frame's | call it 'R1-…', or list the holes of 'R2' under its own "
      "'holes'\n");
}

TEST(LikeFrames, RefuseToHaveHalfOfWhatAnotherHas) {
  EXPECT_EQ(
      shown(like_frames(
                "    - {name: F1, station: 100, thickness: 0.04, half: true, outline: [[14, 0], "
                "[12, 26]]}\n    - {name: F2, station: 120, like: F1, half: true}\n")
                .errors),
      "project.yaml:6:48: 'half' is of an 'outline', which this frame has from another | leave "
      "'half' out: what the other completes is taken over whole\n");
}

TEST(LikeFrames, SayOnceWhatIsWrongWithAShapeOfSeveral) {
  const std::string errors =
      shown(like_frames(
                "    - {name: R1, buttock_line: 46, thickness: 0.025, outline: [[80, 8], [89, x], "
                "[89, 12]]}\n    - {name: R2, buttock_line: 24, like: R1}\n")
                .errors);
  EXPECT_EQ(errors.find('\n'), errors.size() - 1) << errors;
}

// A call within a call for each would take more of the stack than there is.
TEST(LikeFrames, MayBeAsManyInARowAsAProjectHolds) {
  constexpr int count = 20'000;
  std::string list;
  for (int i = 0; i < count; ++i)
    list += "    - {name: R" + std::to_string(i) + ", buttock_line: " + std::to_string(i % 100) +
            ", like: R" + std::to_string(i + 1) + "}\n";
  const std::string errors = shown(like_frames(list).errors);
  EXPECT_NE(errors.find("there is no frame 'R20000'"), std::string::npos) << errors.substr(0, 500);
}

}  // namespace
}  // namespace linewright
