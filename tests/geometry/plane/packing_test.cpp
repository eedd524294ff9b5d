#include "geometry/plane/packing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace linewright {
namespace {

// Bisected to 0.0005 of the largest circle, and given as what was found to hold them.
constexpr double found_in = 0.001;

TEST(Packing, OneAndTwoTakeTheirDiameters) {
  EXPECT_EQ(packed_diameter({}), 0);
  EXPECT_EQ(packed_diameter({0.25}), 0.25);
  EXPECT_EQ(packed_diameter({0.25, 0.125}), 0.375);
}

TEST(Packing, EqualCirclesTakeWhatIsKnown) {
  // Circles of unit diameter in the least circle: 1 + 2/root 3, 1 + root 2, 1 + 1/sin 36 deg, 3, 3.
  const std::vector<double> known{1 + 2 / std::sqrt(3.0), 1 + std::sqrt(2.0),
                                  1 + 1 / std::sin(std::acos(-1.0) / 5), 3, 3};
  for (std::size_t i = 0; i < known.size(); ++i) {
    SCOPED_TRACE(i + 3);
    EXPECT_NEAR(packed_diameter(std::vector<double>(i + 3, 1.0)), known[i], found_in);
  }
}

TEST(Packing, ASmallCircleFindsRoomBesideTwo) {
  // Two of 1 fill a circle of 2; what fits beside them there has two thirds of their radius.
  EXPECT_NEAR(packed_diameter({1, 0.3, 1}), 2, found_in);
  EXPECT_NEAR(packed_diameter({1, 1, 2.0 / 3}), 2, found_in);
  EXPECT_GT(packed_diameter({1, 1, 0.7}), 2.002);
}

TEST(Packing, NeverTakesLessThanItsBound) {
  for (const std::vector<double>& each :
       {std::vector<double>{1, 1}, {3, 1, 1}, {1, 2, 3, 4}, std::vector<double>(9, 1.0)})
    EXPECT_GE(packed_diameter(each), packing_bound(each) - 1e-9);
}

}  // namespace
}  // namespace linewright
