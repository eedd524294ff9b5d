// Holes that run into each other or out of their sheet.

#include <gtest/gtest.h>

#include <string>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

ProjectSections frame_with(const std::string& holes, const std::string& points = "[]",
                           const std::string& outline =
                               "[[-20, -20], [20, -20], [20, 40], [-20, "
                               "40]]") {
  ProjectSections sections;
  sections.structure = "  frames: [{name: F, station: 106, thickness: 0.032, outline: " + outline +
                       ", holes: [" + holes + "]}]\n";
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "112, 0, 10");
  sections.routes =
      "  - {name: line, system: vent, line: tube-nylon-1/4, from: a, to: b, points: " + points +
      "}\n";
  return sections;
}

const std::string grommeted =
    "{name: H, centre: [0, 10], diameter: 0.5, edge: grommet, bore: 0.3125}";
const std::string held_in_it = "[{at: [106, 0, 10], hold: grommet, through: H}]";

Verdict worst(const ProjectSections& sections, const std::string& rule) {
  Verdict found = Verdict::pass;
  for (const Judgement& judgement : judged(sections, rule))
    found =
        std::max(found, judgement.verdict == Verdict::unknown ? Verdict::fail : judgement.verdict);
  return found;
}

TEST(WholeHoles, AGrommetsHoleInALighteningHoleFailsInEitherOrder) {
  const std::string round = "{name: L, centre: [0.4, 10], diameter: 3, edge: rolled}";
  const std::string square = "{name: L, outline: [[-1, 9], [1, 9], [1, 11], [-1, 11]], edge: bare}";
  const std::string across = "{name: L, centre: [1.6, 10], diameter: 3, edge: bare}";
  for (const std::string& other : {round, square, across})
    for (const std::string& holes : {grommeted + ", " + other, other + ", " + grommeted}) {
      SCOPED_TRACE(holes);
      EXPECT_EQ(worst(frame_with(holes, held_in_it), "frame-crossing"), Verdict::fail);
      EXPECT_EQ(worst(frame_with(holes), "frame-crossing"), Verdict::fail);
    }
  const Judgement judgement =
      only(judged(frame_with(grommeted + ", " + round, held_in_it), "frame-crossing"));
  EXPECT_EQ(judgement.with, "H");
  EXPECT_EQ(judgement.message,
            "holes H and L of F overlap: nothing can be fitted in it that guards or holds the "
            "line");
}

TEST(WholeHoles, WebBetweenTwoHolesIsEnough) {
  const std::string beside = "{name: L, centre: [2, 10], diameter: 3, edge: bare}";
  EXPECT_EQ(worst(frame_with(grommeted + ", " + beside, held_in_it), "frame-crossing"),
            Verdict::pass);
}

TEST(WholeHoles, AGuideInABrokenHoleIsNoSupport) {
  const std::string inside = "{name: L, centre: [0, 10], diameter: 3, edge: bare}";
  const ProjectText broken(frame_with(grommeted + ", " + inside, held_in_it));
  EXPECT_EQ(broken.route("line").supports.size(), 2u);
  EXPECT_EQ(broken.route("line").loose_guides.size(), 1u);
  const ProjectText whole(frame_with(grommeted, held_in_it));
  EXPECT_EQ(whole.route("line").supports.size(), 3u);
}

TEST(WholeHoles, OfOpenHolesThatOverlapOnlyHoleEdgeSpeaks) {
  const std::string open = "{name: H, centre: [0, 10], diameter: 2, edge: bare}";
  const std::string other = "{name: L, centre: [1.5, 10], diameter: 2, edge: bare}";
  EXPECT_EQ(worst(frame_with(open + ", " + other), "frame-crossing"), Verdict::pass);
  EXPECT_EQ(worst(frame_with(open + ", " + other), "hole-edge"), Verdict::fail);
}

TEST(WholeHoles, AHoleThatANotchOfTheOutlineCutsFails) {
  const std::string notched =
      "[[-20, -20], [0.01, -20], [0.02, 9.8], [0.03, -20], [20, -20], [20, 40], [-20, 40]]";
  EXPECT_EQ(worst(frame_with(grommeted, held_in_it, notched), "frame-crossing"), Verdict::fail);
}

}  // namespace
}  // namespace linewright
