#include "geometry/structure/frame_faces.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/structure/obstacles.hpp"
#include "oracles/fcl_distance.hpp"
#include "oracles/random_shapes.hpp"
#include "oracles/winding_number.hpp"

namespace linewright {
namespace {

using oracles::Random;
using Polygon = std::vector<Vec2>;
using Web = std::vector<std::array<Vec2, 3>>;

/// Round holes in rows and columns.
Frame drilled_frame(int across, int up, double diameter, EdgeGuard edge) {
  Frame frame;
  frame.name = "F4";
  frame.plane = at_station(190);
  frame.thickness_in = 0.032;
  frame.outline = {{-14, 0}, {14, 0}, {12, 26}, {-12, 26}};
  for (int i = 0; i < across; ++i)
    for (int j = 0; j < up; ++j) {
      Hole hole;
      hole.shape = Circle{{-8 + 16.0 * i / (across - 1), 4 + 6.0 * j}, diameter};
      hole.edge = edge;
      frame.holes.push_back(hole);
    }
  return frame;
}

double web_area(const Web& web) {
  double sum_in2 = 0;
  for (const auto& triangle : web)
    sum_in2 += oracles::shoelace_area({triangle.begin(), triangle.end()});
  return sum_in2;
}

TEST(FaceHoles, ABareOrRolledHoleIsAsDrawn) {
  for (const EdgeGuard edge : {EdgeGuard::bare, EdgeGuard::rolled}) {
    Frame frame = drilled_frame(2, 1, 2, edge);
    EXPECT_EQ(face_holes(frame).front(), edge_polygon(frame.holes.front(), obstacle_sagitta_in));
  }
}

TEST(FaceHoles, AGuardedHoleIsWiderByTheLip) {
  for (const EdgeGuard edge : {EdgeGuard::edge_trim, EdgeGuard::grommet, EdgeGuard::bushing}) {
    const Polygon hole = face_holes(drilled_frame(2, 1, 2, edge)).front();
    ASSERT_GT(hole.size(), 20u);
    for (const Vec2 corner : hole) EXPECT_NEAR(distance(corner, {-8, 4}), 1 + trim_lip_in, 1e-12);
  }
}

TEST(FaceHoles, AGuardedPolygonIsWiderByTheLip) {
  Frame frame = drilled_frame(2, 1, 2, EdgeGuard::bare);
  frame.holes.front().shape = Polygon{{-3, 4}, {3, 4}, {3, 9}, {-3, 9}};
  frame.holes.front().edge = EdgeGuard::edge_trim;
  const Polygon hole = face_holes(frame).front();
  EXPECT_TRUE(covers(hole, {3 + trim_lip_in - 1e-6, 6}));
  EXPECT_FALSE(covers(hole, {3 + trim_lip_in + 1e-6, 6}));
}

TEST(FaceHoles, StaysAsDrawnWithoutRoomForTheLip) {
  Frame frame = drilled_frame(2, 1, 2, EdgeGuard::grommet);
  frame.holes[0].shape = Circle{{0, 1.05}, 2};  // 0.05 in from the outline
  frame.holes[1].shape = Circle{{0, 3.15}, 2};  // 0.10 in from the first hole
  const auto holes = face_holes(frame);
  EXPECT_EQ(holes[0], edge_polygon(frame.holes[0], obstacle_sagitta_in));
  EXPECT_EQ(holes[1], edge_polygon(frame.holes[1], obstacle_sagitta_in));
}

TEST(FaceTriangles, TileAFrameWithTwelveRoundHoles) {
  const Frame frame = drilled_frame(4, 3, 4.6, EdgeGuard::bare);
  const std::vector<Polygon> holes = face_holes(frame);
  ASSERT_GT(holes.front().size(), 140u);
  double expected_in2 = area(frame.outline);
  for (const Polygon& hole : holes) expected_in2 -= std::abs(oracles::shoelace_area(hole));
  EXPECT_NEAR(web_area(face_triangles(frame)), expected_in2, 1e-9 * expected_in2);
}

TEST(FaceTriangles, DistanceToTheWebAgreesWithFclAndTheHoles) {
  Random random(109);
  const Frame frame = drilled_frame(3, 2, 3, EdgeGuard::bare);
  const Web web = face_triangles(frame);
  for (int i = 0; i < 60; ++i) {
    const Segment3 segment{{random.between(-2, 2), random.between(-12, 12), random.between(1, 25)},
                           {random.between(-2, 2), random.between(-12, 12), random.between(1, 25)}};
    double least_in = std::numeric_limits<double>::infinity();
    double least_by_fcl_in = least_in;
    for (const auto& [a, b, c] : web) {
      const Triangle3 triangle{{0, a.u, a.v}, {0, b.u, b.v}, {0, c.u, c.v}};
      least_in = std::min(least_in, nearest(segment, triangle).distance_in);
      least_by_fcl_in = std::min(least_by_fcl_in, oracles::fcl_distance(segment, triangle));
    }
    ASSERT_NEAR(least_in, least_by_fcl_in, 1e-9);
  }
  // Straight through the middle of a hole of 1.5 in radius: clear by the radius, chords inside.
  const Segment3 through{{-1, 0, 4}, {1, 0, 4}};
  double least_in = std::numeric_limits<double>::infinity();
  for (const auto& [a, b, c] : web)
    least_in = std::min(
        least_in,
        nearest(through, Triangle3{{0, a.u, a.v}, {0, b.u, b.v}, {0, c.u, c.v}}).distance_in);
  EXPECT_LE(least_in, 1.5);
  EXPECT_GE(least_in, 1.5 - obstacle_sagitta_in);
}

TEST(FaceHoles, OfTwoWhoseLipsWouldTouchNeitherIsWider) {
  Frame frame = drilled_frame(2, 1, 2, EdgeGuard::grommet);
  frame.holes[0].shape = Circle{{-1.12, 10}, 2};  // the two lips would just touch
  frame.holes[1].shape = Circle{{1.12, 10}, 2};
  const auto holes = face_holes(frame);
  for (std::size_t i = 0; i < 2; ++i)
    EXPECT_EQ(holes[i], edge_polygon(frame.holes[i], obstacle_sagitta_in));
}

TEST(FaceTriangles, StayWholeWhereHolesOverlapOrLeaveTheOutline) {
  Frame overlapping = drilled_frame(2, 1, 2, EdgeGuard::bare);
  overlapping.holes[0].shape = Circle{{0, 10}, 2};
  overlapping.holes[1].shape = Circle{{1, 10}, 2};
  EXPECT_NEAR(web_area(face_triangles(overlapping)), area(overlapping.outline), 1e-9);
  Frame open = drilled_frame(2, 1, 2, EdgeGuard::bare);
  open.holes[0].shape = Circle{{0, 0}, 2};
  EXPECT_NEAR(web_area(face_triangles(open)), area(open.outline), 1e-9);
}

bool covered(const Web& web, Vec2 point) {
  return std::any_of(web.begin(), web.end(), [point](const auto& triangle) {
    return covers(Polygon{triangle.begin(), triangle.end()}, point);
  });
}

TEST(FaceTriangles, LeaveOutNoWebHoweverTheHolesLie) {
  Random random(241);
  for (int round = 0; round < 200; ++round) {
    Frame frame =
        drilled_frame(3, 1, 2, random.whole(0, 1) == 0 ? EdgeGuard::bare : EdgeGuard::grommet);
    for (Hole& hole : frame.holes)  // on a grid, so that many overlap, coincide or touch an edge
      hole.shape = Circle{{double(random.whole(-2, 2)), double(random.whole(0, 3))},
                          double(random.whole(1, 4))};
    frame.holes.back().shape = Polygon{{-3, 0}, {3, 0}, {3, double(random.whole(1, 4))}};
    const std::vector<Polygon> holes = face_holes(frame);
    const Web web = face_triangles(frame);
    for (int i = 0; i < 60; ++i) {
      const Vec2 point{random.between(-5, 5), random.between(0.001, 8)};
      const bool in_hole = std::any_of(
          holes.begin(), holes.end(), [point](const Polygon& hole) { return covers(hole, point); });
      ASSERT_TRUE(in_hole || covered(web, point)) << "round " << round;
    }
  }
}

}  // namespace
}  // namespace linewright
