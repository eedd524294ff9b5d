// What holds for every filleted path, tried on random paths in space from fixed seeds: some whose
// bends fit and some, through points thrown into a box, whose bends mostly do not.

#include <gtest/gtest.h>

#include <algorithm>
#include <boost/geometry/algorithms/length.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/strategies/cartesian/distance_pythagoras.hpp>
#include <cmath>
#include <numbers>

#include "geometry/centreline.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

using oracles::Random;
using oracles::RigidMotion;

/// Paths lie within some 300 in of the origin, where a coordinate rounds to 6e-14 in; a hundred
/// and more roundings follow one another along a path.
constexpr double rounding_in = 1e-10;

void expect_near(Vec3 actual, Vec3 expected, double tolerance) {
  EXPECT_LE(distance(actual, expected), tolerance);
}

template <typename Property>
void for_random_paths(const Property& property) {
  Random random(20251);
  for (int trial = 0; trial < 150; ++trial) {
    SCOPED_TRACE(trial);
    const int corner_count = random.whole(3, 12);
    property(Centreline(oracles::fitting_path(random, corner_count)), random);
    property(Centreline(oracles::crowded_path(random, corner_count)), random);
    if (testing::Test::HasFailure()) return;
  }
}

double smallest_radius_in(const Centreline& line) {
  double smallest = 1e9;
  for (const PathPiece& piece : line.pieces())
    if (piece.is_arc) smallest = std::min(smallest, piece.radius_in);
  return smallest;
}

bool sharp_at(const Centreline& line, double along_in) {
  const auto& bends = line.bends();
  return std::any_of(bends.begin(), bends.end(), [&](const Bend& bend) {
    return bend.built_radius_in == 0 && std::abs(bend.start_in - along_in) < rounding_in;
  });
}

/// Length of one piece by Boost.Geometry, as a polyline of `steps` parts.
double polyline_length_in(const Centreline& line, const PathPiece& piece, int steps) {
  using Point = boost::geometry::model::point<double, 3, boost::geometry::cs::cartesian>;
  boost::geometry::model::linestring<Point> polyline;
  for (int i = 0; i <= steps; ++i) {
    const Vec3 at = line.at(piece.start_in + piece.length_in * i / steps);
    polyline.push_back(Point(at.x, at.y, at.z));
  }
  return static_cast<double>(boost::geometry::length(polyline));
}

/// Integral of the unit tangent over a piece by Simpson's rule, whose error over a turn of `a` in
/// `n` steps is at most L (a/n)⁴ / 180.
Vec3 integral_of_direction(const Centreline& line, const PathPiece& piece, int steps) {
  const double step_in = piece.length_in / steps;
  // Neighbouring pieces share their ends, where a sharp corner has two directions.
  const double inset_in = std::min(1e-12, step_in / 4);
  Vec3 sum;
  for (int i = 0; i <= steps; ++i) {
    const double along_in =
        std::clamp(step_in * i, inset_in, std::max(inset_in, piece.length_in - inset_in));
    const double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
    sum = sum + line.direction(piece.start_in + along_in) * weight;
  }
  return sum * (step_in / 3);
}

TEST(CentrelineProperty, DevelopedLengthIsLegsLessWhatEachBendCutsOff) {
  Random random(7);
  for (int trial = 0; trial < 300; ++trial) {
    const std::vector<PathCorner> corners = oracles::fitting_path(random, random.whole(2, 20));
    double expected_in = 0;
    for (std::size_t i = 1; i < corners.size(); ++i)
      expected_in += distance(corners[i - 1].at, corners[i].at);
    for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
      // The angle inside the corner, by the cosine rule from its three sides.
      const double a = distance(corners[i - 1].at, corners[i].at);
      const double b = distance(corners[i].at, corners[i + 1].at);
      const double c = distance(corners[i - 1].at, corners[i + 1].at);
      const double inside_rad = std::acos((a * a + b * b - c * c) / (2 * a * b));
      const double turn_rad = std::numbers::pi - inside_rad;
      expected_in -= corners[i].radius_in * (2 / std::tan(inside_rad / 2) - turn_rad);
    }
    const Centreline line(corners);
    // Near a straight corner the cosine rule keeps half the digits of the angle, which enters
    // the length as its cube.
    EXPECT_NEAR(line.length_in(), expected_in, 1e-9);
    ASSERT_EQ(line.bends().size(), corners.size() - 2);
    for (const Bend& bend : line.bends()) {
      EXPECT_TRUE(bend.fits);
      EXPECT_EQ(bend.built_radius_in, bend.drawn_radius_in);
      EXPECT_GE(bend.straight_before_in, 0.01 - rounding_in);
    }
  }
}

