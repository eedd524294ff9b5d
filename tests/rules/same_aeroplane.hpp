#pragma once
// The same aeroplane described another way: put elsewhere, turned, mirrored, its routes drawn from
// their other ends, its lists in another order, points added that change nothing.

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "lines/prepare.hpp"
#include "model/channel_axis.hpp"
#include "model/placement.hpp"
#include "oracles/random_path.hpp"
#include "rules/judge.hpp"

namespace linewright {

/// BL to -BL.
inline Placement mirrored() {
  return {{1, 0, 0, 0, -1, 0, 0, 0, 1}, {}};
}

/// Puts everything that has a place where `by` puts it: shifted along any axis, mirrored in BL 0,
/// or turned about FS. Where it is turned, each attitude rolls with it. Boxes, and channels that
/// run across or up, are drawn along the axes: they stay what they are in quarter turns alone.
class PutElsewhere {
 public:
  explicit PutElsewhere(const Placement& by, double roll_deg = 0)
      : by_(by), roll_deg_(roll_deg), mirrors_(by.rows[4] * by.rows[8] < by.rows[5] * by.rows[7]) {}

  Project of(Project project) const {
    put_structure(project.structure);
    for (Closure& closure : project.closures)
      for (Opening& opening : closure.openings) {
        put(opening.centre);
        for (Vec3& corner : opening.outline) put(corner);
        if (opening.normal) opening.normal = turned_only(*opening.normal);
      }
    for (Task& task : project.tasks) put(task.at);
    for (Node& node : project.nodes) {
      put(node.at);
      put_arm(node.arm);
      for (Port& port : node.ports) {
        put(port.at);
        port.direction = turned_only(port.direction);
      }
    }
    for (Route& route : project.routes) {
      for (RoutePoint& point : route.points) put_point(point);
      for (FreeFairlead& free : route.free_fairleads) put_point(free.fairlead);
      if (!route.run_out) continue;
      put_arm(route.run_out->from_arm);
      put_arm(route.run_out->to_arm);
    }
    for (Waiver& waiver : project.waivers)
      if (waiver.near) put(*waiver.near);
    if (project.attitudes.empty()) project.attitudes.push_back({"level flight", 0, 0, {}});
    for (Attitude& attitude : project.attitudes)
      attitude.roll_deg = (mirrors_ ? -attitude.roll_deg : attitude.roll_deg) + roll_deg_;
    return project;
  }

 private:
  void put(Vec3& at) const { at = by_.apply(at); }
  Vec3 turned_only(Vec3 direction) const { return by_.apply(direction) - by_.shift; }
  /// What turns by the right-hand rule turns by the left one in a mirror.
  void turn_axis(Vec3& axis) const { axis = mirrors_ ? -turned_only(axis) : turned_only(axis); }
  void put_arm(std::optional<Arm>& arm) const {
    if (!arm) return;
    put(arm->pivot);
    turn_axis(arm->axis);
  }
  void put_point(RoutePoint& point) const {
    put(point.at);
    if (point.axis) turn_axis(*point.axis);
  }
  void put_plane(Vec2& at) const {
    const Vec3 put = by_.apply({0, at.u, at.v});
    at = {put.y, put.z};
  }

  /// What is drawn in it stays as it is drawn.
  void put_rib(DrawnPlane& plane) const {
    put(plane.origin);
    for (Vec3* direction : {&plane.normal, &plane.across, &plane.up})
      *direction = turned_only(*direction);
  }

