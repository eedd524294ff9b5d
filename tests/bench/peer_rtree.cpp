#define BOOST_ALLOW_DEPRECATED_HEADERS

#include <boost/geometry.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <iterator>

#include "bench/lean_distance.hpp"
#include "bench/peer.hpp"

namespace linewright::bench {
namespace {

namespace bg = boost::geometry;
using Point = bg::model::point<float, 3, bg::cs::cartesian>;
using Box = bg::model::box<Point>;
using Entry = std::pair<Box, std::uint32_t>;
using Tree = bg::index::rtree<Entry, bg::index::rstar<16>>;

Box box_around(Vec3 a, Vec3 b, Vec3 c, double by) {
  const auto least = [by](double x, double y, double z) {
    return static_cast<float>(std::min({x, y, z}) - by);
  };
  const auto most = [by](double x, double y, double z) {
    return static_cast<float>(std::max({x, y, z}) + by);
  };
  return {Point(least(a.x, b.x, c.x), least(a.y, b.y, c.y), least(a.z, b.z, c.z)),
          Point(most(a.x, b.x, c.x), most(a.y, b.y, c.y), most(a.z, b.z, c.z))};
}

/// A first bound from the last answer or from the box nearest to the middle, then everything whose
/// box meets the piece's box grown by the bound: exact, and the quickest that Boost 1.74 allows.
class Rtree : public Peer {
 public:
  Rtree(const std::vector<Triangle3>& triangles, double longest_piece_in)
      : triangles_(triangles), longest_piece_in_(longest_piece_in), tree_(entries(triangles)) {}

  double distance_in(const Segment3& segment, bool new_route) override {
    if (new_route) guess_ = box_nearest_to(between(segment.a, segment.b, 0.5));
    double best_squared = lean_squared(segment, triangles_[guess_]);
    const int pieces = pieces_of(segment, longest_piece_in_);
    for (int i = 0; i < pieces && best_squared > 0; ++i) {
      const Segment3 piece(piece_of(segment, i, pieces));
      const Box window = box_around(piece.a, piece.b, piece.b, std::sqrt(best_squared) + 1e-4);
      for (auto it = tree_.qbegin(bg::index::intersects(window)); it != tree_.qend(); ++it) {
        if (square_gap(piece, it->first) > best_squared) continue;
        const double squared = lean_squared(piece, triangles_[it->second]);
        if (squared >= best_squared) continue;
        best_squared = squared;
        guess_ = it->second;
      }
    }
    return std::sqrt(best_squared);
  }

 private:
  static std::vector<Entry> entries(const std::vector<Triangle3>& triangles) {
    std::vector<Entry> result;
    result.reserve(triangles.size());
    for (const Triangle3& t : triangles)
      result.emplace_back(box_around(t.a, t.b, t.c, 0), static_cast<std::uint32_t>(result.size()));
    return result;
  }

  std::uint32_t box_nearest_to(Vec3 point) const {
    const Point at(static_cast<float>(point.x), static_cast<float>(point.y),
                   static_cast<float>(point.z));
    return tree_.qbegin(bg::index::nearest(at, 1))->second;
  }

  /// From box to box, squared; a little less for the rounding of the boxes.
  static double square_gap(const Segment3& piece, const Box& box) {
    const auto gap = [](double a, double b, double low, double high) {
      return std::max({0.0, low - std::max(a, b) - 2e-5, std::min(a, b) - high - 2e-5});
    };
    const double x =
        gap(piece.a.x, piece.b.x, box.min_corner().get<0>(), box.max_corner().get<0>());
    const double y =
        gap(piece.a.y, piece.b.y, box.min_corner().get<1>(), box.max_corner().get<1>());
    const double z =
        gap(piece.a.z, piece.b.z, box.min_corner().get<2>(), box.max_corner().get<2>());
    return x * x + y * y + z * z;
  }

  const std::vector<Triangle3>& triangles_;
  double longest_piece_in_;
  Tree tree_;
  std::uint32_t guess_ = 0;
};

}  // namespace

std::unique_ptr<Peer> make_rtree(const std::vector<Triangle3>& triangles, double longest_piece_in) {
  return std::make_unique<Rtree>(triangles, longest_piece_in);
}

}  // namespace linewright::bench
