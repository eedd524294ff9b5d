#include "geometry/structure/box_index.hpp"

#include <algorithm>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <utility>

#include "geometry/plane/boost_fence.hpp"

namespace linewright {

namespace {

namespace bgi = boost::geometry::index;
using TreePoint = boost::geometry::model::point<double, 3, boost::geometry::cs::cartesian>;
using TreeBox = boost::geometry::model::box<TreePoint>;
using BoxEntry = std::pair<TreeBox, std::size_t>;

/// Far more than rounding makes of a distance between boxes.
constexpr double box_rounding_in = 1e-6;

TreeBox tree_box(const Bounds& bounds) {
  return {TreePoint(bounds.min.x, bounds.min.y, bounds.min.z),
          TreePoint(bounds.max.x, bounds.max.y, bounds.max.z)};
}

std::vector<BoxEntry> entries_of(const std::vector<Bounds>& boxes) {
  std::vector<BoxEntry> entries;
  entries.reserve(boxes.size());
  for (std::size_t i = 0; i < boxes.size(); ++i) entries.emplace_back(tree_box(boxes[i]), i);
  return entries;
}

}  // namespace

struct BoxIndex::Tree {
  bgi::rtree<BoxEntry, bgi::quadratic<16>> packed;
};

BoxIndex::BoxIndex(const std::vector<Bounds>& boxes)
    : tree_(std::make_unique<Tree>(
          Tree{bgi::rtree<BoxEntry, bgi::quadratic<16>>(entries_of(boxes))})) {}
BoxIndex::BoxIndex(BoxIndex&&) noexcept = default;
BoxIndex& BoxIndex::operator=(BoxIndex&&) noexcept = default;
BoxIndex::~BoxIndex() = default;

std::vector<std::size_t> BoxIndex::near(const Bounds& wanted, double distance_in) const {
  std::vector<std::size_t> found;
  const TreeBox box = tree_box(grown(wanted, std::max(0.0, distance_in) + box_rounding_in));
  for (auto each = tree_->packed.qbegin(bgi::intersects(box)); each != tree_->packed.qend(); ++each)
    found.push_back(each->second);
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace linewright
