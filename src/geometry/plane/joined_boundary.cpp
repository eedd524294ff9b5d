#include "geometry/plane/joined_boundary.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <cstddef>
#include <iterator>
#include <utility>

#include "geometry/plane/boost_fence.hpp"
#include "geometry/plane/turn.hpp"

namespace linewright {

namespace {

namespace bgi = boost::geometry::index;
using Boundary = std::vector<Vec2>;
using IndexPoint = boost::geometry::model::d2::point_xy<double>;
using IndexBox = boost::geometry::model::box<IndexPoint>;
using Edge = std::pair<Vec2, Vec2>;

IndexPoint index_point(Vec2 at) {
  return {at.u, at.v};
}

IndexBox box_of(Vec2 a, Vec2 b) {
  return {{std::min(a.u, b.u), std::min(a.v, b.v)}, {std::max(a.u, b.u), std::max(a.v, b.v)}};
}

double twice_signed_area(const Boundary& boundary) {
  double sum = 0;
  for (std::size_t i = 0; i < boundary.size(); ++i)
    sum += cross(boundary[i] - boundary[0], boundary[(i + 1) % boundary.size()] - boundary[0]);
  return sum;
}

/// Without repeated neighbours, turning anticlockwise or clockwise as asked.
Boundary tidied(const Boundary& corners, bool anticlockwise) {
  Boundary result = corners;
  result.erase(std::unique(result.begin(), result.end()), result.end());
  while (result.size() > 1 && result.front() == result.back()) result.pop_back();
  if ((twice_signed_area(result) > 0) != anticlockwise) std::reverse(result.begin(), result.end());
  return result;
}

std::size_t rightmost(const Boundary& boundary) {
  return static_cast<std::size_t>(
      std::max_element(boundary.begin(), boundary.end(), [](Vec2 a, Vec2 b) { return a.u < b.u; }) -
      boundary.begin());
}

/// True where two segments share a point. An end of one that coincides with an end of the other
/// does not count.
bool blocks(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  if (a == c || a == d || b == c || b == d) return false;
  if (std::max(a.u, b.u) < std::min(c.u, d.u) || std::max(c.u, d.u) < std::min(a.u, b.u) ||
      std::max(a.v, b.v) < std::min(c.v, d.v) || std::max(c.v, d.v) < std::min(a.v, b.v))
    return false;
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

/// The boundary as it grows. Corners and edges are looked up where they are: held against each
/// other, those of thousands of holes would take their square.
class GrowingBoundary {
 public:
  GrowingBoundary(const Boundary& outline, const std::vector<Boundary>& holes) {
    std::vector<CornerEntry> corners;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      corners_.push_back(
          {outline[i], (i + outline.size() - 1) % outline.size(), (i + 1) % outline.size()});
      corners.emplace_back(index_point(outline[i]), i);
    }
    joined_ = CornerIndex(corners);
    std::vector<EdgeEntry> edges = edges_of(outline);
    for (const Boundary& hole : holes) {
      const std::vector<EdgeEntry> more = edges_of(hole);
      edges.insert(edges.end(), more.begin(), more.end());
    }
    edges_ = EdgeIndex(edges);
  }

  /// Joins the hole, clockwise, from its corner `start` to the nearest corner that can be seen from
  /// there past all edges; where there is none, leaves it out, and it hides no other any more.
  void join(const Boundary& hole, std::size_t start) {
    const std::size_t corner = bridge_corner(hole[start]);
    if (corner == corners_.size()) {
      for (const EdgeEntry& edge : edges_of(hole)) edges_.remove(edge);
      return;
    }
    const std::size_t after = corners_[corner].next;
    std::size_t last = corner;
    for (std::size_t i = 0; i <= hole.size(); ++i)
      last = append(hole[(start + i) % hole.size()], last);
    last = append(corners_[corner].at, last);
    corners_[last].next = after;
    corners_[after].previous = last;
    edges_.insert(edge_entry(hole[start], corners_[corner].at));
  }

  Boundary take() const {
    Boundary boundary;
    std::size_t at = 0;
    do {
      boundary.push_back(corners_[at].at);
      at = corners_[at].next;
    } while (at != 0);
    return boundary;
  }

 private:
  struct Corner {
    Vec2 at;
    std::size_t previous = 0;
    std::size_t next = 0;
  };
  using CornerEntry = std::pair<IndexPoint, std::size_t>;
  using CornerIndex = bgi::rtree<CornerEntry, bgi::quadratic<16>>;
  using EdgeEntry = std::pair<IndexBox, Edge>;
  struct SameEdge {
    bool operator()(const EdgeEntry& a, const EdgeEntry& b) const { return a.second == b.second; }
  };
  using EdgeIndex = bgi::rtree<EdgeEntry, bgi::quadratic<16>, bgi::indexable<EdgeEntry>, SameEdge>;

  static EdgeEntry edge_entry(Vec2 a, Vec2 b) { return {box_of(a, b), {a, b}}; }

  static std::vector<EdgeEntry> edges_of(const Boundary& ring) {
    std::vector<EdgeEntry> edges;
    for (std::size_t i = 0; i < ring.size(); ++i)
      edges.push_back(edge_entry(ring[i], ring[(i + 1) % ring.size()]));
    return edges;
  }

  std::size_t append(Vec2 at, std::size_t after) {
    const std::size_t added = corners_.size();
    corners_.push_back({at, after, 0});
    corners_[after].next = added;
    joined_.insert({index_point(at), added});
    return added;
  }

  /// True where `target` lies strictly within the angle that the boundary opens at its corner `at`.
  /// Tells apart the copies of a corner that bridges leave.
  bool opens_towards(const Corner& at, Vec2 target) const {
    const Vec2 before = corners_[at.previous].at;
    const Vec2 after = corners_[at.next].at;
    const bool left_of_arrival = side(before, at.at, target) > 0;
    const bool left_of_departure = side(at.at, after, target) > 0;
    return side(before, at.at, after) > 0 ? left_of_arrival && left_of_departure
                                          : left_of_arrival || left_of_departure;
  }

  bool is_blocked(Vec2 from, Vec2 to) const {
    const auto may_block =
        bgi::intersects(box_of(from, to)) && bgi::satisfies([&](const EdgeEntry& entry) {
          return blocks(from, to, entry.second.first, entry.second.second);
        });
    return edges_.qbegin(may_block) != edges_.qend();
  }

  /// The nearest serves almost always: few are asked for at first, and more where none of them
  /// does.
  std::size_t bridge_corner(Vec2 from) const {
    std::size_t looked_at = 0;
    for (std::size_t count = 16; looked_at < corners_.size(); count *= 8) {
      std::vector<CornerEntry> nearest;
      joined_.query(bgi::nearest(index_point(from), static_cast<unsigned>(count)),
                    std::back_inserter(nearest));
      std::sort(nearest.begin(), nearest.end(),
                [from, this](const CornerEntry& a, const CornerEntry& b) {
                  return std::pair(distance(from, corners_[a.second].at), a.second) <
                         std::pair(distance(from, corners_[b.second].at), b.second);
                });
      for (std::size_t i = looked_at; i < nearest.size(); ++i) {
        const std::size_t corner = nearest[i].second;
        if (opens_towards(corners_[corner], from) && !is_blocked(from, corners_[corner].at))
          return corner;
      }
      looked_at = nearest.size();
    }
    return corners_.size();
  }

  std::vector<Corner> corners_;
  CornerIndex joined_;  ///< of the boundary
  EdgeIndex edges_;     ///< of the boundary and of all holes
};

}  // namespace

// Taken from the right, so that a hole's rightmost corner always sees the boundary made so far,
// whatever holes are left.
std::vector<Vec2> joined_boundary(const std::vector<Vec2>& outline,
                                  const std::vector<std::vector<Vec2>>& holes) {
  const Boundary around = tidied(outline, true);
  if (around.size() < 3) return {};
  std::vector<Boundary> open;
  for (const Boundary& hole : holes) {
    Boundary clockwise = tidied(hole, false);
    if (clockwise.size() >= 3) open.push_back(std::move(clockwise));
  }
  std::stable_sort(open.begin(), open.end(), [](const Boundary& a, const Boundary& b) {
    return a[rightmost(a)].u > b[rightmost(b)].u;
  });
  GrowingBoundary boundary(around, open);
  for (const Boundary& hole : open) boundary.join(hole, rightmost(hole));
  return boundary.take();
}

}  // namespace linewright
