// Holes in channels, panels and boards.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "lines/wall.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-9;

/// A spar web at FS 88, BL -60 to -10, WL 6 to 10, with flanges that point forward.
std::string spar(const std::string& holes = "[]") {
  return "  channels: [{name: spar, path: [[88, -60, 6], [88, -10, 6]], section: [[-0.6, 0], [0, "
         "0], [0, 4], [-0.6, 4]], thickness: 0.025, edge: bare, holes: " +
         holes + "}]\n";
}

ProjectSections led(const std::string& structure, const std::string& points = "[]",
                    const std::string& line = "tube-aluminium-1/4", double bl = -40,
                    double wl = 8) {
  ProjectSections sections;
  sections.structure = structure;
  const std::string place = std::to_string(bl) + ", " + std::to_string(wl);
  sections.nodes = held_node("a", "80, " + place) + held_node("b", "96, " + place);
  sections.routes = std::string("  - {name: line, system: ") +
                    (line.starts_with("wire") ? "wire" : "vent") + ", line: " + line +
                    ", from: a, to: b, points: " + points + "}\n";
  return sections;
}

Verdict worst(const ProjectSections& sections) {
  const ProjectText project(sections);
  Verdict found = Verdict::pass;
  for (const std::string rule : {"frame-crossing", "clearance", "chafe"})
    for (const Judgement& judgement : project.judged(rule))
      found = std::max(found, judgement.verdict);
  return found;
}

std::vector<Judgement> broken_of(const ProjectSections& sections, const std::string& rule) {
  std::vector<Judgement> judgements = judged(sections, rule);
  std::erase_if(judgements, [](const Judgement& each) { return each.verdict == Verdict::pass; });
  return judgements;
}

const std::string grommet_there = "[{at: [88, -40, 8], hold: grommet, bore: 0.3125}]";

TEST(WallHoles, AGrommetThatStandsInAWebImpliesItsHole) {
  const ProjectSections sections = led(spar(), grommet_there);
  EXPECT_EQ(worst(sections), Verdict::pass);
  const ProjectText project(sections);
  ASSERT_EQ(project.prepared().walls.size(), 1u);
  const Judgement judgement = only(project.judged("frame-crossing"));
  EXPECT_EQ(judgement.with, "spar");
  EXPECT_EQ(wall_assumptions(project.prepared().walls).at(0),
            "no hole is described in spar at FS 88.0 BL -40.0 WL 8.0: one of 0.5625 in is taken to "
            "be cut for the grommet there, of 0.3125 in bore");
}

/// A skin at FS 88 from WL 6 to 10.
const std::string skin =
    "  panels: [{name: skin, corners: [[88, -60, 6], [88, -10, 6], [88, -10, 10], [88, -60, 10]], "
    "thickness: 0.025}]\n";

// Half of the 0.5625 in that are taken to be cut is 0.281 in.
TEST(WallHoles, AnImpliedHoleIsJudgedAsLargeAsItIsSaidToBe) {
  const auto at_edge = [](const std::string& wl) {
    return led(skin, "[{at: [88, -40, " + wl + "], hold: grommet, bore: 0.3125}]",
               "tube-aluminium-1/4", -40, std::stod(wl));
  };
  const Judgement past = only(broken_of(at_edge("9.8"), "hole-edge"));
  EXPECT_EQ(past.verdict, Verdict::fail);
  EXPECT_EQ(past.message, "hole of its guide reaches outside its wall of skin");
  EXPECT_TRUE(broken_of(at_edge("9.7"), "hole-edge").empty());
}

TEST(WallHoles, TwoImpliedHolesOverlapWhereWhatIsCutForThemDoes) {
  const auto beside = [](const std::string& bl) {
    ProjectSections sections = led(skin, grommet_there);
    sections.nodes += held_node("c", "80, " + bl + ", 8") + held_node("d", "96, " + bl + ", 8");
    sections.routes +=
        "  - {name: other, system: vent, line: tube-aluminium-1/4, from: c, to: d, points: [{at: "
        "[88, " +
        bl + ", 8], hold: grommet, bore: 0.3125}]}\n";
    return sections;
  };
  const Judgement overlapping = only(broken_of(beside("-39.5"), "hole-edge"));
  EXPECT_EQ(overlapping.verdict, Verdict::fail);
  EXPECT_NEAR(*overlapping.value, 0.5 - 0.5625, rounding_in);
  EXPECT_EQ(only(broken_of(beside("-39.4"), "hole-edge")).verdict, Verdict::warn);
  EXPECT_TRUE(broken_of(beside("-38.8"), "hole-edge").empty());
}

TEST(WallHoles, ALineThroughTheWebWithNoGuideOrBesideItFails) {
  EXPECT_EQ(worst(led(spar())), Verdict::fail);
  EXPECT_EQ(worst(led(spar(), "[{at: [88, -40, 8], hold: clamp}]")), Verdict::fail);
  // The grommet stands 2 in ahead of the web.
  EXPECT_EQ(worst(led(spar(), "[{at: [86, -40, 8], hold: grommet, bore: 0.3125}]")), Verdict::fail);
  // Its bore is not stated, so how wide the hole would be is not known.
  EXPECT_EQ(worst(led(spar(), "[{at: [88, -40, 8], hold: grommet}]")), Verdict::fail);
}

TEST(WallHoles, ALineTooThickForTheGrommetFails) {
  EXPECT_EQ(worst(led(spar(), "[{at: [88, -40, 8], hold: grommet, bore: 0.2}]")), Verdict::fail);
}

