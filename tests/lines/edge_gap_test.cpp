#include "lines/edge_gap.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "geometry/plane/polygon.hpp"
#include "lines/route_project.hpp"
#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-9;
/// What edge_gap.hpp promises where a line does not go straight through a circle.
constexpr double promised_in = 1e-5;

/// The gap at the only crossing of a line along `corners` with a frame at FS 0.
EdgeGap gap_in_hole(const std::vector<PathCorner>& corners, double thickness_in, const Hole& hole) {
  RouteProject drawn;
  drawn.route(corners);
  drawn.frame(0, thickness_in, {hole});
  const PreparedProject prepared = drawn.prepared();
  const PreparedRoute& route = prepared.routes.at(0);
  EXPECT_EQ(route.crossings.size(), 1u);
  EXPECT_NE(route.crossings.at(0).hole, nullptr);
  return edge_gap(route, route.crossings.at(0));
}

std::vector<PathCorner> straight(Vec3 from, Vec3 to) {
  return {{from, 0}, {to, 0}};
}

Hole rectangle(double half_width, double half_height) {
  return {"hole",
          std::vector<Vec2>{{-half_width, -half_height},
                            {half_width, -half_height},
                            {half_width, half_height},
                            {-half_width, half_height}},
          EdgeGuard::bare,
          {},
          {}};
}

TEST(EdgeGap, IsTheRadiusOnTheAxisOfARoundHole) {
  const EdgeGap gap = gap_in_hole(straight({-5, 0, 0}, {5, 0, 0}), 0.032, round_hole("h", {}, 2));
  EXPECT_NEAR(gap.distance_in, 1, rounding_in);
}

TEST(EdgeGap, IsTheRadiusLessTheOffsetForALineParallelToTheAxis) {
  // 3-4-5: offset 0.5 in.
  const EdgeGap gap =
      gap_in_hole(straight({-5, 0.3, 0.4}, {5, 0.3, 0.4}), 0.032, round_hole("h", {}, 2));
  EXPECT_NEAR(gap.distance_in, 0.5, rounding_in);
  EXPECT_NEAR(gap.along_in, 5, 0.016 + rounding_in);
}

TEST(EdgeGap, IsMeasuredSquareToALineThatLeansInARoundHole) {
  // Along (4, 3)/5, through BL 0.25 of a hole of 1 in radius: the edge at BL 1 on the aft face,
  // 0.05 aft of the web's middle, is (1 - 0.25) 4/5 - 0.05 3/5 = 0.57 from the line, at a foot
  // 0.05 4/5 + 0.75 3/5 = 0.49 past the crossing.
  const EdgeGap gap =
      gap_in_hole(straight({-4, -2.75, 0}, {4, 3.25, 0}), 0.1, round_hole("h", {}, 2));
  EXPECT_NEAR(gap.distance_in, 0.57, promised_in);
  // A place off by x along a line of distance d costs x2 / 2d.
  EXPECT_NEAR(gap.along_in, 5.49, std::sqrt(2 * 0.57 * promised_in));
}

TEST(EdgeGap, LooksAtTheForwardFaceTooWhereTheLineLeansTheOtherWay) {
  const EdgeGap gap =
      gap_in_hole(straight({4, -2.75, 0}, {-4, 3.25, 0}), 0.1, round_hole("h", {}, 2));
  EXPECT_NEAR(gap.distance_in, 0.57, promised_in);
}

TEST(EdgeGap, NeverUnderstatesHowNearAThickSheetComes) {
  const EdgeGap thin =
      gap_in_hole(straight({-4, -2.75, 0}, {4, 3.25, 0}), 0.001, round_hole("h", {}, 2));
  const EdgeGap thick =
      gap_in_hole(straight({-4, -2.75, 0}, {4, 3.25, 0}), 0.2, round_hole("h", {}, 2));
  EXPECT_NEAR(thin.distance_in - thick.distance_in, 0.0995 * 0.6, 2 * promised_in);
}

TEST(EdgeGap, IsTheDistanceToTheNearestSideOfAnOutlinedHole) {
  const EdgeGap gap = gap_in_hole(straight({-5, 0.5, 1.75}, {5, 0.5, 1.75}), 0.05, rectangle(2, 2));
  EXPECT_NEAR(gap.distance_in, 0.25, rounding_in);
}

TEST(EdgeGap, IsMeasuredSquareToALineThatLeansInAnOutlinedHole) {
  const EdgeGap gap = gap_in_hole(straight({-4, -2.75, 0}, {4, 3.25, 0}), 0.1, rectangle(1, 2));
  EXPECT_NEAR(gap.distance_in, 0.57, rounding_in);
  EXPECT_NEAR(gap.along_in, 5.49, rounding_in);
}

TEST(EdgeGap, FollowsALineThatBendsInTheHole) {
  // A quarter turn of 1 in radius about (-0.5, 1) starts half an inch forward of the web and has
  // its middle of turning at 45 degrees. The edge at BL 0.6 is nearest to the arc: from the centre
  // of the arc it lies at (0.5, -0.4), hypot 0.640312, so 1 - 0.640312 inside.
  const EdgeGap gap = gap_in_hole({{{-6, 0, 0}, 0}, {{0.5, 0, 0}, 1}, {{0.5, 8, 0}, 0}}, 0,
                                  round_hole("h", {}, 1.2));
  EXPECT_NEAR(gap.distance_in, 1 - std::hypot(0.5, 0.4), promised_in);
}

TEST(EdgeGap, IsNoMoreThanWhatASampledLineFindsToASampledEdge) {
  oracles::Random random(31);
  constexpr int samples = 400;
  for (int round = 0; round < 40; ++round) {
    const Vec3 lean{random.between(1, 3), random.between(-1, 1), random.between(-1, 1)};
    const Vec3 through{0, random.between(-0.4, 0.4), random.between(-0.4, 0.4)};
    const double thickness = random.between(0, 0.2);
    const bool is_round = random.whole(0, 1) == 0;
    const Hole hole = is_round ? round_hole("h", {}, 2) : rectangle(1, 0.8);
    const EdgeGap gap =
        gap_in_hole(straight(through - lean * 2, through + lean * 2), thickness, hole);
    const std::vector<Vec2> edge = edge_polygon(hole, 1e-5);
    double sampled = 1e300;
    for (int i = 0; i <= samples; ++i) {
      const Vec3 at = through + lean * (4.0 * i / samples - 2);
      for (const double side : {-0.5, 0.5})
        for (std::size_t j = 0; j < edge.size(); ++j) {
          const Vec2 a = edge[j];
          const Vec2 b = edge[(j + 1) % edge.size()];
          const double fs = side * thickness;
          sampled =
              std::min(sampled, nearest(at, Segment3{{fs, a.u, a.v}, {fs, b.u, b.v}}).distance_in);
        }
    }
    const double half_step = norm(lean) * 2 / samples;
    EXPECT_LE(gap.distance_in, sampled + promised_in) << "round " << round;
    EXPECT_GE(gap.distance_in, sampled - half_step - promised_in) << "round " << round;
  }
}

}  // namespace
}  // namespace linewright
