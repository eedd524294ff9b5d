#pragma once
// Small projects of tubes, hoses and cables without structure, for the cut list.

#include <optional>
#include <string>
#include <vector>

#include "lines/prepare.hpp"
#include "planning/cutlist.hpp"

namespace linewright {

inline Line tube() {
  Line line;
  line.name = "tube-aluminium-1/4";
  line.kind = LineKind::rigid_tube;
  line.outside_diameter_in = 0.25;
  line.inside_diameter_in = 0.18;
  line.weight_lb_per_in = SourcedValue{0.0025, {}};
  line.minimum_bend_radius_in = SourcedValue{0.5625, {}};
  line.cut_allowance_in = 0.5;
  return line;
}

inline Line hose() {
  Line line;
  line.name = "hose-rubber-1/4";
  line.kind = LineKind::hose;
  line.outside_diameter_in = 0.5;
  line.inside_diameter_in = 0.25;
  line.cut_allowance_in = 1;
  return line;
}

inline Line cable() {
  Line line;
  line.name = "cable-7x19-1/8-steel";
  line.kind = LineKind::cable;
  line.outside_diameter_in = 0.125;
  return line;
}

/// A project of tubes, hoses and cables, put together route by route.
class TubeProject {
 public:
  TubeProject() { project.catalogue.lines = {tube(), hose(), cable()}; }

  TubeProject& node(const std::string& name, Vec3 at, NodeKind kind = NodeKind::end,
                    std::optional<double> volume_in3 = {}) {
    Node node;
    node.name = name;
    node.kind = kind;
    node.at = at;
    node.volume_in3 = volume_in3;
    project.nodes.push_back(node);
    return *this;
  }

  /// A route of tube in the static system, whose bends are the points'.
  Route& route(const std::string& name, const std::string& from, const std::string& to,
               const std::vector<PathCorner>& bends = {}) {
    Route route;
    route.name = name;
    route.system_name = "static";
    route.line = "tube-aluminium-1/4";
    route.from = from;
    route.to = to;
    for (const PathCorner& bend : bends) {
      RoutePoint point;
      point.at = bend.at;
      point.bend_in = bend.radius_in;
      route.points.push_back(point);
    }
    project.routes.push_back(route);
    return project.routes.back();
  }

  CutList cut() const { return cut_list(prepare(project)); }

  Project project;
};

/// The cut of one tube along `corners`.
inline RouteCut cut_along(const std::vector<PathCorner>& corners) {
  TubeProject project;
  project.node("from", corners.front().at).node("to", corners.back().at);
  project.route("tube", "from", "to", {corners.begin() + 1, corners.end() - 1});
  return project.cut().routes.at(0);
}

}  // namespace linewright
