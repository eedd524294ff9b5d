#include "lines/runs_by_place.hpp"

#include <gtest/gtest.h>

#include "oracles/random_path.hpp"

namespace linewright {
namespace {

/// Runs of up to four legs over three routes, whose pieces are 10 in long.
std::vector<FreeRun> random_runs(oracles::Random& random) {
  std::vector<FreeRun> runs(200);
  for (FreeRun& run : runs) {
    const int legs = random.whole(1, 4);
    for (int i = 0; i < legs; ++i) {
      const double low_in = 10.0 * random.whole(0, 9);
      const bool forward = random.whole(0, 1) == 0;
      run.legs.push_back(
          {random.whole(0, 2), forward ? low_in : low_in + 10, forward ? low_in + 10 : low_in});
      run.length_in += 10;
    }
  }
  return runs;
}

TEST(RunsByPlace, FindsTheLegsOverAPieceInTheOrderOfTheRuns) {
  oracles::Random random(74);
  const std::vector<FreeRun> runs = random_runs(random);
  for (int route = 0; route < 3; ++route) {
    const RunsByPlace by_place(runs, route);
    for (double low_in = 0; low_in < 100; low_in += 10) {
      std::vector<std::pair<const RunLeg*, double>> wanted;
      for (const FreeRun& run : runs) {
        double walked_in = 0;
        for (const RunLeg& leg : run.legs) {
          if (leg.route == route && leg.low_in() == low_in) wanted.emplace_back(&leg, walked_in);
          walked_in += leg.length_in();
        }
      }
      std::vector<std::pair<const RunLeg*, double>> found;
      for (const LegOfRun& each : by_place.over(low_in, low_in + 10))
        found.emplace_back(each.leg, each.walked_in);
      EXPECT_FALSE(wanted.empty());
      EXPECT_EQ(found, wanted);
    }
  }
}

TEST(RunsByPlace, APieceThatEndsElsewhereIsAnother) {
  std::vector<FreeRun> runs(1);
  runs[0].legs = {{0, 0, 10}};
  EXPECT_EQ(RunsByPlace(runs, 0).over(0, 10).size(), 1u);
  EXPECT_TRUE(RunsByPlace(runs, 0).over(0, 9).empty());
  EXPECT_TRUE(RunsByPlace(runs, 1).over(0, 10).empty());
}

}  // namespace
}  // namespace linewright
