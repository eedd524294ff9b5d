#include "planning/schedule.hpp"

#include <algorithm>
#include <map>
#include <numbers>
#include <tuple>

#include "lines/clamped_girth.hpp"
#include "lines/hole_margin.hpp"
#include "lines/named_hole.hpp"
#include "lines/prepare.hpp"
#include "lines/wall_web.hpp"
#include "model/sheet.hpp"
#include "model/support_name.hpp"
#include "planning/clamp_size.hpp"

namespace linewright {

namespace {

struct FoundHole {
  const Hole* hole = nullptr;
  std::string part;
};

/// The hole that a point names, or the one that is taken to be cut for it.
FoundHole hole_of(const PreparedProject& prepared, const RoutePoint& point) {
  const NamedHole named = find_hole(*prepared.project, prepared.walls, point.through);
  if (named.hole) return {named.hole, named.frame->name};
  if (!point.through.empty() || !point.is_bored_guide()) return {};
  for (const Wall& wall : prepared.walls)
    if (wall.implied && wall.hole().where == point.where) return {&wall.hole(), wall.frame.name};
  return {};
}

std::optional<double> diameter_in(const Hole& hole) {
  const auto* circle = std::get_if<Circle>(&hole.shape);
  return circle ? std::optional(circle->diameter_in) : std::nullopt;
}

std::optional<double> bore_in(const RoutePoint& point, const Hole* hole) {
  if (point.bore_in || !hole) return point.bore_in;
  return hole->bore_in ? hole->bore_in : usual_bore_in(*hole);
}

std::optional<double> drilled_in(HoldKind hold, const Hole* hole, std::optional<double> bore) {
  if (hold == HoldKind::clamp) return clamp_screw_hole_in;
  if (hole) return diameter_in(*hole);
  if (hold == HoldKind::grommet && bore) return *bore + grommet_hole_over_bore_in;
  if (hold == HoldKind::bushing && bore) return *bore + bushing_hole_over_bore_in;
  return std::nullopt;
}

/// What holds the line at a point that may name only a guarded hole.
std::optional<HoldKind> hold_of(const RoutePoint& point, const Hole* hole, bool is_support) {
  if (point.hold || !hole || !is_support) return point.hold;
  return hole->edge == EdgeGuard::grommet ? HoldKind::grommet : HoldKind::bushing;
}

double along_path_in(const std::vector<Vec3>& path, Vec3 at) {
  double before = 0;
  double found = 0;
  double nearest = -1;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const Vec3 leg = path[i + 1] - path[i];
    const double length = norm(leg);
    const double along = std::clamp(dot(at - path[i], leg) / length, 0.0, length);
    const double away = distance(at, path[i] + leg * (along / length));
    if (nearest < 0 || away < nearest) {
      nearest = away;
      found = before + along;
    }
    before += length;
  }
  return found;
}

std::optional<double> along_part_in(const Project& project, const std::string& part, Vec3 at) {
  for (const Channel& channel : project.structure.channels)
    if (channel.name == part) return along_path_in(channel.path, at);
  return std::nullopt;
}

class RouteSupports {
 public:
  RouteSupports(const PreparedProject& prepared, const PreparedRoute& route, const TiedLines& tied)
      : prepared_(prepared), route_(route), tied_(tied) {}

  std::vector<ScheduledSupport> found() {
    const auto& points = route_.route->points;
    for (std::size_t i = 0; i < points.size(); ++i)
      add(points[i], route_.point_distance_in[i], is_support(i));
    for (const FreePassage& passage : route_.free_passages)
      add(passage.fairlead(), passage.distance_in, true);
    std::stable_sort(found_.begin(), found_.end(),
                     [](const auto& a, const auto& b) { return a.distance_in < b.distance_in; });
    double before = 0;
    for (ScheduledSupport& each : found_) {
      each.from_previous_in = each.distance_in - before;
      before = each.distance_in;
    }
    return std::move(found_);
  }

 private:
  bool is_support(std::size_t index) const {
    return std::any_of(route_.supports.begin(), route_.supports.end(), [&](const Support& support) {
      return support.point == static_cast<int>(index);
    });
  }

  void add(const RoutePoint& point, double distance_in, bool is_support) {
    const FoundHole in = hole_of(prepared_, point);
    const auto hold = hold_of(point, in.hole, is_support);
    if (!hold) return;
    ScheduledSupport support{route_.route->name,
                             hold_word(*hold),
                             point.to.empty() ? in.part : point.to,
                             point.through,
                             place_of(point, distance_in),
                             distance_in};
    if (hold == HoldKind::clamp) {
      const auto girth = clamped_girth_in(route_, distance_in, tied_);
      const auto clamp = girth ? clamp_about(*girth, prepared_.project->catalogue) : std::nullopt;
      if (clamp) support.clamp = clamp->name;
    } else {
      support.size_in = hold == HoldKind::pulley ? point.diameter_in : bore_in(point, in.hole);
    }
    support.hole_in = drilled_in(*hold, in.hole, support.size_in);
    support.guards = point.guards;
    support.is_holes_own =
        in.hole && hold != HoldKind::clamp && hold != HoldKind::pulley &&
        (in.hole->edge == EdgeGuard::grommet || in.hole->edge == EdgeGuard::bushing);
    support.along_part_in = along_part_in(*prepared_.project, support.to, support.at);
    found_.push_back(std::move(support));
  }