TEST(WallHoles, ADescribedHoleIsJudgedAsAFramesIs) {
  const auto hole = [](const std::string& rest) {
    return spar("[{name: S1, at: [88, -40, 8], " + rest + "}]");
  };
  // On the axis of a 1 in hole: 0.5 - 0.125.
  const Judgement clear =
      only(judged(led(hole("diameter: 1, edge: bare"), "[]", "wire-1/4"), "frame-crossing"));
  EXPECT_EQ(clear.verdict, Verdict::pass);
  EXPECT_NEAR(*clear.value, 0.375, rounding_in);
  EXPECT_EQ(clear.with, "S1");
  EXPECT_EQ(worst(led(hole("diameter: 1, edge: bare"))), Verdict::pass);
  // Within its likely reach of the edge, which the wall itself does not hide.
  EXPECT_EQ(worst(led(hole("diameter: 0.27, edge: bare"))), Verdict::fail);
  const Judgement close =
      only(judged(led(hole("diameter: 0.9, edge: bare"), "[]", "wire-1/4"), "frame-crossing"));
  EXPECT_EQ(close.verdict, Verdict::fail);
  EXPECT_EQ(close.message, "close to the bare edge of hole S1");
  EXPECT_EQ(worst(led(hole("diameter: 0.5, edge: grommet, bore: 0.3125"),
                      "[{at: [88, -40, 8], hold: grommet, through: S1}]")),
            Verdict::pass);
}

TEST(WallHoles, OtherWallsOfTheChannelStillCount) {
  // The lip at WL 10 is 0.3 in above a hole for a line that then rises into it.
  ProjectSections sections =
      led(spar(), "[{at: [88, -40, 9.7], hold: grommet, bore: 0.3125}, {at: [87.6, -40, 10.2]}]",
          "wire-1/4", -40, 9.7);
  sections.nodes = held_node("a", "96, -40, 9.7") + held_node("b", "80, -40, 10.4");
  EXPECT_EQ(worst(sections), Verdict::fail);
}

TEST(WallHoles, AHoleThatReachesPastItsWallFails) {
  EXPECT_EQ(worst(led(spar("[{name: S1, at: [88, -40, 9.9], diameter: 0.5, edge: grommet, bore: "
                           "0.3125}]"),
                      "[{at: [88, -40, 9.9], hold: grommet, through: S1}]", "tube-aluminium-1/4",
                      -40, 9.9)),
            Verdict::fail);
}

TEST(WallHoles, PanelsAndBoardsHaveThemToo) {
  const std::string panel =
      "  panels: [{name: web, corners: [[88, -60, 6], [88, -10, 6], [88, -10, 10], [88, -60, 10]], "
      "thickness: 0.025}]\n";
  const std::string board =
      "  solids: [{name: web, box: {min: [87.75, -60, 6], max: [88.25, -10, 10]}}]\n";
  for (const std::string& structure : {panel, board}) {
    EXPECT_EQ(worst(led(structure, grommet_there)), Verdict::pass) << structure;
    EXPECT_EQ(worst(led(structure)), Verdict::fail) << structure;
  }
  // No one cuts a hole right through a battery.
  EXPECT_EQ(worst(led("  solids: [{name: battery, box: {min: [88, -60, 6], max: [92, -10, 10]}}]\n",
                      grommet_there)),
            Verdict::fail);
}

TEST(WallHoles, AHoleDescribedAtNoWallFails) {
  const Judgement astray =
      only(judged(led(spar("[{name: S1, at: [80, -40, 8], diameter: 1, edge: bare}]"), "[]",
                      "wire-1/4", -40, 20),
                  "frame-crossing"));
  EXPECT_EQ(astray.verdict, Verdict::fail);
  EXPECT_EQ(astray.message, "hole S1 is described at no wall of spar");
}

/// A tube that goes through a deck at WL 10 with a rise of 20 degrees, clamped 6.4 in to each side
/// of the middle of a hole, which is `diameter` wide.
ProjectSections aslant(const std::string& diameter) {
  ProjectSections sections;
  sections.build_tolerance = "0.06";
  sections.structure =
      "  panels: [{name: deck, thickness: 0.03, corners: [[0, -9, 10], [60, -9, 10], [60, 9, 10], "
      "[0, "
      "9, 10]], holes: [{name: H, at: [30, 0, 10], diameter: " +
      diameter + ", edge: bare}]}]\n";
  sections.nodes = held_node("a", "18, 0, 5.63") + held_node("b", "42, 0, 14.37");
  sections.routes =
      "  - {name: line, system: vent, line: tube-aluminium-1/4, from: a, to: b, points: [{at: [24, "
      "0, "
      "7.815], hold: clamp}, {at: [36, 0, 12.185], hold: clamp}]}\n";
  return sections;
}

TEST(WallHoles, OverAWideHoleTheWallRoundItIsMetAtItsEdgeAlone) {
  // 3 in from the middle of the hole the line is 3 sin 20 deg = 1.03 in from its edge.
  EXPECT_EQ(worst(aslant("6")), Verdict::pass);
  // Over the rim of one half as wide it is 0.51 in off: 0.125 and 0.06 in less, under 3/8 in.
  EXPECT_EQ(worst(aslant("3")), Verdict::warn);
  // In a hole that its own width hardly fits, it touches.
  EXPECT_EQ(worst(aslant("1")), Verdict::fail);
}

}  // namespace
}  // namespace linewright
