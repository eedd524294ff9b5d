// Boost 1.74 includes a header that it has deprecated, and would say so at every build.
#define BOOST_ALLOW_DEPRECATED_HEADERS

#include "geometry/plane/boost_fence.hpp"

#include <gtest/gtest.h>

#include <boost/geometry/algorithms/intersection.hpp>
#include <boost/geometry/algorithms/is_simple.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_point.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/geometries/segment.hpp>
#include <boost/geometry/strategies/strategies.hpp>

namespace linewright {
namespace {

namespace bg = boost::geometry;

template <int dimension>
struct Shapes {
  using Point = bg::model::point<double, dimension, bg::cs::cartesian>;
  using Segment = bg::model::segment<Point>;
  using Line = bg::model::linestring<Point>;
  using Box = bg::model::box<Point>;
  using Points = bg::model::multi_point<Point>;
};

template <typename First, typename Second, typename Output>
concept CanIntersect = requires(First first, Second second, Output output) {
  bg::intersection(first, second, output);
};

template <typename Geometry>
concept CanAskWhetherSimple = requires(Geometry geometry) {
  bg::is_simple(geometry);
};

template <typename First, typename Second, typename Output>
concept CanAskForClosestPoints = requires(First first, Second second, Output output) {
  bg::closest_points(first, second, output);
};

TEST(BoostFence, RefusesWhatBoostGetsWrongInSpace) {
  using Space = Shapes<3>;
  EXPECT_FALSE((CanIntersect<Space::Line, Space::Line, Space::Points>));
  EXPECT_FALSE((CanIntersect<Space::Segment, Space::Segment, Space::Points>));
  EXPECT_FALSE((CanAskWhetherSimple<Space::Line>));
  EXPECT_FALSE((CanAskForClosestPoints<Space::Segment, Space::Segment, Space::Segment>));
}

TEST(BoostFence, LetsPlanesAndBoxesThrough) {
  using Plane = Shapes<2>;
  using Space = Shapes<3>;
  EXPECT_TRUE((CanIntersect<Plane::Line, Plane::Line, Plane::Points>));
  EXPECT_TRUE((CanAskWhetherSimple<Plane::Line>));
  EXPECT_TRUE((CanIntersect<Space::Box, Space::Box, Space::Box>));
}

TEST(BoostFence, OurOwnSpaceTypesAreNoBoostGeometries) {
  EXPECT_TRUE(unknown_to_boost<Vec3>);
  EXPECT_TRUE(unknown_to_boost<Segment3>);
  EXPECT_TRUE(unknown_to_boost<Triangle3>);
}

}  // namespace
}  // namespace linewright
