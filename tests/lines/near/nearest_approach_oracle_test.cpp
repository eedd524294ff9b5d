// Least margins held against FCL and against dense sampling, on random lines and structure.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "lines/near/approach_of_first.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/route_project.hpp"
#include "oracles/fcl_distance.hpp"
#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

TEST(NearestStructure, IsFclsDistanceLessTheRadiiForStraightsAsDrawn) {
  oracles::Random random(41);
  for (int round = 0; round < 300; ++round) {
    const Segment3 line = {random.point(10), random.point(10)};
    RouteProject drawn;
    drawn.route(line.a, line.b);
    const double thickness = random.between(0, 0.5);
    double still = 0;
    if (random.whole(0, 1) == 0) {
      const Triangle3 plate{random.point(10), random.point(10), random.point(10)};
      drawn.triangle(plate, thickness);
      still = oracles::fcl_distance(line, plate);
    } else {
      const Segment3 rod{random.point(10), random.point(10)};
      drawn.rod(rod, thickness);
      still = oracles::fcl_distance(line, rod);
    }
    // FCL is good to about 1e-8 in at this size.
    EXPECT_NEAR(to_structure(drawn.prepared(), Reach::none).gap_in, still - thickness / 2 - 0.125,
                1e-7)
        << "round " << round;
  }
}

TEST(NearestStructure, IsTheLeastMarginThatADenseSearchFinds) {
  oracles::Random random(42);
  constexpr int samples = 3000;
  for (int round = 0; round < 200; ++round) {
    const Vec3 from = random.point(10);
    const Vec3 to = random.point(10);
    RouteProject drawn;
    drawn.route(from, to);
    for (int i = 0; i < 3; ++i) {
      drawn.triangle({random.point(10), random.point(10), random.point(10)}, 0.05);
      drawn.rod({random.point(10), random.point(10)}, 0.3);
    }
    const PreparedProject prepared = drawn.prepared();
    const double length = distance(from, to);
    ReachEnvelope envelope = slack_envelope(length, random.between(0, 0.02));
    envelope.clamped_shape = random.whole(0, 1) == 0;
    envelope.play_first_in = random.between(0, 0.1);
    envelope.sag_in = random.between(0, 0.3);
    const Stretch stretch = make_stretch(prepared.routes[0], 0, length, envelope);
    for (const Reach reach : {Reach::likely, Reach::bound}) {
      double sampled = 1e300;
      for (int i = 0; i <= samples; ++i) {
        const double t = double(i) / samples;
        for (const Obstacle& obstacle : prepared.obstacles.all())
          sampled = std::min(sampled, nearest(between(from, to, t), obstacle).distance_in - 0.125 -
                                          envelope.width_in(reach, t * length));
      }
      const auto found = nearest_structure(
          stretch, reach, prepared.obstacles, everything_in, [](const Obstacle&) { return 0; },
          all);
      ASSERT_EQ(found.size(), 1u);
      // Between two samples the distance falls by half a step at most; the reach grows by no more,
      // save in the first step from a focus, where the ellipse rises by less than a tenth of it.
      const double half_step = length / samples / 2;
      EXPECT_LE(found.at(0).margin_in, sampled + 1e-6) << "round " << round;
      EXPECT_GE(found.at(0).margin_in, sampled - 2 * half_step) << "round " << round;
    }
  }
}

