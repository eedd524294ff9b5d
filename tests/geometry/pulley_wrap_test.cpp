#include "geometry/pulley_wrap.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "oracles/random_path.hpp"
#include "oracles/shortest_string.hpp"

namespace linewright {
namespace {

constexpr double pi = std::numbers::pi;
// Lengths of tens of inches from a handful of operations.
constexpr double rounding_in = 1e-9;

const Vec3 up{0, 0, 1};
const Vec3 down{0, 0, -1};

GivenPlace corner_at(Vec3 at) {
  return {{at, 0}, std::nullopt};
}
GivenPlace pulley_round(Vec3 centre, double radius_in, Vec3 axis) {
  return {{centre, radius_in}, WrapCircle{centre, radius_in, axis}};
}

void expect_at(Vec3 at, Vec3 wanted) {
  EXPECT_LT(distance(at, wanted), rounding_in) << at.x << ", " << at.y << ", " << at.z;
}

void expect_no_faults(const WrappedPath& path) {
  for (const auto& fault : path.faults) EXPECT_FALSE(fault.has_value());
}

TEST(PulleyByCentre, TurnsASquareCornerOverAQuarterOfItsGroove) {
  // Up x to the pulley of radius 1 about (10, 1), then up y: the legs meet at (11, 0).
  const WrappedPath path =
      wrap_pulleys({corner_at({0, 0, 5}), pulley_round({10, 1, 5}, 1, up), corner_at({11, 9, 5})});
  expect_no_faults(path);
  ASSERT_EQ(path.corners.size(), 3u);
  expect_at(path.corners[1].at, {11, 0, 5});
  EXPECT_EQ(path.corners[1].radius_in, 1);
  const Centreline line(path.corners);
  // 10 in to the groove, a quarter of 2 π, 8 in on.
  EXPECT_NEAR(line.length_in(), 10 + pi / 2 + 8, rounding_in);
  ASSERT_EQ(line.bends().size(), 1u);
  EXPECT_TRUE(line.bends()[0].fits);
  EXPECT_NEAR(line.bends()[0].angle_rad, pi / 2, rounding_in);
  expect_at(line.pieces()[1].centre, {10, 1, 5});
}

TEST(PulleyByCentre, TouchesAtTheTangentOfA345Triangle) {
  // From 5 in off the centre of a groove of radius 3 the straight is 4 in on both sides.
  const WrappedPath path =
      wrap_pulleys({corner_at({-5, 0, 0}), pulley_round({0, 0, 0}, 3, down), corner_at({5, 0, 0})});
  expect_no_faults(path);
  const Centreline line(path.corners);
  ASSERT_EQ(line.pieces().size(), 3u);
  EXPECT_NEAR(line.pieces()[0].length_in, 4, rounding_in);
  EXPECT_NEAR(line.pieces()[2].length_in, 4, rounding_in);
  // Clockwise from above goes round by the left-hand side of travel along x: y above zero.
  expect_at(line.at(line.length_in() / 2), {0, 3, 0});
  expect_at(line.pieces()[0].to, {-1.8, 2.4, 0});
}

TEST(PulleyByCentre, PassesOnTheOtherSideWhenItsAxisIsTurned) {
  const auto middle = [](Vec3 axis) {
    const Centreline line(wrap_pulleys({corner_at({-5, 0, 0}), pulley_round({0, 0, 0}, 3, axis),
                                        corner_at({5, 0, 0})})
                              .corners);
    return line.at(line.length_in() / 2);
  };
  expect_at(middle(up), {0, -3, 0});
  expect_at(middle(down), {0, 3, 0});
}

TEST(PulleyByCentre, RunsStraightBetweenTwoAlikeThatTurnTheSameWay) {
  // Open: two grooves of radius 2, 12 in apart, are joined by 12 in of straight beside them.
  const WrappedPath path = wrap_pulleys({corner_at({-2, 8, 0}), pulley_round({0, 2, 0}, 2, up),
                                         pulley_round({12, 2, 0}, 2, up), corner_at({14, 8, 0})});
  expect_no_faults(path);
  expect_at(path.corners[1].at, {-2, 0, 0});
  expect_at(path.corners[2].at, {14, 0, 0});
  EXPECT_NEAR(Centreline(path.corners).length_in(), 6 + pi + 12 + pi + 6, rounding_in);
}

TEST(PulleyByCentre, CrossesBetweenTwoThatTurnOppositeWays) {
  // Centres 5 in apart, radii 2 and 1: the crossing straight is √(25 − 9) = 4 in.
  const WrappedPath path = wrap_pulleys({corner_at({-2, 8, 0}), pulley_round({0, 0, 0}, 2, up),
                                         pulley_round({5, 0, 0}, 1, down), corner_at({9, -6, 0})});
  expect_no_faults(path);
  const Centreline line(path.corners);
  ASSERT_EQ(line.pieces().size(), 5u);
  EXPECT_NEAR(line.pieces()[2].length_in, 4, rounding_in);
  expect_at(line.pieces()[1].centre, {0, 0, 0});
  expect_at(line.pieces()[3].centre, {5, 0, 0});
}

TEST(PulleyByCentre, ThatTheStraightOnlyTouchesDoesNotTurnIt) {
  const WrappedPath path =
      wrap_pulleys({corner_at({0, 0, 0}), pulley_round({10, 1, 0}, 1, up), corner_at({30, 0, 0})});
  expect_no_faults(path);
  const Centreline line(path.corners);
  EXPECT_TRUE(line.bends().empty());
  EXPECT_NEAR(line.length_in(), 30, rounding_in);
}

TEST(PulleyByCentre, TakesALegOutOfItsPlaneSquareOntoIt) {
  const WrappedPath flat =
      wrap_pulleys({corner_at({0, 0, 5}), pulley_round({10, 1, 5}, 1, up), corner_at({11, 9, 5})});
  const WrappedPath raised =
      wrap_pulleys({corner_at({0, 0, 5}), pulley_round({10, 1, 5}, 1, up), corner_at({11, 9, 7})});
  expect_no_faults(raised);
  expect_at(raised.corners[1].at, flat.corners[1].at);
}

TEST(PulleyByCentre, JoinsPulleysWhosePlanesMeetInTheLeg) {
  // From a pulley in the level plane to one in the upright plane, along x at y = 0, z = 0.
  const WrappedPath path =
      wrap_pulleys({corner_at({-1, 9, 0}), pulley_round({0, 1, 0}, 1, up),
                    pulley_round({10, 0, 2}, 2, {0, -1, 0}), corner_at({12, 0, 20})});
  expect_no_faults(path);
  expect_at(path.corners[1].at, {-1, 0, 0});
  expect_at(path.corners[2].at, {12, 0, 0});
}

TEST(PulleyByCentre, CannotBeReachedFromInsideItsGroove) {
  for (const double away : {0.0, 0.5, 1.0}) {
    const WrappedPath path = wrap_pulleys(
        {corner_at({10 - away, 0, 1}), pulley_round({10, 0, 0}, 1, up), corner_at({20, 5, 0})});
    EXPECT_EQ(path.faults[1], WrapFault::no_tangent) << away;
    expect_at(path.corners[1].at, {10, 0, 0});
    EXPECT_EQ(path.corners[1].radius_in, 0);
  }
}

TEST(PulleyByCentre, CannotBeCrossedToOneThatItsGrooveOverlaps) {
  const auto path = [](double apart, Vec3 second_axis) {
    return wrap_pulleys({corner_at({-2, 8, 0}), pulley_round({0, 0, 0}, 2, up),
                         pulley_round({apart, 0, 0}, 1, second_axis), corner_at({9, 6, 0})});
  };
  EXPECT_EQ(path(2.9, down).faults[1], WrapFault::no_tangent);
  EXPECT_EQ(path(2.9, down).faults[2], WrapFault::no_tangent);
  expect_no_faults(path(2.9, up));
}

TEST(PulleyByCentre, IsNotWrappedByHalfATurnOrMoreNorByACableThatMissesIt) {
  const auto fault = [](Vec3 axis, Vec3 to) {
    return wrap_pulleys({corner_at({0, 0, 0}), pulley_round({10, 1, 0}, 1, axis), corner_at(to)})
        .faults[1];
  };
  EXPECT_EQ(fault(up, {0, 2, 0}), WrapFault::half_turn);
  EXPECT_EQ(fault(up, {0, 1, 0}), WrapFault::half_turn);
  EXPECT_EQ(fault(up, {30, -2, 0}), WrapFault::half_turn);  // it passes beside the pulley
  EXPECT_EQ(fault(up, {0, 3, 0}), std::nullopt);
}

TEST(PulleyByCentre, ThatIsGivenUpLeavesTheOthersWhole) {
  const WrappedPath path = wrap_pulleys({corner_at({0, 0, 0}), pulley_round({0.5, 0, 0}, 1, up),
                                         pulley_round({10, 1, 0}, 1, up), corner_at({11, 9, 0})});
  EXPECT_EQ(path.faults[1], WrapFault::no_tangent);
  EXPECT_EQ(path.faults[2], std::nullopt);
  EXPECT_EQ(path.corners[2].radius_in, 1);
}

/// A run of pulleys in one plane that all bear: each turns the cable the way its axis says.
std::vector<GivenPlace> random_run(oracles::Random& random, const oracles::RigidMotion& motion) {
  std::vector<GivenPlace> places{corner_at(motion.move(Vec3{0, 0, 0}))};
  const int count = random.whole(1, 4);
  double heading = random.between(-0.5, 0.5);
  Vec3 at{0, 0, 0};
  for (int i = 0; i < count; ++i) {
    at = at + Vec3{std::cos(heading), std::sin(heading), 0} * random.between(6, 20);
    const bool left = random.whole(0, 1) == 1;
    places.push_back(
        pulley_round(motion.move(at), random.between(0.5, 2.5), motion.turn(left ? up : down)));
    heading += (left ? 1 : -1) * random.between(0.9, 2.2);
  }
  at = at + Vec3{std::cos(heading), std::sin(heading), 0} * random.between(6, 20);
  places.push_back(corner_at(motion.move(at)));
  return places;
}

TEST(PathRoundRandomPulleys, IsAsLongAsTheShortestStringRoundThem) {
  oracles::Random random(401);
  int compared = 0;
  for (int round = 0; round < 60; ++round) {
    const oracles::RigidMotion motion(random);
    const std::vector<GivenPlace> places = random_run(random, motion);
    const WrappedPath path = wrap_pulleys(places);
    bool whole = true;
    for (const auto& fault : path.faults) whole = whole && !fault;
    if (!whole) continue;
    ++compared;
    const Centreline line(path.corners);
    EXPECT_NEAR(line.length_in(), oracles::shortest_string_in(places), 1e-6) << "round " << round;
    for (const Bend& bend : line.bends()) EXPECT_TRUE(bend.fits);
    std::size_t index = 0;
    for (const PathPiece& piece : line.pieces()) {
      if (!piece.is_arc) continue;
      while (index < places.size() &&
             (!places[index].pulley || distance(places[index].pulley->centre, piece.centre) > 1e-6))
        ++index;
      EXPECT_LT(index, places.size()) << "an arc about no pulley's centre";
    }
  }
  EXPECT_GT(compared, 40);
}

TEST(PathRoundRandomPulleys, IsTheSameFromItsOtherEndWithTheAxesTurned) {
  oracles::Random random(402);
  for (int round = 0; round < 200; ++round) {
    const oracles::RigidMotion motion(random);
    std::vector<GivenPlace> places = random_run(random, motion);
    // Out of plane too: tilted by up to 5 degrees or so.
    for (GivenPlace& place : places)
      if (place.pulley)
        place.pulley->axis = unit(place.pulley->axis + random.direction() * random.between(0, 0.1));
    const WrappedPath there = wrap_pulleys(places);
    std::vector<GivenPlace> turned(places.rbegin(), places.rend());
    for (GivenPlace& place : turned)
      if (place.pulley) place.pulley->axis = -place.pulley->axis;
    const WrappedPath back = wrap_pulleys(turned);
    for (std::size_t i = 0; i < places.size(); ++i) {
      const std::size_t j = places.size() - 1 - i;
      ASSERT_EQ(there.faults[i], back.faults[j]) << "round " << round;
      EXPECT_LT(distance(there.corners[i].at, back.corners[j].at), 1e-7) << "round " << round;
    }
  }
}

}  // namespace
}  // namespace linewright
