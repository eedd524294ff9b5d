#include "geometry/nearest_approach.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "geometry/route_project.hpp"
#include "oracles/fcl_distance.hpp"
#include "oracles/random_shapes.hpp"
#include "physics/deflection.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-9;
/// Far enough that nothing here is beyond it.
constexpr double everything_in = 1000;

bool all(const Obstacle&, double) {
  return true;
}
int by_part(const Obstacle& obstacle) {
  return obstacle.part;
}

ReachEnvelope slack_envelope(double length_in, double slack_fraction) {
  ReachEnvelope envelope;
  envelope.end_in = length_in;
  envelope.surplus_in = slack_fraction * length_in;
  envelope.bow_in = slack_string_bow_in(length_in, envelope.surplus_in);
  envelope.bound_half_width_in = ellipsoid_half_width_in(length_in, length_in + envelope.surplus_in);
  return envelope;
}

/// The least margin of the first route over all its length to the first part.
Approach to_structure(const PreparedProject& prepared, Reach reach,
                      const ReachEnvelope& envelope = {}) {
  const PreparedRoute& route = prepared.routes.at(0);
  const Stretch stretch = make_stretch(route, 0, route.length_in(), envelope);
  const auto found =
      nearest_structure(stretch, reach, prepared.obstacles, everything_in, by_part, all);
  EXPECT_EQ(found.size(), 1u);
  return found.empty() ? Approach{} : found.begin()->second;
}

std::optional<Approach> between_lines(const PreparedProject& prepared, Reach reach,
                                      const ReachEnvelope& first = {},
                                      const ReachEnvelope& second = {},
                                      double horizon_in = everything_in) {
  const PreparedRoute& one = prepared.routes.at(0);
  const PreparedRoute& other = prepared.routes.at(1);
  return nearest_lines(make_stretch(one, 0, one.length_in(), first),
                       make_stretch(other, 0, other.length_in(), second), reach, horizon_in,
                       [](double, double) { return true; });
}

TEST(MakeStretch, CutsALineIntoShortChordsThatCoverIt) {
  RouteProject drawn;
  drawn.route({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 10, 0}, 0}});
  const PreparedProject prepared = drawn.prepared();
  const Stretch stretch = make_stretch(prepared.routes[0], 3, 17);
  double reached = 3;
  for (const PathChord& chord : stretch.chords) {
    EXPECT_NEAR(chord.start_in, reached, rounding_in);
    EXPECT_LE(chord.end_in - chord.start_in, longest_chord_in + rounding_in);
    reached = chord.end_in;
  }
  EXPECT_NEAR(reached, 17, rounding_in);
}

TEST(MakeStretch, CutsWhereSleevesBeginAndEnd) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {10, 0, 0}).sleeves = {{3.3, 6.1, 0.3, 0.4, {}}};
  const PreparedProject prepared = drawn.prepared();
  const Stretch stretch = make_stretch(prepared.routes[0], 0, 10);
  for (const double cut : {3.3, 6.1})
    EXPECT_TRUE(std::any_of(stretch.chords.begin(), stretch.chords.end(),
                            [cut](const PathChord& chord) { return chord.start_in == cut; }))
        << cut;
}

TEST(NearestStructure, IsTheGapBetweenSurfacesAsDrawn) {
  // A rod of 1/2 in across, 5 in over a line of 1/4 in: 3-4-5 puts it square to the line's middle.
  RouteProject drawn;
  drawn.route({-10, 0, 0}, {10, 0, 0});
  drawn.rod({{1, 3, 4}, {1, 13, 4}}, 0.5);
  const Approach approach = to_structure(drawn.prepared(), Reach::none);
  EXPECT_NEAR(approach.gap_in, 5 - 0.25 - 0.125, rounding_in);
  EXPECT_EQ(approach.margin_in, approach.gap_in);
  EXPECT_NEAR(approach.distance_in, 11, rounding_in);
  EXPECT_NEAR(distance(approach.on_line, {1, 0, 0}), 0, rounding_in);
  EXPECT_NEAR(distance(approach.on_other, {1, 3, 4}), 0, rounding_in);
  ASSERT_NE(approach.obstacle, nullptr);
  EXPECT_TRUE(approach.obstacle->is_segment);
}

