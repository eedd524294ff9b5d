#include "rules/sort_by_key.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <memory>
#include <vector>

#include "oracles/random_path.hpp"

namespace linewright {
namespace {

/// What can be moved and not copied, with the place it had.
struct Thing {
  std::unique_ptr<int> key;
  int place = 0;
};

std::vector<Thing> things_by_chance(oracles::Random& random, int count, int keys) {
  std::vector<Thing> things;
  for (int i = 0; i < count; ++i)
    things.push_back({std::make_unique<int>(random.whole(0, keys)), i});
  return things;
}

TEST(SortByKey, IsWhatTheLibrarysStableSortGives) {
  oracles::Random random(1);
  for (const int count : {0, 1, 2, 3, 17, 200})
    for (const int keys : {1, 3, 1000}) {
      std::vector<Thing> things = things_by_chance(random, count, keys);
      std::vector<std::pair<int, int>> expected;
      for (const Thing& each : things) expected.emplace_back(*each.key, each.place);
      std::stable_sort(expected.begin(), expected.end(),
                       [](const auto& a, const auto& b) { return a.first < b.first; });
      sort_by_key(things, [](const Thing& thing) { return *thing.key; });
      std::vector<std::pair<int, int>> sorted;
      for (const Thing& each : things) sorted.emplace_back(*each.key, each.place);
      EXPECT_EQ(sorted, expected) << count << " of " << keys;
    }
}

}  // namespace
}  // namespace linewright
