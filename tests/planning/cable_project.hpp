#pragma once
// Control cables between two held nodes, made of plain values with the built-in catalogue.

#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "lines/prepare.hpp"
#include "planning/rig.hpp"

namespace linewright {

inline RoutePoint guided(Vec3 at, HoldKind hold) {
  RoutePoint point;
  point.at = at;
  point.hold = hold;
  return point;
}

inline RoutePoint pulley(Vec3 at, double diameter_in) {
  RoutePoint point = guided(at, HoldKind::pulley);
  point.diameter_in = diameter_in;
  return point;
}

inline Sleeve sleeve(double from_in, double to_in) {
  Sleeve sleeve;
  sleeve.from_in = from_in;
  sleeve.to_in = to_in;
  return sleeve;
}

/// One cable of 1/8 in 7x19 steel from a pedal to a horn with swaged ends, all at 70 degF and 1 g
/// until a test says otherwise.
struct CableProject {
  CableProject(Vec3 pedal, Vec3 horn, const std::vector<RoutePoint>& points = {}) {
    project.temperature = {70, 70, 70};
    project.load_factor = {1, -1};
    project.catalogue = built_in_catalogue();
    Node from;
    from.name = "pedal";
    from.kind = NodeKind::pedal;
    from.at = pedal;
    Node to;
    to.name = "horn";
    to.kind = NodeKind::horn;
    to.at = horn;
    project.nodes = {from, to};
    Route cable;
    cable.name = "rudder";
    cable.system = SystemKind::cable;
    cable.system_name = "cable";
    cable.control = "rudder";
    cable.line = "cable-7x19-1/8-steel";
    cable.from = "pedal";
    cable.to = "horn";
    cable.points = points;
    cable.ends.from = cable.ends.to = CableEnd{CableEndKind::swaged, 2, 1, {}};
    project.routes = {cable};
  }

  Route& cable() { return project.routes.front(); }

  Line& line() {
    for (Line& each : project.catalogue.lines)
      if (each.name == cable().line) return each;
    return project.catalogue.lines.front();
  }

  CableProject& tension(double rigged_lbf, std::optional<double> limit_load_lbf = {}) {
    cable().tension = Tension{rigged_lbf, limit_load_lbf, {}};
    return *this;
  }

  RiggedCable rigged() const { return plan_rig(prepare(project)).cables.at(0); }

  Project project;
};

}  // namespace linewright
