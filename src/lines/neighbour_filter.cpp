#include "lines/neighbour_filter.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace linewright {

bool lies_in_web(const Obstacle& obstacle, const Frame& frame) {
  const auto& [a, b, c] = obstacle.shape;
  const double near = frame.thickness_in / 2 + same_web_in;
  return std::max({std::abs(a.x - frame.station_in), std::abs(b.x - frame.station_in),
                   std::abs(c.x - frame.station_in)}) <= near;
}

bool is_guarded(const PreparedRoute& route, const Crossing& crossing) {
  if (guards(crossing.hole->edge)) return true;
  const auto& points = route.route->points;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const bool guide =
        points[i].hold && *points[i].hold != HoldKind::clamp && *points[i].hold != HoldKind::pulley;
    if (guide && points[i].through == crossing.hole->name &&
        std::abs(route.point_distance_in[i] - crossing.distance_in) <= point_at_hole_in + 1e-6)
      return true;
  }
  return std::any_of(
      route.free_passages.begin(), route.free_passages.end(), [&](const FreePassage& passage) {
        return passage.fairlead().through == crossing.hole->name &&
               std::abs(passage.distance_in - crossing.distance_in) <= point_at_hole_in + 1e-6;
      });
}

NeighbourFilter::NeighbourFilter(const PreparedProject& prepared, const PreparedRoute& route)
    : prepared_(prepared),
      route_(route),
      own_arms_(prepared, route),
      at_from_(prepared, route, RouteEnd::from),
      at_to_(prepared, route, RouteEnd::to) {}

bool NeighbourFilter::counts(const Obstacle& obstacle, double distance_in) const {
  return !own_arms_.pass_over(obstacle, distance_in) &&
         at_from_.reason(obstacle, distance_in) == SeatReason::counts &&
         at_to_.reason(obstacle, route_.length_in() - distance_in) == SeatReason::counts;
}

std::string NeighbourFilter::why_passed_over(const Obstacle& obstacle, double distance_in) const {
  const auto words = [](SeatReason reason, const std::string& node) -> std::string {
    if (reason == SeatReason::stands_on) return "the fitting at " + node + " stands on it";
    return "it lies beside the fitting at " + node + ", and the line leads away from it";
  };
  if (own_arms_.pass_over(obstacle, distance_in)) return "the end of the cable goes with it";
  const double from_to_in = route_.length_in() - distance_in;
  for (const auto& [seat, from_end_in] :
       {std::pair{&at_from_, distance_in}, std::pair{&at_to_, from_to_in}}) {
    const SeatReason reason = seat->reason(obstacle, from_end_in);
    if (reason != SeatReason::counts) return words(reason, seat->node().name);
  }
  return {};
}

template <typename Counts>
bool NeighbourFilter::any_crossing_near(const Obstacle& obstacle, double distance_in,
                                        const Counts& counts) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  const auto is_of = [&](const Frame& frame) {
    if (part.kind == PartKind::mesh) return lies_in_web(obstacle, frame);
    return part.kind == PartKind::frame && frame.name == part.name;
  };
  return (part.kind == PartKind::frame || part.kind == PartKind::mesh) &&
         std::any_of(route_.crossings.begin(), route_.crossings.end(), [&](const Crossing& each) {
           return std::abs(each.distance_in - distance_in) <= crossing_zone_in &&
                  is_of(*each.frame) && counts(each);
         });
}

bool NeighbourFilter::crossing_near(const Obstacle& obstacle, double distance_in) const {
  return any_crossing_near(obstacle, distance_in, [](const Crossing&) { return true; });
}

bool NeighbourFilter::guarded_crossing_near(const Obstacle& obstacle, double distance_in) const {
  return any_crossing_near(obstacle, distance_in, [this](const Crossing& crossing) {
    return crossing.hole && is_guarded(route_, crossing);
  });
}

bool NeighbourFilter::web_crossing_near(const Obstacle& obstacle, double distance_in) const {
  const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  return any_crossing_near(obstacle, distance_in, [&part](const Crossing& crossing) {
    return part.kind == PartKind::mesh || !crossing.hole;
  });
}

}  // namespace linewright