  void put_structure(Structure& structure) const {
    for (Frame& frame : structure.frames) {
      if (frame.plane.across.y == 0) {
        put_rib(frame.plane);
        continue;
      }
      frame.plane.origin.x += by_.shift.x;
      for (Vec2& corner : frame.outline) put_plane(corner);
      for (Hole& hole : frame.holes) {
        if (auto* circle = std::get_if<Circle>(&hole.shape))
          put_plane(circle->centre);
        else
          for (Vec2& corner : std::get<std::vector<Vec2>>(hole.shape)) put_plane(corner);
      }
    }
    for (Channel& channel : structure.channels) put_channel(channel);
    for (Panel& panel : structure.panels) {
      for (Vec3& corner : panel.corners) put(corner);
      for (std::vector<Vec3>& bay : panel.bays)
        for (Vec3& corner : bay) put(corner);
      for (WallHole& hole : panel.holes) put(hole.at);
    }
    for (Solid& solid : structure.solids) put_solid(solid);
    for (Mover& mover : structure.movers) {
      put(mover.pivot);
      turn_axis(mover.axis);
      for (Vec3& point : mover.points) put(point);
    }
  }

  void put_channel(Channel& channel) const {
    const std::size_t before = main_axis_of(channel.path);
    for (Vec3& point : channel.path) put(point);
    const std::size_t after = main_axis_of(channel.path);
    for (Vec2& corner : channel.section) {
      const Vec3 drawn = before == 0   ? Vec3{0, corner.u, corner.v}
                         : before == 1 ? Vec3{corner.u, 0, corner.v}
                                       : Vec3{corner.u, corner.v, 0};
      const Vec3 put = turned_only(drawn);
      corner = after == 0   ? Vec2{put.y, put.z}
               : after == 1 ? Vec2{put.x, put.z}
                            : Vec2{put.x, put.y};
    }
    for (WallHole& hole : channel.holes) put(hole.at);
  }

  void put_solid(Solid& solid) const {
    if (auto* box = std::get_if<Box>(&solid.shape)) {
      const Vec3 a = by_.apply(box->min);
      const Vec3 b = by_.apply(box->max);
      box->min = {std::min(a.x, b.x), std::min(a.y, b.y), std::min(a.z, b.z)};
      box->max = {std::max(a.x, b.x), std::max(a.y, b.y), std::max(a.z, b.z)};
    } else {
      auto& cylinder = std::get<Cylinder>(solid.shape);
      put(cylinder.from);
      put(cylinder.to);
    }
    for (WallHole& hole : solid.holes) put(hole.at);
  }

