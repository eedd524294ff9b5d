#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "lines/near/approach_of_first.hpp"
#include "lines/near/nearest_lines.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/route_project.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-9;
TEST(MakeStretch, CutsALineIntoShortChordsThatCoverIt) {
  RouteProject drawn;
  drawn.route({{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 10, 0}, 0}});
  const PreparedProject prepared = drawn.prepared();
  const Stretch stretch = make_stretch(prepared.routes[0], 3, 17);
  double reached = 3;
  for (const PathChord& chord : stretch.chords()) {
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
  const std::span<const PathChord> chords = stretch.chords();
  for (const double cut : {3.3, 6.1})
    EXPECT_TRUE(std::any_of(chords.begin(), chords.end(), [cut](const PathChord& chord) {
      return chord.start_in == cut;
    })) << cut;
}

TEST(NearestStructure, IsTheGapBetweenSurfacesAsDrawn) {
  // A rod of 1/2 in across, 5 in over a line of 1/4 in: 3-4-5 puts it square to the line's middle.
  RouteProject drawn;
  drawn.route({-10, 0, 0}, {10, 0, 0});
  drawn.rod({{1, 3, 4}, {1, 13, 4}}, 0.5);
  const PreparedProject prepared = drawn.prepared();
  const Approach approach = to_structure(prepared, Reach::none);
  EXPECT_NEAR(approach.gap_in, 5 - 0.25 - 0.125, rounding_in);
  EXPECT_EQ(approach.margin_in, approach.gap_in);
  EXPECT_NEAR(approach.distance_in, 11, rounding_in);
  EXPECT_NEAR(distance(approach.on_line, {1, 0, 0}), 0, rounding_in);
  EXPECT_NEAR(distance(approach.on_other, {1, 3, 4}), 0, rounding_in);
  ASSERT_TRUE(approach.obstacle);
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
  // √(3 L δ/8) of a slack string, ½ √((L+δ)² - L²) of any shape, with δ = 0.081 in [calculated].
  EXPECT_NEAR(likely.margin_in, gap - 0.64036, 5e-6);
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
  const auto together = nearest_structure(
      stretch, Reach::likely, prepared.obstacles, everything_in, [](const Obstacle&) { return 0; },
      all);
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
  const auto aft_half =
      nearest_structure(stretch, Reach::none, prepared.obstacles, everything_in, one_group,
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
  const PreparedProject prepared = drawn.prepared();
  const Approach approach = to_structure(prepared, Reach::none);
  EXPECT_NEAR(approach.gap_in, 1 - 0.025 - 0.125, rounding_in);
  ASSERT_TRUE(approach.obstacle);
  EXPECT_EQ(approach.obstacle->feature, Feature::free_edge);
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

}  // namespace
}  // namespace linewright
