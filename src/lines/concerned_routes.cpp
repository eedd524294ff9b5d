#include "lines/concerned_routes.hpp"

#include <algorithm>
#include <map>
#include <string>

#include "geometry/structure/box_index.hpp"
#include "lines/prepare.hpp"

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

/// No box is of a longer piece of a line.
constexpr double longest_piece_in = 4.0;

/// On an arc no place is farther from both of two others that it lies between than half of the arc
/// is long.
void add_boxes(const Centreline& line, const PathPiece& piece, std::vector<Bounds>& boxes) {
  const int parts = std::max(1, static_cast<int>(std::ceil(piece.length_in / longest_piece_in)));
  const double part_in = piece.length_in / parts;
  for (int i = 0; i < parts; ++i) {
    Bounds box = empty_bounds();
    include(box, line.at(piece.start_in + i * part_in));
    include(box, line.at(piece.start_in + (i + 1) * part_in));
    boxes.push_back(piece.is_arc ? grown(box, part_in / 2) : box);
  }
}

std::vector<Bounds> boxes_along(const Centreline& line) {
  std::vector<Bounds> boxes;
  for (const PathPiece& piece : line.pieces()) add_boxes(line, piece, boxes);
  return boxes;
}

/// All lines by where they are.
class LineBoxes {
 public:
  explicit LineBoxes(const PreparedProject& prepared) : index_({}) {
    std::vector<Bounds> boxes;
    for (std::size_t i = 0; i < prepared.routes.size(); ++i)
      for (const Bounds& box : boxes_along(prepared.routes[i].centreline)) {
        boxes.push_back(box);
        route_of_.push_back(i);
      }
    index_ = BoxIndex(boxes);
  }

  /// All that come within a distance of the box, and some others, each once or more.
  std::vector<std::size_t> near(const Bounds& box, double within_in) const {
    std::vector<std::size_t> found = index_.near(box, within_in);
    for (std::size_t& each : found) each = route_of_[each];
    return found;
  }

 private:
  std::vector<std::size_t> route_of_;
  BoxIndex index_;
};

}  // namespace

ConcernedRoutes concerned_routes(const Project& before, const PreparedProject& now,
                                 const std::vector<std::size_t>& changed) {
  const std::size_t count = now.routes.size();
  RoutesByJoint by_joint;
  add_joints(now.project->routes, by_joint);
  add_joints(before.routes, by_joint);
  add_ties(*now.project, by_joint);
  ConcernedRoutes concerned;
  concerned.joined = joined_to(changed, count, by_joint);
  concerned.with_neighbours = concerned.joined;

  const LineBoxes lines(now);
  const auto add_near = [&](const Bounds& box, double within_in) {
    for (const std::size_t each : lines.near(box, within_in)) concerned.with_neighbours[each] = 1;
  };
  const auto add_near_line = [&](const Route& route, const Centreline& line) {
    for (const Bounds& box : boxes_along(line)) add_near(box, shares_within_in);
    for (const RoutePoint& point : route.points)
      if (point.hold == HoldKind::pulley) add_near({point.at, point.at}, body_near_within_in);
  };
  for (std::size_t i = 0; i < count; ++i)
    if (concerned.joined[i] != 0) add_near_line(now.project->routes[i], now.routes[i].centreline);
  for (const std::size_t i : changed)
    add_near_line(before.routes[i], drawn_centreline(before, before.routes[i]));
  for (const NodeFitting& fitting : now.fittings)
    for (const PreparedRoute* route : now.routes_at(*fitting.node))
      if (concerned.joined[static_cast<std::size_t>(route - now.routes.data())] != 0)
        add_near({fitting.node->at, fitting.node->at}, body_near_within_in);
  return concerned;
}

}  // namespace linewright
