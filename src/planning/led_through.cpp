#include "planning/led_through.hpp"

#include "lines/closed_over.hpp"
#include "lines/named_hole.hpp"

namespace linewright {

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
