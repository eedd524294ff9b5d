#include "geometry/structure/structure_obstacles.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

using oracles::Random;

std::vector<Obstacle> of_feature(const Obstacles& obstacles, Feature feature) {
  std::vector<Obstacle> result;
  std::copy_if(obstacles.all().begin(), obstacles.all().end(), std::back_inserter(result),
               [feature](const Obstacle& obstacle) { return obstacle.feature == feature; });
  return result;
}

template <typename Shape>
double least_distance(const Shape& shape, const std::vector<Obstacle>& obstacles) {
  double least_in = std::numeric_limits<double>::infinity();
  for (const Obstacle& obstacle : obstacles)
    least_in = std::min(least_in, nearest(shape, obstacle).distance_in);
  return least_in;
}

Hole round_hole(Vec2 centre, double diameter, EdgeGuard edge) {
  Hole hole;
  hole.name = "F4-a";
  hole.shape = Circle{centre, diameter};
  hole.edge = edge;
  return hole;
}

Structure framed(EdgeGuard edge) {
  Frame frame;
  frame.name = "F4";
  frame.plane = at_station(190);
  frame.thickness_in = 0.032;
  frame.outline = {{-14, 0}, {14, 0}, {12, 26}, {-12, 26}};
  frame.holes = {round_hole({-8, 14}, 0.75, edge)};
  Structure structure;
  structure.frames = {frame};
  return structure;
}

/// A flat strip 1 in high along FS, sheet 0.025 in.
Structure with_channel(EdgeGuard edge) {
  Channel channel;
  channel.name = "S3L";
  channel.path = {{150, -12, 14}, {230, -12, 14}};
  channel.section = {{0, 0}, {0, 1}, {0.6, 1}, {0.6, 0.5}};
  channel.thickness_in = 0.025;
  channel.edge = edge;
  Structure structure;
  structure.channels = {channel};
  return structure;
}

TEST(FrameObstacles, StandAtBothSidesOfTheSheet) {
  const Obstacles obstacles(framed(EdgeGuard::bare));
  ASSERT_EQ(obstacles.parts().size(), 1u);
  EXPECT_EQ(obstacles.parts()[0].kind, PartKind::frame);
  const double aft_in = least_distance(Vec3{191, 0, 10}, obstacles.all());
  const double forward_in = least_distance(Vec3{189, 0, 10}, obstacles.all());
  EXPECT_NEAR(aft_in, 1 - 0.016, 1e-12);
  EXPECT_NEAR(forward_in, 1 - 0.016, 1e-12);
}

TEST(FrameObstacles, AHoleClearsALineByItsRadiusLessTheChords) {
  const Obstacles obstacles(framed(EdgeGuard::bare));
  const double gap_in = least_distance(Segment3{{180, -8, 14}, {200, -8, 14}}, obstacles.all());
  EXPECT_LE(gap_in, 0.375);
  EXPECT_GE(gap_in, 0.375 - obstacle_sagitta_in);
}

TEST(FrameObstacles, HoleEdgesCarryTheirNameAndGuard) {
  const auto edges = of_feature(Obstacles(framed(EdgeGuard::grommet)), Feature::hole_edge);
  ASSERT_FALSE(edges.empty());
  for (const Obstacle& edge : edges) {
    EXPECT_TRUE(edge.is_segment);
    EXPECT_EQ(edge.hole, "F4-a");
    EXPECT_EQ(edge.guard, EdgeGuard::grommet);
    EXPECT_NEAR(std::abs(edge.shape.a.x - 190), 0.016, 1e-12);
  }
}

/// The framed web of plywood or foam, its hole bare.
Structure thick_framed(double thickness_in) {
  Structure structure = framed(EdgeGuard::bare);
  structure.frames[0].thickness_in = thickness_in;
  return structure;
}

TEST(FrameObstacles, ALineWithinTheThicknessIsInTheWeb) {
  for (const double thickness_in : {0.25, 0.5, 2.0}) {
    const Obstacles obstacles(thick_framed(thickness_in));
    EXPECT_EQ(least_distance(Segment3{{190, 2, 10}, {190, 9, 10}}, obstacles.all()), 0);
    EXPECT_EQ(least_distance(Vec3{190 + 0.4 * thickness_in, 2, 10}, obstacles.all()), 0);
  }
}

