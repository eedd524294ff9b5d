#include "geometry/structure/mover_sweep.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

using oracles::Random;

Mover bellcrank() {
  Mover mover;
  mover.name = "elevator-bellcrank";
  mover.pivot = {205, 0, 10};
  mover.axis = {0, 2, 0};
  mover.points = {{205, 0, 14}, {205, 0, 6}};
  mover.radius_in = 0.4;
  mover.sweep_from_deg = -28;
  mover.sweep_to_deg = 24;
  return mover;
}

double least_distance(Vec3 point, const std::vector<SweptSegment>& swept) {
  double least_in = std::numeric_limits<double>::infinity();
  for (const auto& [segment, radius_in, piece] : swept)
    least_in = std::min(least_in, nearest(point, segment).distance_in - radius_in);
  return least_in;
}

TEST(MoverSweep, TurnByTheRightHandRule) {
  Mover mover = bellcrank();
  mover.sweep_from_deg = mover.sweep_to_deg = 90;
  const auto swept = sweep(mover);
  ASSERT_EQ(swept.size(), 1u);
  // About +BL, up (WL) turns aft (FS): the upper end at 4 in arm lands at FS 209.
  EXPECT_NEAR(distance(swept[0].segment.a, {209, 0, 10}), 0, 1e-12);
  EXPECT_NEAR(swept[0].radius_in, 0.4, 1e-12);
}

TEST(MoverSweep, AreSwollenByNoMoreThanTheStatedStray) {
  const auto swept = sweep(bellcrank());
  for (const SweptSegment& position : swept)
    EXPECT_LE(position.radius_in, 0.4 + sweep_stray_in + 1e-12);
  // Clear of the arc's top by 1 in: the gap is understated by the swelling alone.
  const double gap_in = least_distance(Vec3{205, 0, 15.4}, swept);
  EXPECT_LE(gap_in, 1);
  EXPECT_GE(gap_in, 1 - 0.0055);
}

TEST(MoverSweep, ALongSweepIsCutIntoFewEnoughSteps) {
  Mover mover = bellcrank();
  mover.points = {{205, 0, 60}};
  mover.sweep_from_deg = -180;
  mover.sweep_to_deg = 180;
  EXPECT_EQ(sweep(mover).size(), most_sweep_steps + 1u);
}

/// The mover's chain at one angle, by Rodrigues' formula.
std::vector<Segment3> chain_at(const Mover& mover, double angle_deg) {
  const double angle_rad = angle_deg * std::numbers::pi / 180;
  const Vec3 k = unit(mover.axis);
  const auto place = [&](Vec3 p) {
    const Vec3 v = p - mover.pivot;
    return mover.pivot + v * std::cos(angle_rad) + cross(k, v) * std::sin(angle_rad) +
           k * (dot(k, v) * (1 - std::cos(angle_rad)));
  };
  if (mover.points.size() == 1) return {{place(mover.points[0]), place(mover.points[0])}};
  std::vector<Segment3> chain;
  for (std::size_t i = 0; i + 1 < mover.points.size(); ++i)
    chain.push_back({place(mover.points[i]), place(mover.points[i + 1])});
  return chain;
}

Mover random_mover(Random& random, double arm_in) {
  Mover mover;
  mover.pivot = random.point(20);
  mover.axis = random.direction() * random.between(0.1, 5);
  for (int corner = random.whole(1, 3); corner > 0; --corner)
    mover.points.push_back(mover.pivot + random.point(arm_in));
  mover.radius_in = random.between(0, 0.5);
  mover.sweep_from_deg = random.between(-180, 180);
  mover.sweep_to_deg = random.between(-180, 180);
  return mover;
}

TEST(MoverSweep, NoPlaceBetweenStepsIsMissed) {
  Random random(223);
  for (int i = 0; i < 60; ++i) {
    const Mover mover = random_mover(random, i % 3 == 0 ? 80 : 6);
    const auto swept = sweep(mover);
    for (int j = 0; j < 30; ++j) {
      const double angle_deg = random.between(std::min(mover.sweep_from_deg, mover.sweep_to_deg),
                                              std::max(mover.sweep_from_deg, mover.sweep_to_deg));
      const std::vector<Segment3> chain = chain_at(mover, angle_deg);
      const Segment3& touched = chain[static_cast<std::size_t>(j) % chain.size()];
      const Vec3 on_the_mover = between(touched.a, touched.b, random.between(0, 1));
      ASSERT_LE(least_distance(on_the_mover, swept), -mover.radius_in + 1e-9);

      const Vec3 beside_it = mover.pivot + random.point(8);
      double exact_in = std::numeric_limits<double>::infinity();
      for (const Segment3& segment : chain)
        exact_in = std::min(exact_in, nearest(beside_it, segment).distance_in - mover.radius_in);
      ASSERT_GE(exact_in, least_distance(beside_it, swept) - 1e-9);
    }
  }
}

}  // namespace
}  // namespace linewright
