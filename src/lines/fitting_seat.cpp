#include "lines/fitting_seat.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/minimise.hpp"
#include "lines/own_arm.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

constexpr double rounding_in = 1e-6;

/// What places kept in 32 bits, and chords that stand for arcs, may be nearer by.
constexpr double no_nearer_in = 5e-4;

/// Faces turned by more than this from each other are not one [common practice, no source].
const double same_face_cosine = std::cos(radians_of(30));

/// A node is over a face where the way to it stands at 45 degrees or steeper.
const double over_face_cosine = std::cos(radians_of(45));

std::optional<Vec3> normal_of(const Part& part, const Obstacle& obstacle) {
  if (part.kind == PartKind::frame) return obstacle.normal;
  if (part.kind == PartKind::solid || part.kind == PartKind::mover || obstacle.is_segment)
    return std::nullopt;
  const Vec3 across =
      cross(obstacle.shape.b - obstacle.shape.a, obstacle.shape.c - obstacle.shape.a);
  if (norm(across) <= 0) return std::nullopt;
  return unit(across);
}

}  // namespace

FittingSeat::FittingSeat(const PreparedProject& prepared, const PreparedRoute& route, RouteEnd end)
    : prepared_(&prepared),
      route_(&route),
      node_(end == RouteEnd::from ? route.from : route.to),
      zone_in_(std::min(fitting_zone_in, route.length_in())) {
  take_chords(end);
  if (stands()) find_faces();
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

void FittingSeat::find_faces() {
  std::vector<Obstacle> near;
  const auto consider = [&](const Obstacle& obstacle) {
    if (consider_face(obstacle)) near.push_back(obstacle);
  };
  prepared_->obstacles.visit_near(
      {node_->at, node_->at}, mount_distance_in, [&](const Obstacle& obstacle, bool of_mesh) {
        if (!of_mesh || !obstacle.is_segment) return consider(obstacle);
        const Nearest found = nearest(node_->at, obstacle);
        if (found.distance_in < radius_in_ && found.distance_in > rounding_in)
          mesh_edges_.push_back(unit(found.on_second - node_->at));
      });
  for (Face& face : faces_)
    for (const Obstacle& obstacle : near)
      if (obstacle.part == face.nearest.part && is_same_face(face, obstacle))
        face.mount_distance_in = std::min(face.mount_distance_in, first_distance_in(obstacle));
}

/// Keeps the nearest of each part. Of those equally near, the one that the node is most square to:
/// at the rim of a face the face beside it may be as near. False for what cannot be stood on.
bool FittingSeat::consider_face(const Obstacle& obstacle) {
  const Part& part = prepared_->obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  if (obstacle.feature != Feature::face || part.moves || part.kind == PartKind::fitting)
    return false;
  const Nearest found = nearest(node_->at, obstacle);
  if (found.distance_in > mount_distance_in) return false;
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
    return true;
  }
  const double nearer = known->node_distance_in - face.node_distance_in;
  if (nearer > rounding_in || (nearer > -rounding_in && face.stands_over && !known->stands_over))
    *known = std::move(face);
  return true;
}

bool FittingSeat::stands() const {
  return node_->held() && !end_moves(*route_, *node_);
}

/// Of the same part, turned alike, and no deeper than skin and doubler beside the nearest place. A
/// panel that is not flat is there twice, once across each of its diagonals: of what the node
/// stands over there is one sheet all the same.
bool FittingSeat::is_same_face(const Face& face, const Obstacle& obstacle) const {
  if (!face.normal) return true;
  const Part& part = prepared_->obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  const std::optional<Vec3> normal = normal_of(part, obstacle);
  if (!normal || std::abs(dot(*normal, *face.normal)) < same_face_cosine) return false;
  const double most_in = part.kind == PartKind::panel ? mount_distance_in : mount_depth_in;
  return nearest(node_->at, obstacle).distance_in <= mount_distance_in + fitting_zone_in &&
         beside_face_in(face, obstacle) <= most_in + rounding_in;
}

/// How far off the face's plane the obstacle is where it is nearest to the node.
double FittingSeat::beside_face_in(const Face& face, const Obstacle& obstacle) const {
  if (!face.normal) return 0;
  return std::abs(dot(nearest(node_->at, obstacle).on_second - face.foot, *face.normal));
}

/// True where the line, past its first piece and past the face that it stands on, lies clear of the
/// obstacle or leaves it.
bool FittingSeat::comes_clear(const Face& face, const Obstacle& obstacle) const {
  const double depth_in = mount_depth_in + beside_face_in(face, obstacle);
  return std::all_of(rest_.begin(), rest_.end(), [&](const PathChord& chord) {
    const Segment3 segment{chord.from, chord.to};
    if (nearest(segment, obstacle).distance_in >= radius_in_ - rounding_in) return true;
    // Skin and doubler are crossed aslant, too. A convex distance less a concave need is convex.
    const auto spare = [&](double t) {
      const double along = chord.start_in + (chord.end_in - chord.start_in) * t;
      const double needed = std::min(radius_in_, least_leaving_slope * along - depth_in);
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
  if (near > mount_distance_in || rest_distance_in(obstacle) < near - no_nearer_in) return false;
  const double left = nearest(zone_end_, obstacle).distance_in - near;
  if (left < least_leaving_slope * (zone_in_ - mount_depth_in) - rounding_in) return false;
  return near >= radius_in_ - rounding_in || lies_about_node(obstacle);
}

SeatReason FittingSeat::reason(const Obstacle& obstacle, double from_end_in) const {
  const Part& part = prepared_->obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  if (!stands() || part.moves || from_end_in > fitting_zone_in + rounding_in)
    return SeatReason::counts;
  if (is_left_behind(obstacle)) return SeatReason::left_behind;
  if (obstacle.feature != Feature::face) return SeatReason::counts;
  const auto face = std::find_if(faces_.begin(), faces_.end(), [&](const Face& each) {
    return each.nearest.part == obstacle.part;
  });
  if (face == faces_.end() || !face->stands_over || !is_same_face(*face, obstacle))
    return SeatReason::counts;
  // The other diagonal of a panel the line may come through later than in its first piece.
  const bool is_where_it_stands = beside_face_in(*face, obstacle) <= mount_depth_in + rounding_in;
  if (is_where_it_stands && rest_distance_in(obstacle) < face->mount_distance_in - no_nearer_in)
    return SeatReason::counts;
  return comes_clear(*face, obstacle) ? SeatReason::stands_on : SeatReason::counts;
}

}  // namespace linewright
