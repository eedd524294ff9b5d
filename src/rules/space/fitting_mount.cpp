#include "rules/space/fitting_mount.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/plane/polygon.hpp"
#include "lines/fitting_seat.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

constexpr double mount_rounding_in = 1e-6;

/// What these kinds of nodes are fitted in a hole of holds them; a tee or a union that structure
/// holds goes through a hole as a line does, unless it is a bulkhead union.
bool is_fitted_in_holes(const PreparedProject& prepared, const Node& node) {
  const Fitting* fitting = prepared.project->catalogue.find_fitting(node.fitting);
  if (fitting && fitting->kind == FittingKind::bulkhead_union) return true;
  return node.kind != NodeKind::tee && node.kind != NodeKind::union_fitting &&
         node.kind != NodeKind::cap && node.kind != NodeKind::end;
}

/// Faces turned by more than this from each other are not one [common practice, no source].
const double mount_face_cosine = std::cos(radians_of(30));
const double mount_edge_sine = std::sin(radians_of(30));
/// A node is over a face where the way to it stands at 45 degrees or steeper.
const double over_mount_cosine = std::cos(radians_of(45));

/// Unit; nothing for an edge and for a triangle without area.
std::optional<Vec3> mount_normal(const Obstacle& obstacle) {
  if (obstacle.is_segment || obstacle.feature != Feature::face) return std::nullopt;
  const Vec3 across =
      cross(obstacle.shape.b - obstacle.shape.a, obstacle.shape.c - obstacle.shape.a);
  if (norm(across) <= 0) return std::nullopt;
  return unit(across);
}

/// True for what lies in the face, as deep as skin and doubler are: all of it, or where it is
/// nearest if it is turned as the face is.
bool lies_along(const Obstacle& obstacle, const MountFace& face, Vec3 nearest_at) {
  const auto is_in_face = [&](Vec3 place) {
    return std::abs(dot(place - face.foot, face.normal)) <= mount_depth_in + mount_rounding_in;
  };
  if (!is_in_face(nearest_at)) return false;
  const Triangle3& shape = obstacle.shape;
  if (is_in_face(shape.a) && is_in_face(shape.b) && (obstacle.is_segment || is_in_face(shape.c)))
    return true;
  if (const auto normal = mount_normal(obstacle))
    return std::abs(dot(*normal, face.normal)) >= mount_face_cosine;
  const Vec3 along = shape.b - shape.a;
  return norm(along) > 0 && std::abs(dot(unit(along), face.normal)) <= mount_edge_sine;
}

/// Between which planes, square to a normal, a sheet lies.
struct SheetSides {
  Vec3 normal;
  double low_in = 0;
  double high_in = 0;

  /// 1 and -1 on its two sides, 0 in it, and for what is no farther out than `depth_in`.
  int side(Vec3 place, double depth_in) const {
    const double at_in = dot(place, normal);
    return at_in > high_in + depth_in ? 1 : at_in < low_in - depth_in ? -1 : 0;
  }
};

/// Nothing for an edge and for a triangle without area.
std::optional<SheetSides> sides_of(const Obstacle& obstacle) {
  if (obstacle.feature != Feature::face || obstacle.is_disc) return std::nullopt;
  const std::optional<Vec3> normal =
      obstacle.is_slab ? std::optional(obstacle.normal) : mount_normal(obstacle);
  if (!normal) return std::nullopt;
  const double a_in = dot(obstacle.shape.a, *normal);
  const double b_in = obstacle.is_slab ? dot(obstacle.shape.b, *normal) : a_in;
  return SheetSides{*normal, std::min(a_in, b_in) - obstacle.radius_in,
                    std::max(a_in, b_in) + obstacle.radius_in};
}

/// How deep a place lies in a solid; below zero outside of it.
double depth_in_solid(const Solid& solid, Vec3 place) {
  if (const Box* box = std::get_if<Box>(&solid.shape))
    return std::min({place.x - box->min.x, box->max.x - place.x, place.y - box->min.y,
                     box->max.y - place.y, place.z - box->min.z, box->max.z - place.z});
  const Cylinder& cylinder = std::get<Cylinder>(solid.shape);
  const double length_in = distance(cylinder.from, cylinder.to);
  if (length_in <= 0) return -1;
  const Vec3 along = (cylinder.to - cylinder.from) / length_in;
  const double at_in = dot(place - cylinder.from, along);
  const double off_in = norm(place - cylinder.from - along * at_in);
  return std::min({at_in, length_in - at_in, cylinder.diameter_in / 2 - off_in});
}

}  // namespace

FittingMount::FittingMount(const PreparedProject& prepared, const NodeFitting& fitting)
    : prepared_(&prepared), fitting_(&fitting) {
  find_mounts();
}

const Part& FittingMount::part_of(int part) const {
  return prepared_->obstacles.parts()[static_cast<std::size_t>(part)];
}

/// What may hold a fitting: nothing that moves, and no other fitting.
bool FittingMount::holds_still(int part) const {
  const Part& each = part_of(part);
  return !each.moves && each.kind != PartKind::fitting && each.kind != PartKind::pulley;
}

/// A fitting in a hole is as far from that sheet as from its plane, not as from the hole's edge.
void FittingMount::take_hole(const Frame& sheet, int part) {
  if (!is_fitted_in_holes(*prepared_, node())) return note_passed(sheet, part);
  const double off_in =
      std::max(0.0, std::abs(sheet.plane.above(node().at)) - sheet.thickness_in / 2);
  if (off_in > mount_distance_in) return;
  for (const Hole& hole : sheet.holes)
    if (covers(hole, sheet.plane.seen(node().at))) take_near(part, off_in);
}