TEST(FrameObstacles, AThickWebsHoleClearsALineByItsRadiusLessTheChords) {
  const Obstacles obstacles(thick_framed(2));
  const double gap_in = least_distance(Segment3{{180, -8, 14}, {200, -8, 14}}, obstacles.all());
  EXPECT_LE(gap_in, 0.375);
  EXPECT_GE(gap_in, 0.375 - obstacle_sagitta_in);
}

TEST(FrameObstacles, ALineThatPassesTheHolesWallMeetsTheEdge) {
  // Across the hole's axis at the middle of the web: an inch from both faces and their edges.
  const auto edges = of_feature(Obstacles(thick_framed(2)), Feature::hole_edge);
  EXPECT_NEAR(least_distance(Segment3{{190, -8, 14}, {190, -8, 14.3}}, edges), 0.075,
              obstacle_sagitta_in);
  EXPECT_NEAR(least_distance(Segment3{{190, -8, 14}, {190, -8, 16}}, edges), 0, 1e-12);
}

TEST(FrameObstacles, KeepTheWholeWebWhereHolesOverlapOrLeaveTheOutline) {
  Structure structure = framed(EdgeGuard::bare);
  std::vector<Hole>& holes = structure.frames[0].holes;
  holes = {round_hole({-1, 10}, 3, EdgeGuard::bare), round_hole({1, 10}, 3, EdgeGuard::bare)};
  EXPECT_EQ(least_distance(Vec3{190, 0, 10}, Obstacles(structure).all()), 0);
  holes.resize(1);
  // The outline's lower edge is at WL 0.
  holes[0].shape = std::vector<Vec2>{{-3, -1}, {3, -1}, {3, 4}, {-3, 4}};
  EXPECT_EQ(least_distance(Vec3{190, 0, 2}, Obstacles(structure).all()), 0);
}

TEST(FrameObstacles, CutAHoleThatTouchesTheOutlineAsDrawn) {
  Structure structure = framed(EdgeGuard::bare);
  structure.frames[0].holes[0].shape = std::vector<Vec2>{{-3, 0}, {3, 0}, {3, 4}, {-3, 4}};
  const Obstacles obstacles(structure);
  EXPECT_NEAR(least_distance(Vec3{190, 0, 2.5}, obstacles.all()), 1.5, 1e-12);
  EXPECT_EQ(least_distance(Vec3{190, 3.01, 2}, obstacles.all()), 0);
}

TEST(FrameObstacles, TheFaceStartsBehindTheGuard) {
  const Segment3 through{{180, -8, 14}, {200, -8, 14}};
  const auto bare = of_feature(Obstacles(framed(EdgeGuard::bare)), Feature::face);
  const auto guarded = of_feature(Obstacles(framed(EdgeGuard::grommet)), Feature::face);
  EXPECT_NEAR(least_distance(through, bare), 0.375, obstacle_sagitta_in);
  EXPECT_NEAR(least_distance(through, guarded), 0.375 + trim_lip_in, obstacle_sagitta_in);
}

TEST(ChannelObstacles, RunInThePlaneThePathCrosses) {
  const Obstacles obstacles(with_channel(EdgeGuard::bare));
  // The tall wall stands at BL -12 from WL 14 to 15; the flange top at WL 15 to BL -11.4.
  EXPECT_NEAR(least_distance(Vec3{200, -13, 14.5}, obstacles.all()), 1 - 0.0125, 1e-12);
  EXPECT_NEAR(least_distance(Vec3{200, -11.7, 16}, obstacles.all()), 1 - 0.0125, 1e-12);
}

