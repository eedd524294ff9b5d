#include "lines/fitting_bodies.hpp"

#include "lines/prepared.hpp"

namespace linewright {

std::vector<NodeFitting> fittings_of(const Project& project) {
  std::vector<NodeFitting> fittings;
  for (const Node& node : project.nodes) {
    if (node.ports.empty() || !node.body) continue;
    NodeFitting fitting{&node, *node.body, {}};
    for (const Port& port : node.ports)
      fitting.legs.push_back({node.at, port.at + port.direction * node.body->beyond_face_in});
    fittings.push_back(std::move(fitting));
  }
  return fittings;
}

FittingSolid solid_of(const NodeFitting& fitting) {
  return {"fitting at " + fitting.node->name, fitting.node->where, fitting.legs,
          fitting.body.radius_in};
}

Vec3 end_place(const Node& node, const Port* port) {
  return port ? port->at : node.at;
}

std::optional<double> own_fitting_in(const PreparedRoute& route, const Node& node) {
  if (node.ports.empty() || !node.body) return std::nullopt;
  return node.body->beyond_face_in + node.body->radius_in + route.thickest_radius_in() +
         past_own_fitting_in;
}

bool is_own_fitting(const NodeFitting& fitting, const PreparedRoute& route, double along_in) {
  const double reach_in = own_fitting_in(route, *fitting.node).value_or(0);
  return (route.from == fitting.node && along_in <= reach_in) ||
         (route.to == fitting.node && route.length_in() - along_in <= reach_in);
}

double through_fitting_in(const Node& node, const Port* in, const Port* out) {
  if (!in || !out) return 0;
  return distance(in->at, node.at) + distance(node.at, out->at);
}

}  // namespace linewright
