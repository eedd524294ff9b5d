#include "lines/neighbour_filter.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/plane/polygon.hpp"
#include "lines/along_line.hpp"
#include "lines/edge_guard.hpp"

namespace linewright {

namespace {

/// A mesh this near to the middle of a line, in the web of the frame that it goes through, covers
/// the hole there: corners are rounded to 32 bits.
constexpr double covered_in = 0.001;
/// Corners of a flat wall's triangles stray no farther from its middle plane.
constexpr double flat_wall_in = 0.01;

double farthest_off(const DrawnPlane& plane, const Triangle3& shape) {
  return std::max({std::abs(plane.above(shape.a)), std::abs(plane.above(shape.b)),
                   std::abs(plane.above(shape.c))});
}

/// The wall round a hole and the hole's inside; the part's other walls and its edges are not.
bool is_round_hole(const Obstacle& obstacle, const Wall& wall) {
  if (obstacle.part != wall.part) return false;
  if (obstacle.feature == Feature::hole_edge) return obstacle.hole == wall.hole().name;
  if (wall.is_board) return true;
  if (obstacle.feature != Feature::face || obstacle.is_segment) return false;
  return farthest_off(wall.frame.plane, obstacle.shape) <= flat_wall_in;
}

}  // namespace

double depth_in_hole_in(const Crossing& crossing, Vec3 place) {
  const Vec2 there = crossing.in_plane(place);
  return covers(*crossing.hole, there) ? edge_distance(*crossing.hole, there) : 0;
}

bool is_filled(const PreparedRoute& route, const Crossing& crossing) {
  return is_guarded(route, crossing) &&
         (guide_in(route, crossing) || fills_hole(nullptr, *crossing.hole));
}

bool lies_in_web(const Obstacle& obstacle, const Frame& frame) {
  return farthest_off(frame.plane, obstacle.shape) <= frame.thickness_in / 2 + same_web_in;
}

/// True where the face that the line is held against is that of the wall, which is not cut there by
/// the hole that the line goes through: over the hole only its edge can be met.
bool is_over_hole(const PreparedRoute& route, const Crossing& crossing, const Obstacle& obstacle,
                  double distance_in) {
  if (!crossing.wall || !crossing.hole || obstacle.feature != Feature::face) return false;
  return covers(*crossing.hole, crossing.in_plane(route.centreline.at(distance_in)));
}

NeighbourFilter::NeighbourFilter(const PreparedProject& prepared, const PreparedRoute& route)
    : prepared_(prepared),
      route_(route),
      own_arms_(prepared, route),
      at_from_(prepared, route, RouteEnd::from),
      at_to_(prepared, route, RouteEnd::to) {
  for (const Crossing& crossing : route.crossings) covering_.push_back(covering(crossing));
  if (route.line->kind == LineKind::rod && route.moves)
    slides_in_ = 2 * std::max(route.moves->toward_from_in, route.moves->toward_to_in);
}

std::vector<int> NeighbourFilter::covering(const Crossing& crossing) const {
  std::vector<int> parts;
  if (!crossing.hole || crossing.wall) return parts;
  const double along = std::abs(
      dot(route_.centreline.direction(crossing.distance_in), crossing.frame->plane.normal));
  const double half = (crossing.frame->thickness_in / 2 + same_web_in) / std::max(along, 0.1);
  const Segment3 through{
      route_.centreline.at(std::max(0.0, crossing.distance_in - half)),
      route_.centreline.at(std::min(route_.length_in(), crossing.distance_in + half))};
  for (const MeshPartField& mesh : prepared_.obstacles.meshes()) {
    const auto item =
        mesh.field->nearest_item(through, covered_in + mesh.field->mesh().thickness_in / 2);
    if (item && lies_in_web(obstacle_of(mesh, *item), *crossing.frame)) parts.push_back(mesh.part);
  }
  return parts;
}

bool NeighbourFilter::is_once_more(const Obstacle& obstacle, const Crossing& crossing,
                                   double distance_in) const {
  if (crossing.wall || !lies_in_web(obstacle, *crossing.frame)) return false;
  if (!crossing.hole || is_filled(route_, crossing)) return true;
  const auto index = static_cast<std::size_t>(&crossing - route_.crossings.data());
  const std::vector<int>& covering = covering_[index];
  if (std::find(covering.begin(), covering.end(), obstacle.part) != covering.end()) return true;
  const Vec3 place = nearest(route_.centreline.at(distance_in), obstacle).on_second;
  return depth_in_hole_in(crossing, place) <= same_edge_in;
}

NeighbourFilter::Reason NeighbourFilter::reason(const Obstacle& obstacle,
                                                double distance_in) const {
  if (const RoutePulley* pulley = prepared_.pulley_of(obstacle.part)) {
    if (!runs_on(*pulley, prepared_.pulleys, route_, distance_in)) return {};
    return {pulley->route == route_.route ? Why::bears_on_it : Why::bears_beside_it};
  }
  if (const NodeFitting* fitting = prepared_.fitting_of(obstacle.part)) {
    if (!is_own_fitting(*fitting, route_, distance_in)) return {};
    return {Why::ends_at_it, fitting->node};
  }
  if (own_arms_.pass_over(obstacle, distance_in)) return {Why::goes_with_it};
  const double from_to_in = route_.length_in() - distance_in;
  for (const auto& [seat, from_end_in] :
       {std::pair{&at_from_, distance_in}, std::pair{&at_to_, from_to_in}}) {
    const SeatReason reason = seat->reason(obstacle, from_end_in);
    if (reason == SeatReason::stands_on) return {Why::stands_on_it, &seat->node()};
    if (reason == SeatReason::left_behind) return {Why::leaves_it_behind, &seat->node()};
  }
  return {};
}

bool NeighbourFilter::counts(const Obstacle& obstacle, double distance_in) const {
  return reason(obstacle, distance_in).why == Why::counts;
}

std::string NeighbourFilter::why_passed_over(const Obstacle& obstacle, double distance_in) const {
  const auto [why, node] = reason(obstacle, distance_in);
  switch (why) {
    case Why::counts:
      return {};
    case Why::bears_on_it:
      return "the cable bears on it";
    case Why::bears_beside_it:
      return "the cable bears on a pulley beside it, on one spindle";
    case Why::goes_with_it:
      return "the end of the cable goes with it";
    case Why::ends_at_it:
      return "the line ends at it";
    case Why::stands_on_it:
      return "the fitting at " + node->name + " stands on it";
    case Why::leaves_it_behind:
      return "it lies beside the fitting at " + node->name + ", and the line leads away from it";
  }
  return {};
}

template <typename Counts>
bool NeighbourFilter::any_crossing_near(const Obstacle& obstacle, double distance_in,
                                        const Counts& counts) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  const auto is_of = [&](const Crossing& crossing) {
    if (part.kind == PartKind::mesh) return is_once_more(obstacle, crossing, distance_in);
    if (crossing.wall) return is_round_hole(obstacle, *crossing.wall);
    return part.kind == PartKind::frame && crossing.frame->name == part.name;
  };
  const double zone_in = crossing_zone_in + slides_in_;
  const auto is_met = [&](const Crossing& each) {
    const bool in_zone = std::abs(each.distance_in - distance_in) <= zone_in ||
                         is_over_hole(route_, each, obstacle, distance_in);
    return in_zone && counts(each) && is_of(each);
  };
  // Over a wall's hole the line can be however far from where it goes through.
  if (!prepared_.walls.empty())
    return std::any_of(route_.crossings.begin(), route_.crossings.end(), is_met);
  const auto near = between_along(route_.crossings, distance_in - zone_in, distance_in + zone_in);
  return std::any_of(near.begin(), near.end(), is_met);
}

bool NeighbourFilter::crossing_near(const Obstacle& obstacle, double distance_in) const {
  // frame-crossing sees a rod as drawn only; its hole counts wherever the travel takes it.
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  const bool is_hole = part.kind == PartKind::frame ||
                       (part.kind != PartKind::mesh && obstacle.feature == Feature::hole_edge);
  if (slides_in_ > 0 && is_hole) return false;
  return any_crossing_near(obstacle, distance_in, [](const Crossing&) { return true; });
}

bool NeighbourFilter::guarded_crossing_near(const Obstacle& obstacle, double distance_in) const {
  return any_crossing_near(obstacle, distance_in, [this](const Crossing& crossing) {
    return crossing.hole && is_guarded(route_, crossing);
  });
}

bool NeighbourFilter::web_crossing_near(const Obstacle& obstacle, double distance_in) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  return any_crossing_near(obstacle, distance_in, [&](const Crossing& crossing) {
    if (crossing.wall) return obstacle.feature == Feature::face && !crossing.wall->implied;
    return part.kind == PartKind::mesh || !crossing.hole;
  });
}

}  // namespace linewright
