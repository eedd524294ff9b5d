#include <CGAL/AABB_traits.h>
#include <CGAL/AABB_tree.h>
#include <CGAL/AABB_triangle_primitive.h>
#include <CGAL/Simple_cartesian.h>

#include "bench/lean_distance.hpp"
#include "bench/peer.hpp"

namespace linewright::bench {
namespace {

using Kernel = CGAL::Simple_cartesian<double>;
using Triangles = std::vector<Kernel::Triangle_3>;
using Primitive = CGAL::AABB_triangle_primitive<Kernel, Triangles::const_iterator>;
using Traits = CGAL::AABB_traits<Kernel, Primitive>;
using Tree = CGAL::AABB_tree<Traits>;

/// The library has no query for the distance of a segment; its traversal takes traits that have.
class NearestTraversal {
 public:
  NearestTraversal(const std::vector<Triangle3>& triangles, Triangles::const_iterator first,
                   std::size_t guess, double best_squared)
      : triangles_(triangles), first_(first), nearest_(guess), best_squared_(best_squared) {}

  bool go_on() const { return go_further(); }
  bool go_further() const { return best_squared_ > 0; }

  void intersection(const Segment3& segment, const Primitive& primitive) {
    const auto index = static_cast<std::size_t>(primitive.id() - first_);
    if (square_box_gap(segment, triangles_[index]) >= best_squared_) return;
    const double squared = lean_squared(segment, triangles_[index]);
    if (squared >= best_squared_) return;
    best_squared_ = squared;
    nearest_ = index;
  }

  template <typename Node>
  bool do_intersect(const Segment3& segment, const Node& node) const {
    const CGAL::Bbox_3& box = node.bbox();
    const auto gap = [](double a, double b, double low, double high) {
      return std::max({0.0, low - std::max(a, b), std::min(a, b) - high});
    };
    const double x = gap(segment.a.x, segment.b.x, box.xmin(), box.xmax());
    const double y = gap(segment.a.y, segment.b.y, box.ymin(), box.ymax());
    const double z = gap(segment.a.z, segment.b.z, box.zmin(), box.zmax());
    return x * x + y * y + z * z < best_squared_;
  }

  std::size_t nearest() const { return nearest_; }
  double best_squared() const { return best_squared_; }

 private:
  const std::vector<Triangle3>& triangles_;
  Triangles::const_iterator first_;
  std::size_t nearest_;
  double best_squared_;
};

class Cgal : public Peer {
 public:
  Cgal(const std::vector<Triangle3>& triangles, double longest_piece_in)
      : triangles_(triangles), longest_piece_in_(longest_piece_in) {
    const auto point = [](Vec3 at) { return Kernel::Point_3(at.x, at.y, at.z); };
    own_.reserve(triangles.size());
    for (const Triangle3& t : triangles) own_.emplace_back(point(t.a), point(t.b), point(t.c));
    tree_.insert(own_.begin(), own_.end());
    tree_.build();
  }

  double distance_in(const Segment3& segment, bool new_route) override {
    if (new_route) guess_ = first_guess(triangles_, segment);
    double best_squared = lean_squared(segment, triangles_[guess_]);
    const int pieces = pieces_of(segment, longest_piece_in_);
    for (int i = 0; i < pieces && best_squared > 0; ++i) {
      const Segment3 piece(piece_of(segment, i, pieces));
      NearestTraversal traversal(triangles_, own_.cbegin(), guess_, best_squared);
      tree_.traversal(piece, traversal);
      guess_ = traversal.nearest();
      best_squared = traversal.best_squared();
    }
    return std::sqrt(best_squared);
  }

 private:
  const std::vector<Triangle3>& triangles_;
  double longest_piece_in_;
  Triangles own_;
  Tree tree_;
  std::size_t guess_ = 0;
};

}  // namespace

std::unique_ptr<Peer> make_cgal(const std::vector<Triangle3>& triangles, double longest_piece_in) {
  return std::make_unique<Cgal>(triangles, longest_piece_in);
}

}  // namespace linewright::bench
