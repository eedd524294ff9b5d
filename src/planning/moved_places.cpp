#include "planning/moved_places.hpp"

#include <fmt/format.h>

#include "model/support_name.hpp"

namespace linewright {

namespace {

void ask(const std::string& what, Vec3 built, Vec3 drawn, double tolerance_in,
         std::vector<std::string>& questions) {
  const double off_in = distance(built, drawn);
  if (off_in > tolerance_in)
    questions.push_back(
        fmt::format("{} was measured {:.3f} in from where it is drawn, more than the build "
                    "tolerance: was the drawing changed since, or is it to be moved?",
                    what, off_in));
}

}  // namespace

std::vector<std::string> moved_places(const Project& project) {
  std::vector<std::string> questions;
  for (const Node& node : project.nodes)
    if (node.drawn_at)
      ask(node.name, node.at, *node.drawn_at, project.build_tolerance_in, questions);
  for (const Route& route : project.routes)
    for (const RoutePoint& point : route.points)
      if (point.drawn_at) {
        const std::string name = support_name(point);
        ask(route.name + ": " + (name.empty() ? "a place" : name), point.at, *point.drawn_at,
            project.build_tolerance_in, questions);
      }
  return questions;
}

}  // namespace linewright
