// Boost 1.74 includes a header that it has deprecated, and would say so at every build.
#define BOOST_ALLOW_DEPRECATED_HEADERS

#include "geometry/obstacles.hpp"

#include <algorithm>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <iterator>
#include <utility>

#include "geometry/boost_fence.hpp"
#include "geometry/structure_obstacles.hpp"

// The R-tree holds boxes only, in a point type that no other file sees: box against box is all
// that is asked of Boost in three dimensions, and the fence refuses what it gets wrong there.

namespace linewright {
namespace {

namespace bg = boost::geometry;
using IndexPoint = bg::model::point<double, 3, bg::cs::cartesian>;
using IndexBox = bg::model::box<IndexPoint>;
using Entry = std::pair<IndexBox, std::size_t>;
using Tree = bg::index::rtree<Entry, bg::index::quadratic<16>>;

IndexBox box_of(const Obstacle& obstacle) {
  const auto& [a, b, c] = obstacle.shape;
  const double by = obstacle.radius_in;
  return {IndexPoint(std::min({a.x, b.x, c.x}) - by, std::min({a.y, b.y, c.y}) - by,
                     std::min({a.z, b.z, c.z}) - by),
          IndexPoint(std::max({a.x, b.x, c.x}) + by, std::max({a.y, b.y, c.y}) + by,
                     std::max({a.z, b.z, c.z}) + by)};
}

/// Built in one go from all boxes, which Boost packs.
Tree packed(const std::vector<Obstacle>& obstacles) {
  std::vector<Entry> entries;
  entries.reserve(obstacles.size());
  for (std::size_t i = 0; i < obstacles.size(); ++i) entries.emplace_back(box_of(obstacles[i]), i);
  return Tree(entries);
}

template <typename First>
Nearest to_surface(const First& first, const Obstacle& obstacle) {
  const auto& [a, b, c] = obstacle.shape;
  Nearest result =
      obstacle.is_segment ? nearest(first, Segment3{a, b}) : nearest(first, obstacle.shape);
  result.distance_in -= obstacle.radius_in;
  return result;
}

}  // namespace

struct Obstacles::Index {
  StructureShapes shapes;
  Tree tree;
};

Obstacles::Obstacles(const Structure& structure) : index_(std::make_unique<Index>()) {
  index_->shapes = shapes_of(structure);
  index_->tree = packed(index_->shapes.obstacles);
}

Obstacles::~Obstacles() = default;
Obstacles::Obstacles(Obstacles&&) noexcept = default;
Obstacles& Obstacles::operator=(Obstacles&&) noexcept = default;

const std::vector<Part>& Obstacles::parts() const {
  return index_->shapes.parts;
}
const std::vector<Obstacle>& Obstacles::all() const {
  return index_->shapes.obstacles;
}

std::optional<int> Obstacles::find_part(const std::string& name) const {
  const auto found = std::find_if(parts().begin(), parts().end(),
                                  [&name](const Part& part) { return part.name == name; });
  if (found == parts().end()) return std::nullopt;
  return static_cast<int>(found - parts().begin());
}

void Obstacles::visit(const Bounds& bounds,
                      const std::function<void(const Obstacle&)>& visit) const {
  const IndexBox wanted(IndexPoint(bounds.min.x, bounds.min.y, bounds.min.z),
                        IndexPoint(bounds.max.x, bounds.max.y, bounds.max.z));
  std::vector<Entry> found;
  index_->tree.query(bg::index::intersects(wanted), std::back_inserter(found));
  std::sort(found.begin(), found.end(),
            [](const Entry& a, const Entry& b) { return a.second < b.second; });
  for (const Entry& entry : found) visit(all()[entry.second]);
}

Nearest nearest(const Segment3& segment, const Obstacle& obstacle) {
  return to_surface(segment, obstacle);
}

Nearest nearest(Vec3 point, const Obstacle& obstacle) {
  return to_surface(point, obstacle);
}

}  // namespace linewright
