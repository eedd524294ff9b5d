#include <fcl/geometry/bvh/BVH_model.h>
#include <fcl/math/bv/RSS.h>
#include <fcl/narrowphase/distance.h>

#include "bench/peer.hpp"

namespace linewright::bench {
namespace {

using Model = fcl::BVHModel<fcl::RSS<double>>;

fcl::Vector3d vector(Vec3 at) {
  return {at.x, at.y, at.z};
}

/// The library's own distance between two meshes, one of which is the segment as a triangle of no
/// area. Independent of every kernel of ours.
class Fcl : public Peer {
 public:
  explicit Fcl(const std::vector<Triangle3>& triangles) {
    model_.beginModel(static_cast<int>(triangles.size()), static_cast<int>(3 * triangles.size()));
    for (const Triangle3& t : triangles) model_.addTriangle(vector(t.a), vector(t.b), vector(t.c));
    model_.endModel();
  }

  double distance_in(const Segment3& segment, bool) override {
    Model asked;
    asked.beginModel(1, 3);
    asked.addTriangle(vector(segment.a), vector(segment.b), vector(segment.b));
    asked.endModel();
    const fcl::Transform3d here = fcl::Transform3d::Identity();
    fcl::DistanceRequest<double> request;
    fcl::DistanceResult<double> result;
    fcl::distance(&asked, here, &model_, here, request, result);
    return std::max(0.0, result.min_distance);
  }

 private:
  Model model_;
};

}  // namespace

std::unique_ptr<Peer> make_fcl(const std::vector<Triangle3>& triangles, double) {
  return std::make_unique<Fcl>(triangles);
}

}  // namespace linewright::bench
