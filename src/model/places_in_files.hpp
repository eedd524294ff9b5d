#pragma once
// Where in the builder's files the parts of a project stand.

#include "model/project.hpp"

namespace linewright {

/// Calls `visit` with the place of everything that a route was read from, always in one order.
/// `route` may be const; so may the project below.
template <typename OfRoute, typename Visit>
void visit_places_of_route(OfRoute& route, const Visit& visit) {
  const auto visit_ends = [&visit](auto& ends) {
    for (auto* end : {&ends.from, &ends.to})
      if (*end) visit((*end)->where);
  };
  for (auto* where : {&route.where, &route.line_where, &route.from_where, &route.to_where,
                      &route.from_port_where, &route.to_port_where})
    visit(*where);
  for (auto& point : route.points) visit(point.where);
  for (auto& free : route.free_fairleads) visit(free.fairlead.where);
  for (auto& sleeve : route.sleeves) visit(sleeve.where);
  for (auto& attachment : route.attached) {
    visit(attachment.where);
    visit_ends(attachment.ends);
  }
  visit_ends(route.ends);
  if (route.tension) visit(route.tension->where);
  if (route.travel) visit(route.travel->where);
  if (route.run_out) visit(route.run_out->where);
  if (route.lever) visit(route.lever->where);
}

/// The same of everything else in a project.
template <typename OfProject, typename Visit>
void visit_places_beside_routes(OfProject& project, const Visit& visit) {
  const auto visit_all = [&visit](auto& things) {
    for (auto& thing : things) visit(thing.where);
  };
  if (project.load_factor.where) visit(*project.load_factor.where);
  if (project.excitation) visit(project.excitation->where);
  visit_all(project.attitudes);
  auto& structure = project.structure;
  for (auto& frame : structure.frames) visit_all(frame.holes);
  for (auto& channel : structure.channels) visit_all(channel.holes);
  for (auto& panel : structure.panels) visit_all(panel.holes);
  for (auto& solid : structure.solids) visit_all(solid.holes);
  visit_all(structure.frames);
  visit_all(structure.channels);
  visit_all(structure.panels);
  visit_all(structure.solids);
  visit_all(structure.movers);
  visit_all(structure.meshes);
  for (auto& closure : project.closures) visit_all(closure.openings);
  visit_all(project.closures);
  visit_all(project.tasks);
  for (auto& node : project.nodes) {
    visit_all(node.ports);
    if (node.loose) visit(node.loose->where);
  }
  visit_all(project.nodes);
  visit_all(project.bundles);
  visit_all(project.waivers);
  visit_all(project.built);
  for (auto& line : project.catalogue.lines)
    if (line.where) visit(*line.where);
  for (auto& fitting : project.catalogue.fittings)
    if (fitting.where) visit(*fitting.where);
}

}  // namespace linewright
