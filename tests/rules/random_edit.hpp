#pragma once
// What a builder may do to one route of a project between two saves, at random.

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "model/places_in_files.hpp"
#include "model/project.hpp"
#include "oracles/random_path.hpp"

namespace linewright {

/// One thing done to one route. What comes of it may be no sensible line, but one that can be
/// judged: every name in it resolves, and neighbouring points are distinct.
class RandomEdit {
 public:
  explicit RandomEdit(oracles::Random& random) : random_(random) {}

  void make(Project& project) {
    Route& route = project.routes[index_below(project.routes.size())];
    switch (random_.whole(0, 9)) {
      case 0:
        return move_point(route, 0.3);
      case 1:
        return move_point(route, 4);
      case 2:
        return move_point(route, 40);
      case 3:
        return add_point(project, route);
      case 4:
        return drop_point(route);
      case 5:
        return hold_otherwise(route);
      case 6:
        return bend_otherwise(route);
      case 7:
        return take_line_of_another(project, route);
      case 8:
        return work_otherwise(route);
      default:
        return sleeve_otherwise(route);
    }
  }

 private:
  std::size_t index_below(std::size_t count) {
    return static_cast<std::size_t>(random_.whole(0, static_cast<int>(count) - 1));
  }

  void move_point(Route& route, double by_in) {
    if (route.points.empty()) return;
    route.points[index_below(route.points.size())].at =
        route.points[index_below(route.points.size())].at + random_.point(by_in);
    separate_points(route);
  }

  void add_point(const Project& project, Route& route) {
    const std::size_t before = index_below(route.points.size() + 1);
    const Vec3 from = before == 0 ? project.find_node(route.from)->at : route.points[before - 1].at;
    const Vec3 to =
        before == route.points.size() ? project.find_node(route.to)->at : route.points[before].at;
    RoutePoint point;
    point.at = between(from, to, random_.between(0.2, 0.8)) + random_.point(1);
    if (random_.whole(0, 1) == 0) point.hold = HoldKind::clamp;
    point.where = route.where;
    route.points.insert(route.points.begin() + static_cast<std::ptrdiff_t>(before), point);
    for (FreeFairlead& free : route.free_fairleads)
      if (static_cast<std::size_t>(free.leg) > before) ++free.leg;
    route.drawn_in.clear();
  }

  void drop_point(Route& route) {
    if (route.points.empty()) return;
    const std::size_t dropped = index_below(route.points.size());
    route.points.erase(route.points.begin() + static_cast<std::ptrdiff_t>(dropped));
    for (FreeFairlead& free : route.free_fairleads)
      if (static_cast<std::size_t>(free.leg) > dropped) --free.leg;
    route.drawn_in.clear();
  }

  void hold_otherwise(Route& route) {
    if (route.points.empty()) return;
    RoutePoint& point = route.points[index_below(route.points.size())];
    if (point.hold == HoldKind::pulley) return;
    if (point.hold)
      point.hold.reset();
    else
      point.hold = HoldKind::clamp;
  }

  void bend_otherwise(Route& route) {
    if (route.points.empty()) return;
    route.points[index_below(route.points.size())].bend_in = random_.between(0.2, 4);
  }

  void take_line_of_another(const Project& project, Route& route) {
    const Line* own = project.catalogue.find_line(route.line);
    const std::string& other = project.routes[index_below(project.routes.size())].line;
    const Line* line = project.catalogue.find_line(other);
    if (line->kind == own->kind) route.line = other;
  }

  void work_otherwise(Route& route) {
    if (route.tension) route.tension->rigged_lbf *= random_.between(0.3, 2);
    if (route.travel) route.travel->aft_in *= random_.between(0.3, 2);
  }

  void sleeve_otherwise(Route& route) {
    if (!route.sleeves.empty()) {
      route.sleeves.pop_back();
      return;
    }
    Sleeve sleeve;
    sleeve.from_in = random_.between(1, 5);
    sleeve.to_in = sleeve.from_in + random_.between(1, 6);
    sleeve.outside_in = random_.between(0.3, 0.6);
    sleeve.where = route.where;
    route.sleeves.push_back(sleeve);
  }

  static void separate_points(Route& route) {
    for (std::size_t i = 1; i < route.points.size(); ++i)
      if (distance(route.points[i - 1].at, route.points[i].at) < 0.01)
        route.points[i].at = route.points[i].at + Vec3{0.5, 0.3, 0.2};
  }

  oracles::Random& random_;
};

/// Everything from a line of a file on stands so many lines lower.
inline void push_down(Project& project, const std::string& file, int from_line, int by_lines) {
  const auto push = [&](SourceLocation& where) {
    if (where.file == file && where.line >= from_line) where.line += by_lines;
  };
  for (Route& route : project.routes) visit_places_of_route(route, push);
  visit_places_beside_routes(project, push);
}

}  // namespace linewright
