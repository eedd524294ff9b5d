// A bend schedule read back into corners, and what holds for every schedule, on random routes in
// space from fixed seeds.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "oracles/random_path.hpp"
#include "planning/cutlist.hpp"
#include "planning/tube_project.hpp"

namespace linewright {
namespace {

using oracles::Random;
using oracles::RigidMotion;
using std::numbers::pi;

void expect_near(Vec3 actual, Vec3 expected, double tolerance) {
  EXPECT_LE(distance(actual, expected), tolerance);
}

TEST(CornersFromSchedule, BuildsTheTubeThatTheStepsDescribe) {
  RouteCut cut;
  BendStep first;
  first.radius_in = 2;
  first.angle_deg = 90;
  first.straight_before_in = 8;
  BendStep second = first;
  second.rotation_deg = 90;
  second.straight_before_in = 5;
  cut.bends = {first, second};
  cut.straight_after_in = 4;
  const auto corners = corners_from_schedule(cut, {0, 0, 0}, {3, 0, 0}, {7, 1, 0});
  ASSERT_EQ(corners.size(), 4u);
  expect_near(corners[1], {10, 0, 0}, 1e-12);
  expect_near(corners[2], {10, 9, 0}, 1e-12);
  expect_near(corners[3], {10, 9, 6}, 1e-12);
}

TEST(CornersFromSchedule, TubeWithoutBendsEndsStraightAhead) {
  const auto corners =
      corners_from_schedule(cut_along({{{1, 2, 3}, 0}, {{4, 6, 3}, 0}}), {1, 2, 3}, {3, 4, 0}, {});
  ASSERT_EQ(corners.size(), 2u);
  expect_near(corners[1], {4, 6, 3}, 1e-12);
}

void expect_schedule_leads_back(const std::vector<PathCorner>& corners) {
  const RouteCut cut = cut_along(corners);
  const Vec3 direction = corners[1].at - corners[0].at;
  const Vec3 towards = corners[2].at - corners[1].at;
  const auto rebuilt = corners_from_schedule(cut, corners[0].at, direction, towards);
  ASSERT_EQ(rebuilt.size(), corners.size());
  for (std::size_t i = 0; i < corners.size(); ++i) expect_near(rebuilt[i], corners[i].at, 1e-9);
}

TEST(CornersFromSchedule, LeadsBackToTheCornersOfRandomRoutes) {
  Random random(42);
  for (int trial = 0; trial < 300; ++trial) {
    SCOPED_TRACE(trial);
    expect_schedule_leads_back(oracles::fitting_path(random, random.whole(3, 20)));
  }
}

TEST(CornersFromSchedule, LeadsBackEvenWhereBendsOverlap) {
  expect_schedule_leads_back(
      {{{0, 0, 0}, 0}, {{10, 0, 0}, 2}, {{10, 3, 0}, 2}, {{10, 3, 9}, 2}, {{0, 3, 9}, 0}});
}

/// The corners of a tube bent as the schedule's words say: the bender lies at the origin and stands
/// still, what is not bent yet runs along +x, and each bend turns it toward +y. Before a bend all
/// that is bent goes on by what lies between, and is turned about the line by the rotation, the
/// thumb of the right hand toward -x, where the first node is.
std::vector<Vec3> bent_at_the_bench(const RouteCut& cut) {
  const auto turned_about_x = [](Vec3 at, double angle_rad) {
    return Vec3{at.x, at.y * std::cos(angle_rad) - at.z * std::sin(angle_rad),
                at.y * std::sin(angle_rad) + at.z * std::cos(angle_rad)};
  };
  const auto turned_about_z = [](Vec3 at, double angle_rad) {
    return Vec3{at.x * std::cos(angle_rad) - at.y * std::sin(angle_rad),
                at.x * std::sin(angle_rad) + at.y * std::cos(angle_rad), at.z};
  };
  std::vector<Vec3> corners{{0, 0, 0}};
  double behind_in = 0;
  for (const BendStep& bend : cut.bends) {
    const double angle_rad = bend.angle_deg * pi / 180;
    const double tangent_in = bend.radius_in * std::tan(angle_rad / 2);
    for (Vec3& corner : corners) {
      corner.x -= behind_in + bend.straight_before_in + tangent_in;
      corner = turned_about_x(corner, -bend.rotation_deg * pi / 180);
    }
    corners.push_back({0, 0, 0});
    // The rest turns toward +y; seen along the rest, what is bent turns back by as much.
    for (Vec3& corner : corners) corner = turned_about_z(corner, -angle_rad);
    behind_in = tangent_in;
  }
  corners.push_back({behind_in + cut.straight_after_in, 0, 0});
  return corners;
}

/// Six times the volume of the tetrahedron of four places: its sign is that of their hand.
double handed_volume(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
  return dot(b - a, cross(c - a, d - a));
}

/// Both are one shape, and not one the mirror image of the other.
void expect_same_shape(const std::vector<Vec3>& bent, const std::vector<PathCorner>& drawn) {
  ASSERT_EQ(bent.size(), drawn.size());
  for (std::size_t i = 0; i < bent.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      EXPECT_NEAR(distance(bent[i], bent[j]), distance(drawn[i].at, drawn[j].at), 1e-8);
  for (std::size_t i = 3; i < bent.size(); ++i) {
    const double volume_in3 =
        handed_volume(drawn[i - 3].at, drawn[i - 2].at, drawn[i - 1].at, drawn[i].at);
    EXPECT_NEAR(handed_volume(bent[i - 3], bent[i - 2], bent[i - 1], bent[i]), volume_in3,
                1e-9 * (1 + std::abs(volume_in3)));
  }
}

// Legs of 10 in aft, to the right and up span a cube of one hand, aft, to the left and up one of
// the other: FS, BL and WL are a right-handed frame.
TEST(BendSchedule, BentAsTheWordsSayALineIsNotItsMirrorImage) {
  for (const double side : {1.0, -1.0}) {
    const std::vector<PathCorner> drawn{
        {{0, 0, 0}, 0}, {{10, 0, 0}, 1}, {{10, side * 10, 0}, 1}, {{10, side * 10, 10}, 0}};
    const RouteCut cut = cut_along(drawn);
    EXPECT_DOUBLE_EQ(cut.bends.at(1).rotation_deg, side * 90);
    const std::vector<Vec3> bent = bent_at_the_bench(cut);
    EXPECT_NEAR(handed_volume(bent[0], bent[1], bent[2], bent[3]), side * 1000, 1e-9);
    expect_same_shape(bent, drawn);
  }
}

TEST(BendSchedule, BentAsTheWordsSayRandomRoutesComeOutAsDrawn) {
  Random random(4);
  for (int trial = 0; trial < 200; ++trial) {
    SCOPED_TRACE(trial);
    const auto drawn = oracles::fitting_path(random, random.whole(4, 12));
    expect_same_shape(bent_at_the_bench(cut_along(drawn)), drawn);
  }
}

TEST(BendSchedule, ScheduleDoesNotDependOnWhereTheRouteLies) {
  Random random(77);
  for (int trial = 0; trial < 100; ++trial) {
    SCOPED_TRACE(trial);
    const auto corners = oracles::fitting_path(random, random.whole(3, 12));
    const RouteCut here = cut_along(corners);
    const RouteCut there = cut_along(RigidMotion(random).move(corners));
    ASSERT_EQ(here.bends.size(), there.bends.size());
    for (std::size_t i = 0; i < here.bends.size(); ++i) {
      EXPECT_NEAR(here.bends[i].straight_before_in, there.bends[i].straight_before_in, 1e-9);
      EXPECT_NEAR(here.bends[i].angle_deg, there.bends[i].angle_deg, 1e-8);
      // Compared as angles: 180 and nearly -180 are neighbours.
      EXPECT_NEAR(std::remainder(here.bends[i].rotation_deg - there.bends[i].rotation_deg, 360), 0,
                  1e-8);
    }
  }
}

TEST(BendSchedule, MarksAndStraightsAddUpToTheLength) {
  Random random(78);
  for (int trial = 0; trial < 100; ++trial) {
    SCOPED_TRACE(trial);
    const RouteCut cut = cut_along(oracles::fitting_path(random, random.whole(2, 20)));
    double reached_in = 0;
    for (const BendStep& bend : cut.bends) {
      EXPECT_NEAR(bend.mark_start_in, reached_in + bend.straight_before_in, 1e-10);
      EXPECT_NEAR(bend.mark_end_in - bend.mark_start_in, bend.radius_in * bend.angle_deg * pi / 180,
                  1e-10);
      reached_in = bend.mark_end_in;
    }
    EXPECT_NEAR(cut.length_in, reached_in + cut.straight_after_in, 1e-10);
  }
}

}  // namespace
}  // namespace linewright