TEST(NearestStructure, IsBelowZeroWhereTheLineIsInThePart) {
  RouteProject drawn;
  drawn.route({-10, 0, 0}, {10, 0, 0});
  drawn.rod({{0, 0.1, -5}, {0, 0.1, 5}}, 0.5);
  EXPECT_NEAR(to_structure(drawn.prepared(), Reach::none).gap_in, 0.1 - 0.25 - 0.125, rounding_in);
}

TEST(NearestStructure, TakesTheReachOffWhereTheLineIsWidest) {
  // A plate along the whole line: the margin is least in the middle, where the bow is largest.
  RouteProject drawn;
  drawn.route({0, 0, 0}, {13.5, 0, 0});
  drawn.triangle({{-50, -50, 1}, {100, -50, 1}, {0, 100, 1}}, 0.05);
  const ReachEnvelope envelope = slack_envelope(13.5, 0.006);
  const Approach likely = to_structure(drawn.prepared(), Reach::likely, envelope);
  const double gap = 1 - 0.025 - 0.125;
  EXPECT_NEAR(likely.gap_in, gap, rounding_in);
  EXPECT_NEAR(likely.margin_in, gap - 0.64036, 5e-6);  // reference file, section 10 row 8
  EXPECT_NEAR(likely.distance_in, 6.75, 1e-3);
  const Approach bound = to_structure(drawn.prepared(), Reach::bound, envelope);
  EXPECT_NEAR(bound.margin_in, gap - 0.74053, 5e-6);
}

TEST(NearestStructure, LooksForTheLeastMarginAndNotForTheLeastGap) {
  // Nearer by the support, but out of reach there: the rod in the middle is what counts.
  RouteProject drawn;
  drawn.route({0, 0, 0}, {13.5, 0, 0});
  drawn.rod({{0.2, -5, 0.6}, {0.2, 5, 0.6}}, 0.1);
  const ReachEnvelope envelope = slack_envelope(13.5, 0.006);
  EXPECT_GT(to_structure(drawn.prepared(), Reach::likely, envelope).margin_in, 0.3);
  drawn.rod({{6.75, -5, 0.8}, {6.75, 5, 0.8}}, 0.1);
  const PreparedProject prepared = drawn.prepared();
  const Stretch stretch = make_stretch(prepared.routes[0], 0, 13.5, envelope);
  const auto together = nearest_structure(stretch, Reach::likely, prepared.obstacles,
                                          everything_in, [](const Obstacle&) { return 0; }, all);
  ASSERT_EQ(together.size(), 1u);
  EXPECT_NEAR(together.at(0).margin_in, 0.8 - 0.05 - 0.125 - 0.64036, 5e-6);
}

TEST(NearestStructure, IsThickerInASleeve) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {20, 0, 0}).sleeves = {{8, 12, 0.4, 0.5, {}}};
  drawn.rod({{10, -5, 2}, {10, 5, 2}}, 0.5);
  EXPECT_NEAR(to_structure(drawn.prepared(), Reach::none).gap_in, 2 - 0.25 - 0.25, rounding_in);
}

TEST(NearestStructure, LeavesOutWhatDoesNotCountThere) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {20, 0, 0});
  drawn.rod({{5, -5, 1}, {5, 5, 1}}, 0.5);
  drawn.rod({{15, -5, 2}, {15, 5, 2}}, 0.5);
  const PreparedProject prepared = drawn.prepared();
  const Stretch stretch = make_stretch(prepared.routes[0], 0, 20);
  const auto one_group = [](const Obstacle&) { return 7; };
  const auto aft_half = nearest_structure(
      stretch, Reach::none, prepared.obstacles, everything_in, one_group,
      [](const Obstacle&, double along) { return along > 10; });
  ASSERT_EQ(aft_half.size(), 1u);
  EXPECT_NEAR(aft_half.at(7).gap_in, 2 - 0.25 - 0.125, rounding_in);
  EXPECT_NEAR(aft_half.at(7).distance_in, 15, rounding_in);
}

