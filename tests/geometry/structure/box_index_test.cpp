#include "geometry/structure/box_index.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "oracles/random_path.hpp"

namespace linewright {
namespace {

Bounds random_box(oracles::Random& random) {
  Bounds box{random.point(50), {}};
  box.max = box.min + Vec3{random.between(0, 8), random.between(0, 8), random.between(0, 8)};
  return box;
}

TEST(BoxIndex, MissesNoBoxThatIsAsNear) {
  oracles::Random random(71);
  std::vector<Bounds> boxes;
  for (int i = 0; i < 400; ++i) boxes.push_back(random_box(random));
  const BoxIndex index(boxes);
  std::size_t found_in_all = 0;
  for (int round = 0; round < 200; ++round) {
    const Bounds wanted = random_box(random);
    const double distance_in = random.between(0, 5);
    const std::vector<std::size_t> found = index.near(wanted, distance_in);
    EXPECT_TRUE(std::is_sorted(found.begin(), found.end()));
    found_in_all += found.size();
    for (std::size_t i = 0; i < boxes.size(); ++i)
      EXPECT_TRUE(least_distance(wanted, boxes[i]) > distance_in ||
                  std::binary_search(found.begin(), found.end(), i))
          << "round " << round << ", box " << i;
  }
  // Of 80,000 pairs few are that near: a box of 13 in at the most, twice, in 100.
  EXPECT_LT(found_in_all, 8000u);
}

TEST(BoxIndex, TakesWhatJustTouches) {
  const BoxIndex index({{{0, 0, 0}, {1, 1, 1}}, {{3, 0, 0}, {4, 1, 1}}});
  EXPECT_EQ(index.near({{1, 1, 1}, {2, 2, 2}}, 0), (std::vector<std::size_t>{0}));
  EXPECT_EQ(index.near({{1, 1, 1}, {2, 2, 2}}, 1), (std::vector<std::size_t>{0, 1}));
}

TEST(BoxIndex, OfNothingFindsNothing) {
  EXPECT_TRUE(BoxIndex({}).near({{0, 0, 0}, {1, 1, 1}}, 100).empty());
}

}  // namespace
}  // namespace linewright
