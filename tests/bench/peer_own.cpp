#include "bench/peer.hpp"
#include "geometry/mesh/triangle_index.hpp"

namespace linewright::bench {
namespace {

class Own : public Peer {
 public:
  Own(const std::vector<Triangle3>& triangles, unsigned threads) : index_(triangles, threads) {}

  double distance_in(const Segment3& segment, bool new_route) override {
    if (new_route) guess_.reset();
    const auto found = index_.nearest(segment, TriangleIndex::endless, guess_);
    guess_ = found->triangle;
    return found->nearest.distance_in;
  }

 private:
  TriangleIndex index_;
  std::optional<std::uint32_t> guess_;
};

class BruteForce : public Peer {
 public:
  explicit BruteForce(const std::vector<Triangle3>& triangles) : triangles_(triangles) {}

  double distance_in(const Segment3& segment, bool) override {
    double best = nearest(segment, triangles_.front()).distance_in;
    for (const Triangle3& triangle : triangles_)
      best = std::min(best, nearest(segment, triangle).distance_in);
    return best;
  }

 private:
  const std::vector<Triangle3>& triangles_;
};

}  // namespace

std::unique_ptr<Peer> make_own(const std::vector<Triangle3>& triangles, double) {
  return std::make_unique<Own>(triangles, 1);
}

std::unique_ptr<Peer> make_own_two_threads(const std::vector<Triangle3>& triangles, double) {
  return std::make_unique<Own>(triangles, 2);
}

std::unique_ptr<Peer> make_brute_force(const std::vector<Triangle3>& triangles) {
  return std::make_unique<BruteForce>(triangles);
}

}  // namespace linewright::bench