TEST(NearestStructure, KeepsGroupsApartAndDropsWhatIsBeyondTheHorizon) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {20, 0, 0});
  drawn.rod({{5, -5, 1}, {5, 5, 1}}, 0.5);
  drawn.rod({{15, -5, 2}, {15, 5, 2}}, 0.5);
  const PreparedProject prepared = drawn.prepared();
  const Stretch stretch = make_stretch(prepared.routes[0], 0, 20);
  const auto found = [&](double horizon_in) {
    return nearest_structure(stretch, Reach::none, prepared.obstacles, horizon_in, by_part, all);
  };
  EXPECT_EQ(found(1.63).size(), 2u);
  EXPECT_EQ(found(1.62).size(), 1u);
  EXPECT_EQ(found(0.62).size(), 0u);
}

TEST(NearestStructure, PrefersTheEdgeToTheFaceItEnds) {
  // The line passes abreast of a channel's free edge: wall and edge are equally near.
  RouteProject drawn;
  drawn.route({0, 0, 0}, {20, 0, 0});
  drawn.project.structure.channels.push_back(
      {"stringer", {{0, 0, -2}, {20, 0, -2}}, {{0, 0}, {0, 1}}, 0.05, EdgeGuard::bare, {}});
  const Approach approach = to_structure(drawn.prepared(), Reach::none);
  EXPECT_NEAR(approach.gap_in, 1 - 0.025 - 0.125, rounding_in);
  ASSERT_NE(approach.obstacle, nullptr);
  EXPECT_EQ(approach.obstacle->feature, Feature::free_edge);
}

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
      const auto found = nearest_structure(stretch, reach, prepared.obstacles, everything_in,
                                           [](const Obstacle&) { return 0; }, all);
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

TEST(NearestLines, IsTheGapBetweenSurfacesAsDrawn) {
  // Square to each other in planes 5 in apart.
  RouteProject drawn;
  drawn.route({-10, 0, 0}, {10, 0, 0});
  drawn.route({3, -10, 5}, {3, 10, 5});
  const auto approach = between_lines(drawn.prepared(), Reach::none);
  ASSERT_TRUE(approach);
  EXPECT_NEAR(approach->gap_in, 5 - 0.25, rounding_in);
  EXPECT_NEAR(approach->distance_in, 13, rounding_in);
  EXPECT_NEAR(approach->other_distance_in, 10, rounding_in);
}

TEST(NearestLines, TakesBothReachesOff) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {13.5, 0, 0});
  drawn.route({0, 0, 2}, {13.5, 0, 2});
  const ReachEnvelope envelope = slack_envelope(13.5, 0.006);
  const auto approach = between_lines(drawn.prepared(), Reach::likely, envelope, envelope);
  ASSERT_TRUE(approach);
  EXPECT_NEAR(approach->gap_in, 1.75, 1e-6);
  EXPECT_NEAR(approach->margin_in, 1.75 - 2 * 0.64036, 1e-5);
  EXPECT_NEAR(approach->distance_in, 6.75, 0.01);
}

TEST(NearestLines, IsNothingBeyondTheHorizon) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {10, 0, 0});
  drawn.route({0, 0, 2}, {10, 0, 2});
  EXPECT_FALSE(between_lines(drawn.prepared(), Reach::none, {}, {}, 1.74));
  EXPECT_TRUE(between_lines(drawn.prepared(), Reach::none, {}, {}, 1.76));
}

TEST(NearestLines, LeavesOutPairsOfPlacesThatDoNotCount) {
  RouteProject drawn;
  drawn.route({0, 0, 0}, {10, 0, 0});
  drawn.route({0, 0, 1}, {10, 0, 3});
  const PreparedProject prepared = drawn.prepared();
  const auto approach =
      nearest_lines(make_stretch(prepared.routes[0], 0, 10),
                    make_stretch(prepared.routes[1], 0, prepared.routes[1].length_in()),
                    Reach::none, everything_in, [](double a, double) { return a > 5; });
  ASSERT_TRUE(approach);
  EXPECT_GE(approach->distance_in, 5 - rounding_in);
  EXPECT_GT(approach->gap_in, 1.5);
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
          sampled = std::min(sampled, distance(between(first.a, first.b, t),
                                               between(second.a, second.b, u)) -
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
