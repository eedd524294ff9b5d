#pragma once
// A project of plain values with one route or two, put together without files.

#include <string>
#include <utility>
#include <vector>

#include "lines/prepare.hpp"

namespace linewright {

/// Routes of a made-up tube of 1/4 in, each between two nodes of its own.
class RouteProject {
 public:
  RouteProject() {
    Line line;
    line.name = "tube";
    line.kind = LineKind::plastic_tube;
    line.outside_diameter_in = 0.25;
    line.inside_diameter_in = 0.17;
    project.catalogue.lines.push_back(line);
  }

  /// A route "tube-N" along the corners, from node "N-from" to node "N-to", held at both.
  Route& route(const std::vector<PathCorner>& corners) {
    const std::string number = std::to_string(project.routes.size());
    node(number + "-from", corners.front().at);
    node(number + "-to", corners.back().at);
    Route route;
    route.name = "tube-" + number;
    route.line = "tube";
    route.from = number + "-from";
    route.to = number + "-to";
    for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
      RoutePoint point;
      point.at = corners[i].at;
      point.bend_in = corners[i].radius_in;
      route.points.push_back(point);
    }
    project.routes.push_back(std::move(route));
    return project.routes.back();
  }
  Route& route(Vec3 from, Vec3 to) { return route({{from, 0}, {to, 0}}); }

  /// A triangle of no thickness of its own, swollen by half of `thickness_in`.
  void triangle(const Triangle3& shape, double thickness_in) {
    Panel panel;
    panel.name = "panel-" + std::to_string(project.structure.panels.size());
    panel.corners = {shape.a, shape.b, shape.c};
    panel.thickness_in = thickness_in;
    project.structure.panels.push_back(panel);
  }

  /// A swollen segment.
  void rod(const Segment3& axis, double diameter_in) {
    Solid solid;
    solid.name = "rod-" + std::to_string(project.structure.solids.size());
    solid.shape = Cylinder{axis.a, axis.b, diameter_in};
    project.structure.solids.push_back(solid);
  }

  Frame& frame(double station_in, double thickness_in, std::vector<Hole> holes) {
    Frame frame;
    frame.name = "frame-" + std::to_string(project.structure.frames.size());
    frame.plane = at_station(station_in);
    frame.thickness_in = thickness_in;
    frame.outline = {{-10, -10}, {10, -10}, {10, 10}, {-10, 10}};
    frame.holes = std::move(holes);
    project.structure.frames.push_back(std::move(frame));
    return project.structure.frames.back();
  }

  PreparedProject prepared() const { return prepare(project); }

  Project project;

 private:
  void node(const std::string& name, Vec3 at) {
    Node node;
    node.name = name;
    node.kind = NodeKind::bulkhead;
    node.at = at;
    project.nodes.push_back(node);
  }
};

inline Hole round_hole(const std::string& name, Vec2 centre, double diameter_in,
                       EdgeGuard edge = EdgeGuard::bare) {
  return {name, Circle{centre, diameter_in}, edge, {}, {}};
}

}  // namespace linewright
