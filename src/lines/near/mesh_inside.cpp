#include "lines/near/mesh_inside.hpp"

#include <array>

namespace linewright {

namespace {

/// Rays lie off round coordinates by these, so that they go through faces rather than along edges.
constexpr std::array<double, 3> off_round_in{1.7e-4, 2.3e-4, 3.1e-4};

/// Cells farther from a ray than this are not looked at.
constexpr double on_the_ray_in = 1e-6;

/// The ray goes through the face, seen along it.
bool pierces(const Segment3& ray, const Triangle3& face) {
  const Vec3 along = ray.b - ray.a;
  const auto side = [&](Vec3 from, Vec3 to) {
    return dot(along, cross(from - ray.a, to - ray.a)) > 0;
  };
  const bool first = side(face.a, face.b);
  if (side(face.b, face.c) != first || side(face.c, face.a) != first) return false;
  const Vec3 normal = cross(face.b - face.a, face.c - face.a);
  const double over = dot(normal, along);
  if (over == 0) return false;
  const double part = dot(normal, face.a - ray.a) / over;
  return part > 0 && part < 1;
}

bool leaves_by_a_face(const MeshField& mesh, const Segment3& ray) {
  Bounds box{ray.a, ray.a};
  include(box, ray.b);
  // Far cells are only looked through: making them ready would cost more than the check itself.
  int faces = 0;
  mesh.visit_triangles(mesh.cells_near(box, on_the_ray_in), [&](const Triangle3& face) {
    if (pierces(ray, face)) ++faces;
  });
  return faces % 2 == 1;
}

}  // namespace

bool is_inside(const MeshField& mesh, Vec3 place) {
  const Bounds bounds = mesh.bounds();
  const Vec3 off = place + Vec3{off_round_in[0], off_round_in[1], off_round_in[2]};
  if (least_distance(bounds, {off, off}) > 0) return false;
  return leaves_by_a_face(mesh, {off, {bounds.max.x + 1, off.y, off.z}}) &&
         leaves_by_a_face(mesh, {off, {off.x, bounds.max.y + 1, off.z}}) &&
         leaves_by_a_face(mesh, {off, {off.x, off.y, bounds.max.z + 1}});
}

Vec3 middle_of(const PreparedRoute& route) {
  return route.centreline.at(route.length_in() / 2);
}

}  // namespace linewright
