// Fittings take room.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/fitting_project.hpp"

namespace linewright {
namespace {

std::vector<Judgement> of_body(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("clearance");
  std::erase_if(all,
                [](const Judgement& each) { return each.message.find("the fitting at") != 0; });
  return all;
}

std::vector<Judgement> beside(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("separation");
  std::erase_if(all, [](const Judgement& each) { return each.with != "fitting at union"; });
  return all;
}

/// A plate in the plane BL = `bl`, beside the union of 0.3 in radius.
SmallProject beside_plate(double bl, double thickness_in = 0) {
  SmallProject project = still(from_union({}));
  Panel panel;
  panel.name = "plate";
  panel.corners = {{-5, bl, -5}, {-0.5, bl, -5}, {-0.5, bl, 5}, {-5, bl, 5}};
  panel.thickness_in = thickness_in;
  project.project.structure.panels.push_back(panel);
  return project;
}

TEST(FittingBody, PassesClearOfStructure) {
  const Judgement judgement = sole(of_body(beside_plate(0.5)));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_EQ(judgement.with, "plate");
  EXPECT_NEAR(*judgement.value, 0.5 - 0.3 - 0.06, 1e-9);
  EXPECT_EQ(judgement.location.file, "nodes.yaml");
}

// What is farther than 1 1/2 in is no neighbour of a fitting [common practice, no source].
TEST(FittingBody, NamesWhatIsWithinAnInchAndAHalfAndNothingFarther) {
  EXPECT_EQ(sole(of_body(beside_plate(0.3 + 1.49))).with, "plate");
  EXPECT_TRUE(of_body(beside_plate(0.3 + 1.51)).empty());
}

TEST(FittingBody, PassesAtTheBuildTolerance) {
  EXPECT_EQ(sole(of_body(beside_plate(0.36))).verdict, Verdict::pass);
}

TEST(FittingBody, FailsInStructure) {
  const Judgement judgement = sole(of_body(beside_plate(0.35)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "the fitting at union can be in panel plate");
  EXPECT_TRUE(contains(judgement.mend, "fixed: true"));
}

// What holds a fitting is not in its way: here its own web, a plate across it.
TEST(FittingBody, PassesWhatItIsMountedOn) {
  SmallProject project = from_union({});
  project.project.nodes[0].kind = NodeKind::bulkhead;
  Panel web;
  web.name = "web";
  web.corners = {{0, -5, -5}, {0, 5, -5}, {0, 5, 5}, {0, -5, 5}};
  web.thickness_in = 0.032;
  project.project.structure.panels.push_back(web);
  EXPECT_TRUE(of_body(project).empty());
  // Another one beside it, 0.9 in off, is.
  web.name = "other";
  for (Vec3& corner : web.corners) corner.x = 0.9;
  project.project.structure.panels.push_back(web);
  EXPECT_EQ(sole(of_body(project)).with, "other");
  EXPECT_EQ(sole(of_body(project)).verdict, Verdict::fail);
  // And nothing is that a union merely hangs beside.
  project.project.nodes[0].kind = NodeKind::union_fitting;
  EXPECT_EQ(not_passed(of_body(project)).size(), 2u);
}

/// The union of 0.3 in radius in a hole of 0.5 in in a web across it at FS 0.
SmallProject in_web() {
  SmallProject project = from_union({});
  project.project.nodes[0].kind = NodeKind::bulkhead;
  Frame web;
  web.name = "web";
  web.plane = at_station(0);
  web.thickness_in = 0.032;
  web.outline = {{-5, -5}, {5, -5}, {5, 5}, {-5, 5}};
  web.holes.push_back({"hole", Circle{{0, 0}, 0.5}, EdgeGuard::bare, {}, {"structure.yaml", 9, 9}});
  project.project.structure.frames.push_back(web);
  return project;
}

// A part beside the hole is nearer to the node than the hole's edge is: it holds nothing for that.
TEST(FittingBody, FailsInWhatIsBesideTheHoleThatItIsIn) {
  SmallProject project = in_web();
  EXPECT_TRUE(not_passed(of_body(project)).empty());
  for (const double off_in : {0.1, 0.2, 0.35}) {
    project = in_web();
    project.project.structure.solids.push_back(
        {"box", Box{{-3, off_in, -2}, {-0.05, 3, 2}}, {"structure.yaml", 7, 5}});
    const Judgement judgement = sole(not_passed(of_body(project)));
    EXPECT_EQ(judgement.verdict, Verdict::fail) << off_in;
    EXPECT_EQ(judgement.with, "box");
    EXPECT_NEAR(*judgement.value, off_in - 0.3 - 0.06, 1e-9);
  }
}

// A union that structure holds elsewhere goes through the web as a line does.
TEST(FittingBody, FailsInTheEdgeOfAHoleThatItMerelyGoesThrough) {
  SmallProject project = in_web();
  project.project.nodes[0].kind = NodeKind::union_fitting;
  project.project.nodes[0].fixed = true;
  const Judgement judgement = sole(of_body(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "web");
  EXPECT_NEAR(*judgement.value, 0.25 - 0.3 - 0.06, 1e-3);
  // With room about it all is well.
  project.project.structure.frames[0].holes[0].shape = Circle{{0, 0}, 0.8};
  EXPECT_TRUE(not_passed(of_body(project)).empty());
}

/// A union that structure holds, its axes along FS, beside or in a sheet across them.
SmallProject held_before_sheet(double station) {
  SmallProject project = from_union({});
  project.project.nodes[0].fixed = true;
  Panel sheet;
  sheet.name = "sheet";
  sheet.corners = {{station, -5, -5}, {station, 5, -5}, {station, 5, 5}, {station, -5, 5}};
  sheet.thickness_in = 0.032;
  project.project.structure.panels.push_back(sheet);
  return project;
}

// What it is mounted on holds its side; a fitting that runs through that with no hole is in it.
TEST(FittingBody, FailsInAMountThatItsAxisGoesThrough) {
  for (const double station : {0.3, 0.1, 0.0, -0.1, -0.3}) {
    const Judgement judgement = sole(of_body(held_before_sheet(station)));
    EXPECT_EQ(judgement.verdict, Verdict::fail) << station;
    EXPECT_EQ(judgement.with, "sheet");
  }
}

TEST(FittingBody, IsMountedOnASheetAlongItsAxisHoweverItIsDrawn) {
  for (const double bl : {0.3, 0.05, 0.0, -0.3}) {
    SmallProject project = held_before_sheet(0);
    project.project.structure.panels.back().corners = {
        {-5, bl, -5}, {5, bl, -5}, {5, bl, 5}, {-5, bl, 5}};
    EXPECT_TRUE(of_body(project).empty()) << bl;
  }
}

TEST(FittingBody, StandsOnASolidAndIsNotInIt) {
  const auto over_box = [](double top_wl) {
    SmallProject project = from_union({});
    project.project.nodes[0].fixed = true;
    project.project.structure.solids.push_back(
        {"box", Box{{-2, -2, -4}, {2, 2, top_wl}}, {"structure.yaml", 7, 5}});
    return project;
  };
  EXPECT_TRUE(of_body(over_box(-0.3)).empty());
  EXPECT_TRUE(of_body(over_box(0)).empty());
  const Judgement judgement = sole(of_body(over_box(1)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "box");
}

/// The union beside the web of a channel that holds it, under its flange.
SmallProject under_flange(double flange_wl) {
  SmallProject project = from_union({});
  project.project.nodes[0].fixed = true;
  Channel channel;
  channel.name = "channel";
  channel.path = {{-5, -0.32, flange_wl}, {0.9, -0.32, flange_wl}};
  channel.section = {{0, -2}, {0, 0}, {1, 0}};
  channel.thickness_in = 0.02;
  project.project.structure.channels.push_back(channel);
  return project;
}

TEST(FittingBody, IsMountedOnTheWebOfAChannelAndNotOnItsFlange) {
  EXPECT_TRUE(not_passed(of_body(under_flange(0.38))).empty());
  const Judgement judgement = sole(not_passed(of_body(under_flange(0.36))));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.36 - 0.01 - 0.3 - 0.06, 1e-3);
}

/// A union in the middle of 20 in of tube, with nothing to hold it but that.
SmallProject hanging_union(double plate_bl, bool fixed) {
  SmallProject project;
  project.project.build_tolerance_in = 0.06;
  project.project.nodes.push_back(union_at("union", {10, 0, 0}));
  project.project.nodes[0].fixed = fixed;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 0, 0});
  project.route("aft", "tube-nylon-1/4", "union", "altimeter").from_port = "a";
  project.route("main", "tube-nylon-1/4", "port", "union").to_port = "b";
  Panel plate;
  plate.name = "plate";
  plate.corners = {{9, plate_bl, -5}, {11, plate_bl, -5}, {11, plate_bl, 5}, {9, plate_bl, 5}};
  project.project.structure.panels.push_back(plate);
  return project;
}

// Its lines reach 1 in and more at the middle of so long a span, and take it along.
TEST(FittingBody, SwingsWithTheLinesThatItHangsOn) {
  const Judgement held = sole(of_body(hanging_union(0.9, true)));
  EXPECT_EQ(held.verdict, Verdict::pass);
  EXPECT_NEAR(*held.value, 0.9 - 0.3 - 0.06, 1e-9);
  const Judgement hanging = sole(of_body(hanging_union(0.9, false)));
  EXPECT_EQ(hanging.verdict, Verdict::fail);
  EXPECT_LT(*hanging.value, *held.value - 0.9);
  EXPECT_TRUE(contains(hanging.message, "which can swing")) << hanging.message;
  EXPECT_TRUE(contains(hanging.message, "with its lines, can be in panel plate"));
}

// The other one comes second, and speaks: 2.2 in off, farther than what does not move is looked
// for.
TEST(FittingBody, IsMetByOneThatSwingsToItFromAfar) {
  SmallProject project = hanging_union(20, false);
  project.project.nodes[0] = union_at("union", {40, 0, 0});
  project.project.nodes[2].at = {80, 0, 0};
  project.project.nodes.push_back(union_at("other", {40, 2.8, 0}));
  project.project.nodes.back().fixed = true;
  const std::vector<Judgement> met = not_passed(of_body(project));
  ASSERT_EQ(met.size(), 1u);
  EXPECT_EQ(met[0].with, "fitting at union");
  project.project.nodes[0].fixed = true;
  EXPECT_TRUE(not_passed(of_body(project)).empty());
}

TEST(FittingBody, IsMountedThroughADoublerToo) {
  SmallProject project = in_web();
  Panel doubler;
  doubler.name = "doubler";
  doubler.corners = {{0.05, -1, -1}, {0.05, 1, -1}, {0.05, 1, 1}, {0.05, -1, 1}};
  doubler.thickness_in = 0.05;
  project.project.structure.panels.push_back(doubler);
  EXPECT_TRUE(not_passed(of_body(project)).empty());
}

TEST(FittingBody, IsMountedOnNothingThatMoves) {
  SmallProject project = from_union({});
  project.project.nodes[0].kind = NodeKind::bulkhead;
  Mover lever;
  lever.name = "lever";
  lever.pivot = {-0.5, 5, 0};
  lever.axis = {0, 0, 1};
  lever.points = {{-0.5, 5, 0}, {-0.5, 0.4, 0}};
  lever.radius_in = 0.1;
  project.project.structure.movers.push_back(lever);
  const Judgement judgement = sole(of_body(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "lever");
}

TEST(FittingBody, FailsInAnotherFittingOnce) {
  SmallProject project = still(from_union({}));
  project.project.nodes.push_back(union_at("other", {0, 0.6, 0}));
  const Judgement judgement = sole(of_body(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.06, 1e-9);
}

TEST(FittingBody, OfWhichNothingIsKnownIsNotJudged) {
  SmallProject project = beside_plate(0.1);
  project.project.nodes[0].body.reset();
  EXPECT_TRUE(of_body(project).empty());
}

TEST(FittingBody, CanBeWaivedWhereItStands) {
  SmallProject project = beside_plate(0.35);
  Waiver& waiver = project.waive("clearance", "main");
  waiver.near = Vec3{1, 0, 0};
  waiver.within_in = 2;
  for (const Judgement& each : project.judged("clearance"))
    EXPECT_NE(each.verdict, Verdict::fail) << each.message;
}

/// A second line across above the union, its surface so far from the body's.
SmallProject crossed(const std::string& line, double gap_in) {
  SmallProject project = from_union({});
  const double radius = project.line(line).largest_diameter_in() / 2;
  const double z = 0.3 + radius + gap_in;
  project.node("left", NodeKind::bulkhead, {0, -15, z})
      .node("right", NodeKind::bulkhead, {0, 15, z});
  project.route("other", line, "left", "right");
  return project;
}

// Metal tube to another tube: 1/4 in, SAE ARP994 / MIL-H-5440 [from memory]. Both lines may lie off
// by the build tolerance.
TEST(FittingBody, CountsAsAPieceOfItsLineForOthers) {
  const Judgement enough = sole(beside(still(crossed("tube-aluminium-1/4", 0.37))));
  EXPECT_EQ(enough.verdict, Verdict::pass);
  EXPECT_NEAR(*enough.value, 0.25, 1e-6);
  const Judgement near = sole(beside(still(crossed("tube-aluminium-1/4", 0.36))));
  EXPECT_EQ(near.verdict, Verdict::fail);
  EXPECT_EQ(near.route, "other");
  EXPECT_TRUE(contains(near.message, "from the fitting at union"));
  EXPECT_EQ(sole(beside(still(crossed("wire-1/4", 0.36)))).verdict, Verdict::warn);
}

// A metal and a plastic tube meet at the union: other plastic keeps off it as off metal, whichever
// of the two the file has first.
TEST(FittingBody, CountsAsTheLineOfItsThatAsksForMost) {
  for (const bool metal_first : {true, false}) {
    SmallProject project = crossed("tube-nylon-1/4", 0.36);
    project.node("forward", NodeKind::bulkhead, {-40, 0, 0});
    project.project.nodes[0].fixed = true;
    project.project.routes.at(0).line = metal_first ? "tube-aluminium-1/4" : "tube-nylon-1/4";
    const std::string second = metal_first ? "tube-nylon-1/4" : "tube-aluminium-1/4";
    project.route("second", second, "union", "forward").from_port = "b";
    const Judgement near = sole(beside(still(project)));
    EXPECT_EQ(near.verdict, Verdict::fail) << metal_first;
    EXPECT_NEAR(*near.value, 0.24, 1e-3);
  }
}

// On the end of a tube of 40 in that nothing else holds it goes down with the tube.
TEST(FittingBody, SwingsTowardALineThatDoesNotEndAtIt) {
  const Judgement hanging = sole(beside(crossed("tube-aluminium-1/4", 0.37)));
  EXPECT_EQ(hanging.verdict, Verdict::fail);
  EXPECT_LT(*hanging.value, 0.25);
  EXPECT_TRUE(contains(hanging.message, "the fitting at union, which can swing"))
      << hanging.message;
}

TEST(FittingBody, IsNoNeighbourOfTheLineThatEndsAtIt) {
  EXPECT_TRUE(beside(from_union({})).empty());
  // One that comes back to it is.
  const SmallProject back =
      from_union({bent({20, 0, 0}, 1), bent({20, 4, 0}, 1), bent({0, 4, 0}, 1)},
                 "tube-aluminium-1/4", {0, 0.4, 0});
  EXPECT_FALSE(not_passed(beside(back)).empty());
}

// The line lies 0.05 in off the fitting and its one span sags and swings farther than that.
TEST(FittingBody, IsChafedByALineThatCanReachIt) {
  std::vector<Judgement> all = not_passed(crossed("tube-nylon-1/4", 0.05).judged_by("chafe"));
  std::erase_if(all, [](const Judgement& each) { return each.with != "fitting at union"; });
  EXPECT_FALSE(all.empty());
}

}  // namespace
}  // namespace linewright