TEST(CentrelineProperty, EachPieceIsAsLongAsAFinePolyline) {
  for_random_paths([](const Centreline& line, Random&) {
    double total_in = 0;
    for (const PathPiece& piece : line.pieces()) {
      constexpr int steps = 200;
      const double measured_in = polyline_length_in(line, piece, steps);
      // A chord falls short of its arc of angle a by R a³/24 at most.
      const double step_rad = piece.is_arc ? piece.length_in / piece.radius_in / steps : 0;
      const double shortfall_in = piece.length_in * step_rad * step_rad / 24;
      EXPECT_LE(measured_in, piece.length_in + rounding_in);
      EXPECT_GE(measured_in, piece.length_in - shortfall_in - rounding_in);
      total_in += piece.length_in;
    }
    EXPECT_NEAR(total_in, line.length_in(), rounding_in);
  });
}

TEST(CentrelineProperty, IntegralOfTheDirectionIsTheWayGone) {
  for_random_paths([](const Centreline& line, Random&) {
    for (const PathPiece& piece : line.pieces()) {
      constexpr int steps = 200;
      const double step_rad = piece.is_arc ? piece.length_in / piece.radius_in / steps : 0;
      const double error_in = piece.length_in * std::pow(step_rad, 4) / 180;
      expect_near(integral_of_direction(line, piece, steps), piece.to - piece.from,
                  error_in + rounding_in);
    }
  });
}

TEST(CentrelineProperty, ArcsKeepTheirRadiusAndPlane) {
  for_random_paths([](const Centreline& line, Random& random) {
    for (const PathPiece& piece : line.pieces()) {
      if (!piece.is_arc) continue;
      const Vec3 normal = unit(cross(piece.direction, piece.centre - piece.from));
      for (int i = 0; i < 20; ++i) {
        const double along_in = piece.start_in + piece.length_in * random.between(0, 1);
        const Vec3 outward = line.at(along_in) - piece.centre;
        EXPECT_NEAR(norm(outward), piece.radius_in, rounding_in);
        EXPECT_NEAR(dot(outward, normal), 0, rounding_in);
        EXPECT_NEAR(dot(outward, line.direction(along_in)), 0, rounding_in);
        EXPECT_NEAR(norm(line.direction(along_in)), 1, 1e-14);
      }
    }
  });
}

TEST(CentrelineProperty, PositionNeverJumpsAndTheTangentOnlyAtSharpCorners) {
  for_random_paths([](const Centreline& line, Random&) {
    const auto& pieces = line.pieces();
    expect_near(pieces.front().from, line.corners().front().at, rounding_in);
    expect_near(pieces.back().to, line.corners().back().at, rounding_in);
    for (std::size_t i = 1; i < pieces.size(); ++i) {
      const double joint_in = pieces[i].start_in;
      EXPECT_NEAR(pieces[i - 1].start_in + pieces[i - 1].length_in, joint_in, rounding_in);
      // Straights no longer than 1e-9 in get no piece of their own.
      expect_near(pieces[i - 1].to, pieces[i].from, 1e-9 + rounding_in);
      expect_near(line.at(joint_in - 1e-9), line.at(joint_in + 1e-9), 2e-9 + 1e-9 + rounding_in);
      if (sharp_at(line, joint_in)) continue;
      // Every joint that is not sharp has an arc on one side. The direction turns by a/R over a
      // length a; it is carried over an arc with the rounding of the coordinates over the radius.
      const double radius_in = smallest_radius_in(line);
      expect_near(line.direction(joint_in - 1e-9), line.direction(joint_in + 1e-9),
                  (2e-9 + rounding_in) / radius_in + 1e-12);
    }
  });
}

