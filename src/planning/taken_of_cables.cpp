#include "planning/taken_of_cables.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <span>
#include <string_view>

#include "lines/own_arm.hpp"
#include "physics/pilot_force.hpp"

namespace linewright {

namespace {

using Routes = std::vector<const Route*>;

template <typename Picks>
Names names_of(const Routes& routes, const Picks& picks) {
  Names names;
  for (const Route* route : routes)
    if (picks(*route)) names.push_back(route->name);
  return names;
}

Routes cables_of(const Project& project) {
  Routes cables;
  for (const Route& route : project.routes)
    if (route.system == SystemKind::cable) cables.push_back(&route);
  return cables;
}

bool is_still(const Route& route) {
  return route.travel && route.travel->forward_in <= 0 && route.travel->aft_in <= 0;
}

/// Ends of cables that move, whose way is not stated.
void add_ends(const Project& project, const Routes& cables, Sentences& sentences) {
  Names ends;
  Names on_others;
  for (const Route* route : cables) {
    if (is_still(*route)) continue;
    for (const std::string& name : {route->from, route->to}) {
      const Node* node = project.find_node(name);
      if (!node || node->arm || node->sector) continue;
      if (takes_cable(node->kind))
        ends.push_back(route->name + " at " + name);
      else if (!node->fixed.value_or(false))
        on_others.push_back(route->name + " at " + name);
    }
  }
  sentences.add(on_others,
                "ends of cables on nodes that are no horn or pedal: {}; they were taken as fixed "
                "where they are drawn, and how the ends go with the travel was not looked at");
  sentences.add(ends,
                "ends of cables whose arm is not stated: {}; they were taken as fixed where they "
                "are drawn");
}

bool has_mover(const Project& project, const Node& node) {
  return std::any_of(project.structure.movers.begin(), project.structure.movers.end(),
                     [&](const Mover& mover) { return is_on(mover, node.at); });
}

/// Horns and pedals, of cables and rods that move, of which no moving part is drawn.
void add_undrawn_arms(const Project& project, Sentences& sentences) {
  std::set<std::string_view> ends;
  for (const Route& route : project.routes)
    if (!is_still(route)) ends.insert({route.from, route.to});
  Names undrawn;
  for (const Node& node : project.nodes)
    if (takes_cable(node.kind) && !node.sector && ends.contains(node.name) &&
        !has_mover(project, node))
      undrawn.push_back(node.name);
  sentences.add(undrawn,
                "horns and pedals that are not drawn as moving parts: {}; lines were not held "
                "against their arms");
}

void add_pulleys(const Routes& cables, Sentences& sentences) {
  Names pulleys;
  for (const Route* route : cables)
    for (std::size_t i = 0; i < route->points.size(); ++i) {
      const RoutePoint& point = route->points[i];
      if (point.hold == HoldKind::pulley && (!point.outside_in || !point.width_in))
        pulleys.push_back(at_point(*route, i));
    }
  sentences.add(pulleys,
                "pulleys that do not state their outside and width: {}; flanges a cable's diameter "
                "beyond the groove and two of them wide were taken");
}

/// What the forces of 14 CFR 23.397(b) hang on.
void add_weight_and_grip(const Project& project, const Routes& cables, Sentences& sentences) {
  if (!project.weight_lbf)
    sentences.add(
        names_of(cables, takes_pilot_force),
        fmt::format("weight is not stated: the aeroplane of {{}} was taken to weigh no more than "
                    "{:.0f} lbf; in a heavier one a pilot pulls harder",
                    light_weight_lbf));
  sentences.add(names_of(cables,
                         [](const Route& route) {
                           return route.lever && !route.worked_by &&
                                  std::any_of(wheel_forces.begin(), wheel_forces.end(),
                                              [&](const PilotForce& wheel) {
                                                return is_same_control(wheel.control,
                                                                       route.control);
                                              });
                         }),
                "worked_by is not stated for {}: a stick was taken; a wheel is pulled harder");
}

/// Of each control what the pilot pulls it with.
void add_pilot_forces(const Project& project, const Routes& cables, Sentences& sentences) {
  const double factor = project.weight_lbf ? weight_factor(*project.weight_lbf) : 1;
  for (const std::span<const PilotForce> rows :
       {std::span<const PilotForce>(pilot_forces), std::span<const PilotForce>(wheel_forces)})
    for (const PilotForce& row : rows)
      sentences.add(names_of(cables,
                             [&](const Route& route) {
                               return pilot_forces_on(route) == &row && takes_pilot_force(route);
                             }),
                    fmt::format("pilot_force is not stated for {{}}: {:.0f} lbf at {} was taken, "
                                "the most of 14 CFR 23.397(b)",
                                factor * row.most_lbf, row.grip));
  add_weight_and_grip(project, cables, sentences);
  const Names pulled = names_of(cables, [](const Route& route) {
    return route.is_primary_control() && pilot_pull_lbf(route);
  });
  if (!project.dual_controls)
    sentences.add(pulled, fmt::format("dual_controls is not stated: one pilot was taken to pull on "
                                      "{{}}; two together pull {:g} times as much (14 CFR "
                                      "23.399(b))",
                                      two_pilots_ratio));
}

void add_tensions(const Project& project, const Routes& cables, Sentences& sentences) {
  sentences.add(names_of(cables,
                         [](const Route& route) {
                           return route.is_primary_control() && route.control.empty();
                         }),
                "control is not stated for {}: each was taken to work alone, on a primary control, "
                "so that no other cable's pull slackens it");
  sentences.add(names_of(cables, [](const Route& route) { return !route.travel; }),
                "travel is not stated for {}: what it carries along, and what stretch takes from "
                "it, were not judged");
  sentences.add(names_of(cables,
                         [&](const Route& route) {
                           return !route.airframe_stiffness_lbf_per_in &&
                                  !project.airframe_stiffness_lbf_per_in;
                         }),
                "airframe_stiffness is not stated for {}: a rigid airframe was taken, which gives "
                "to no cable's pull");
  add_pilot_forces(project, cables, sentences);
  const auto has_load = [](const Route& route) {
    return route.tension && route.tension->limit_load_lbf;
  };
  sentences.add(names_of(cables,
                         [&](const Route& route) {
                           return route.tension && !has_load(route) && pilot_pull_lbf(route);
                         }),
                "tension.limit_load is not stated for {}: the pilot's pull by the lever ratio was "
                "taken");
  sentences.add(
      names_of(cables, [&](const Route& route) { return !route.lever && has_load(route); }),
      "lever_ratio is not stated for {}: the limit load was taken to cover what the pilot can "
      "pull, "
      "and friction at the pilot's end was not judged");
}

/// Ends on arms, which turn.
void add_joints(const Project& project, const Routes& cables, Sentences& sentences) {
  Names ends;
  for (const Route* route : cables)
    for (const bool at_from : {true, false}) {
      const Node* node = project.find_node(at_from ? route->from : route->to);
      const auto& end = at_from ? route->ends.from : route->ends.to;
      if (node && node->arm && (!end || !end->joint))
        ends.push_back(route->name + " at " + node->name);
    }
  sentences.add(
      ends,
      "ends of cables whose joint is not stated: {}; each was taken to turn on a pin along "
      "its arm's axis");
}

void add_attachments(const Routes& cables, Sentences& sentences) {
  Names turnbuckles;
  for (const Route* route : cables)
    for (const Attachment& each : route->attached)
      if (each.is_turnbuckle() && !each.adjustment)
        turnbuckles.push_back(fmt::format("{} at {:g} in", route->name, each.at_in));
  sentences.add(turnbuckles,
                "turnbuckles that state no adjustment: {}; they were taken to be no longer than "
                "drawn");
}

}  // namespace

void add_taken_of_cables(const Project& project, Sentences& sentences) {
  const Routes cables = cables_of(project);
  add_ends(project, cables, sentences);
  add_undrawn_arms(project, sentences);
  add_pulleys(cables, sentences);
  add_tensions(project, cables, sentences);
  add_joints(project, cables, sentences);
  add_attachments(cables, sentences);
}

}  // namespace linewright
