#include "geometry/structure_obstacles.hpp"

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
  frame.station = 190;
  frame.thickness = 0.032;
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
  channel.thickness = 0.025;
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

TEST(ChannelObstacles, TrimmedWallsStartBehindTheTrim) {
  const Obstacles obstacles(with_channel(EdgeGuard::edge_trim));
  const auto faces = of_feature(obstacles, Feature::face);
  const auto edges = of_feature(obstacles, Feature::free_edge);
  const Vec3 below_the_edge{190, -12, 13};
  EXPECT_NEAR(least_distance(below_the_edge, edges), 1 - 0.0125, 1e-12);
  EXPECT_NEAR(least_distance(below_the_edge, faces), 1 + trim_lip_in - 0.0125, 1e-12);
  const Vec3 before_the_end{149, -12, 14.5};
  EXPECT_NEAR(least_distance(before_the_end, edges), 1 - 0.0125, 1e-12);
  EXPECT_NEAR(least_distance(before_the_end, faces), 1 + trim_lip_in - 0.0125, 1e-12);
}

TEST(ChannelObstacles, AFlangeNarrowerThanTheTrimHasNoFace) {
  Structure structure = with_channel(EdgeGuard::edge_trim);
  structure.channels[0].section = {{0, 0}, {0, 0.1}, {1, 0.1}, {1, 0.2}};
  const Obstacles obstacles(structure);
  EXPECT_EQ(of_feature(obstacles, Feature::face).size(), 2u);  // the middle wall alone
  EXPECT_EQ(of_feature(obstacles, Feature::free_edge).size(), 2u + 2 * 3);
}

TEST(PanelObstacles, AreAFanWithoutEdges) {
  Structure structure;
  structure.panels.resize(1);
  structure.panels[0].name = "aft-deck";
  structure.panels[0].thickness = 0.04;
  structure.panels[0].corners = {{180, -9, 20}, {230, -6, 20}, {230, 6, 20}, {180, 9, 20}};
  const Obstacles obstacles(structure);
  ASSERT_EQ(obstacles.all().size(), 2u);
  EXPECT_EQ(of_feature(obstacles, Feature::face).size(), 2u);
  EXPECT_NEAR(least_distance(Vec3{200, 0, 18}, obstacles.all()), 2 - 0.02, 1e-12);
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

TEST(MoverObstacles, AreSwollenSegmentsOfAPartThatMoves) {
  Mover mover;
  mover.name = "elevator-bellcrank";
  mover.pivot = {205, 0, 10};
  mover.axis = {0, 1, 0};
  mover.points = {{205, 0, 14}, {205, 0, 6}};
  mover.radius = 0.4;
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
