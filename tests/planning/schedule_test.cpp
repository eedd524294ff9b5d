#include "planning/schedule.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

constexpr double exact = 1e-9;

/// A tube from FS 100 to FS 130 at WL 10, by a clamp on stringer S and a grommet in frame F.
ProjectSections tube() {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 120, thickness: 0.032, outline: [[-9, 0], [9, 0], [9, 20], "
      "[-9, 20]], holes: [{name: H, centre: [0, 10], diameter: 0.5, edge: grommet, bore: 0.3125}, "
      "{name: L, centre: [1.5, 10], diameter: 1, edge: rolled}]}]\n"
      "  channels: [{name: S, path: [[100, 3, 11], [104, 0, 11], [128, 0, 11]], section: [[0, 0], "
      "[0, 0.5], [0.5, 0.5]], thickness: 0.025}]\n";
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "130, 0, 10");
  sections.routes =
      "  - {name: tube, system: vent, line: tube-nylon-1/4, from: a, to: b, points: [{at: [110, 0, "
      "10], hold: clamp, to: S}, {at: [120, 0, 10], hold: grommet, through: H}]}\n";
  return sections;
}

Schedule of(const ProjectSections& sections, ScheduleOrder order = ScheduleOrder::route) {
  return schedule(ProjectText(sections).prepared(), order);
}

TEST(Schedule, SupportsStandAlongTheirLineOnTheirPart) {
  const Schedule made = of(tube());
  ASSERT_EQ(made.supports.size(), 2u);
  const ScheduledSupport& clamp = made.supports[0];
  EXPECT_EQ(clamp.hold, "clamp");
  EXPECT_EQ(clamp.to, "S");
  EXPECT_NEAR(distance(clamp.at, {110, 0, 10}), 0, exact);
  EXPECT_NEAR(clamp.distance_in, 10, exact);
  EXPECT_NEAR(clamp.from_previous_in, 10, exact);
  EXPECT_EQ(clamp.clamp, "clamp-4");
  EXPECT_EQ(clamp.hole_in, 0.196);  // No. 9 drill for a No. 10 screw [from memory]
  const ScheduledSupport& grommet = made.supports[1];
  EXPECT_EQ(grommet.hold, "grommet");
  EXPECT_EQ(grommet.to, "F");
  EXPECT_NEAR(grommet.from_previous_in, 10, exact);
  EXPECT_EQ(grommet.size_in, 0.3125);
  EXPECT_EQ(grommet.hole_in, 0.5);
  EXPECT_TRUE(grommet.clamp.empty());
}

TEST(Schedule, AStringersTapeIsLaidAlongItsPath) {
  // 3-4-5 from the path's start to its corner, and 6 in from there to FS 110.
  const Schedule made = of(tube(), ScheduleOrder::part);
  const auto on_stringer = std::find_if(made.supports.begin(), made.supports.end(),
                                        [](const auto& each) { return each.to == "S"; });
  ASSERT_NE(on_stringer, made.supports.end());
  EXPECT_NEAR(on_stringer->along_part_in.value_or(0), 11, exact);
}

TEST(Schedule, HolesSayWhatIsLeftToTheNearestEdge) {
  const Schedule made = of(tube());
  ASSERT_EQ(made.holes.size(), 2u);
  EXPECT_EQ(made.holes[0].name, "H");
  EXPECT_EQ(made.holes[0].frame, "F");
  EXPECT_EQ(made.holes[0].diameter_in, 0.5);
  EXPECT_EQ(made.holes[0].lines, std::vector<std::string>{"tube"});
  EXPECT_NEAR(*made.holes[0].edge_distance_in, 0.75, exact);
  EXPECT_EQ(made.holes[0].nearest, "L");
  EXPECT_TRUE(made.holes[1].lines.empty());
}

TEST(Schedule, AHoleNearTheEdgeOfItsFrameNamesTheFrame) {
  ProjectSections sections = tube();
  sections.structure.replace(sections.structure.find("[1.5, 10]"), 9, "[8.2, 10]");
  const Schedule made = of(sections);
  EXPECT_NEAR(*made.holes[1].edge_distance_in, 0.3, exact);
  EXPECT_EQ(made.holes[1].nearest, "F");
}

TEST(Schedule, AClampAboutASleeveIsAsLargeAsTheSleeve) {
  ProjectSections sections = tube();
  sections.routes =
      "  - {name: rudder, system: cable, line: cable-7x19-1/8-steel, from: a, to: b, points: [{at: "
      "[110, 0, 10], hold: clamp, to: S}], sleeves: [{from: 8, to: 12, bore: 0.17, outside: "
      "0.25}]}\n";
  EXPECT_EQ(of(sections).supports.at(0).clamp, "clamp-4");
  sections.routes.replace(sections.routes.find(", outside: 0.25"), 15, "");
  EXPECT_EQ(of(sections).supports.at(0).clamp, "");
}

TEST(Schedule, AClampWithinABundleGoesAboutAllOfIt) {
  // Two tubes of 1/4 in lie side by side in a circle of 1/2 in.
  ProjectSections sections = tube();
  sections.nodes += held_node("c", "100, 0.3, 10") + held_node("d", "130, 0.3, 10");
  sections.routes +=
      "  - {name: other, system: vent, line: tube-nylon-1/4, from: c, to: d, points: []}\n";
  sections.rest = "bundles: [{name: tied, routes: [tube, other], from: 0, to: 15, ties: 6}]\n";
  EXPECT_EQ(of(sections).supports.at(0).clamp, "clamp-8");
}

TEST(Schedule, AGuardedHoleThatHoldsTheLineIsASupportWithoutAHoldOfItsOwn) {
  ProjectSections sections = tube();
  sections.routes.replace(sections.routes.find("hold: grommet, "), 15, "");
  EXPECT_EQ(of(sections).supports.at(1).hold, "grommet");
}

TEST(Schedule, AGuideInAPanelWithoutAHoleDrawnIsListedWithTheOneTakenToBeCut) {
  ProjectSections sections = tube();
  sections.structure +=
      "  panels: [{name: P, thickness: 0.032, corners: [[110, -9, 0], [110, 9, 0], [110, 9, 20], "
      "[110, -9, 20]]}]\n";
  sections.routes =
      "  - {name: tube, system: vent, line: tube-nylon-1/4, from: a, to: b, points: [{at: [110, 0, "
      "10], hold: grommet, bore: 0.3125}]}\n";
  const Schedule made = of(sections);
  ASSERT_EQ(made.supports.size(), 1u);
  EXPECT_EQ(made.supports[0].to, "P");
  EXPECT_NEAR(*made.supports[0].hole_in, 0.5625, exact);  // 1/4 in over the bore
  ASSERT_EQ(made.holes.size(), 3u);
  EXPECT_EQ(made.holes[2].frame, "P");
  EXPECT_TRUE(std::any_of(
      made.assumptions.begin(), made.assumptions.end(),
      [](const std::string& sentence) { return sentence.find("hole") != std::string::npos; }));
}

}  // namespace
}  // namespace linewright
