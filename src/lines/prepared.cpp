#include "lines/prepared.hpp"

#include <algorithm>
#include <cmath>

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
  return stays() || sleeve_at(distance_in) != nullptr;
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
  const SourceLocation* nearest = &route->where;
  double best = std::min(distance_in, length_in() - distance_in);
  // Of two that are equally near the later one counts: that is the point that names the hole.
  const auto consider = [&](double at_in, const SourceLocation& where) {
    const double away = std::abs(at_in - distance_in);
    if (away > best + location_tie_in) return;
    best = std::min(best, away);
    nearest = &where;
  };
  for (std::size_t i = 0; i < point_distance_in.size(); ++i)
    consider(point_distance_in[i], route->points[i].where);
  for (const FreePassage& free : free_passages) consider(free.distance_in, free.fairlead().where);
  for (const Crossing& crossing : crossings)
    if (const RoutePoint* point = crossing.hole ? point_through(crossing.hole->name) : nullptr)
      consider(crossing.distance_in, point->where);
  return *nearest;
}

double PreparedRoute::to_nearest_support_in(double distance_in) const {
  double best = length_in();
  for (const Support& support : supports)
    best = std::min(best, std::abs(support.distance_in - distance_in));
  return best;
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

const PreparedRoute* PreparedProject::find_route(std::string_view name) const {
  for (const PreparedRoute& prepared : routes)
    if (prepared.route->name == name) return &prepared;
  return nullptr;
}

}  // namespace linewright