  Placement by_;
  double roll_deg_;
  bool mirrors_;
};

/// The route drawn from its other end. `forward` and `aft` are directions of the aeroplane and
/// stay.
inline void reverse(Route& route, double length_in) {
  std::swap(route.from, route.to);
  std::swap(route.from_where, route.to_where);
  std::swap(route.from_port, route.to_port);
  if (route.run_out) {
    std::swap(route.run_out->from_in, route.run_out->to_in);
    std::swap(route.run_out->from_arm, route.run_out->to_arm);
  }
  std::swap(route.ends.from, route.ends.to);
  std::reverse(route.points.begin(), route.points.end());
  // About its spindle the cable turns the other way.
  for (RoutePoint& point : route.points)
    if (point.axis) point.axis = -*point.axis;
  std::reverse(route.free_fairleads.begin(), route.free_fairleads.end());
  for (FreeFairlead& free : route.free_fairleads)
    free.leg = static_cast<int>(route.points.size()) - free.leg;
  for (Sleeve& sleeve : route.sleeves) {
    std::swap(sleeve.from_in, sleeve.to_in);
    sleeve.from_in = length_in - sleeve.from_in;
    sleeve.to_in = length_in - sleeve.to_in;
  }
  std::reverse(route.sleeves.begin(), route.sleeves.end());
  for (Attachment& attached : route.attached) {
    attached.at_in = length_in - attached.at_in;
    std::swap(attached.ends.from, attached.ends.to);
  }
  std::reverse(route.attached.begin(), route.attached.end());
}

inline Project with_routes_reversed(Project project) {
  const PreparedProject prepared = prepare(project);
  std::vector<double> lengths;
  for (const PreparedRoute& route : prepared.routes) lengths.push_back(route.length_in());
  for (std::size_t i = 0; i < project.routes.size(); ++i) {
    const Route& route = project.routes[i];
    for (Bundle& bundle : project.bundles) {
      if (bundle.routes.front() != route.name) continue;
      std::swap(bundle.from_in, bundle.to_in);
      bundle.from_in = lengths[i] - bundle.from_in;
      bundle.to_in = lengths[i] - bundle.to_in;
    }
    // A pushrod's travel is that of its `from` end.
    if (route.system != SystemKind::rod) reverse(project.routes[i], lengths[i]);
  }
  return project;
}

/// How much of the legs beside each point of a route its bend takes up, its nodes included.
inline std::vector<double> tangents_in(const PreparedRoute& route) {
  std::vector<double> tangents(route.route->points.size() + 2, 0);
  for (const Bend& bend : route.centreline.bends())
    tangents[static_cast<std::size_t>(bend.corner)] = bend.tangent_in;
  return tangents;
}

/// A point on each straight of a route, at a share of it; a pushrod has none. Beside a pulley that
/// is given by its centre the points alone do not tell where the straight is.
inline void add_collinear_points(Route& route, const PreparedRoute& prepared, double share) {
  const std::vector<double> tangents = tangents_in(prepared);
  std::vector<RoutePoint> corners = route.points;
  corners.insert(corners.begin(), RoutePoint{});
  corners.front().at = prepared.centreline.at(0);
  corners.push_back({});
  corners.back().at = prepared.centreline.at(prepared.length_in());
  std::vector<RoutePoint> points;
  std::vector<int> before(corners.size(), 0);
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
    const Vec3 leg = corners[i + 1].at - corners[i].at;
    const double straight = norm(leg) - tangents[i] - tangents[i + 1];
    if (i > 0) points.push_back(corners[i]);
    before[i] = static_cast<int>(points.size());
    if (corners[i].given == PointGiven::centre || corners[i + 1].given == PointGiven::centre ||
        straight <= 0)
      continue;
    RoutePoint added;
    added.at = corners[i].at + unit(leg) * (tangents[i] + share * straight);
    added.where = route.where;
    points.push_back(added);
  }
  // Before or after the point added to its leg, a fairlead passed free stands at the same place.
  for (FreeFairlead& free : route.free_fairleads)
    free.leg = before[static_cast<std::size_t>(free.leg)];
  route.points = std::move(points);
}

inline Project with_collinear_points(const Project& project, double share) {
  const PreparedProject prepared = prepare(project);
  Project added = project;
  for (std::size_t i = 0; i < added.routes.size(); ++i)
    if (added.routes[i].system != SystemKind::rod)
      add_collinear_points(added.routes[i], prepared.routes[i], share);
  return added;
}

template <typename Item>
void shuffle(std::vector<Item>& items, oracles::Random& random) {
  for (std::size_t i = items.size(); i > 1; --i)
    std::swap(items[i - 1],
              items[static_cast<std::size_t>(random.whole(0, static_cast<int>(i) - 1))]);
}

/// Every list whose order means nothing in another order.
inline Project shuffled(Project project, oracles::Random& random) {
  Structure& structure = project.structure;
  shuffle(structure.frames, random);
  for (Frame& frame : structure.frames) shuffle(frame.holes, random);
  shuffle(structure.channels, random);
  for (Channel& channel : structure.channels) shuffle(channel.holes, random);
  shuffle(structure.panels, random);
  for (Panel& panel : structure.panels) shuffle(panel.holes, random);
  shuffle(structure.solids, random);
  shuffle(structure.movers, random);
  shuffle(project.closures, random);
  shuffle(project.nodes, random);
  shuffle(project.routes, random);
  for (Route& route : project.routes) {
    shuffle(route.sleeves, random);
    shuffle(route.attached, random);
  }
  shuffle(project.bundles, random);
  shuffle(project.waivers, random);
  shuffle(project.attitudes, random);
  return project;
}

}  // namespace linewright