TEST(NearestStructure, TakesNoMoreThanItsSagittaOffAnArc) {
  oracles::Random random(43);
  constexpr int samples = 4000;
  for (int round = 0; round < 60; ++round) {
    const auto corners = oracles::fitting_path(random, random.whole(3, 5));
    RouteProject drawn;
    drawn.route(corners);
    const Vec3 near = corners[1].at + random.point(3);
    drawn.triangle({near, near + random.point(5), near + random.point(5)}, 0.05);
    const PreparedProject prepared = drawn.prepared();
    const PreparedRoute& route = prepared.routes[0];
    double sampled = 1e300;
    for (int i = 0; i <= samples; ++i)
      sampled = std::min(sampled, nearest(route.centreline.at(route.length_in() * i / samples),
                                          prepared.obstacles.all().at(0))
                                          .distance_in -
                                      0.125);
    const double gap = to_structure(prepared, Reach::none).gap_in;
    // An arc lies up to the sagitta outside of its chord, and as much is taken off.
    EXPECT_LE(gap, sampled + 1e-9) << "round " << round;
    EXPECT_GE(gap, sampled - 2 * Centreline::default_sagitta_in - route.length_in() / samples / 2)
        << "round " << round;
  }
}

TEST(NearestLines, IsFclsDistanceLessTheRadiiForStraightsAsDrawn) {
  oracles::Random random(44);
  for (int round = 0; round < 300; ++round) {
    const Segment3 first{random.point(10), random.point(10)};
    const Segment3 second{random.point(10), random.point(10)};
    RouteProject drawn;
    drawn.route(first.a, first.b);
    drawn.route(second.a, second.b);
    const auto approach = between_lines(drawn.prepared(), Reach::none);
    ASSERT_TRUE(approach);
    EXPECT_NEAR(approach->gap_in, oracles::fcl_distance(first, second) - 0.25, 1e-7);
  }
}

TEST(NearestLines, IsTheLeastMarginThatADenseSearchFinds) {
  oracles::Random random(45);
  constexpr int samples = 400;
  for (int round = 0; round < 40; ++round) {
    const Segment3 first{random.point(5), random.point(5)};
    const Segment3 second{random.point(5), random.point(5)};
    RouteProject drawn;
    drawn.route(first.a, first.b);
    drawn.route(second.a, second.b);
    const double length = distance(first.a, first.b);
    const double other_length = distance(second.a, second.b);
    const ReachEnvelope envelope = slack_envelope(length, random.between(0, 0.02));
    const ReachEnvelope other = slack_envelope(other_length, random.between(0, 0.02));
    for (const Reach reach : {Reach::likely, Reach::bound}) {
      double sampled = 1e300;
      for (int i = 0; i <= samples; ++i)
        for (int j = 0; j <= samples; ++j) {
          const double t = double(i) / samples;
          const double u = double(j) / samples;
          sampled = std::min(
              sampled, distance(between(first.a, first.b, t), between(second.a, second.b, u)) -
                           0.25 - envelope.width_in(reach, t * length) -
                           other.width_in(reach, u * other_length));
        }
      const auto approach = between_lines(drawn.prepared(), reach, envelope, other);
      ASSERT_TRUE(approach);
      EXPECT_LE(approach->margin_in, sampled + 1e-5) << "round " << round;
      EXPECT_GE(approach->margin_in, sampled - (length + other_length) / samples)
          << "round " << round;
    }
  }
}

TEST(NearestLines, IsTheSameEitherWayRound) {
  oracles::Random random(46);
  for (int round = 0; round < 40; ++round) {
    const Segment3 first{random.point(5), random.point(5)};
    const Segment3 second{random.point(5), random.point(5)};
    RouteProject one;
    one.route(first.a, first.b);
    one.route(second.a, second.b);
    RouteProject other;
    other.route(second.a, second.b);
    other.route(first.a, first.b);
    const ReachEnvelope a = slack_envelope(distance(first.a, first.b), 0.006);
    const ReachEnvelope b = slack_envelope(distance(second.a, second.b), 0.006);
    for (const Reach reach : {Reach::none, Reach::likely, Reach::bound}) {
      const auto there = between_lines(one.prepared(), reach, a, b);
      const auto back = between_lines(other.prepared(), reach, b, a);
      ASSERT_TRUE(there && back);
      EXPECT_NEAR(there->margin_in, back->margin_in, 1e-5);
    }
  }
}

}  // namespace
}  // namespace linewright
