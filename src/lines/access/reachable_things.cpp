#include "lines/access/reachable_things.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "model/support_name.hpp"

namespace linewright {

namespace {

ThingKind kind_of(HoldKind hold) {
  switch (hold) {
    case HoldKind::clamp:
      return ThingKind::support;
    case HoldKind::grommet:
    case HoldKind::bushing:
      return ThingKind::grommet;
    case HoldKind::fairlead:
      return ThingKind::fairlead;
    case HoldKind::pulley:
      return ThingKind::pulley;
  }
  return ThingKind::support;
}

ThingKind kind_of(const Attachment& attachment) {
  if (attachment.is_turnbuckle()) return ThingKind::turnbuckle;
  const bool terminal = attachment.kind.find("terminal") != std::string::npos;
  return terminal ? ThingKind::terminal : ThingKind::attachment;
}

Thing along(const PreparedRoute& route, ThingKind kind, std::string name, double distance_in,
            const SourceLocation& where) {
  return {kind,  std::move(name), &route, distance_in, route.centreline.at(distance_in),
          where, nullptr};
}

void add_points(const PreparedRoute& route, std::vector<Thing>& things) {
  const std::vector<RoutePoint>& points = route.route->points;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].hold)
      things.push_back(along(route, kind_of(*points[i].hold), support_name(points[i]),
                             route.point_distance_in[i], points[i].where));
  for (const FreePassage& passage : route.free_passages)
    things.push_back(along(route, ThingKind::fairlead, support_name(passage.fairlead()),
                           passage.distance_in, passage.fairlead().where));
}

void add_attached(const PreparedRoute& route, std::vector<Thing>& things) {
  for (const Attachment& each : route.route->attached)
    things.push_back(along(route, kind_of(each),
                           fmt::format("{} at {:g} in", each.kind, each.at_in),
                           std::clamp(each.at_in, 0.0, route.length_in()), each.where));
  for (const Sleeve& sleeve : route.route->sleeves) {
    const double middle_in = (sleeve.from_in + sleeve.to_in) / 2;
    things.push_back(along(route, ThingKind::sleeve,
                           fmt::format("sleeve from {:g} to {:g} in", sleeve.from_in, sleeve.to_in),
                           std::clamp(middle_in, 0.0, route.length_in()), sleeve.where));
  }
}

bool has_terminal_near(const Route& route, double distance_in) {
  return std::any_of(route.attached.begin(), route.attached.end(), [&](const Attachment& each) {
    return kind_of(each) == ThingKind::terminal &&
           std::abs(each.at_in - distance_in) <= at_terminal_in;
  });
}

void add_end(const PreparedRoute& route, const Node& node, double distance_in,
             std::set<const Node*>& known, std::vector<Thing>& things) {
  if (!known.insert(&node).second) return;
  const bool cable = route.route->system == SystemKind::cable;
  if (cable && has_terminal_near(*route.route, distance_in)) return;
  const ThingKind kind = cable ? ThingKind::terminal : ThingKind::fitting;
  things.push_back({kind, node.name, &route, distance_in, node.at, node.where, &node});
}

}  // namespace

std::vector<Thing> reachable_things(const PreparedProject& prepared) {
  std::vector<Thing> things;
  std::set<const Node*> known;
  for (const PreparedRoute& route : prepared.routes) {
    std::vector<Thing> here;
    add_points(route, here);
    add_attached(route, here);
    add_end(route, *route.from, 0, known, here);
    add_end(route, *route.to, route.length_in(), known, here);
    std::stable_sort(here.begin(), here.end(),
                     [](const Thing& a, const Thing& b) { return a.distance_in < b.distance_in; });
    things.insert(things.end(), here.begin(), here.end());
  }
  return things;
}

}  // namespace linewright
