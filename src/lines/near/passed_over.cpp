#include "lines/near/passed_over.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "lines/line_pairs.hpp"
#include "lines/near/nearest_lines.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/neighbour_filter.hpp"

namespace linewright {

namespace {

void add_structure(const PreparedProject& prepared, const PreparedRoute& route,
                   std::vector<PassedOver>& found) {
  const NeighbourFilter filter(prepared, route);
  const double length = route.length_in();
  const double zone = std::min(fitting_zone_in, length / 2);
  const auto counts = [&](const Obstacle& obstacle, double along) {
    return !filter.counts(obstacle, along);
  };
  const auto group = [](const Obstacle& obstacle) { return obstacle.part; };
  for (const auto& [start, end] : {std::pair{0.0, zone}, std::pair{length - zone, length}})
    for (const auto& [part, approach] :
         nearest_structure(make_stretch(route, start, end), Reach::none, prepared.obstacles,
                           passed_over_listed_in, group, counts))
      found.push_back({route.route->name,
                       prepared.obstacles.parts()[static_cast<std::size_t>(part)].name,
                       approach.on_line, approach.distance_in, approach.gap_in,
                       filter.why_passed_over(*approach.obstacle, approach.distance_in)});
}

/// The node that both end at, or nullptr.
const Node* shared_node(const PreparedRoute& first, const PreparedRoute& second) {
  for (const Node* node : {first.from, first.to})
    if (node == second.from || node == second.to) return node;
  return nullptr;
}

void add_line(const PreparedRoute& first, const PreparedRoute& second,
              std::vector<PassedOver>& found) {
  const Node* node = shared_node(first, second);
  if (!node) return;
  const auto counts = [&](double a, double b) { return at_shared_node(first, a, second, b); };
  const auto approach = nearest_lines(make_stretch(first, 0, first.length_in()),
                                      make_stretch(second, 0, second.length_in()), Reach::none,
                                      passed_over_listed_in, counts);
  if (!approach) return;
  const std::string soft = are_soft(first, second)
                               ? "; soft, they may bear on each other up to what first holds them"
                               : "";
  found.push_back({first.route->name, second.route->name, approach->on_line, approach->distance_in,
                   approach->gap_in,
                   "both end at " + node->name +
                       ": there the fitting holds them apart, and past it they may not lie in one "
                       "place" +
                       soft});
}

}  // namespace

std::vector<PassedOver> passed_over_near_fittings(const PreparedProject& prepared,
                                                  const std::string& only_route) {
  std::vector<PassedOver> found;
  const auto& routes = prepared.routes;
  std::map<const Node*, std::vector<std::size_t>> routes_at;
  for (std::size_t i = 0; i < routes.size(); ++i)
    for (const Node* node : {routes[i].from, routes[i].to}) routes_at[node].push_back(i);
  for (std::size_t i = 0; i < routes.size(); ++i) {
    add_structure(prepared, routes[i], found);
    std::set<std::size_t> meeting;
    for (const Node* node : {routes[i].from, routes[i].to})
      for (const std::size_t j : routes_at.at(node))
        if (j > i) meeting.insert(j);
    for (const std::size_t j : meeting) add_line(routes[i], routes[j], found);
  }
  if (!only_route.empty())
    std::erase_if(found, [&](const PassedOver& each) {
      return each.route != only_route && each.with != only_route;
    });
  return found;
}

}  // namespace linewright
