// What is looked up along a line is what a look at all of it finds.

#include "lines/along_line.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "lines/near/stretch.hpp"
#include "lines/route_project.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

/// A line of many corners, every other of them clamped, and each in a place of its own in the file.
RouteProject long_line(oracles::Random& random) {
  RouteProject drawn;
  Route& route = drawn.route(oracles::fitting_path(random, 40));
  for (std::size_t i = 0; i < route.points.size(); ++i) {
    if (i % 2 == 0) route.points[i].hold = HoldKind::clamp;
    route.points[i].where = {"routes.yaml", static_cast<int>(10 + i), 7};
  }
  route.where = {"routes.yaml", 5, 3};
  return drawn;
}

double to_nearest_of_all_in(const PreparedRoute& route, double distance_in) {
  double least = route.length_in();
  for (const Support& support : route.supports)
    least = std::min(least, std::abs(support.distance_in - distance_in));
  return least;
}

/// The line in the file of what is nearest; of the two ends, the route.
int nearest_of_all(const PreparedRoute& route, double distance_in) {
  double least = std::min(distance_in, route.length_in() - distance_in);
  int line = route.route->where.line;
  for (std::size_t i = 0; i < route.point_distance_in.size(); ++i) {
    const double away = std::abs(route.point_distance_in[i] - distance_in);
    if (away > least) continue;
    least = away;
    line = route.route->points[i].where.line;
  }
  return line;
}

TEST(AlongLine, TheNearestSupportAndPointAreThoseOfAll) {
  oracles::Random random(75);
  for (int round = 0; round < 20; ++round) {
    const RouteProject drawn = long_line(random);
    const PreparedProject prepared = drawn.prepared();
    const PreparedRoute& route = prepared.routes.front();
    for (int i = 0; i < 200; ++i) {
      const double at_in = random.between(0, route.length_in());
      EXPECT_EQ(route.to_nearest_support_in(at_in), to_nearest_of_all_in(route, at_in));
      EXPECT_EQ(route.location_near(at_in).line, nearest_of_all(route, at_in)) << at_in;
    }
  }
}

TEST(AlongLine, TheChordsOfAPartJoinUpAndAreAsLong) {
  oracles::Random random(76);
  const Centreline line(oracles::fitting_path(random, 60));
  for (int round = 0; round < 500; ++round) {
    const double a = random.between(0, line.length_in());
    const double b = random.between(0, line.length_in());
    const auto [low_in, high_in] = std::minmax(a, b);
    const std::vector<PathChord> chords = line.chords(low_in, high_in);
    ASSERT_FALSE(chords.empty());
    EXPECT_NEAR(chords.front().start_in, low_in, 1e-9);
    EXPECT_NEAR(chords.back().end_in, high_in, 1e-9);
    for (std::size_t i = 1; i < chords.size(); ++i)
      EXPECT_NEAR(chords[i].start_in, chords[i - 1].end_in, 1e-9);
  }
}

TEST(AlongLine, ASpanIsCutWhereTheWholeLineIs) {
  oracles::Random random(77);
  const RouteProject drawn = long_line(random);
  const PreparedProject prepared = drawn.prepared();
  const PreparedRoute& route = prepared.routes.front();
  // Within a pair of supports what begins or ends to count is the same for the span and the whole.
  for (const Span& span : route.spans)
    for (const Support& support : route.supports)
      for (const double side : {-at_support_in, 0.0, at_support_in}) {
        const double cut_in = support.distance_in + side;
        if (cut_in <= span.start_in + 1e-6 || cut_in >= span.end_in - 1e-6) continue;
        const Stretch stretch = make_stretch(route, span.start_in, span.end_in);
        const std::span<const PathChord> chords = stretch.chords();
        EXPECT_TRUE(std::any_of(chords.begin(), chords.end(), [&](const PathChord& chord) {
          return std::abs(chord.start_in - cut_in) < 1e-8;
        })) << cut_in;
      }
}

// A span taken out of the whole line is measured by the pieces that it would be cut into by itself.
TEST(AlongLine, SpanOfAWholeLineHasThePiecesOfTheSpanAlone) {
  oracles::Random random(78);
  const RouteProject drawn = long_line(random);
  const PreparedProject prepared = drawn.prepared();
  const PreparedRoute& route = prepared.routes.front();
  const Stretch whole = make_stretch(route, 0, route.length_in());
  ReachEnvelope envelope;
  envelope.bow_in = 0.3;
  for (const Span& span : route.spans) {
    const Stretch alone = make_stretch(route, span.start_in, span.end_in, envelope);
    const Stretch part = stretch_of(whole, span.start_in, span.end_in, envelope);
    EXPECT_EQ(part.of_chords, whole.of_chords);
    EXPECT_EQ(part.start_in, span.start_in);
    EXPECT_EQ(part.end_in, span.end_in);
    EXPECT_EQ(part.envelope.bow_in, 0.3);
    ASSERT_EQ(part.chords().size(), alone.chords().size());
    for (std::size_t i = 0; i < alone.chords().size(); ++i) {
      EXPECT_EQ(part.chords()[i].from, alone.chords()[i].from);
      EXPECT_EQ(part.chords()[i].to, alone.chords()[i].to);
      EXPECT_EQ(part.chords()[i].start_in, alone.chords()[i].start_in);
      EXPECT_EQ(part.chords()[i].end_in, alone.chords()[i].end_in);
    }
    ASSERT_EQ(part.blocks.size(), alone.blocks.size());
    EXPECT_EQ(part.bounds.min, alone.bounds.min);
    EXPECT_EQ(part.bounds.max, alone.bounds.max);
  }
}

// Where the line is not cut at the ends of the part, the part has pieces of its own.
TEST(AlongLine, PartThatEndsWithinAPieceIsCutForItself) {
  oracles::Random random(79);
  const RouteProject drawn = long_line(random);
  const PreparedProject prepared = drawn.prepared();
  const PreparedRoute& route = prepared.routes.front();
  const Stretch whole = make_stretch(route, 0, route.length_in());
  const PathChord& inside = whole.chord(whole.chords().size() / 2);
  const double from_in = (inside.start_in + inside.end_in) / 2;
  const Stretch part = stretch_of(whole, from_in, route.length_in(), {});
  EXPECT_NE(part.of_chords, whole.of_chords);
  EXPECT_EQ(part.chords().front().start_in, from_in);
  EXPECT_EQ(part.chords().front().from, route.centreline.at(from_in));
}

}  // namespace
}  // namespace linewright
