// Water standing in pipework whose vertices have heights. Hand cases use a bore of 2/sqrt(pi) in,
// of which an inch holds a cubic inch.

#include "physics/drainage.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <queue>
#include <vector>

#include "oracles/random_path.hpp"

namespace linewright {
namespace {

const double inch_per_in3_bore = 2 / std::sqrt(std::numbers::pi);

/// A line through vertices of these heights, each reach `length_in` long, with outlets.
WaterNetwork line_of(const std::vector<double>& heights, double length_in,
                     const std::vector<int>& outlets) {
  WaterNetwork network{heights, {}, outlets};
  for (std::size_t i = 1; i < heights.size(); ++i)
    network.reaches.push_back(
        {static_cast<int>(i) - 1, static_cast<int>(i), length_in, inch_per_in3_bore});
  return network;
}

TEST(StandingPools, ALineThatFallsToItsOutletHoldsNothing) {
  EXPECT_TRUE(standing_pools(line_of({5, 4, 3, 0}, 10, {3})).empty());
}

TEST(StandingPools, ALevelLineHoldsNothing) {
  EXPECT_TRUE(standing_pools(line_of({3, 3, 3}, 10, {0})).empty());
}

TEST(StandingPools, ALineThatRisesFromItsPortAndFallsToADrainHoldsNothing) {
  EXPECT_TRUE(standing_pools(line_of({0, 4, -2}, 10, {0, 2})).empty());
}

TEST(StandingPools, ALowPointHoldsWaterUpToTheLowerOfItsTwoCrests) {
  // From the port at 6 down 4 over 10 in, then up 8: water spills at the port. The near leg is
  // full, of the far one the lower half: 10 + 5 in of bore.
  const auto pools = standing_pools(line_of({6, 2, 10}, 10, {0}));
  ASSERT_EQ(pools.size(), 1u);
  EXPECT_EQ(pools[0].lowest, 1);
  EXPECT_EQ(pools[0].crest, 0);
  EXPECT_DOUBLE_EQ(pools[0].level_in, 6);
  EXPECT_DOUBLE_EQ(pools[0].depth_in, 4);
  EXPECT_NEAR(pools[0].volume_in3, 15, 1e-12);
  EXPECT_EQ(pools[0].vertices, std::vector<int>{1});
  ASSERT_EQ(pools[0].parts.size(), 2u);
  EXPECT_DOUBLE_EQ(pools[0].parts[1].from, 0);
  EXPECT_DOUBLE_EQ(pools[0].parts[1].to, 0.5);
}

TEST(StandingPools, ATailBelowTheOutletHoldsWater) {
  // A drain half-way down a vertical tail: what hangs below it, 10 in, stays full.
  const auto pools = standing_pools(line_of({20, 10, 0}, 10, {1}));
  ASSERT_EQ(pools.size(), 1u);
  EXPECT_EQ(pools[0].lowest, 2);
  EXPECT_DOUBLE_EQ(pools[0].depth_in, 10);
  EXPECT_NEAR(pools[0].volume_in3, 10, 1e-12);
}

TEST(StandingPools, ADrainAtTheLowPointEmptiesIt) {
  EXPECT_TRUE(standing_pools(line_of({6, 2, 10}, 10, {0, 1})).empty());
}

TEST(StandingPools, TwoLowPointsApartAreTwoPools) {
  // Crests at 5 and 4 between the low points 1 and 2.
  const auto pools = standing_pools(line_of({5, 1, 4, 2, 9}, 10, {0}));
  // Both spill over the port at 5, which is above the hump at 4: one pool.
  ASSERT_EQ(pools.size(), 1u);
  EXPECT_EQ(pools[0].vertices, (std::vector<int>{1, 2, 3}));
  const auto apart = standing_pools(line_of({3, 1, 4, 2, 9}, 10, {0}));
  ASSERT_EQ(apart.size(), 2u);
  EXPECT_DOUBLE_EQ(apart[0].depth_in, 2);
  EXPECT_DOUBLE_EQ(apart[1].depth_in, 2);
  EXPECT_EQ(apart[1].crest, 2);
}

TEST(StandingPools, WaterLeavesALoopByItsLowerSide) {
  // A ring 0-1-2-3-0: the port is 0, the low point 2; one side rises to 9, the other to 4.
  WaterNetwork ring{{0, 9, 1, 4}, {}, {0}};
  for (const auto& [from, to] : std::vector<std::pair<int, int>>{{0, 1}, {1, 2}, {2, 3}, {3, 0}})
    ring.reaches.push_back({from, to, 10, inch_per_in3_bore});
  const auto pools = standing_pools(ring);
  ASSERT_EQ(pools.size(), 1u);
  EXPECT_EQ(pools[0].crest, 3);
  EXPECT_DOUBLE_EQ(pools[0].depth_in, 3);
  // The side to 4 is full, of the side to 9 three eighths.
  EXPECT_NEAR(pools[0].volume_in3, 10 + 10 * 3.0 / 8, 1e-12);
}

TEST(StandingPools, WithoutAnOutletAllOfItIsFull) {
  const auto pools = standing_pools(line_of({1, 2, 3}, 10, {}));
  ASSERT_EQ(pools.size(), 1u);
  EXPECT_EQ(pools[0].crest, -1);
  EXPECT_TRUE(std::isinf(pools[0].depth_in));
  EXPECT_NEAR(pools[0].volume_in3, 20, 1e-12);
  EXPECT_TRUE(pools[0].closes_bore);
}

// [Calculated: a level bore is full when water stands as deep as it is wide.]
TEST(StandingPools, APoolClosesTheBoreFromTheBoresOwnDepth) {
  const auto depth_of_bore = [](double depth_in) {
    // Nearly level at the bottom: the slopes are 1 in 100.
    WaterNetwork network{{0, -depth_in, 1}, {{0, 1, 100 * depth_in, 0.18}, {1, 2, 100, 0.18}}, {0}};
    return standing_pools(network).at(0);
  };
  EXPECT_FALSE(depth_of_bore(0.179).closes_bore);
  EXPECT_TRUE(depth_of_bore(0.181).closes_bore);
  EXPECT_DOUBLE_EQ(depth_of_bore(0.181).bore_in, 0.18);
}

TEST(StandingPools, ASteepTailIsClosedSoonerByTheCosineOfItsSlope) {
  // Slope 4 in 5: the bore's upright extent is three fifths of its diameter of 0.2 in.
  const auto tail = [](double depth_in) {
    WaterNetwork network{{0, -depth_in}, {{0, 1, depth_in * 5 / 4, 0.2}}, {0}};
    return standing_pools(network).at(0);
  };
  EXPECT_FALSE(tail(0.119).closes_bore);
  EXPECT_TRUE(tail(0.121).closes_bore);
}

// The slow and obvious way. Pipes are cut into short pieces. Water at a place gets out when
// some outlet is joined to it by pipe that lies nowhere above a level; the spill level is the
// lowest such level, found by trying the heights of all places.

WaterNetwork cut_fine(const WaterNetwork& network, int pieces) {
  WaterNetwork fine{network.height_in, {}, network.outlets};
  for (const WaterReach& reach : network.reaches) {
    int last = reach.from;
    const double from_in = network.height_in[static_cast<std::size_t>(reach.from)];
    const double to_in = network.height_in[static_cast<std::size_t>(reach.to)];
    for (int i = 1; i <= pieces; ++i) {
      int next = reach.to;
      if (i < pieces) {
        next = static_cast<int>(fine.height_in.size());
        fine.height_in.push_back(from_in + (to_in - from_in) * i / pieces);
      }
      fine.reaches.push_back({last, next, reach.length_in / pieces, reach.bore_in});
      last = next;
    }
  }
  return fine;
}

std::vector<std::vector<std::size_t>> neighbours_of(const WaterNetwork& network) {
  std::vector<std::vector<std::size_t>> neighbours(network.height_in.size());
  for (const WaterReach& reach : network.reaches) {
    neighbours[static_cast<std::size_t>(reach.from)].push_back(static_cast<std::size_t>(reach.to));
    neighbours[static_cast<std::size_t>(reach.to)].push_back(static_cast<std::size_t>(reach.from));
  }
  return neighbours;
}

std::vector<bool> joined_to_outlet_below(const WaterNetwork& network,
                                         const std::vector<std::vector<std::size_t>>& neighbours,
                                         double level_in) {
  std::vector<bool> met(network.height_in.size(), false);
  std::queue<std::size_t> waiting;
  const auto meet = [&](std::size_t place) {
    if (met[place] || network.height_in[place] > level_in) return;
    met[place] = true;
    waiting.push(place);
  };
  for (const int outlet : network.outlets) meet(static_cast<std::size_t>(outlet));
  while (!waiting.empty()) {
    const std::size_t place = waiting.front();
    waiting.pop();
    for (const std::size_t next : neighbours[place]) meet(next);
  }
  return met;
}

/// Spill level of every place; infinite where there is none.
std::vector<double> searched_levels(const WaterNetwork& network) {
  const auto neighbours = neighbours_of(network);
  std::vector<double> candidates = network.height_in;
  std::sort(candidates.begin(), candidates.end());
  std::vector<double> levels(network.height_in.size(), std::numeric_limits<double>::infinity());
  for (auto level = candidates.rbegin(); level != candidates.rend(); ++level) {
    const std::vector<bool> met = joined_to_outlet_below(network, neighbours, *level);
    for (std::size_t i = 0; i < levels.size(); ++i)
      if (met[i]) levels[i] = *level;
  }
  return levels;
}

double volume_in3(const WaterReach& reach) {
  return std::numbers::pi / 4 * reach.bore_in * reach.bore_in * reach.length_in;
}

/// Trees with a few loops; heights are whole numbers in one network of three, so that many tie.
WaterNetwork random_network(oracles::Random& random) {
  WaterNetwork network;
  const int vertices = random.whole(2, 9);
  const bool ties = random.whole(0, 2) == 0;
  for (int i = 0; i < vertices; ++i) {
    network.height_in.push_back(ties ? random.whole(0, 4) : random.between(0, 10));
    if (i > 0) network.reaches.push_back({random.whole(0, i - 1), i, 0, 0});
    if (random.whole(0, 3) == 0) network.outlets.push_back(i);
  }
  for (int loops = random.whole(0, 3); loops > 0; --loops)
    network.reaches.push_back({random.whole(0, vertices - 1), random.whole(0, vertices - 1), 0, 0});
  for (WaterReach& reach : network.reaches) {
    const double rise = std::abs(network.height_in[static_cast<std::size_t>(reach.from)] -
                                 network.height_in[static_cast<std::size_t>(reach.to)]);
    reach.length_in = rise * random.between(1, 3) + random.between(0.1, 1);
    reach.bore_in = random.between(0.1, 0.3);
  }
  return network;
}

TEST(StandingPoolsProperty, LevelsAndVolumesMatchASearchOfFinelyCutPipes) {
  constexpr int pieces = 16;
  oracles::Random random(20'251);
  int with_pools = 0;
  for (int trial = 0; trial < 400; ++trial) {
    SCOPED_TRACE(trial);
    const WaterNetwork network = random_network(random);
    const WaterNetwork fine = cut_fine(network, pieces);
    const std::vector<double> searched = searched_levels(fine);
    const SpillLevels spill = spill_levels(network);
    for (std::size_t i = 0; i < network.height_in.size(); ++i)
      EXPECT_DOUBLE_EQ(spill.level_in[i], searched[i]) << "vertex " << i;

    // A short piece is wet, dry or half, where it meets the water's edge: one such piece a reach.
    double wet_in3 = 0;
    double edge_in3 = 0;
    for (const WaterReach& reach : fine.reaches) {
      const auto is_wet = [&](int place) {
        return searched[static_cast<std::size_t>(place)] >
               fine.height_in[static_cast<std::size_t>(place)];
      };
      wet_in3 += volume_in3(reach) * (is_wet(reach.from) + is_wet(reach.to)) / 2;
    }
    for (const WaterReach& reach : network.reaches) edge_in3 += volume_in3(reach) / pieces;
    double found_in3 = 0;
    for (const Pool& pool : standing_pools(network)) {
      found_in3 += pool.volume_in3;
      for (const int vertex : pool.vertices)
        EXPECT_DOUBLE_EQ(spill.level_in[static_cast<std::size_t>(vertex)], pool.level_in);
      ++with_pools;
    }
    EXPECT_NEAR(found_in3, wet_in3, edge_in3 + 1e-12);
  }
  EXPECT_GT(with_pools, 200);
}

TEST(StandingPoolsProperty, ADrainAtTheLowestPlaceNeverAddsWater) {
  oracles::Random random(77);
  int drained = 0;
  for (int trial = 0; trial < 300; ++trial) {
    SCOPED_TRACE(trial);
    WaterNetwork network = random_network(random);
    for (std::size_t drains = 0; drains <= network.height_in.size(); ++drains) {
      const std::vector<Pool> pools = standing_pools(network);
      if (pools.empty()) break;
      double before = 0;
      for (const Pool& pool : pools) before += pool.volume_in3;
      network.outlets.push_back(pools.front().lowest);
      double after = 0;
      for (const Pool& pool : standing_pools(network)) after += pool.volume_in3;
      EXPECT_LT(after, before);
      ++drained;
    }
    EXPECT_TRUE(standing_pools(network).empty());
  }
  EXPECT_GT(drained, 200);
}

}  // namespace
}  // namespace linewright
