#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "geometry/plane/polygon.hpp"
#include "oracles/random_shapes.hpp"
#include "oracles/winding_number.hpp"

namespace linewright {
namespace {

using oracles::Random;
using Polygon = std::vector<Vec2>;
using Web = std::vector<std::array<Vec2, 3>>;

const Polygon square{{0, 0}, {4, 0}, {4, 4}, {0, 4}};
const Polygon ell{{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 5}, {0, 5}};

Polygon reversed(Polygon polygon) {
  std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

double web_area(const Web& web) {
  return std::accumulate(web.begin(), web.end(), 0.0, [](double sum, const auto& triangle) {
    return sum + oracles::shoelace_area({triangle.begin(), triangle.end()});
  });
}

/// Triangles tile when their areas add up and none turns the other way.
void expect_tiles(const Web& web, const Polygon& outline, const std::vector<Polygon>& holes) {
  double expected = std::abs(oracles::shoelace_area(outline));
  for (const Polygon& hole : holes) expected -= std::abs(oracles::shoelace_area(hole));
  EXPECT_NEAR(web_area(web), expected, 1e-9 * expected);
  // A sliver's area is less than the rounding of the sum that measures it.
  for (const auto& triangle : web)
    EXPECT_GT(oracles::shoelace_area({triangle.begin(), triangle.end()}), -1e-12 * expected);
}

TEST(Triangulate, ASquareIsTwoTriangles) {
  const Web web = triangulate(square, {});
  EXPECT_EQ(web.size(), 2u);
  expect_tiles(web, square, {});
}

TEST(Triangulate, EitherSenseOfRotationAndRepeatedCorners) {
  expect_tiles(triangulate(reversed(ell), {}), ell, {});
  Polygon repeated = ell;
  repeated.insert(repeated.begin() + 2, ell[2]);
  repeated.push_back(ell[0]);
  expect_tiles(triangulate(repeated, {}), ell, {});
}

TEST(Triangulate, CornersInLineOnOutlineAndHole) {
  const Polygon outline{{0, 0}, {5, 0}, {10, 0}, {10, 5}, {10, 10}, {5, 10}, {0, 10}, {0, 5}};
  const Polygon hole{{4, 4}, {5, 4}, {6, 4}, {6, 5}, {6, 6}, {5, 6}, {4, 6}, {4, 5}};
  expect_tiles(triangulate(outline, {hole}), outline, {hole});
}

TEST(Triangulate, HolesInRowsAndColumns) {
  // Every hole shares its rightmost station and its levels with others: bridges pass corners.
  const Polygon outline{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  std::vector<Polygon> holes;
  for (const double u : {1.0, 4.0, 7.0})
    for (const double v : {1.0, 4.0, 7.0})
      holes.push_back({{u, v}, {u + 2, v}, {u + 2, v + 2}, {u, v + 2}});
  const Web web = triangulate(outline, holes);
  expect_tiles(web, outline, holes);
}

TEST(Triangulate, HolesThatPointAtEachOther) {
  const Polygon outline{{0, -5}, {20, -5}, {20, 5}, {0, 5}};
  const std::vector<Polygon> holes{
      {{1, -1}, {5, 0}, {1, 1}}, {{6, 0}, {9, -2}, {9, 2}}, {{10, 0}, {13, -3}, {16, 0}, {13, 3}}};
  expect_tiles(triangulate(outline, holes), outline, holes);
}

TEST(Triangulate, TooFewCornersGiveNothing) {
  EXPECT_TRUE(triangulate({}, {}).empty());
  EXPECT_TRUE(triangulate({{0, 0}, {1, 1}}, {square}).empty());
  EXPECT_TRUE(triangulate({{0, 0}, {1, 1}, {2, 2}}, {}).empty());
}

TEST(Triangulate, EndsOnBoundariesThatCrossThemselves) {
  Random random(103);
  for (int i = 0; i < 200; ++i) {
    Polygon tangled;
    for (int j = 0; j < 12; ++j) tangled.push_back({random.between(0, 9), random.between(0, 9)});
    EXPECT_LE(triangulate(tangled, {square, ell}).size(), 40u);
  }
}

/// Every place inside the outline and outside the holes lies under one triangle, any other under
/// none.
void expect_covers_once(const Web& web, const Polygon& outline, const std::vector<Polygon>& holes,
                        Vec2 point) {
  const auto turns = [point](const Polygon& polygon) {
    return oracles::winding_number(polygon, point) != 0;
  };
  const bool on_web = turns(outline) && std::none_of(holes.begin(), holes.end(), turns);
  const auto over = std::count_if(web.begin(), web.end(), [&](const auto& triangle) {
    return turns({triangle.begin(), triangle.end()});
  });
  EXPECT_EQ(over, on_web ? 1 : 0) << "at " << point.u << ", " << point.v;
}

TEST(Triangulate, RandomStarsWithStarHoles) {
  Random random(107);
  for (int i = 0; i < 300; ++i) {
    const Polygon outline = oracles::star_polygon(random, {50, 50}, 30, 60, random.whole(8, 40));
    std::vector<Polygon> holes;
    for (const Vec2 at : {Vec2{-10, -8}, Vec2{-10, 8}, Vec2{8, -8}, Vec2{8, 8}, Vec2{0, 0}})
      holes.push_back(
          oracles::star_polygon(random, Vec2{50, 50} + at, 0.5, 3.8, random.whole(3, 20)));
    holes.erase(std::remove_if(holes.begin(), holes.end(),
                               [&](const Polygon& hole) { return !encloses(outline, hole); }),
                holes.end());
    const Web web = triangulate(outline, holes);
    expect_tiles(web, outline, holes);
    for (int j = 0; j < 20; ++j)
      expect_covers_once(web, outline, holes, {random.between(0, 100), random.between(0, 100)});
    if (HasFailure()) FAIL() << "at outline " << i;
  }
}

TEST(Triangulate, TurnedGridsOfHoles) {
  // Rows and columns at any angle: corners that are in line but for rounding, everywhere.
  Random random(113);
  for (int i = 0; i < 500; ++i) {
    const double angle_rad = random.between(0, 2 * std::numbers::pi);
    const double scale = oracles::magnitude(random, -1, 1);
    const auto place = [&](double u, double v) {
      return Vec2{u * std::cos(angle_rad) - v * std::sin(angle_rad),
                  u * std::sin(angle_rad) + v * std::cos(angle_rad)} *
             scale;
    };
    Polygon outline;
    const double size = 10;
    for (double at = 0; at < size; at += 1) outline.push_back(place(at, 0));
    for (double at = 0; at < size; at += 1) outline.push_back(place(size, at));
    for (double at = size; at > 0; at -= 1) outline.push_back(place(at, size));
    for (double at = size; at > 0; at -= 1) outline.push_back(place(0, at));
    std::vector<Polygon> holes;
    for (const double u : {1.0, 4.0, 7.0})
      for (const double v : {1.0, 4.0, 7.0}) {
        const double wide = random.whole(0, 1) == 0 ? 1 : 2;
        if (random.whole(0, 1) == 0) continue;
        if (random.whole(0, 1) == 0)
          holes.push_back(
              {place(u, v), place(u + wide / 2, v), place(u + wide, v), place(u + wide, v + 1)});
        else
          holes.push_back({place(u + wide / 2, v), place(u + wide, v + 0.5),
                           place(u + wide / 2, v + 1), place(u, v + 0.5)});
      }
    const Web web = triangulate(outline, holes);
    expect_tiles(web, outline, holes);
    for (int j = 0; j < 10; ++j)
      expect_covers_once(web, outline, holes,
                         place(random.between(-1, size + 1), random.between(-1, size + 1)));
    if (HasFailure()) FAIL() << "at grid " << i;
  }
}

}  // namespace
}  // namespace linewright
