#include "lines/fitting_seat.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include "geometry/minimise.hpp"
#include "geometry/structure/mover_sweep.hpp"

namespace linewright {

namespace {

constexpr double rounding_in = 1e-6;

/// Faces turned by more than this from each other are not one [common practice, no source].
const double same_face_cosine = std::cos(30 * std::numbers::pi / 180);

/// A node is over a face where the way to it stands at 45 degrees or steeper.
const double over_face_cosine = std::cos(45 * std::numbers::pi / 180);

/// Axes that differ by no more than this are one axis, as drawn.
constexpr double same_axis_in = 0.01;

std::optional<Vec3> normal_of(const Part& part, const Obstacle& obstacle) {
  if (part.kind == PartKind::frame) return Vec3{1, 0, 0};
  if (part.kind == PartKind::solid || part.kind == PartKind::mover || obstacle.is_segment)
    return std::nullopt;
  const Vec3 across =
      cross(obstacle.shape.b - obstacle.shape.a, obstacle.shape.c - obstacle.shape.a);
  if (norm(across) <= 0) return std::nullopt;
  return unit(across);
}

bool is_on_axis(Vec3 point, const Mover& mover) {
  return norm(cross(unit(mover.axis), point - mover.pivot)) <= same_axis_in;
}

}  // namespace

FittingSeat::FittingSeat(const PreparedProject& prepared, const PreparedRoute& route, RouteEnd end)
    : prepared_(&prepared),
      route_(&route),
      node_(end == RouteEnd::from ? route.from : route.to),
      zone_in_(std::min(fitting_zone_in, route.length_in())) {
  take_chords(end);
  if (!node_->held()) return;
  find_faces();
  find_arms();
}

void FittingSeat::take_chords(RouteEnd end) {
  const double length = route_->length_in();
  const auto outward = [&](double from_in, double to_in) {
    std::vector<PathChord> chords;
    if (to_in <= from_in) return chords;
    if (end == RouteEnd::from) return route_->centreline.chords(from_in, to_in);
    for (PathChord chord : route_->centreline.chords(length - to_in, length - from_in)) {
      std::swap(chord.from, chord.to);
      chord = {chord.from, chord.to, length - chord.end_in, length - chord.start_in};
      chords.push_back(chord);
    }
    std::reverse(chords.begin(), chords.end());
    return chords;
  };
  const double depth = std::min(mount_depth_in, zone_in_);
  first_ = outward(0, depth);
  rest_ = outward(depth, zone_in_);
  zone_end_ = route_->centreline.at(end == RouteEnd::from ? zone_in_ : length - zone_in_);
  radius_in_ = route_->radius_in(end == RouteEnd::from ? 0 : length);
}

double FittingSeat::first_distance_in(const Obstacle& obstacle) const {
  double least = nearest(node_->at, obstacle).distance_in;
  for (const PathChord& chord : first_)
    least = std::min(least, nearest(Segment3{chord.from, chord.to}, obstacle).distance_in);
  return least;
}

double FittingSeat::rest_distance_in(const Obstacle& obstacle) const {
  double least = std::numeric_limits<double>::infinity();
  for (const PathChord& chord : rest_)
    least = std::min(least, nearest(Segment3{chord.from, chord.to}, obstacle).distance_in);
  return least;
}

double FittingSeat::zone_distance_in(const Obstacle& obstacle) const {
  return std::min(first_distance_in(obstacle), rest_distance_in(obstacle));
}

void FittingSeat::find_faces() {
  const Vec3 by{mount_distance_in, mount_distance_in, mount_distance_in};
  prepared_->obstacles.visit({node_->at - by, node_->at + by},
                             [&](const Obstacle& obstacle) { consider_face(obstacle); });
  for (const MeshPartField& mesh : prepared_->obstacles.meshes()) {
    const Segment3 here{node_->at, node_->at};
    const double within = mount_distance_in + mesh.field->mesh().thickness_in / 2;
    const auto cells = mesh.field->cells_near({node_->at, node_->at}, within);
    if (cells.empty()) continue;
    mesh.field->visit_within(here, within, cells, [&](const MeshItem& item, double) {
      const Obstacle obstacle = obstacle_of(mesh, item);
      if (item.is_edge) {
        const Nearest found = nearest(node_->at, obstacle);
        if (found.distance_in < radius_in_ && found.distance_in > rounding_in)
          mesh_edges_.push_back(unit(found.on_second - node_->at));
      } else {
        consider_face(obstacle);
      }
      return within;
    });
  }
  for (Face& face : faces_) face.mount_distance_in = first_distance_in(face.nearest);
}

/// Keeps the nearest of each part. Of those equally near, the one that the node is most square to:
/// at the rim of a face the face beside it may be as near.
void FittingSeat::consider_face(const Obstacle& obstacle) {
  const Part& part = prepared_->obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  if (obstacle.feature != Feature::face || part.moves) return;
  const Nearest found = nearest(node_->at, obstacle);
  if (found.distance_in > mount_distance_in) return;
  Face face{obstacle, found.distance_in, found.distance_in, found.on_second, {}, true};
  face.normal = normal_of(part, obstacle);
  const Vec3 way = node_->at - face.foot;
  if (face.normal && norm(way) > mount_depth_in / 2 && found.distance_in > rounding_in)
    face.stands_over = std::abs(dot(unit(way), *face.normal)) >= over_face_cosine;
  const auto known = std::find_if(faces_.begin(), faces_.end(), [&](const Face& each) {
    return each.nearest.part == obstacle.part;
  });
  if (known == faces_.end()) {
    faces_.push_back(std::move(face));
    return;
  }
  const double nearer = known->node_distance_in - face.node_distance_in;
  if (nearer > rounding_in || (nearer > -rounding_in && face.stands_over && !known->stands_over))
    *known = std::move(face);
}

/// The end goes round with the part where its arm stands on the part's own axis.
void FittingSeat::find_arms() {
  if (route_->line->kind != LineKind::cable || !node_->arm) return;
  const Arm& arm = *node_->arm;
  for (const Mover& mover : prepared_->project->structure.movers) {
    const bool along = norm(cross(unit(mover.axis), unit(arm.axis))) <= 1e-3;
    const auto part = prepared_->obstacles.find_part(mover.name);
    if (!along || !part || !is_on_axis(arm.pivot, mover)) continue;
    Arms found{*part, fitting_zone_in, {}};
    constexpr int steps = 40;
    for (int i = 0; i <= steps; ++i) {
      const double degrees =
          mover.sweep_from_deg + (mover.sweep_to_deg - mover.sweep_from_deg) * i / steps;
      found.places.push_back(
          turned(node_->at, mover.pivot, mover.axis, degrees * std::numbers::pi / 180));
      found.zone_in =
          std::max(found.zone_in, fitting_zone_in + distance(found.places.back(), node_->at));
    }
    arms_.push_back(std::move(found));
  }
}

/// Of the same part, turned alike, and no deeper than skin and doubler beside the nearest place.
bool FittingSeat::is_same_face(const Face& face, const Obstacle& obstacle) const {
  if (!face.normal) return true;
  const Part& part = prepared_->obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  const std::optional<Vec3> normal = normal_of(part, obstacle);
  if (!normal || std::abs(dot(*normal, *face.normal)) < same_face_cosine) return false;
  const Nearest found = nearest(node_->at, obstacle);
  return found.distance_in <= mount_distance_in + fitting_zone_in &&
         std::abs(dot(found.on_second - face.foot, *face.normal)) <= mount_depth_in + rounding_in;
}

/// True where the line, past its first piece, lies clear of the obstacle or leaves it.
bool FittingSeat::comes_clear(const Obstacle& obstacle) const {
  return std::all_of(rest_.begin(), rest_.end(), [&](const PathChord& chord) {
    const Segment3 segment{chord.from, chord.to};
    if (nearest(segment, obstacle).distance_in >= radius_in_ - rounding_in) return true;
    // A convex distance less a concave need is convex.
    const auto spare = [&](double t) {
      const double along = chord.start_in + (chord.end_in - chord.start_in) * t;
      const double needed = std::min(radius_in_, least_leaving_slope * (along - mount_depth_in));
      return nearest(between(chord.from, chord.to, t), obstacle).distance_in - needed;
    };
    return minimise_convex(spare, 0, 1, 1e-7).value >= -rounding_in;
  });
}

/// True for one of several edges that lie about the node: it stands in a hole, or over one.
bool FittingSeat::lies_about_node(const Obstacle& obstacle) const {
  if (obstacle.feature == Feature::hole_edge) return true;
  const Nearest found = nearest(node_->at, obstacle);
  if (found.distance_in <= rounding_in) return false;
  const Vec3 direction = unit(found.on_second - node_->at);
  return std::any_of(mesh_edges_.begin(), mesh_edges_.end(),
                     [&](Vec3 other) { return dot(direction, other) < -0.5; });
}

bool FittingSeat::is_left_behind(const Obstacle& obstacle) const {
  const double near = first_distance_in(obstacle);
  if (near > mount_distance_in || rest_distance_in(obstacle) < near - rounding_in) return false;
  const double left = nearest(zone_end_, obstacle).distance_in - near;
  if (left < least_leaving_slope * (zone_in_ - mount_depth_in) - rounding_in) return false;
  return near >= radius_in_ - rounding_in || lies_about_node(obstacle);
}

bool FittingSeat::turns_with(const Obstacle& obstacle, double from_end_in) const {
  return std::any_of(arms_.begin(), arms_.end(), [&](const Arms& arms) {
    return arms.part == obstacle.part && from_end_in <= arms.zone_in &&
           std::any_of(arms.places.begin(), arms.places.end(), [&](Vec3 place) {
             return nearest(place, obstacle).distance_in <= mount_distance_in;
           });
  });
}

SeatReason FittingSeat::reason(const Obstacle& obstacle, double from_end_in) const {
  if (!node_->held()) return SeatReason::counts;
  const Part& part = prepared_->obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  if (part.moves)
    return turns_with(obstacle, from_end_in) ? SeatReason::turns_with_it : SeatReason::counts;
  if (from_end_in > fitting_zone_in + rounding_in) return SeatReason::counts;
  if (is_left_behind(obstacle)) return SeatReason::left_behind;
  if (obstacle.feature != Feature::face) return SeatReason::counts;
  const auto face = std::find_if(faces_.begin(), faces_.end(), [&](const Face& each) {
    return each.nearest.part == obstacle.part;
  });
  if (face == faces_.end() || !face->stands_over || !is_same_face(*face, obstacle))
    return SeatReason::counts;
  if (rest_distance_in(obstacle) < face->mount_distance_in - rounding_in) return SeatReason::counts;
  return comes_clear(obstacle) ? SeatReason::stands_on : SeatReason::counts;
}

}  // namespace linewright
