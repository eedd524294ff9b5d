#include "lines/near/line_neighbours.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "lines/near/nearest_lines.hpp"
#include "lines/route_project.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

/// Short lines all over a cube of 80 in.
RouteProject scattered(oracles::Random& random) {
  RouteProject drawn;
  for (int i = 0; i < 60; ++i) {
    const Vec3 from = random.point(40);
    drawn.route(from, from + random.direction() * random.between(2, 12));
  }
  return drawn;
}

/// Each with a bow of its own.
struct ScatteredLines {
  RouteProject drawn;
  PreparedProject prepared;
  std::vector<Stretch> stretches;

  explicit ScatteredLines(oracles::Random& random)
      : drawn(scattered(random)), prepared(drawn.prepared()) {
    for (const PreparedRoute& route : prepared.routes) {
      ReachEnvelope envelope;
      envelope.end_in = route.length_in();
      envelope.bow_in = random.between(0, 1);
      envelope.bound_half_width_in = random.between(1, 2);
      stretches.push_back(make_stretch(route, 0, route.length_in(), envelope));
    }
  }

  LineNeighbours neighbours(Reach reach) const {
    std::vector<std::vector<Bounds>> bounds;
    for (const Stretch& stretch : stretches) bounds.push_back({bounds_with_reach(stretch, reach)});
    return LineNeighbours(bounds);
  }
};

TEST(LineNeighbours, LeaveOutOnlyWhatIsFarApart) {
  oracles::Random random(72);
  const ScatteredLines lines(random);
  for (const Reach reach : {Reach::none, Reach::likely, Reach::bound}) {
    const LineNeighbours neighbours = lines.neighbours(reach);
    std::size_t left_out = 0;
    for (std::size_t i = 0; i < lines.stretches.size(); ++i) {
      const double horizon_in = random.between(0, 6);
      const std::vector<std::size_t> after = neighbours.after(i, horizon_in);
      EXPECT_TRUE(std::is_sorted(after.begin(), after.end()));
      const std::vector<std::size_t> near = neighbours.near(lines.stretches[i], reach, horizon_in);
      for (std::size_t j = i + 1; j < lines.stretches.size(); ++j) {
        const bool known = std::binary_search(after.begin(), after.end(), j);
        EXPECT_EQ(known, std::binary_search(near.begin(), near.end(), j));
        if (known) continue;
        ++left_out;
        EXPECT_TRUE(are_far_apart(lines.stretches[i], lines.stretches[j], reach, horizon_in))
            << i << " and " << j;
      }
    }
    EXPECT_GT(left_out, 800u);  // of 1,770 pairs
  }
}

double least_gap_of_chords_in(const Stretch& first, const Stretch& second) {
  double least = std::numeric_limits<double>::infinity();
  for (const PathChord& a : first.chords())
    for (const PathChord& b : second.chords())
      least = std::min(least, nearest(Segment3{a.from, a.to}, Segment3{b.from, b.to}).distance_in);
  return least - first.thickest_radius_in - second.thickest_radius_in;
}

/// To and fro, 30 in each way and 3 in across, so that it has more blocks than are compared in
/// pairs.
std::vector<PathCorner> to_and_fro(Vec3 start, oracles::Random& random) {
  std::vector<PathCorner> corners;
  for (int i = 0; i < 20; ++i) {
    corners.push_back({start + Vec3{0, 3.0 * i, random.between(-1, 1)}, 0});
    corners.push_back({start + Vec3{30, 3.0 * i + 1.5, random.between(-1, 1)}, 0});
  }
  return corners;
}

TEST(NearestLines, OfLongLinesIsTheLeastOfAllTheirChords) {
  oracles::Random random(73);
  for (int round = 0; round < 5; ++round) {
    RouteProject drawn;
    drawn.route(to_and_fro({0, 0, 0}, random));
    drawn.route(to_and_fro(random.point(8) + Vec3{0, 0, 4}, random));
    const PreparedProject prepared = drawn.prepared();
    std::vector<Stretch> lines;
    for (const PreparedRoute& route : prepared.routes)
      lines.push_back(make_stretch(route, 0, route.length_in()));
    ASSERT_GT(lines[0].blocks.size(), 32u);
    const auto found =
        nearest_lines(lines[0], lines[1], Reach::none, 1000, [](double, double) { return true; });
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->gap_in, least_gap_of_chords_in(lines[0], lines[1]), 1e-6);
    // With a horizon that it just reaches it is found, and with less it is not.
    for (const double beyond_in : {0.001, -0.001})
      EXPECT_EQ(nearest_lines(lines[0], lines[1], Reach::none, found->gap_in + beyond_in,
                              [](double, double) { return true; })
                    .has_value(),
                beyond_in > 0);
  }
}

}  // namespace
}  // namespace linewright