TEST(ChannelObstacles, TurnTheSectionForPathsAcrossAndUp) {
  Structure structure = with_channel(EdgeGuard::bare);
  structure.channels[0].section = {{0, 0}, {2, 1}};
  structure.channels[0].path = {{100, -9, 5}, {100, 9, 5}};
  const auto across = of_feature(Obstacles(structure), Feature::free_edge);
  EXPECT_EQ(across[1].shape.a, (Vec3{102, -9, 6}));  // section in FS and WL
  structure.channels[0].path = {{100, 5, -9}, {100, 5, 9}};
  const auto up = of_feature(Obstacles(structure), Feature::free_edge);
  EXPECT_EQ(up[1].shape.a, (Vec3{102, 6, -9}));  // section in FS and BL
}

TEST(ChannelObstacles, AddUpTheLegsOfAPathThatComesBack) {
  // Forty inches aft, seven across, forty forward: its ends differ in BL alone.
  Structure structure = with_channel(EdgeGuard::bare);
  structure.channels[0].section = {{0, 0}, {2, 1}};
  structure.channels[0].path = {{0, 0, 10}, {40, 0, 10}, {40, 7, 10}, {0, 7, 10}};
  const auto edges = of_feature(Obstacles(structure), Feature::free_edge);
  EXPECT_EQ(edges[3].shape.a, (Vec3{0, 2, 11}));  // section in BL and WL
}

TEST(ChannelObstacles, HaveTwoLongFreeEdgesAndTwoCutEnds) {
  const auto edges = of_feature(Obstacles(with_channel(EdgeGuard::rolled)), Feature::free_edge);
  ASSERT_EQ(edges.size(), 2u + 2 * 3);
  for (const Obstacle& edge : edges) {
    EXPECT_EQ(edge.guard, EdgeGuard::rolled);
    EXPECT_DOUBLE_EQ(edge.radius_in, 0.0125);
  }
  // 0.3 in below the lower corner of the wall, 0.4 in beside it: 0.5 in from the edge.
  EXPECT_NEAR(least_distance(Vec3{190, -12.3, 13.6}, edges), 0.5 - 0.0125, 1e-12);
}

std::vector<Obstacle> faces_with(const Obstacles& obstacles, EdgeGuard guard) {
  std::vector<Obstacle> result = of_feature(obstacles, Feature::face);
  std::erase_if(result, [guard](const Obstacle& face) { return face.guard != guard; });
  return result;
}

TEST(ChannelObstacles, UnguardedWallsStartBehindTheTrim) {
  const Obstacles obstacles(with_channel(EdgeGuard::edge_trim));
  const auto bare = faces_with(obstacles, EdgeGuard::bare);
  const auto trimmed = faces_with(obstacles, EdgeGuard::edge_trim);
  const auto edges = of_feature(obstacles, Feature::free_edge);
  for (const Vec3 off_an_edge : {Vec3{190, -12, 13}, Vec3{149, -12, 14.5}}) {
    EXPECT_NEAR(least_distance(off_an_edge, edges), 1 - 0.0125, 1e-12);
    EXPECT_NEAR(least_distance(off_an_edge, trimmed), 1 - 0.0125, 1e-12);
    EXPECT_NEAR(least_distance(off_an_edge, bare), 1 + trim_lip_in - 0.0125, 1e-12);
  }
}

TEST(ChannelObstacles, TrimLeavesNoGapInTheWalls) {
  Random random(229);
  const Obstacles bare(with_channel(EdgeGuard::bare));
  const Obstacles trimmed(with_channel(EdgeGuard::edge_trim));
  for (int i = 0; i < 500; ++i) {
    const Vec3 from = Vec3{i % 2 == 0 ? 150.0 : 190.0, -12, 14} + random.point(1);
    const Segment3 line{from, from + random.point(1)};
    ASSERT_NEAR(least_distance(line, of_feature(trimmed, Feature::face)),
                least_distance(line, of_feature(bare, Feature::face)), 1e-12);
  }
}

TEST(ChannelObstacles, AStripNarrowerThanTwoLipsOfTrimStaysAsAGuardedFace) {
  Structure structure = with_channel(EdgeGuard::edge_trim);
  structure.channels[0].section = {{0, 0}, {0, 0.2}};
  const Obstacles obstacles(structure);
  EXPECT_TRUE(faces_with(obstacles, EdgeGuard::bare).empty());
  const Segment3 straight_through{{190, -13, 14.1}, {190, -11, 14.1}};
  EXPECT_NEAR(least_distance(straight_through, faces_with(obstacles, EdgeGuard::edge_trim)),
              -0.0125, 1e-12);
}

