#include "geometry/structure/obstacles.hpp"

#include <algorithm>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <iterator>
#include <limits>
#include <tuple>
#include <utility>

#include "geometry/minimise.hpp"
#include "geometry/plane/boost_fence.hpp"
#include "geometry/structure/pulley_body.hpp"
#include "geometry/structure/structure_obstacles.hpp"
#include "geometry/structure/wall_place.hpp"

// The R-tree holds boxes only, in a point type that no other file sees: box against box is all
// that is asked of Boost in three dimensions, and the fence refuses what it gets wrong there.

namespace linewright {
namespace {

namespace bg = boost::geometry;
using IndexPoint = bg::model::point<double, 3, bg::cs::cartesian>;
using IndexBox = bg::model::box<IndexPoint>;
using Entry = std::pair<IndexBox, std::size_t>;
using Tree = bg::index::rtree<Entry, bg::index::quadratic<16>>;

IndexBox box_of(const Obstacle& obstacle) {
  const auto [min, max] = grown(bounds_of(obstacle), obstacle.radius_in);
  return {IndexPoint(min.x, min.y, min.z), IndexPoint(max.x, max.y, max.z)};
}

/// Built in one go from all boxes, which Boost packs.
Tree packed(const std::vector<Obstacle>& obstacles) {
  std::vector<Entry> entries;
  entries.reserve(obstacles.size());
  for (std::size_t i = 0; i < obstacles.size(); ++i) entries.emplace_back(box_of(obstacles[i]), i);
  return Tree(entries);
}

template <typename First>
Nearest to_shape(const First& first, const Triangle3& shape, bool is_segment) {
  return is_segment ? nearest(first, Segment3{shape.a, shape.b}) : nearest(first, shape);
}

Vec3 moved_to_station(Vec3 point, double station) {
  return {station, point.y, point.z};
}

/// The piece of a segment between two stations, ends included; nothing where none lies there.
std::optional<Segment3> piece_between(const Segment3& segment, double low, double high) {
  const auto [least, most] = std::minmax(segment.a.x, segment.b.x);
  if (most < low || least > high) return std::nullopt;
  const auto held = [&](Vec3 end, Vec3 other) {
    const double station = std::clamp(end.x, low, high);
    if (station == end.x) return end;
    const double fraction = (station - end.x) / (other.x - end.x);
    return moved_to_station(between(end, other, fraction), station);
  };
  return Segment3{held(segment.a, segment.b), held(segment.b, segment.a)};
}

/// A slab whose normal is FS is its cross-section at every station from front to rear. Before and
/// behind it, the nearest cross-section is the first or the last; between the two, the nearest is
/// the one at the same station, and the distance the one seen along FS.
class Slab {
 public:
  Slab(const Triangle3& shape, bool flat) : shape_(shape), flat_(flat) {
    std::tie(front_, rear_) = std::minmax({shape_.a.x, shape_.b.x});
  }

  Nearest to(Vec3 point) const { return at(std::clamp(point.x, front_, rear_), point); }

  Nearest to(const Segment3& segment) const {
    constexpr double endless = std::numeric_limits<double>::infinity();
    std::optional<Nearest> best;
    const auto consider = [&best](const Nearest& found) {
      if (!best || found.distance_in < best->distance_in) best = found;
    };
    if (const auto before = piece_between(segment, -endless, front_)) consider(at(front_, *before));
    if (const auto behind = piece_between(segment, rear_, endless)) consider(at(rear_, *behind));
    if (const auto beside = piece_between(segment, front_, rear_)) consider(seen_along(*beside));
    return best.value_or(at(front_, segment));
  }

 private:
  template <typename First>
  Nearest at(double station, const First& first) const {
    const Triangle3 section{moved_to_station(shape_.a, station),
                            moved_to_station(shape_.b, station),
                            moved_to_station(shape_.c, station)};
    return to_shape(first, section, flat_);
  }

  /// From a segment that lies between the front and the rear.
  Nearest seen_along(const Segment3& segment) const {
    const Segment3 seen{moved_to_station(segment.a, front_), moved_to_station(segment.b, front_)};
    Nearest result = at(front_, seen);
    const double length_in = distance(seen.a, seen.b);
    const double fraction =
        length_in > 0 ? std::min(distance(seen.a, result.on_first) / length_in, 1.0) : 0.0;
    const double station = segment.a.x + (segment.b.x - segment.a.x) * fraction;
    result.on_first = moved_to_station(result.on_first, station);
    result.on_second = moved_to_station(result.on_second, station);
    return result;
  }

