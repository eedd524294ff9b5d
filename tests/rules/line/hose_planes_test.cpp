// Hoses bent in two planes: TM 1-1500-204-23-2 p. 4-66 [verified] wants a clamp between them. How
// much of a turn and of a tilt counts is [common practice, no source].

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

constexpr double radians_per_degree = std::numbers::pi / 180;

std::size_t twists(Vec3 first_corner, Vec3 second_corner, Vec3 to) {
  SmallProject project;
  project.node("firewall", NodeKind::bulkhead, {0, 0, 0}).node("gauge", NodeKind::instrument, to);
  project.route("pressure", "hose-rubber-1/4", "firewall", "gauge",
                {bent(first_corner, 4), bent(second_corner, 4)});
  std::size_t found = 0;
  for (const Judgement& each : not_passed(project.judged_by("bend-fit")))
    found += contains(each.source, "TM 1-1500-204-23-2 p. 4-66");
  return found;
}

/// Two square bends, the second tilted out of the plane of the first.
std::size_t tilted(double tilt_deg) {
  const double tilt = tilt_deg * radians_per_degree;
  return twists({40, 0, 0}, {40, 40, 0}, {40 + 40 * std::cos(tilt), 40, 40 * std::sin(tilt)});
}

/// A slight turn, and a square one out of its plane.
std::size_t turned(double turn_deg) {
  const double turn = turn_deg * radians_per_degree;
  const Vec3 second{40 + 40 * std::cos(turn), 40 * std::sin(turn), 0};
  return twists({40, 0, 0}, second, {second.x, second.y, 40});
}

TEST(HosePlanes, ThatPartByUpToTenDegreesAreOne) {
  EXPECT_EQ(tilted(9.9), 0u);
  EXPECT_EQ(tilted(10.1), 1u);
}

TEST(HosePlanes, OfATurnOfLessThanFiveDegreesDoNotCount) {
  EXPECT_EQ(turned(4.95), 0u);
  EXPECT_EQ(turned(5.05), 1u);
}

}  // namespace
}  // namespace linewright
