#include "lines/wall.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "geometry/plane/polygon.hpp"
#include "geometry/structure/wall_place.hpp"
#include "lines/wall_web.hpp"
#include "model/sheet.hpp"

namespace linewright {

namespace {

constexpr double rounding_in = 1e-6;

struct Place : WallPlace {
  int part = 0;
  bool is_board = false;
};

const Box* board_of(const Project& project, const Part& part) {
  if (part.kind != PartKind::solid) return nullptr;
  for (const Solid& solid : project.structure.solids)
    if (solid.name == part.name) return std::get_if<Box>(&solid.shape);
  return nullptr;
}

/// The wall at a place, of the part by its index or of any: the nearest whose surface is within
/// `within_in`.
std::optional<Place> place_at(const Project& project, const Obstacles& obstacles, Vec3 at,
                              std::optional<int> part, double within_in) {
  std::optional<Place> best;
  double nearest_in = within_in;
  const Vec3 by{within_in, within_in, within_in};
  obstacles.visit({at - by, at + by}, [&](const Obstacle& obstacle) {
    if (part && obstacle.part != *part) return;
    const Part& owner = obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
    const double away = nearest(at, obstacle).distance_in;
    if (away > nearest_in || obstacle.feature != Feature::face) return;
    if (const Box* board = board_of(project, owner)) {
      const auto place = board_place(*board, at, within_in);
      if (!place) return;
      best = Place{*place, obstacle.part, true};
    } else if ((owner.kind == PartKind::channel || owner.kind == PartKind::panel) &&
               !obstacle.is_segment) {
      best = Place{plate_place(obstacle, at), obstacle.part, false};
    } else {
      return;
    }
    nearest_in = away;
  });
  return best;
}

Wall wall_of(const Place& place, const std::string& part_name, const Hole& hole) {
  Wall wall;
  wall.frame.name = part_name;
  wall.frame.thickness_in = place.thickness_in;
  wall.frame.where = hole.where;
  wall.frame.holes = {hole};
  wall.part = place.part;
  wall.is_board = place.is_board;
  wall.frame.plane = wall_plane(place);
  return wall;
}

bool is_sheet_at(const Obstacles& obstacles, int part, Vec3 at) {
  bool found = false;
  obstacles.visit({at, at}, [&](const Obstacle& obstacle) {
    found = found || (obstacle.part == part && obstacle.feature == Feature::face &&
                      nearest(at, obstacle).distance_in <= rounding_in);
  });
  return found;
}

bool leaves_wall(const Obstacles& obstacles, const Wall& wall) {
  constexpr int places = 32;
  for (int i = 0; i < places; ++i) {
    const double angle = 2 * std::numbers::pi * i / places;
    const Vec2 outward{std::cos(angle), std::sin(angle)};
    if (!is_sheet_at(obstacles, wall.part,
                     wall.frame.plane.in_space(outward * (cut_diameter_in(wall) / 2))))
      return true;
  }
  return false;
}

bool walls_overlap(const Wall& a, const Wall& b) {
  const auto left = sheet_between_in(a, b);
  return left && *left <= 0;
}

void find_unsound(const Obstacles& obstacles, Walls& walls) {
  for (Wall& wall : walls) {
    wall.leaves_wall = leaves_wall(obstacles, wall);
    for (const Wall& other : walls)
      if (&other != &wall && walls_overlap(wall, other)) wall.runs_into = &other.hole();
  }
}

template <typename Parts>
void add_described(const Project& project, const Obstacles& obstacles, const Parts& parts,
                   Walls& walls) {
  for (const auto& part : parts) {
    for (const WallHole& described : part.holes) {
      const auto index = obstacles.find_part(part.name);
      if (!index) continue;
      const auto place = place_at(project, obstacles, described.at, index, at_wall_in);
      if (!place) continue;
      const Hole hole{described.name,  Circle{{0, 0}, described.diameter_in},
                      described.edge,  described.bore_in,
                      described.where, described.edge_radius_in};
      walls.push_back(wall_of(*place, part.name, hole));
    }
  }
}

bool is_in_hole(const Wall& wall, Vec3 at) {
  const DrawnPlane& plane = wall.frame.plane;
  return std::abs(plane.above(at)) <= wall.frame.thickness_in / 2 + stands_in_wall_in &&
         covers(wall.hole(), plane.seen(at));
}

/// The hole that a guide is fitted in, as far as the guide tells.
std::optional<Hole> implied_hole(const RoutePoint& point, const std::string& part) {
  if (!point.is_bored_guide() || !point.bore_in || !point.through.empty()) return std::nullopt;
  Hole hole;
  hole.name = "in " + part;
  hole.bore_in = point.bore_in;
  hole.where = point.where;
  const bool grommet = point.hold == HoldKind::grommet;
  hole.edge = grommet                           ? EdgeGuard::grommet
              : point.hold == HoldKind::bushing ? EdgeGuard::bushing
                                                : EdgeGuard::bare;
  if (hole.edge == EdgeGuard::bare) hole.bore_in.reset();
  hole.shape = Circle{
      {0, 0}, *point.bore_in + (grommet ? grommet_hole_over_bore_in : bushing_hole_over_bore_in)};
  return hole;
}

void add_implied(const Project& project, const Obstacles& obstacles, const RoutePoint& point,
                 Walls& walls) {
  if (!point.bore_in || !point.through.empty()) return;
  if (std::any_of(walls.begin(), walls.end(),
                  [&](const Wall& wall) { return is_in_hole(wall, point.at); }))
    return;
  const auto place = place_at(project, obstacles, point.at, std::nullopt, stands_in_wall_in);
  if (!place) return;
  const std::string& part = obstacles.parts()[static_cast<std::size_t>(place->part)].name;
  const auto hole = implied_hole(point, part);
  if (!hole) return;
  walls.push_back(wall_of(*place, part, *hole));
  walls.back().implied = true;
  walls.back().guide_bore_in = *point.bore_in;
}

std::string guide_word(const Hole& hole) {
  if (hole.edge == EdgeGuard::grommet) return "grommet";
  return hole.edge == EdgeGuard::bushing ? "bushing" : "fairlead";
}

}  // namespace

Walls find_walls(const Project& project, const Obstacles& obstacles) {
  Walls walls;
  add_described(project, obstacles, project.structure.channels, walls);
  add_described(project, obstacles, project.structure.panels, walls);
  add_described(project, obstacles, project.structure.solids, walls);
  for (const Route& route : project.routes) {
    for (const RoutePoint& point : route.points) add_implied(project, obstacles, point, walls);
    for (const FreeFairlead& free : route.free_fairleads)
      add_implied(project, obstacles, free.fairlead, walls);
  }
  find_unsound(obstacles, walls);
  return walls;
}

std::vector<std::string> wall_assumptions(const Walls& walls) {
  std::vector<std::string> sentences;
  for (const Wall& wall : walls)
    if (wall.implied)
      sentences.push_back(fmt::format(
          "no hole is described in {} at FS {:.1f} BL {:.1f} WL {:.1f}: one of {:.4g} in is taken "
          "to be cut for the {} there, of {:.4g} in bore",
          wall.frame.name, wall.middle().x, wall.middle().y, wall.middle().z, cut_diameter_in(wall),
          guide_word(wall.hole()), wall.guide_bore_in));
  return sentences;
}

}  // namespace linewright