  const Triangle3& shape_;
  bool flat_;
  double front_ = 0;
  double rear_ = 0;
};

constexpr Vec3 fore_and_aft{1, 0, 0};

DrawnPlane plane_of_slab(const Obstacle& obstacle) {
  return wall_plane({.middle = obstacle.shape.a, .normal = obstacle.normal});
}

Vec3 placed(const DrawnPlane& plane, Vec3 place) {
  return plane.placed(place);
}
Segment3 placed(const DrawnPlane& plane, const Segment3& segment) {
  return {plane.placed(segment.a), plane.placed(segment.b)};
}
Triangle3 placed(const DrawnPlane& plane, const Triangle3& shape) {
  return {plane.placed(shape.a), plane.placed(shape.b), plane.placed(shape.c)};
}

/// One that stands otherwise is seen from where its normal is FS.
template <typename First>
Nearest to_slab(const First& first, const Obstacle& obstacle) {
  if (obstacle.normal == fore_and_aft) return Slab(obstacle.shape, obstacle.is_segment).to(first);
  const DrawnPlane plane = plane_of_slab(obstacle);
  const Triangle3 shape = placed(plane, obstacle.shape);
  Nearest found = Slab(shape, obstacle.is_segment).to(placed(plane, first));
  const auto back = [&plane](Vec3 place) { return plane.in_space({place.y, place.z}, place.x); };
  found.on_first = back(found.on_first);
  found.on_second = back(found.on_second);
  return found;
}

/// How far corner c stands off a disc's centre, as a share of the radius.
constexpr double disc_axis_share = 0.01;

class Disc {
 public:
  explicit Disc(const Triangle3& shape)
      : centre_((shape.a + shape.b) / 2),
        axis_(unit(shape.c - centre_)),
        // The box's half sides are r √(1 − n²) for each component n of the axis: r √2 in all.
        radius_in_(norm(shape.b - shape.a) / (2 * std::sqrt(2.0))) {}

  Nearest to(Vec3 point) const {
    const Vec3 away = point - centre_;
    const Vec3 in_plane = away - axis_ * dot(away, axis_);
    const double outward = norm(in_plane);
    const double share = outward > radius_in_ ? radius_in_ / outward : 1.0;
    const Vec3 on_disc = centre_ + in_plane * share;
    return {distance(point, on_disc), point, on_disc};
  }

  /// Exact where the segment pierces the disc; else one search, as the distance to what is convex
  /// is convex along a line.
  Nearest to(const Segment3& segment) const {
    const double above_a = dot(segment.a - centre_, axis_);
    const double above_b = dot(segment.b - centre_, axis_);
    if (above_a * above_b < 0) {
      const Vec3 at = between(segment.a, segment.b, above_a / (above_a - above_b));
      if (distance(at, centre_) <= radius_in_) return {0, at, at};
    }
    const auto away = [&](double t) { return to(between(segment.a, segment.b, t)).distance_in; };
    return to(between(segment.a, segment.b, minimise_convex(away, 0, 1).at));
  }

