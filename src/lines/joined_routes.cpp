#include "lines/joined_routes.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

#include "model/nodes_by_name.hpp"

namespace linewright {

namespace {

/// What the routes that are joined by a thing have in common.
std::vector<std::string> joints_of(const Route& route) {
  std::vector<std::string> joints{"node " + route.from, "node " + route.to};
  if (is_air(route.system)) joints.push_back("system " + route.system_name);
  if (!route.control.empty()) joints.push_back("control " + route.control);
  return joints;
}

using RoutesByJoint = std::map<std::string, std::vector<std::size_t>>;

void add_joints(const std::vector<Route>& routes, RoutesByJoint& by_joint) {
  for (std::size_t i = 0; i < routes.size(); ++i)
    for (const std::string& joint : joints_of(routes[i])) by_joint[joint].push_back(i);
}

void add_ties(const Project& project, RoutesByJoint& by_joint) {
  std::map<std::string, std::size_t> index_of;
  for (std::size_t i = 0; i < project.routes.size(); ++i) index_of[project.routes[i].name] = i;
  for (const Bundle& bundle : project.bundles)
    for (const std::string& name : bundle.routes)
      if (const auto found = index_of.find(name); found != index_of.end())
        by_joint["bundle " + bundle.name].push_back(found->second);
}

std::vector<char> joined_to(const std::vector<std::size_t>& changed, std::size_t count,
                            const RoutesByJoint& by_joint) {
  std::vector<std::vector<const std::vector<std::size_t>*>> groups(count);
  for (const auto& [joint, routes] : by_joint)
    for (const std::size_t route : routes) groups[route].push_back(&routes);
  std::vector<char> joined(count);
  std::vector<std::size_t> to_follow = changed;
  while (!to_follow.empty()) {
    const std::size_t route = to_follow.back();
    to_follow.pop_back();
    if (joined[route] != 0) continue;
    joined[route] = 1;
    for (const std::vector<std::size_t>* group : groups[route])
      to_follow.insert(to_follow.end(), group->begin(), group->end());
  }
  return joined;
}

/// The guides that something else can be held by, or lead through, wherever in the files they
/// stand.
std::vector<RoutePoint> bored_guides(const Route& route) {
  std::vector<RoutePoint> guides;
  for (const RoutePoint& point : route.points)
    if (point.is_bored_guide()) guides.push_back(point);
  for (const FreeFairlead& free : route.free_fairleads) guides.push_back(free.fairlead);
  for (RoutePoint& guide : guides) guide.where = {};
  return guides;
}

bool has_pulley(const Route& route) {
  return std::any_of(route.points.begin(), route.points.end(),
                     [](const RoutePoint& point) { return point.hold == HoldKind::pulley; });
}

/// What of a route other lines can meet beside the line itself.
bool leaves_all_but_itself(const Route& before, const Route& now) {
  const auto ends = [](const Route& route) {
    return std::tie(route.from, route.from_port, route.to, route.to_port);
  };
  if (ends(before) != ends(now) || has_pulley(before) || has_pulley(now)) return false;
  const std::vector<RoutePoint> guides = bored_guides(now);
  // The hole that a guide stands in is as wide as its line needs it.
  return bored_guides(before) == guides && (guides.empty() || before.line == now.line);
}

bool has_sleeve_of_unknown_outside(const Project& project) {
  return std::any_of(project.routes.begin(), project.routes.end(), [](const Route& route) {
    return std::any_of(route.sleeves.begin(), route.sleeves.end(),
                       [](const Sleeve& sleeve) { return !sleeve.outside_in; });
  });
}

bool any_ends_at_a_body(const Project& project, const std::vector<char>& routes) {
  const NodesByName nodes(project);
  const auto has_body = [&nodes](const std::string& name) {
    const Node* node = nodes.find(name);
    return node && node->body;
  };
  for (std::size_t i = 0; i < routes.size(); ++i)
    if (routes[i] != 0 && (has_body(project.routes[i].from) || has_body(project.routes[i].to)))
      return true;
  return false;
}

}  // namespace

std::vector<char> joined_routes(const Project& before, const Project& now,
                                const std::vector<std::size_t>& changed) {
  RoutesByJoint by_joint;
  add_joints(now.routes, by_joint);
  add_joints(before.routes, by_joint);
  add_ties(now, by_joint);
  return joined_to(changed, now.routes.size(), by_joint);
}

bool changes_own_gaps_alone(const Project& before, const Project& now,
                            const std::vector<std::size_t>& changed,
                            const std::vector<char>& joined) {
  if (!now.built.empty() || any_ends_at_a_body(now, joined)) return false;
  if (has_sleeve_of_unknown_outside(before) || has_sleeve_of_unknown_outside(now)) return false;
  return std::all_of(changed.begin(), changed.end(), [&](std::size_t i) {
    return leaves_all_but_itself(before.routes[i], now.routes[i]);
  });
}

}  // namespace linewright
