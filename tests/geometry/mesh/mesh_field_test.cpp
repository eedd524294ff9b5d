#include "geometry/mesh/mesh_field.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <memory>
#include <numbers>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "model/angle.hpp"
#include "oracles/random_shapes.hpp"

namespace linewright {
namespace {

using oracles::Random;
using Corners = std::array<float, 9>;
using Floats = std::array<float, 3>;

constexpr double endless = std::numeric_limits<double>::infinity();

/// A field of these triangles, which it keeps.
MeshField field_of(std::vector<Corners> corners, const Placement& placement = {},
                   unsigned threads = 1, const Mesh& mesh = {}) {
  auto held = std::make_shared<MeshTriangles>();
  held->corners = std::move(corners);
  Mesh placed = mesh;
  placed.placement = placement;
  const CornersView view{reinterpret_cast<const char*>(held->corners.data()), sizeof(Corners),
                         held->corners.size()};
  return MeshField({placed, view, {}, held}, threads);
}

Corners triangle(Floats a, Floats b, Floats c) {
  return {a[0], a[1], a[2], b[0], b[1], b[2], c[0], c[1], c[2]};
}

Vec3 placed(const Placement& placement, const Corners& corners, std::size_t corner) {
  return placement.apply({corners[3 * corner], corners[3 * corner + 1], corners[3 * corner + 2]});
}

double brute_distance(const std::vector<Corners>& triangles, const Placement& placement,
                      const Segment3& segment) {
  double least = endless;
  for (const Corners& each : triangles)
    least = std::min(
        least, nearest(segment, Triangle3{placed(placement, each, 0), placed(placement, each, 1),
                                          placed(placement, each, 2)})
                   .distance_in);
  return least;
}

double distance_to(const MeshField& field, const Segment3& segment, double within_in = endless) {
  const auto item = field.nearest_item(segment, within_in);
  return item ? nearest(segment, item->shape).distance_in : endless;
}

/// A ring about WL of `around` by `across` squares, each cut in two.
std::vector<Corners> torus(int around, int across) {
  const auto at = [&](int i, int j) {
    const double u = 2 * std::numbers::pi * (i % around) / around;
    const double v = 2 * std::numbers::pi * (j % across) / across;
    const double out = 30 + 10 * std::cos(v);
    return Floats{static_cast<float>(out * std::cos(u)), static_cast<float>(out * std::sin(u)),
                  static_cast<float>(10 * std::sin(v))};
  };
  std::vector<Corners> made;
  for (int i = 0; i < around; ++i)
    for (int j = 0; j < across; ++j) {
      made.push_back(triangle(at(i, j), at(i + 1, j), at(i + 1, j + 1)));
      made.push_back(triangle(at(i, j), at(i + 1, j + 1), at(i, j + 1)));
    }
  return made;
}

/// A closed box of `n` by `n` squares a side, 20 in wide.
std::vector<Corners> divided_box(int n) {
  std::vector<Corners> made;
  for (int axis = 0; axis < 3; ++axis)
    for (const int side : {0, n})
      for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j) {
          const auto at = [&](int u, int v) {
            std::array<int, 3> place{};
            place[static_cast<std::size_t>(axis)] = side;
            place[static_cast<std::size_t>((axis + (side > 0 ? 1 : 2)) % 3)] = u;
            place[static_cast<std::size_t>((axis + (side > 0 ? 2 : 1)) % 3)] = v;
            const float step = 20.0F / static_cast<float>(n);
            return Floats{static_cast<float>(place[0]) * step, static_cast<float>(place[1]) * step,
                          static_cast<float>(place[2]) * step};
          };
          made.push_back(triangle(at(i, j), at(i + 1, j), at(i + 1, j + 1)));
          made.push_back(triangle(at(i, j), at(i + 1, j + 1), at(i, j + 1)));
        }
  return made;
}

/// The tally once every cell was looked at.
MeshTally whole_tally(const MeshField& field) {
  const Vec3 far{1000, 1000, 1000};
  const auto cells = field.cells_near({-far, far}, endless);
  field.visit_within({{0, 0, 0}, {0, 0, 0}}, endless, cells,
                     [](const MeshItem&, double bound) { return bound; });
  return field.tally();
}

std::array<std::size_t, 8> figures(const MeshTally& tally) {
  return {tally.triangles,  tally.looked_at, tally.without_area,   tally.duplicated,
          tally.open_edges, tally.creases,   tally.shared_by_many, tally.turned_against};
}

TEST(MeshField, StandsWhereItsPlacementPutsIt) {
  // 254 mm is 10 in, doubled 20 in. A quarter turn about WL brings FS onto BL; then all is moved.
  const Placement placement =
      composed(moved({100, 0, -5}), composed(turned({0, 0, 1}, 90), scaled(2 / 25.4)));
  const MeshField field =
      field_of({triangle({254, 0, 0}, {254, 254, 0}, {254, 0, 254})}, placement);
  EXPECT_TRUE(field.all_within());
  // Corners stand at (100, 20, -5), (80, 20, -5) and (100, 20, 15): 3-4-5 off the first one.
  EXPECT_NEAR(distance_to(field, {{103, 20, -9}, {103, 20, -9}}), 5, 1e-12);
  EXPECT_NEAR(distance_to(field, {{95, 13, 0}, {95, 13, 0}}), 7, 1e-12);
  EXPECT_EQ(distance_to(field, {{95, 13, 0}, {95, 27, 0}}), 0);
  EXPECT_NEAR(distance_to(field, {{70, 20, -5}, {79, 20, -5}}), 1, 1e-12);
}

TEST(MeshField, AnItemIsAnEdgeOrATriangleOfTheFile) {
  const MeshField field = field_of({triangle({0, 0, 0}, {10, 0, 0}, {0, 10, 0})});
  std::multiset<bool> edges;
  field.visit_within({{0, 0, 1}, {1, 0, 1}}, 5, field.cells_near({{0, 0, 1}, {1, 0, 1}}, 5),
                     [&](const MeshItem& item, double bound) {
                       edges.insert(item.is_edge);
                       EXPECT_EQ(item.triangle, 0U);
                       if (item.is_edge) {
                         EXPECT_EQ(item.shape.c, item.shape.b);
                       }
                       return bound;
                     });
  EXPECT_EQ(edges.count(false), 1U);
  EXPECT_EQ(edges.count(true), 2U);  // the third is over 5 in away
}

TEST(MeshField, IsExactOverManyCells) {
  Random random(21);
  const std::vector<Corners> triangles = torus(200, 75);
  const Placement placement = composed(moved({300, -20, 45}), turned({1, 2, 3}, 37));
  const MeshField field = field_of(triangles, placement, 2);
  const auto along = [&](Vec3 at) { return placement.apply(at); };
  ASSERT_GT(field.cells_near({{-1e4, -1e4, -1e4}, {1e4, 1e4, 1e4}}, 0).size(), 20U);
  for (int i = 0; i < 4; ++i) {
    const double turn = random.between(0, 6.28);
    const Vec3 middle{30 * std::cos(turn), 30 * std::sin(turn), 0};
    for (const Segment3& segment : {Segment3{along(middle), along(middle + random.point(6))},
                                    Segment3{along(random.point(45)), along(random.point(45))},
                                    Segment3{random.point(2e4), random.point(2e4)},
                                    Segment3{along({0, 0, 0}), along({0, 0, 1})}}) {
      const double least = brute_distance(triangles, placement, segment);
      EXPECT_EQ(distance_to(field, segment), least);
      EXPECT_EQ(distance_to(field, segment, least), least);
      EXPECT_EQ(distance_to(field, segment, least * 0.999 - 1e-12), endless);
    }
  }
}

TEST(MeshField, IsExactFromVeryFar) {
  // Two cells' worth of triangles whose distances differ in the seventh figure.
  std::vector<Corners> triangles;
  for (int i = 0; i < 3000; ++i) {
    const float y = static_cast<float>(i) * 0.01F;
    triangles.push_back(triangle({0, y, 0}, {0.01F, y, 0}, {0, y + 0.01F, 0}));
  }
  const MeshField field = field_of(triangles);
  for (const double x : {3e3, 5e4, 9e5}) {
    const Segment3 segment{{x, 14.8, 0}, {x, 14.8, 1}};
    EXPECT_EQ(distance_to(field, segment), brute_distance(triangles, {}, segment));
  }
}

TEST(MeshField, VisitsAllThatIsNearerThanTheBound) {
  const std::vector<Corners> triangles = torus(100, 40);
  const MeshField field = field_of(triangles);
  const Segment3 segment{{20, 10, -5}, {40, 15, 8}};
  const Bounds box{{20, 10, -5}, {40, 15, 8}};
  for (const double bound : {0.0, 1.0, 12.0}) {
    std::size_t nearer = 0;
    std::multiset<std::uint32_t> visited;
    field.visit_within(segment, bound, field.cells_near(box, bound),
                       [&](const MeshItem& item, double given) {
                         if (!item.is_edge) visited.insert(item.triangle);
                         return given;
                       });
    for (std::uint32_t i = 0; i < triangles.size(); ++i) {
      const bool near = brute_distance({triangles[i]}, {}, segment) <= bound;
      if (near) {
        EXPECT_EQ(visited.count(i), 1U);
        ++nearer;
      }
      EXPECT_LE(visited.count(i), 1U);
    }
    EXPECT_GT(nearer, 0U) << bound;
  }
}

TEST(MeshField, AClosedSurfaceHasNoOpenEdgeWhateverTheCellBorders) {
  const MeshTally ring = whole_tally(field_of(torus(200, 75)));
  EXPECT_EQ(figures(ring), (std::array<std::size_t, 8>{30000, 30000, 0, 0, 0, 0, 0, 0}));
  const MeshTally box = whole_tally(field_of(divided_box(40)));
  // Twelve edges of forty pieces each.
  EXPECT_EQ(figures(box), (std::array<std::size_t, 8>{19200, 19200, 0, 0, 0, 480, 0, 0}));
}

TEST(MeshField, EachSharpEdgeIsThereOnce) {
  const MeshField field = field_of(divided_box(40));
  std::set<std::array<double, 6>> edges;
  std::size_t count = 0;
  field.visit_within({{10, 10, 10}, {10, 10, 10}}, endless,
                     field.cells_near({{0, 0, 0}, {20, 20, 20}}, endless),
                     [&](const MeshItem& item, double bound) {
                       if (!item.is_edge) return bound;
                       auto [a, b, c] = item.shape;
                       if (std::array{b.x, b.y, b.z} < std::array{a.x, a.y, a.z}) std::swap(a, b);
                       edges.insert({a.x, a.y, a.z, b.x, b.y, b.z});
                       ++count;
                       return bound;
                     });
  EXPECT_EQ(count, 480U);
  EXPECT_EQ(edges.size(), 480U);
}

TEST(MeshField, CountsDoNotDependOnThreadsOrOrder) {
  std::vector<Corners> triangles = divided_box(30);
  for (int i = 0; i < 50; ++i) triangles.push_back(triangles[static_cast<std::size_t>(100 * i)]);
  triangles.erase(triangles.begin() + 5000, triangles.begin() + 5007);
  triangles.push_back(triangle({1, 1, 1}, {2, 2, 2}, {4, 4, 4}));
  const auto one = figures(whole_tally(field_of(triangles)));
  EXPECT_GT(one[4], 0U);
  for (const unsigned threads : {0U, 2U, 3U, 7U})
    EXPECT_EQ(figures(whole_tally(field_of(triangles, {}, threads))), one);
  Random random(22);
  for (std::size_t i = triangles.size() - 1; i > 0; --i)
    std::swap(triangles[i],
              triangles[static_cast<std::size_t>(random.whole(0, static_cast<int>(i)))]);
  EXPECT_EQ(figures(whole_tally(field_of(triangles))), one);
}

TEST(MeshField, LooksOnlyAtWhatIsNear) {
  const MeshField field = field_of(torus(200, 75));
  EXPECT_EQ(field.tally().looked_at, 0U);
  EXPECT_FALSE(field.nearest_item({{200, 0, 0}, {200, 1, 0}}, 1.5));
  EXPECT_EQ(field.tally().looked_at, 0U);
  EXPECT_TRUE(field.nearest_item({{41, 0, 0}, {41, 1, 0}}, 1.5));
  EXPECT_GT(field.tally().looked_at, 0U);
  EXPECT_LT(field.tally().looked_at, 10000U);
}

TEST(MeshField, TellsThePieceOfATriangle) {
  const MeshTriangles file{std::vector<Corners>(10, triangle({0, 0, 0}, {1, 0, 0}, {0, 1, 0})),
                           {{"rib", 2, 3}, {"web", 7, 2}}};
  const CornersView view{reinterpret_cast<const char*>(file.corners.data()), sizeof(Corners), 10};
  const MeshField field({{}, view, file.parts, nullptr}, 1);
  const std::array wanted{"", "", "rib", "rib", "rib", "", "", "web", "web", ""};
  for (std::uint32_t i = 0; i < 10; ++i) EXPECT_EQ(field.piece_of(i), wanted[i]) << i;
}

TEST(MeshField, ReadsTrianglesThatLieApartAndUnaligned) {
  // As in binary STL: fifty bytes from one to the next.
  std::vector<char> bytes(3 + 2 * 50, '\x55');
  const std::array both{triangle({0, 0, 0}, {1, 0, 0}, {0, 1, 0}),
                        triangle({0, 0, 7}, {1, 0, 7}, {0, 1, 7})};
  for (std::size_t i = 0; i < 2; ++i)
    std::memcpy(bytes.data() + 3 + 50 * i, &both[i], sizeof(Corners));
  const MeshField field({{}, {bytes.data() + 3, 50, 2}, {}, nullptr}, 1);
  EXPECT_DOUBLE_EQ(distance_to(field, {{0.25, 0.25, 5}, {0.25, 0.25, 5}}), 2);
}

TEST(MeshField, ACoordinateTooFarOutLeavesItOfNoUse) {
  const Corners near = triangle({0, 0, 0}, {1, 0, 0}, {0, 1, 0});
  for (const float bad : {1.1e6F, -1e30F, std::numeric_limits<float>::infinity(),
                          std::numeric_limits<float>::quiet_NaN()})
    for (const std::size_t count : {1U, 20000U})
      for (const unsigned threads : {1U, 3U}) {
        std::vector<Corners> triangles(count, near);
        triangles[count * 2 / 3][4] = bad;
        const MeshField field = field_of(triangles, {}, threads);
        EXPECT_FALSE(field.all_within());
        EXPECT_FALSE(field.nearest_item({{0, 0, 0}, {1, 0, 0}}, endless));
      }
  EXPECT_TRUE(field_of({near}, moved({999000, 0, 0})).all_within());
  EXPECT_FALSE(field_of({near}, moved({1000000, 0, 0})).all_within());
}

TEST(MeshField, OneFarTriangleAmongManySmallOnesDoesNoHarm) {
  // A grid is laid over a sample: what that leaves out may stand far outside of it.
  std::vector<Corners> triangles(20000, triangle({0, 0, 0}, {1e-20F, 0, 0}, {0, 1e-20F, 0}));
  triangles[9999] = triangle({9e5F, 0, 0}, {9e5F, 1, 0}, {9e5F, 0, 1});
  const MeshField field = field_of(triangles);
  ASSERT_TRUE(field.all_within());
  EXPECT_EQ(distance_to(field, {{9e5 - 1, 0, 0}, {9e5 - 2, 0, 0}}), 1);
  EXPECT_EQ(distance_to(field, {{5, 0, 0}, {6, 0, 0}}), 5);
}

TEST(MeshField, NothingHasNoNearest) {
  const MeshField field = field_of({});
  EXPECT_TRUE(field.all_within());
  EXPECT_FALSE(field.nearest_item({{0, 0, 0}, {1, 0, 0}}, endless));
  EXPECT_EQ(field.piece_of(0), "");
}

}  // namespace
}  // namespace linewright
