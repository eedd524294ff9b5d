#include "geometry/minimise.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace linewright {
namespace {

TEST(MinimiseConvex, FindsTheBottomOfAParabola) {
  const Minimum found = minimise_convex([](double x) { return (x - 3) * (x - 3) + 4; }, 0, 10);
  EXPECT_NEAR(found.at, 3, 1e-7);  // a smooth minimum fixes its place to the root of precision
  EXPECT_NEAR(found.value, 4, 1e-14);
}

TEST(MinimiseConvex, FindsASharpCornerToItsTolerance) {
  const Minimum found = minimise_convex([](double x) { return std::abs(x - 0.3); }, -1, 1, 1e-7);
  EXPECT_NEAR(found.at, 0.3, 2e-7);  // a share of the interval, which is 2 long
  EXPECT_NEAR(found.value, 0, 2e-7);
}

TEST(MinimiseConvex, IsExactAtTheEndsOfAMonotoneFunction) {
  const Minimum rising = minimise_convex([](double x) { return std::exp(x); }, 0, 5);
  EXPECT_EQ(rising.at, 0);
  EXPECT_EQ(rising.value, 1);
  const Minimum falling = minimise_convex([](double x) { return -x; }, 0, 5);
  EXPECT_EQ(falling.at, 5);
  EXPECT_EQ(falling.value, -5);
}

TEST(MinimiseKnownConvex, LooksThreeTimesAtAMonotoneFunction) {
  int looks = 0;
  const auto rising = [&looks](double x) {
    ++looks;
    return x;
  };
  EXPECT_EQ(minimise_known_convex(rising, 2, 5, 1e-4).value, 2);
  EXPECT_EQ(looks, 3);
  const auto falling = [](double x) { return -x; };
  EXPECT_EQ(minimise_known_convex(falling, 2, 5, 1e-4).at, 5);
}

TEST(MinimiseKnownConvex, IsTheSameAsByBrentsMethodAlone) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> number(-1, 2);
  for (int i = 0; i < 1000; ++i) {
    const double low = number(random), steep = 0.1 + std::abs(number(random));
    const auto skew = [=](double x) { return steep * std::max(low - x, 3 * (x - low)); };
    EXPECT_NEAR(minimise_known_convex(skew, 0, 1, 1e-6).value,
                minimise_convex(skew, 0, 1, 1e-6).value, 3e-6 * 3 * steep)
        << low;
  }
}

// Brent's method stops at half the bits of a double.
TEST(MinimiseKnownConvex, FindsAMinimumJustInsideAnEnd) {
  for (const double inside : {1e-3, 1e-5, 1e-7}) {
    const auto sharp = [inside](double x) { return std::abs(x - inside); };
    EXPECT_NEAR(minimise_known_convex(sharp, 0, 1, 1e-9).value, 0, 5e-8) << inside;
    const auto sharp_at_the_other = [&](double x) { return sharp(1 - x); };
    EXPECT_NEAR(minimise_known_convex(sharp_at_the_other, 0, 1, 1e-9).value, 0, 5e-8) << inside;
  }
}

TEST(MinimiseConvex, HandlesAnIntervalOfNoLengthAndAFlatFunction) {
  EXPECT_EQ(minimise_convex([](double x) { return x * x; }, 2, 2).value, 4);
  EXPECT_EQ(minimise_convex([](double) { return 7.0; }, 0, 1).value, 7);
}

TEST(MinimiseConvex, ReachesTheDistanceFromAPointToALineInClosedForm) {
  std::mt19937 random(41);
  std::uniform_real_distribution<double> number(-100, 100);
  for (int i = 0; i < 1000; ++i) {
    const double along = number(random), height = number(random);
    const auto gap = [&](double x) { return std::hypot(x - along, height); };
    ASSERT_NEAR(minimise_convex(gap, -150, 150).value, std::abs(height), 1e-9);
  }
}

TEST(MinimiseBoundedSlope, FindsTheDeepestOfManyDips) {
  // sin(x) + sin(10 x / 3) on [2.7, 7.5] has its least value -1.899599 at 5.145735: a common test
  // function of one-dimensional global search. Its slope stays under 1 + 10/3.
  const auto dips = [](double x) { return std::sin(x) + std::sin(10 * x / 3); };
  const Minimum found = minimise_bounded_slope(dips, 2.7, 7.5, 1 + 10.0 / 3);
  EXPECT_NEAR(found.value, -1.899599, 2e-6);
  EXPECT_NEAR(found.at, 5.145735, 1e-3);
}

TEST(MinimiseBoundedSlope, FindsANarrowSpikeThatSamplesMiss) {
  const double place = 0.123456;
  const auto spike = [place](double x) { return std::min(1.0, 1000 * std::abs(x - place)); };
  const Minimum found = minimise_bounded_slope(spike, 0, 1, 1000, 1e-5);
  EXPECT_NEAR(found.at, place, 1e-7);
  EXPECT_LE(found.value, 1e-5);
}

TEST(MinimiseBoundedSlope, StaysWithinToleranceOfTheClosedForm) {
  std::mt19937 random(43);
  std::uniform_real_distribution<double> number(0, 1);
  constexpr double tolerance = 1e-4;
  for (int i = 0; i < 50; ++i) {
    const double size = 1 + 9 * number(random), rate = 1 + 5 * number(random),
                 phase = 6 * number(random);
    // More than one whole wave fits the interval, so the least value is -size.
    const auto wave = [&](double x) { return size * std::cos(rate * x + phase); };
    const double found =
        minimise_bounded_slope(wave, 0, 4 * std::numbers::pi, size * rate, tolerance).value;
    ASSERT_GE(found, -size);
    ASSERT_LE(found, -size + tolerance);
  }
}

TEST(MinimiseBoundedSlope, LooksAtBothEnds) {
  EXPECT_EQ(minimise_bounded_slope([](double x) { return x; }, 1, 2, 1).value, 1);
  EXPECT_EQ(minimise_bounded_slope([](double x) { return -x; }, 1, 2, 1).value, -2);
}

}  // namespace
}  // namespace linewright
