// What holes leave of the sheet that they are in.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// Frame F, 20 in square about WL 10, and a line that passes none of its holes but at FS 106.
ProjectSections framed(const std::string& holes, const std::string& more = {}) {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 106, thickness: 0.032, outline: [[-10, 0], [10, 0], [10, 20], "
      "[-10, 20]], holes: [" +
      holes + "]}]\n" + more;
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "112, 0, 10");
  sections.routes =
      "  - {name: line, system: vent, line: tube-nylon-1/4, from: a, to: b, points: []}\n";
  return sections;
}

std::vector<Judgement> broken(const std::string& holes, const std::string& more = {}) {
  return not_passed(judged(framed(holes, more), "hole-edge"));
}

TEST(HoleEdge, HolesThatOverlapFailOnceWhateverGoesThroughThem) {
  const Judgement judgement =
      only(broken("{name: H, centre: [0, 10], diameter: 0.5, edge: grommet, bore: 0.3125}, "
                  "{name: L, centre: [0.4, 10], diameter: 0.5, edge: bare}"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "H");
  EXPECT_NEAR(*judgement.value, -0.1, 1e-9);
  EXPECT_EQ(*judgement.limit, 0);
  EXPECT_EQ(judgement.message, "holes H and L of F overlap: there is no sheet between them");
  ASSERT_TRUE(judgement.at);
  EXPECT_EQ(judgement.at->x, 106);
}

TEST(HoleEdge, HolesThatOnlyMeetFailToo) {
  const Judgement judgement = only(broken(
      "{name: H, centre: [5, 5], diameter: 0.5}, {name: L, centre: [5.5, 5], diameter: 0.5}"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
}

TEST(HoleEdge, AHoleInAnotherFails) {
  const Judgement judgement = only(broken(
      "{name: L, outline: [[4, 4], [8, 4], [8, 8], [4, 8]]}, {name: H, centre: [6, 6], diameter: "
      "0.5}"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
}

TEST(HoleEdge, AHoleThatANotchOfTheFrameReachesIntoFails) {
  ProjectSections sections = framed("{name: H, centre: [0, 10], diameter: 0.5}");
  const std::string bottom = "[-10, 0], [10, 0]";
  // The notch's inner corner is 0.2 in under the middle, and 0.02 in beside it; the radius 1/4 in.
  sections.structure.replace(sections.structure.find(bottom), bottom.size(),
                             "[-10, 0], [0.01, 0], [0.02, 9.8], [0.03, 0], [10, 0]");
  const Judgement judgement = only(not_passed(judged(sections, "hole-edge")));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "hole H reaches outside F");
  EXPECT_NEAR(*judgement.value, std::hypot(0.02, 0.2) - 0.25, 1e-9);
}

TEST(HoleEdge, LessThanTheHolesDiameterToTheEdgeWarns) {
  const Judgement judgement = only(broken("{name: H, centre: [9.5, 10], diameter: 0.5}"));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 0.25, 1e-9);
  EXPECT_NEAR(*judgement.limit, 0.5, 1e-9);
  EXPECT_EQ(judgement.message, "0.250 in of sheet is left between hole H and the edge of F");
  EXPECT_TRUE(broken("{name: H, centre: [9.25, 10], diameter: 0.5}").empty());
}

TEST(HoleEdge, TheSmallerOfTwoHolesSaysWhatIsAskedFor) {
  const std::string wide = "{name: L, centre: [0, 10], diameter: 4}, ";
  // 1/4 in left: too little for a hole of 1/2 in, enough for one of 1/4 in.
  EXPECT_EQ(only(broken(wide + "{name: H, centre: [2.5, 10], diameter: 0.5}")).verdict,
            Verdict::warn);
  EXPECT_TRUE(broken(wide + "{name: H, centre: [2.375, 10], diameter: 0.25}").empty());
  // Two wide ones keep 1/2 in, and no more.
  EXPECT_EQ(*only(broken(wide + "{name: H, centre: [3.25, 10], diameter: 2}")).limit, 0.5);
  EXPECT_TRUE(broken(wide + "{name: H, centre: [3.5, 10], diameter: 2}").empty());
}

// A hole of up to 1/2 in keeps its own width, and a wider one 1/2 in, not its own.
TEST(HoleEdge, AHoleJustWiderThanHalfAnInchNeedsNoMoreThanOneOfHalfAnInch) {
  const auto left = [](double diameter_in, double web_in) {
    return broken(fmt::format("{{name: H, centre: [{}, 10], diameter: {}}}",
                              10 - web_in - diameter_in / 2, diameter_in));
  };
  EXPECT_TRUE(left(0.506, 0.502).empty());
  EXPECT_EQ(*only(left(0.506, 0.498)).limit, 0.5);
  EXPECT_TRUE(left(0.494, 0.496).empty());
  EXPECT_NEAR(*only(left(0.494, 0.492)).limit, 0.494, 1e-9);
}

TEST(HoleEdge, EveryPairThatIsTooNearIsSaid) {
  EXPECT_EQ(broken("{name: A, centre: [0, 10], diameter: 0.5}, {name: B, centre: [0.7, 10], "
                   "diameter: 0.5}, {name: C, centre: [0.35, 10.6], diameter: 0.5}")
                .size(),
            3u);
}

TEST(HoleEdge, APassIsListedForTheEdgeAndForTheNearestHoleOnce) {
  const auto passes = judged(framed("{name: A, centre: [0, 5], diameter: 0.5}, {name: B, centre: "
                                    "[2, 5], diameter: 0.5}"),
                             "hole-edge");
  EXPECT_EQ(passes.size(), 3u);
  EXPECT_TRUE(not_passed(passes).empty());
}

TEST(HoleEdge, HolesInAPanelAreHeldAgainstEachOther) {
  const auto panel = [](const std::string& second) {
    return "  panels: [{name: P, thickness: 0.032, corners: [[108, -9, 0], [108, 9, 0], [108, 9, "
           "20], [108, -9, 20]], holes: [{name: A, at: [108, 5, 5], diameter: 0.5}, {name: B, at: "
           "[108, " +
           second + ", 5], diameter: 0.5}]}]\n";
  };
  const Judgement overlapping = only(broken("", panel("5.4")));
  EXPECT_EQ(overlapping.verdict, Verdict::fail);
  EXPECT_EQ(only(broken("", panel("5.75"))).verdict, Verdict::warn);
  EXPECT_TRUE(broken("", panel("6")).empty());
}

TEST(HoleEdge, HasNothingToJudgeWithoutHoles) {
  EXPECT_TRUE(judged(framed(""), "hole-edge").empty());
}

}  // namespace
}  // namespace linewright