TEST(ChannelObstacles, AShortTrimmedStubStaysAsAGuardedFace) {
  Structure structure = with_channel(EdgeGuard::edge_trim);
  structure.channels[0].path = {{150, -12, 14}, {150.2, -12, 14}};
  const Obstacles obstacles(structure);
  EXPECT_TRUE(faces_with(obstacles, EdgeGuard::bare).empty());
  EXPECT_NEAR(least_distance(Vec3{150.1, -12, 14.5}, of_feature(obstacles, Feature::face)), -0.0125,
              1e-12);
}

TEST(ChannelObstacles, AnEdgeThatIsNotGuardedLeavesTheWallsWhole) {
  for (const EdgeGuard edge : {EdgeGuard::bare, EdgeGuard::rolled}) {
    const auto faces = of_feature(Obstacles(with_channel(edge)), Feature::face);
    EXPECT_EQ(faces.size(), 2u * 3);
    for (const Obstacle& face : faces) EXPECT_EQ(face.guard, EdgeGuard::bare);
  }
}

TEST(PanelObstacles, AreTrianglesWithoutEdges) {
  Structure structure;
  structure.panels.resize(1);
  structure.panels[0].name = "aft-deck";
  structure.panels[0].thickness_in = 0.04;
  structure.panels[0].corners = {{180, -9, 20}, {230, -6, 20}, {230, 6, 20}, {180, 9, 20}};
  const Obstacles obstacles(structure);
  ASSERT_EQ(obstacles.all().size(), 2u);
  EXPECT_EQ(of_feature(obstacles, Feature::face).size(), 2u);
  EXPECT_NEAR(least_distance(Vec3{200, 0, 18}, obstacles.all()), 2 - 0.02, 1e-12);
}

TEST(PanelObstacles, LeaveTheNotchOfAnEllOpen) {
  // 40 by 40 less 30 by 30, from the corner at the end of one arm: a fan would fill the notch.
  Structure structure;
  structure.panels.resize(1);
  structure.panels[0].corners = {{140, 0, 20},  {140, 10, 20}, {110, 10, 20},
                                 {110, 40, 20}, {100, 40, 20}, {100, 0, 20}};
  const Obstacles obstacles(structure);
  EXPECT_NEAR(least_distance(Vec3{118, 17, 20}, obstacles.all()), 7, 1e-12);
  EXPECT_NEAR(least_distance(Vec3{105, 35, 20}, obstacles.all()), 0, 1e-12);
  EXPECT_NEAR(least_distance(Vec3{135, 5, 20}, obstacles.all()), 0, 1e-12);
}

Structure boxed() {
  Structure structure;
  structure.solids.resize(1);
  structure.solids[0].name = "battery";
  structure.solids[0].shape = Box{{160, -4, 2}, {170, 4, 9}};
  return structure;
}

TEST(BoxObstacles, AreMeasuredFromOutside) {
  const Obstacles obstacles(boxed());
  EXPECT_NEAR(least_distance(Vec3{171, 6, 11}, obstacles.all()), 3, 1e-12);  // 1-2-2-3
  EXPECT_NEAR(least_distance(Vec3{165, 0, 10}, obstacles.all()), 1, 1e-12);
  EXPECT_LE(least_distance(Segment3{{150, 0, 5}, {180, 0, 5}}, obstacles.all()), 0);
}

TEST(BoxObstacles, ALineWhollyInsideIsNotClear) {
  Structure structure = boxed();
  for (const Vec3 size : {Vec3{10, 8, 7}, Vec3{7, 10, 8}, Vec3{8, 7, 10}, Vec3{5, 5, 5}}) {
    structure.solids[0].shape = Box{{0, 0, 0}, size};
    const Obstacles obstacles(structure);
    const Vec3 middle = size / 2;
    EXPECT_NEAR(least_distance(middle, obstacles.all()), -std::min({size.x, size.y, size.z}) / 2,
                1e-12);
    EXPECT_LT(least_distance(Segment3{size * 0.25, size * 0.75}, obstacles.all()), 0);
  }
}