  Vec3 place_of(const RoutePoint& point, double distance_in) const {
    return point.given == PointGiven::centre ? point.at : route_.centreline.at(distance_in);
  }

  const PreparedProject& prepared_;
  const PreparedRoute& route_;
  const TiedLines& tied_;
  std::vector<ScheduledSupport> found_;
};

/// Routes that go through a hole, each once, in file order.
std::vector<std::string> lines_through(const PreparedProject& prepared, const Hole& hole) {
  std::vector<std::string> lines;
  for (const PreparedRoute& route : prepared.routes)
    if (std::any_of(route.crossings.begin(), route.crossings.end(),
                    [&](const Crossing& crossing) { return crossing.hole == &hole; }))
      lines.push_back(route.route->name);
  return lines;
}

double round_in(const Hole& hole) {
  if (const auto* circle = std::get_if<Circle>(&hole.shape))
    return std::numbers::pi * circle->diameter_in;
  const auto& corners = std::get<std::vector<Vec2>>(hole.shape);
  double sum = distance(corners.back(), corners.front());
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) sum += distance(corners[i], corners[i + 1]);
  return sum;
}

ScheduledHole scheduled(const PreparedProject& prepared, const Hole& hole, const Frame& sheet,
                        Vec3 centre) {
  const std::string& part = sheet.name;
  ScheduledHole found{part, hole.name, centre, diameter_in(hole), hole.edge};
  found.thickness_in = sheet.thickness_in;
  found.round_in = round_in(hole);
  found.bore_in = hole.bore_in ? hole.bore_in : usual_bore_in(hole);
  found.lines = lines_through(prepared, hole);
  found.along_part_in = along_part_in(*prepared.project, part, centre);
  return found;
}

ScheduledHole in_frame(const PreparedProject& prepared, const Frame& frame, const Hole& hole) {
  const Vec2 middle = middle_of(hole);
  ScheduledHole found = scheduled(prepared, hole, frame, frame.plane.in_space(middle));
  const HoleMargin margin = least_margin(frame, hole);
  found.edge_distance_in = margin.web_in;
  found.nearest = margin.other ? margin.other->name : frame.name;
  return found;
}

ScheduledHole in_wall(const PreparedProject& prepared, const Wall& wall) {
  ScheduledHole found = scheduled(prepared, wall.hole(), wall.frame, wall.middle());
  if (wall.implied) found.name = wall.frame.name;
  for (const Wall& other : prepared.walls) {
    const auto left = &other == &wall ? std::nullopt : sheet_between_in(wall, other);
    if (!left || (found.edge_distance_in && *left >= *found.edge_distance_in)) continue;
    found.edge_distance_in = left;
    found.nearest = other.implied ? other.frame.name : other.hole().name;
  }
  return found;
}

/// The parts as the structure lists them; what is none of them comes after.
std::map<std::string, int> ranks_of(const PreparedProject& prepared) {
  std::map<std::string, int> ranks;
  int rank = 0;
  for (const Part& part : prepared.obstacles.parts()) ranks.emplace(part.name, rank++);
  return ranks;
}

void put_in_order(Schedule& all, const PreparedProject& prepared, ScheduleOrder order) {
  const std::map<std::string, int> ranks = ranks_of(prepared);
  const auto rank = [&](const std::string& part) {
    const auto found = ranks.find(part);
    return found == ranks.end() ? static_cast<int>(ranks.size()) : found->second;
  };
  const auto along = [&](const std::optional<double>& tape_in, Vec3 at) {
    const double across = order == ScheduleOrder::frame ? at.y : at.x;
    return std::tuple(tape_in.value_or(across), at.y, at.z);
  };
  std::stable_sort(all.supports.begin(), all.supports.end(),
                   [&](const ScheduledSupport& a, const ScheduledSupport& b) {
                     return std::tuple(rank(a.to), along(a.along_part_in, a.at)) <
                            std::tuple(rank(b.to), along(b.along_part_in, b.at));
                   });
  std::stable_sort(all.holes.begin(), all.holes.end(),
                   [&](const ScheduledHole& a, const ScheduledHole& b) {
                     return std::tuple(rank(a.frame), along(a.along_part_in, a.centre)) <
                            std::tuple(rank(b.frame), along(b.along_part_in, b.centre));
                   });
}

}  // namespace

Schedule schedule(const PreparedProject& prepared, ScheduleOrder order) {
  Schedule all;
  all.project_name = prepared.project->name;
  all.order = order;
  const TiedLines tied(prepared);
  for (const PreparedRoute& route : prepared.routes) {
    const Route& stated = *route.route;
    all.routes.push_back(
        {stated.name, stated.system_name, route.line->name, stated.from, stated.to});
    for (ScheduledSupport& support : RouteSupports(prepared, route, tied).found())
      all.supports.push_back(std::move(support));
  }
  for (const Frame& frame : prepared.project->structure.frames)
    for (const Hole& hole : frame.holes) all.holes.push_back(in_frame(prepared, frame, hole));
  for (const Wall& wall : prepared.walls) all.holes.push_back(in_wall(prepared, wall));
  if (order != ScheduleOrder::route) put_in_order(all, prepared, order);
  all.assumptions = prepared.project->assumptions;
  for (std::string& each : wall_assumptions(prepared.walls))
    all.assumptions.push_back(std::move(each));
  return all;
}

}  // namespace linewright
