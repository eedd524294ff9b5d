#include <embree3/rtcore.h>

#include "bench/lean_distance.hpp"
#include "bench/peer.hpp"

namespace linewright::bench {
namespace {

/// A point query is a sphere, so a segment is asked about in pieces; the shorter they are, the
/// tighter each sphere, and the more there are of them. The fitting length depends on the mesh.
class Embree : public Peer {
 public:
  Embree(const std::vector<Triangle3>& triangles, double longest_piece_in)
      : triangles_(triangles), longest_piece_in_(longest_piece_in) {
    device_ = rtcNewDevice("threads=1");
    scene_ = rtcNewScene(device_);
    RTCGeometry geometry = rtcNewGeometry(device_, RTC_GEOMETRY_TYPE_TRIANGLE);
    auto* corners = static_cast<float*>(
        rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3,
                                3 * sizeof(float), 3 * triangles.size()));
    auto* indices = static_cast<unsigned*>(
        rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3,
                                3 * sizeof(unsigned), triangles.size()));
    for (const Triangle3& triangle : triangles)
      for (const Vec3& corner : {triangle.a, triangle.b, triangle.c})
        for (const double value : {corner.x, corner.y, corner.z})
          *corners++ = static_cast<float>(value);
    for (unsigned i = 0; i < 3 * triangles.size(); ++i) *indices++ = i;
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(scene_, geometry);
    rtcReleaseGeometry(geometry);
    rtcCommitScene(scene_);
  }

  ~Embree() override {
    rtcReleaseScene(scene_);
    rtcReleaseDevice(device_);
  }

  double distance_in(const Segment3& segment, bool new_route) override {
    if (new_route) guess_ = static_cast<unsigned>(first_guess(triangles_, segment));
    double best_squared = lean_squared(segment, triangles_[guess_]);
    const int pieces = pieces_of(segment, longest_piece_in_);
    for (int i = 0; i < pieces && best_squared > 0; ++i) {
      Asked asked{*this, piece_of(segment, i, pieces), best_squared};
      const Vec3 middle = between(asked.piece.a, asked.piece.b, 0.5);
      RTCPointQuery query;
      query.x = static_cast<float>(middle.x);
      query.y = static_cast<float>(middle.y);
      query.z = static_cast<float>(middle.z);
      query.time = 0;
      query.radius = asked.radius();
      RTCPointQueryContext context;
      rtcInitPointQueryContext(&context);
      rtcPointQuery(scene_, &query, &context, &Embree::visit, &asked);
      best_squared = asked.best_squared;
    }
    return std::sqrt(best_squared);
  }

 private:
  struct Asked {
    Embree& self;
    Segment3 piece;
    double best_squared;

    float radius() const {
      constexpr double float_error = 1e-4;
      return static_cast<float>(std::sqrt(best_squared) + distance(piece.a, piece.b) / 2 +
                                float_error);
    }
  };

  static bool visit(RTCPointQueryFunctionArguments* arguments) {
    Asked& asked = *static_cast<Asked*>(arguments->userPtr);
    const Triangle3& triangle = asked.self.triangles_[arguments->primID];
    if (square_box_gap(asked.piece, triangle) >= asked.best_squared) return false;
    const double squared = lean_squared(asked.piece, triangle);
    if (squared >= asked.best_squared) return false;
    asked.best_squared = squared;
    asked.self.guess_ = arguments->primID;
    arguments->query->radius = asked.radius();
    return true;
  }

  const std::vector<Triangle3>& triangles_;
  double longest_piece_in_;
  RTCDevice device_;
  RTCScene scene_;
  unsigned guess_ = 0;
};

}  // namespace

std::unique_ptr<Peer> make_embree(const std::vector<Triangle3>& triangles,
                                  double longest_piece_in) {
  return std::make_unique<Embree>(triangles, longest_piece_in);
}

}  // namespace linewright::bench