TEST(BoxObstacles, ALineNearACornerInsideIsNotClear) {
  Structure structure = boxed();
  structure.solids[0].shape = Box{{0, 0, 0}, {20, 20, 20}};
  const Obstacles obstacles(structure);
  EXPECT_LE(least_distance(Segment3{{1, 1, 1}, {2, 1.5, 1}}, obstacles.all()), 0);
  Random random(233);
  for (int i = 0; i < 2000; ++i) {
    const Vec3 point = Vec3{10, 10, 10} + random.point(9.999);
    ASSERT_LE(least_distance(point, obstacles.all()), 0);
    ASSERT_LE(
        least_distance(Segment3{point, Vec3{10, 10, 10} + random.point(9.999)}, obstacles.all()),
        0);
  }
}

TEST(BoxObstacles, ThePlateInsideNeverReachesOut) {
  Random random(211);
  const Obstacles obstacles(boxed());
  for (int i = 0; i < 2000; ++i) {
    const Vec3 point = Vec3{165, 0, 5.5} + random.point(20);
    const auto past = [](double at, double low, double high) {
      return std::max({low - at, 0.0, at - high});
    };
    const Vec3 off{past(point.x, 160, 170), past(point.y, -4, 4), past(point.z, 2, 9)};
    if (norm(off) == 0) continue;
    ASSERT_NEAR(least_distance(point, obstacles.all()), norm(off), 1e-9);
  }
}

TEST(CylinderObstacles, AreTheAxisSwollenByTheRadius) {
  Structure structure;
  structure.solids.resize(1);
  structure.solids[0].shape = Cylinder{{100, 0, 0}, {120, 0, 0}, 4};
  const Obstacles obstacles(structure);
  ASSERT_EQ(obstacles.all().size(), 1u);
  EXPECT_DOUBLE_EQ(least_distance(Vec3{110, 3, 4}, obstacles.all()), 3);
}

TEST(CylinderObstacles, ALineWhollyInsideIsNotClear) {
  Structure structure;
  structure.solids.resize(1);
  structure.solids[0].shape = Cylinder{{100, 0, 0}, {120, 0, 0}, 4};
  const Obstacles obstacles(structure);
  EXPECT_DOUBLE_EQ(least_distance(Segment3{{110, 1.5, 0}, {112, 1.5, 0}}, obstacles.all()), -0.5);
  EXPECT_LT(least_distance(Segment3{{100.1, 0, 1.9}, {100.1, 0.3, 1.9}}, obstacles.all()), 0);
}

TEST(MoverObstacles, AreSwollenSegmentsOfAPartThatMoves) {
  Mover mover;
  mover.name = "elevator-bellcrank";
  mover.pivot = {205, 0, 10};
  mover.axis = {0, 1, 0};
  mover.points = {{205, 0, 14}, {205, 0, 6}};
  mover.radius_in = 0.4;
  Structure structure;
  structure.movers = {mover};
  const Obstacles obstacles(structure);
  EXPECT_EQ(obstacles.parts()[0].kind, PartKind::mover);
  EXPECT_TRUE(obstacles.parts()[0].moves);
  ASSERT_EQ(obstacles.all().size(), 1u);
  EXPECT_NEAR(least_distance(Vec3{206, 0, 12}, obstacles.all()), 0.6, 1e-12);
}

TEST(StructureObstacles, DegeneratePartsGiveNothingOrPoints) {
  Structure structure;
  structure.frames.resize(1);
  structure.channels.resize(1);
  structure.panels.resize(1);
  structure.movers.resize(1);
  structure.movers[0].axis = {0, 0, 1};
  const Obstacles obstacles(structure);
  EXPECT_EQ(obstacles.parts().size(), 4u);
  EXPECT_TRUE(obstacles.all().empty());
}

}  // namespace
}  // namespace linewright
