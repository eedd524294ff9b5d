#include "planning/led_through.hpp"

#include <algorithm>

#include "lines/named_hole.hpp"

namespace linewright {

namespace {

bool goes_on_with(const Project& project, const std::string& part, const Closure& closure) {
  if (std::find(closure.covers.begin(), closure.covers.end(), part) != closure.covers.end())
    return true;
  return std::any_of(
      project.structure.panels.begin(), project.structure.panels.end(),
      [&](const Panel& panel) { return panel.name == part && panel.closure == closure.name; });
}

}  // namespace

std::string led_through(const PreparedProject& prepared, const PreparedRoute& route,
                        const Closure& closure) {
  for (const RoutePoint& point : route.route->points) {
    const NamedHole named = find_hole(*prepared.project, prepared.walls, point.through);
    if (named.hole && goes_on_with(*prepared.project, named.frame->name, closure))
      return "hole " + named.hole->name + " of " + named.frame->name;
    for (const Wall& wall : prepared.walls)
      if (wall.implied && wall.hole().where == point.where &&
          goes_on_with(*prepared.project, wall.frame.name, closure))
        return "the hole of its guide in " + wall.frame.name;
  }
  return {};
}

}  // namespace linewright
