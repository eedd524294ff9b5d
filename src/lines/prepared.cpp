#include "lines/prepared.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "lines/along_line.hpp"

namespace linewright {

namespace {

/// Places that differ by less along the line are in one place.
constexpr double location_tie_in = 0.001;

}  // namespace

const Sleeve* PreparedRoute::sleeve_at(double distance_in) const {
  const Sleeve* thickest = nullptr;
  for (const Sleeve& sleeve : route->sleeves) {
    if (distance_in < sleeve.from_in || distance_in > sleeve.to_in) continue;
    if (!thickest || sleeve.outside_in.value_or(0) > thickest->outside_in.value_or(0))
      thickest = &sleeve;
  }
  return thickest;
}

bool PreparedRoute::bears_clamp(double distance_in) const {
  const auto covers = [&](const Sleeve& sleeve) {
    return sleeve.from_in <= std::max(0.0, distance_in - clamp_half_width_in) &&
           sleeve.to_in >= std::min(length_in(), distance_in + clamp_half_width_in);
  };
  return stays() || std::any_of(route->sleeves.begin(), route->sleeves.end(), covers);
}

bool PreparedRoute::is_as_built(double distance_in) const {
  return std::any_of(as_built.begin(), as_built.end(), [&](const AsBuiltPart& part) {
    return distance_in >= part.from_in && distance_in <= part.to_in;
  });
}

double PreparedRoute::as_built_in() const {
  double length = 0;
  for (const AsBuiltPart& part : as_built) length += part.to_in - part.from_in;
  return length;
}

double PreparedRoute::built_distance_in(double drawn_distance_in) const {
  const std::vector<double>& drawn = route->drawn_in;
  if (drawn.empty()) return drawn_distance_in;
  const auto built = [&](std::size_t place) {
    if (place == 0) return 0.0;
    return place <= point_distance_in.size() ? point_distance_in[place - 1] : length_in();
  };
  std::size_t after = 1;
  while (after + 1 < drawn.size() && drawn[after] < drawn_distance_in) ++after;
  const double leg = drawn[after] - drawn[after - 1];
  const double part = leg > 0 ? (drawn_distance_in - drawn[after - 1]) / leg : 0;
  return built(after - 1) + std::clamp(part, 0.0, 1.0) * (built(after) - built(after - 1));
}

double PreparedRoute::radius_in(double distance_in) const {
  const Sleeve* sleeve = sleeve_at(distance_in);
  const double bare = line->largest_radius_in();
  return sleeve && sleeve->outside_in ? std::max(bare, *sleeve->outside_in / 2) : bare;
}

double PreparedRoute::girth_radius_in(double distance_in) const {
  const Attachment* attachment = attachment_at(distance_in);
  return attachment ? attachment->diameter_in / 2 : radius_in(distance_in);
}

const Attachment* PreparedRoute::attachment_at(double distance_in) const {
  const Attachment* thickest = nullptr;
  double radius = radius_in(distance_in);
  for (const SweptPart& part : swept_by_attachments) {
    if (distance_in < part.from_in || distance_in > part.to_in || part.radius_in() <= radius)
      continue;
    radius = part.radius_in();
    thickest = part.attachment;
  }
  return thickest;
}

double PreparedRoute::thickest_radius_in() const {
  double thickest = line->largest_radius_in();
  for (const Sleeve& sleeve : route->sleeves)
    thickest = std::max(thickest, sleeve.outside_in.value_or(0) / 2);
  for (const SweptPart& part : swept_by_attachments)
    thickest = std::max(thickest, part.radius_in());
  return thickest;
}

const RoutePoint* PreparedRoute::point_through(const std::string& hole) const {
  for (const RoutePoint& point : route->points)
    if (point.through == hole) return &point;
  for (const FreePassage& free : free_passages)
    if (free.fairlead().through == hole) return &free.fairlead();
  return nullptr;
}

const SourceLocation& PreparedRoute::location_near(double distance_in) const {
  const double to_end_in = std::min(distance_in, length_in() - distance_in);
  double best = to_end_in;
  const auto away = [distance_in](double at_in) { return std::abs(at_in - distance_in); };
  const auto first_point_from = [this](double wanted_in) {
    const auto first =
        std::lower_bound(point_distance_in.begin(), point_distance_in.end(), wanted_in);
    return static_cast<std::size_t>(first - point_distance_in.begin());
  };
  const std::size_t after = first_point_from(distance_in);
  if (after < point_distance_in.size()) best = std::min(best, away(point_distance_in[after]));
  if (after > 0) best = std::min(best, away(point_distance_in[after - 1]));
  for (const FreePassage& free : free_passages) best = std::min(best, away(free.distance_in));
  const auto crossings_near = between_along(crossings, distance_in - best, distance_in + best);
  const auto named = [this](const Crossing& crossing) {
    return crossing.hole ? point_through(crossing.hole->name) : nullptr;
  };
  for (const Crossing& crossing : crossings_near)
    if (named(crossing)) best = std::min(best, away(crossing.distance_in));
  // Of those that are equally near the last one counts: that is the point that names the hole.
  const SourceLocation* nearest = &route->where;
  const double near_in = best + location_tie_in;
  const auto consider = [&](double at_in, const SourceLocation& where) {
    if (away(at_in) <= near_in) nearest = &where;
  };
  const std::size_t last_point = first_point_from(distance_in + near_in + location_tie_in);
  for (std::size_t i = first_point_from(distance_in - near_in - location_tie_in); i < last_point;
       ++i)
    consider(point_distance_in[i], route->points[i].where);
  for (const FreePassage& free : free_passages) consider(free.distance_in, free.fairlead().where);
  for (const Crossing& crossing :
       between_along(crossings, distance_in - near_in, distance_in + near_in))
    if (const RoutePoint* point = named(crossing)) consider(crossing.distance_in, point->where);
  return *nearest;
}

double PreparedRoute::to_nearest_support_in(double distance_in) const {
  double best = length_in();
  const auto after = std::lower_bound(
      supports.begin(), supports.end(), distance_in,
      [](const Support& support, double wanted_in) { return support.distance_in < wanted_in; });
  if (after != supports.end()) best = std::min(best, std::abs(after->distance_in - distance_in));
  if (after != supports.begin())
    best = std::min(best, std::abs(std::prev(after)->distance_in - distance_in));
  return best;
}

int PreparedProject::part_of(const NodeFitting& fitting) const {
  const std::size_t first = obstacles.parts().size() - pulleys.size() - fittings.size();
  return static_cast<int>(first) + static_cast<int>(&fitting - fittings.data());
}

const NodeFitting* PreparedProject::fitting_of(int part) const {
  const auto first = static_cast<int>(obstacles.parts().size() - pulleys.size() - fittings.size());
  const auto index = static_cast<std::size_t>(part - first);
  return part < first || index >= fittings.size() ? nullptr : &fittings[index];
}

const RoutePulley* PreparedProject::pulley_of(int part) const {
  const auto first = static_cast<int>(obstacles.parts().size() - pulleys.size());
  return part < first ? nullptr : &pulleys[static_cast<std::size_t>(part - first)];
}

std::vector<const PreparedRoute*> PreparedProject::routes_at(const Node& node) const {
  std::vector<const PreparedRoute*> ending;
  for (const std::size_t i :
       routes_of_nodes[static_cast<std::size_t>(&node - project->nodes.data())])
    ending.push_back(&routes[i]);
  return ending;
}

const PreparedRoute* PreparedProject::find_route(std::string_view name) const {
  for (const PreparedRoute& prepared : routes)
    if (prepared.route->name == name) return &prepared;
  return nullptr;
}

}  // namespace linewright