 private:
  Vec3 centre_;
  Vec3 axis_;
  double radius_in_;
};

template <typename First>
Nearest to_shape_of(const First& first, const Obstacle& obstacle) {
  if (obstacle.is_slab) return to_slab(first, obstacle);
  if (obstacle.is_disc) return Disc(obstacle.shape).to(first);
  return to_shape(first, obstacle.shape, obstacle.is_segment);
}

template <typename First>
Nearest to_surface(const First& first, const Obstacle& obstacle) {
  Nearest result = to_shape_of(first, obstacle);
  result.distance_in -= obstacle.radius_in;
  return result;
}

}  // namespace

Bounds bounds_of(const Obstacle& obstacle) {
  Bounds bounds = bounds_of(obstacle.shape);
  if (!obstacle.is_slab || obstacle.normal == fore_and_aft) return bounds;
  const DrawnPlane plane = plane_of_slab(obstacle);
  const double thickness_in = plane.above(obstacle.shape.b);
  for (const Vec3 corner : {obstacle.shape.a, obstacle.shape.b, obstacle.shape.c})
    for (const double above : {0.0, thickness_in})
      include(bounds, plane.in_space(plane.seen(corner), above));
  return bounds;
}

Triangle3 disc_of(Vec3 centre, Vec3 axis, double radius_in) {
  const auto side = [radius_in](double share) {
    return radius_in * std::sqrt(std::max(0.0, 1 - share * share));
  };
  const Vec3 half{side(axis.x), side(axis.y), side(axis.z)};
  return {centre - half, centre + half, centre + axis * (radius_in * disc_axis_share)};
}

struct Obstacles::Index {
  StructureShapes shapes;
  std::vector<MeshPartField> meshes;
  Tree tree;
};

Obstacles::Obstacles(const Structure& structure, const MeshFields& meshes)
    : index_(std::make_unique<Index>()) {
  index_->shapes = shapes_of(structure);
  for (std::size_t i = 0; i < meshes.size(); ++i) {
    index_->meshes.push_back({static_cast<int>(index_->shapes.parts.size()), meshes[i]});
    const Mesh& mesh = structure.meshes[i];
    index_->shapes.parts.push_back({PartKind::mesh, mesh.name, mesh.where, false});
  }
  index_->tree = packed(index_->shapes.obstacles);
}

void Obstacles::add_bodies(const std::vector<FittingSolid>& fittings,
                           const std::vector<PulleyBody>& pulleys) {
  if (fittings.empty() && pulleys.empty()) return;
  for (const FittingSolid& fitting : fittings) {
    for (const Segment3& leg : fitting.legs) {
      Obstacle obstacle;
      obstacle.shape = {leg.a, leg.b, leg.b};
      obstacle.is_segment = true;
      obstacle.radius_in = fitting.radius_in;
      obstacle.part = static_cast<int>(index_->shapes.parts.size());
      index_->shapes.obstacles.push_back(obstacle);
    }
    index_->shapes.parts.push_back({PartKind::fitting, fitting.name, fitting.where, false});
  }
  for (const PulleyBody& pulley : pulleys) {
    add_pulley_body(pulley, static_cast<int>(index_->shapes.parts.size()),
                    index_->shapes.obstacles);
    index_->shapes.parts.push_back({PartKind::pulley, pulley.name, pulley.where, true});
  }
  index_->tree = packed(index_->shapes.obstacles);
}

Obstacles::~Obstacles() = default;
Obstacles::Obstacles(const Obstacles& other) : index_(std::make_unique<Index>(*other.index_)) {}
Obstacles::Obstacles(Obstacles&&) noexcept = default;
Obstacles& Obstacles::operator=(Obstacles&&) noexcept = default;

const std::vector<Part>& Obstacles::parts() const {
  return index_->shapes.parts;
}
const std::vector<Obstacle>& Obstacles::all() const {
  return index_->shapes.obstacles;
}

// Parts are added one after the other.
std::span<const Obstacle> Obstacles::of_part(int part) const {
  const auto first = std::partition_point(
      all().begin(), all().end(), [part](const Obstacle& each) { return each.part < part; });
  const auto last = std::partition_point(
      first, all().end(), [part](const Obstacle& each) { return each.part == part; });
  return std::span(all()).subspan(static_cast<std::size_t>(first - all().begin()),
                                  static_cast<std::size_t>(last - first));
}

const std::vector<MeshPartField>& Obstacles::meshes() const {
  return index_->meshes;
}

std::optional<int> Obstacles::find_part(const std::string& name) const {
  const auto found = std::find_if(parts().begin(), parts().end(),
                                  [&name](const Part& part) { return part.name == name; });
  if (found == parts().end()) return std::nullopt;
  return static_cast<int>(found - parts().begin());
}

void Obstacles::visit(const Bounds& bounds,
                      const std::function<void(const Obstacle&)>& visit) const {
  const IndexBox wanted(IndexPoint(bounds.min.x, bounds.min.y, bounds.min.z),
                        IndexPoint(bounds.max.x, bounds.max.y, bounds.max.z));
  std::vector<Entry> found;
  index_->tree.query(bg::index::intersects(wanted), std::back_inserter(found));
  std::sort(found.begin(), found.end(),
            [](const Entry& a, const Entry& b) { return a.second < b.second; });
  for (const Entry& entry : found) visit(all()[entry.second]);
}

void Obstacles::visit_near(const Segment3& segment, double within_in,
                           const std::function<void(const Obstacle&, bool of_mesh)>& visit) const {
  const Bounds box = bounds_of(Triangle3{segment.a, segment.b, segment.b});
  this->visit(grown(box, within_in), [&](const Obstacle& each) { visit(each, false); });
  for (const MeshPartField& mesh : meshes()) {
    const double reach_in = within_in + mesh.field->mesh().thickness_in / 2;
    const auto cells = mesh.field->cells_near(box, reach_in);
    if (cells.empty()) continue;
    mesh.field->visit_within(segment, reach_in, cells, [&](const MeshItem& item, double) {
      visit(obstacle_of(mesh, item), true);
      return reach_in;
    });
  }
}

Obstacle obstacle_of(const MeshPartField& mesh, const MeshItem& item) {
  Obstacle obstacle;
  obstacle.shape = item.shape;
  obstacle.is_segment = item.is_edge;
  obstacle.radius_in = mesh.field->mesh().thickness_in / 2;
  obstacle.part = mesh.part;
  obstacle.feature = item.is_edge ? Feature::free_edge : Feature::face;
  obstacle.hole = mesh.field->piece_of(item.triangle);
  return obstacle;
}

Nearest nearest(const Segment3& segment, const Obstacle& obstacle) {
  return to_surface(segment, obstacle);
}

Nearest nearest(Vec3 point, const Obstacle& obstacle) {
  return to_surface(point, obstacle);
}

}  // namespace linewright