/// What one of its axes goes through by a hole holds it nowhere.
void FittingMount::note_passed(const Frame& sheet, int part) {
  for (const Segment3& leg : fitting_->legs) {
    const double a_in = sheet.plane.above(leg.a);
    const double b_in = sheet.plane.above(leg.b);
    if (a_in == b_in || a_in * b_in > 0) continue;
    const Vec3 at = between(leg.a, leg.b, a_in / (a_in - b_in));
    for (const Hole& hole : sheet.holes)
      if (covers(hole, sheet.plane.seen(at))) passed_.insert(part);
  }
}

/// Keeps the face of the part that is nearest to the node, where the node is over it.
void FittingMount::take_face(const Obstacle& obstacle) {
  const std::optional<Vec3> normal = mount_normal(obstacle);
  if (!normal) return;
  const Nearest found = nearest(node().at, obstacle);
  MountFace& known = faces_[obstacle.part];
  if (found.distance_in >= known.distance_in) return;
  const Vec3 way = node().at - found.on_second;
  const bool is_over =
      norm(way) <= mount_rounding_in || std::abs(dot(unit(way), *normal)) >= over_mount_cosine;
  if (is_over || is_fitted_in_holes(*prepared_, node()))
    known = {found.distance_in, found.on_second, *normal};
}

void FittingMount::take_near(int part, double distance_in) {
  const auto [known, is_new] = parts_near_in_.try_emplace(part, distance_in);
  known->second = std::min(known->second, distance_in);
}

void FittingMount::find_parts_near() {
  prepared_->obstacles.visit_near({node().at, node().at}, mount_distance_in,
                                  [&](const Obstacle& each, bool) {
                                    if (!holds_still(each.part)) return;
                                    take_near(each.part, nearest(node().at, each).distance_in);
                                    take_face(each);
                                  });
  for (const Frame& frame : prepared_->project->structure.frames)
    if (const auto part = prepared_->obstacles.find_part(frame.name)) take_hole(frame, *part);
  for (const Wall& wall : prepared_->walls) take_hole(wall.frame, wall.part);
}

void FittingMount::find_mounts() {
  if (!node().held()) return;
  find_parts_near();
  for (const int part : passed_) parts_near_in_.erase(part);
  double least_in = mount_distance_in;
  for (const auto& [part, distance_in] : parts_near_in_) least_in = std::min(least_in, distance_in);
  for (const auto& [part, distance_in] : parts_near_in_) {
    const double depth_in =
        part_of(part).kind == PartKind::solid ? mount_rounding_in : mount_depth_in;
    if (distance_in <= std::min(least_in + depth_in, mount_distance_in)) mounts_.push_back(part);
  }
}

/// True where one of its axes comes out on the other side of the sheet than the node is on; of a
/// node in the sheet, where two come out on either side.
bool FittingMount::goes_through(const Obstacle& obstacle) const {
  const std::optional<SheetSides> sheet = sides_of(obstacle);
  if (!sheet) return false;
  const int node_side = sheet->side(node().at, mount_rounding_in);
  bool comes_out_high = false;
  bool comes_out_low = false;
  for (const Segment3& leg : fitting_->legs) {
    if (nearest(leg, obstacle).distance_in > mount_rounding_in) continue;
    const int end_side = sheet->side(leg.b, mount_rounding_in);
    if (node_side != 0 && end_side == -node_side) return true;
    comes_out_high = comes_out_high || sheet->side(leg.b, mount_depth_in) > 0;
    comes_out_low = comes_out_low || sheet->side(leg.b, mount_depth_in) < 0;
  }
  const bool stands_in_it = nearest(node().at, obstacle).distance_in <= mount_rounding_in;
  return node_side == 0 && stands_in_it && comes_out_high && comes_out_low;
}

/// True where one of its axes goes deeper into a solid than a doubler is thick.
bool FittingMount::goes_into_solid(const Obstacle& obstacle) const {
  constexpr int places = 16;
  const std::string& name = part_of(obstacle.part).name;
  const std::vector<Solid>& solids = prepared_->project->structure.solids;
  const auto solid = std::find_if(solids.begin(), solids.end(),
                                  [&](const Solid& each) { return each.name == name; });
  if (solid == solids.end()) return false;
  for (const Segment3& leg : fitting_->legs)
    for (int i = 0; i <= places; ++i) {
      const Vec3 place = between(leg.a, leg.b, static_cast<double>(i) / places);
      if (nearest(place, obstacle).distance_in <= mount_rounding_in &&
          depth_in_solid(*solid, place) > mount_depth_in)
        return true;
    }
  return false;
}

/// Of a mesh or a channel only the face that it stands on: a lip or a flange beside it is in its
/// way.
bool FittingMount::holds(const Obstacle& obstacle, bool of_mesh) const {
  if (std::find(mounts_.begin(), mounts_.end(), obstacle.part) == mounts_.end()) return false;
  if (!is_fitted_in_holes(*prepared_, node()) &&
      (goes_through(obstacle) || goes_into_solid(obstacle)))
    return false;
  if (!of_mesh && part_of(obstacle.part).kind != PartKind::channel) return true;
  const Nearest found = nearest(node().at, obstacle);
  if (of_mesh && found.distance_in > mount_distance_in) return false;
  const auto face = faces_.find(obstacle.part);
  if (face == faces_.end() || !std::isfinite(face->second.distance_in)) return false;
  return lies_along(obstacle, face->second, found.on_second);
}

}  // namespace linewright
