#include "lines/access/way_in.hpp"

#include <algorithm>

#include "geometry/structure/wall_place.hpp"

namespace linewright {

namespace {

/// A bolt's head, or its nut, stands off the part by this.
constexpr double bolt_side_in = 0.75;

}  // namespace

std::vector<OpeningShape> shapes_of_openings(const PreparedProject& prepared) {
  std::vector<OpeningShape> shapes;
  for (const Closure& closure : prepared.project->closures)
    for (const Opening& opening : closure.openings) shapes.push_back(shape_of(opening, prepared));
  return shapes;
}

std::vector<WayIn> ways_in(const PreparedProject& prepared,
                           const std::vector<OpeningShape>& shapes) {
  std::vector<WayIn> ways{{"the outside", "", usual_reach_in, true, true, ""}};
  std::size_t next = 0;
  for (const Closure& closure : prepared.project->closures)
    for (const Opening& opening : closure.openings) {
      const OpeningShape& shape = shapes[next++];
      WayIn way{opening.name, closure.name, opening.reach_in, false, false, ""};
      const double width_in = 2 * shape.clear_radius_in() + fit_rounding_in;
      way.person = opening.crawl && width_in >= crawling_width_in;
      way.two_arms = way.person || shape.longest_across_in() + fit_rounding_in >= 2 * arm_width_in;
      if (width_in < arm_width_in)
        way.doubt = "too narrow for an arm";
      else if (opening.crawl && !way.person)
        way.doubt = "too narrow for a person: an arm's opening";
      ways.push_back(way);
    }
  return ways;
}

bool both_at_once(const std::vector<WayIn>& ways, const std::vector<ReachedBy>& one,
                  const std::vector<ReachedBy>& other) {
  for (const ReachedBy& a : one)
    for (const ReachedBy& b : other)
      if (a.way != b.way || ways[static_cast<std::size_t>(a.way)].two_arms) return true;
  return false;
}

std::array<Vec3, 2> both_sides(const PreparedProject& prepared, const std::string& part, Vec3 at) {
  for (const Frame& frame : prepared.project->structure.frames)
    if (frame.name == part) {
      const double off_in = frame.thickness_in / 2 + bolt_side_in;
      return {frame.plane.in_space(frame.plane.seen(at), -off_in),
              frame.plane.in_space(frame.plane.seen(at), off_in)};
    }
  const auto index = prepared.obstacles.find_part(part);
  if (!index) return {at, at};
  const Obstacle* found = nullptr;
  for (const Obstacle& each : prepared.obstacles.of_part(*index)) {
    if (each.is_segment || each.is_slab || each.is_disc || each.feature != Feature::face) continue;
    if (!found || nearest(at, each).distance_in < nearest(at, *found).distance_in) found = &each;
  }
  if (!found) return {at, at};
  const WallPlace wall = plate_place(*found, at);
  const Vec3 off = wall.normal * (wall.thickness_in / 2 + bolt_side_in);
  return {wall.middle - off, wall.middle + off};
}

}  // namespace linewright