TEST(CentrelineProperty, ReversedPathIsTheMirroredPath) {
  for_random_paths([](const Centreline& line, Random& random) {
    std::vector<PathCorner> corners = line.corners();
    std::reverse(corners.begin(), corners.end());
    const Centreline back(corners);
    EXPECT_NEAR(back.length_in(), line.length_in(), rounding_in);
    ASSERT_EQ(back.bends().size(), line.bends().size());
    for (std::size_t i = 0; i < line.bends().size(); ++i) {
      const Bend& ahead = line.bends()[i];
      const Bend& mirrored = back.bends()[line.bends().size() - 1 - i];
      EXPECT_NEAR(ahead.angle_rad, mirrored.angle_rad, 1e-12);
      EXPECT_NEAR(ahead.built_radius_in, mirrored.built_radius_in, rounding_in);
      EXPECT_EQ(ahead.fits, mirrored.fits);
      EXPECT_NEAR(ahead.start_in, line.length_in() - mirrored.end_in, rounding_in);
      EXPECT_NEAR(ahead.straight_before_in,
                  i == 0 ? back.straight_after_in()
                         : back.bends()[line.bends().size() - i].straight_before_in,
                  rounding_in);
    }
    const double along_in = random.between(0, line.length_in());
    expect_near(line.at(along_in), back.at(line.length_in() - along_in), rounding_in);
  });
}

TEST(CentrelineProperty, MovedPathIsTheSamePathElsewhere) {
  for_random_paths([](const Centreline& line, Random& random) {
    const RigidMotion motion(random);
    const Centreline moved(motion.move(line.corners()));
    EXPECT_NEAR(moved.length_in(), line.length_in(), rounding_in);
    ASSERT_EQ(moved.bends().size(), line.bends().size());
    for (int i = 0; i < 20; ++i) {
      const double along_in = random.between(0, line.length_in());
      expect_near(moved.at(along_in), motion.move(line.at(along_in)), rounding_in);
    }
    for (std::size_t i = 0; i < line.corners().size(); ++i)
      EXPECT_NEAR(moved.corner_distance_in(static_cast<int>(i)),
                  line.corner_distance_in(static_cast<int>(i)), rounding_in);
  });
}

TEST(CentrelineProperty, BuiltBendsNeverOverlap) {
  for_random_paths([](const Centreline& line, Random&) {
    double free_from_in = 0;
    for (const Bend& bend : line.bends()) {
      EXPECT_GE(bend.start_in, free_from_in - rounding_in);
      EXPECT_LE(bend.built_radius_in, bend.drawn_radius_in);
      EXPECT_EQ(bend.fits, bend.built_radius_in == bend.drawn_radius_in);
      free_from_in = bend.end_in;
    }
    EXPECT_LE(free_from_in, line.length_in() + rounding_in);
  });
}

TEST(CentrelineProperty, ChordsCoverTheLineAndStayWithinTheSagitta) {
  for_random_paths([](const Centreline& line, Random& random) {
    const double start_in = random.between(0, line.length_in() / 2);
    const double end_in = random.between(line.length_in() / 2, line.length_in());
    const double sagitta_in = std::pow(10, random.between(-5, -1));
    double reached_in = start_in;
    for (const PathChord& chord : line.chords(start_in, end_in, sagitta_in)) {
      EXPECT_NEAR(chord.start_in, reached_in, rounding_in);
      reached_in = chord.end_in;
      expect_near(chord.from, line.at(chord.start_in), 1e-9 + rounding_in);
      expect_near(chord.to, line.at(chord.end_in), 1e-9 + rounding_in);
      const Vec3 along = unit(chord.to - chord.from);
      for (int i = 1; i < 10; ++i) {
        const Vec3 out = line.at(std::lerp(chord.start_in, chord.end_in, i / 10.0)) - chord.from;
        EXPECT_LE(norm(out - along * dot(out, along)), sagitta_in + rounding_in);
      }
    }
    EXPECT_NEAR(reached_in, end_in, rounding_in);
  });
}

}  // namespace
}  // namespace linewright
