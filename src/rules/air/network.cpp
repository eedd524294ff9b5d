#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <string_view>
#include <utility>

#include "rules/air/node_openings.hpp"
#include "rules/side_by_side.hpp"

namespace linewright {

namespace {

constexpr LimitRow joined{.name = "pressures-joined",
                          .subject = "other pressures joined to a system's own",
                          .value = 0,
                          .unit = Unit::none,
                          .sense = LimitSense::at_most,
                          .source = "14 CFR 23.1323 and 23.1325",
                          .mark = Mark::verified};
constexpr LimitRow reached{.name = "openings-reached",
                           .subject = "ports or probes that a system reaches",
                           .value = 1,
                           .unit = Unit::none,
                           .source = "14 CFR 23.1323 and 23.1325",
                           .mark = Mark::verified};
constexpr LimitRow two_ports{.name = "sides-with-port",
                             .subject = "sides that have a static port",
                             .value = 2,
                             .unit = Unit::none,
                             .source = "one on each side, so that a sideslip cancels",
                             .mark = Mark::common_practice,
                             .broken = Verdict::warn};
constexpr LimitRow drained{
    .name = "drains",
    .subject = "drains in a system",
    .value = 1,
    .unit = Unit::none,
    .source = "a drain at each low point; positive drainage itself is 14 CFR 23.1325(b)(1)(i)",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
constexpr LimitRow feeds{.name = "instruments-fed",
                         .subject = "instruments that a system reaches",
                         .value = 1,
                         .unit = Unit::none,
                         .source = "a line that feeds nothing",
                         .mark = Mark::common_practice,
                         .broken = Verdict::warn};
constexpr LimitRow never_reached{
    .name = "routes-at-node",
    .subject =
        "routes that end at each port, probe, instrument, drain and tee; cables at "
        "each horn and pedal",
    .value = 1,
    .unit = Unit::none,
    .source = "what is described is meant to be connected",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr auto network_limits = limit_table(
    {lines_through, line_end, joins_none, most_at_cap, most_at_union, most_at_tee, most_at_other,
     joined, reached, two_ports, drained, feeds, tee_lines, never_reached});

/// Those that hold air: a wire to an instrument closes no opening of it.
Routes air_among(const Routes& routes) {
  Routes air;
  std::copy_if(routes.begin(), routes.end(), std::back_inserter(air),
               [](const PreparedRoute* route) { return is_air(route->route->system); });
  return air;
}

bool carries_air(NodeKind kind) {
  switch (kind) {
    case NodeKind::static_port:
    case NodeKind::pitot_probe:
    case NodeKind::instrument:
    case NodeKind::drain:
    case NodeKind::tee:
    case NodeKind::valve:
      return true;
    default:
      return false;
  }
}

bool any_control(const Routes& routes) {
  return std::any_of(routes.begin(), routes.end(),
                     [](const PreparedRoute* route) { return works_control(route->line->kind); });
}

/// A port, instrument or drain in the files that no line was drawn to, a horn without its cable.
Judgement unreached(const RuleContext& context, const Node& node) {
  Judgement judgement = context.about(node.name, node.where);
  judgement.at = node.at;
  holds_true(judgement, false, never_reached);
  const std::string what = takes_cable(node.kind) ? "cable" : "route";
  judgement.message = "no " + what + " ends at " + node.name;
  judgement.mend = "draw the " + what + " to it, or remove the node";
  return judgement;
}

/// What keeps two systems apart that come to it: a valve that is shut two of one pressure, an
/// instrument with a port for each two of different ones, as of static and pitot. The reader gives
/// each line a port of its own.
bool keeps_apart(const Node& node, const Route& first, const Route& second) {
  if (node.kind == NodeKind::valve) return first.system == second.system;
  return node.kind == NodeKind::instrument && !node.ports.empty() && first.system != second.system;
}

Judgement judge_joint(const RuleContext& context, const Node& node, const Routes& routes) {
  Judgement judgement = at_node(context, joined, *routes.front(), node);
  const Route& first = *routes.front()->route;
  const PreparedRoute* other = nullptr;
  bool two_meet = false;
  for (const PreparedRoute* route : routes) {
    if (route->route->system_name == first.system_name) continue;
    two_meet = true;
    if (!keeps_apart(node, first, *route->route)) other = route;
  }
  if (holds_true(judgement, !other, joined)) {
    judgement.message = !two_meet ? "one system meets at " + node.name
                        : node.kind == NodeKind::valve
                            ? "two systems of one pressure meet at valve " + node.name
                            : node.name + " has ports of their own for the systems that it feels";
    return judgement;
  }
  judgement.message = "system '" + routes.front()->route->system_name + "' is joined to system '" +
                      other->route->system_name + "' at " + node.name;
  judgement.mend =
      node.kind == NodeKind::instrument
          ? "state the instrument's `ports`, or give it one node for each of its connections"
          : "lead one of the two lines to a node of its own system";
  return judgement;
}

struct SystemParts {
  const PreparedRoute* first = nullptr;
  SystemKind kind = SystemKind::static_air;
  std::set<const Node*> nodes;

  std::size_t count(NodeKind wanted) const {
    return static_cast<std::size_t>(std::count_if(
        nodes.begin(), nodes.end(), [wanted](const Node* node) { return node->kind == wanted; }));
  }
  /// What it lacks may lie beyond an end that is still to be connected.
  bool is_unfinished() const {
    return std::any_of(nodes.begin(), nodes.end(),
                       [](const Node* node) { return node->loose.has_value(); });
  }
};

/// The first of a chain of routes that hang together.
std::size_t first_of_chain(std::vector<std::size_t>& earlier, std::size_t route) {
  while (earlier[route] != route) route = earlier[route] = earlier[earlier[route]];
  return route;
}

/// The air routes that hang together, by network, in file order of their first route.
std::vector<SystemParts> connected_systems(const PreparedProject& prepared) {
  const std::vector<PreparedRoute>& routes = prepared.routes;
  std::vector<std::size_t> earlier(routes.size());
  std::map<std::pair<const Node*, std::string_view>, std::size_t> first_at_node;
  for (std::size_t i = 0; i < routes.size(); ++i) {
    earlier[i] = i;
    if (!is_air(routes[i].route->system)) continue;
    for (const Node* node : {routes[i].from, routes[i].to}) {
      if (!joins_air(node->kind)) continue;
      const auto [met, is_new] = first_at_node.insert({{node, routes[i].route->system_name}, i});
      if (is_new) continue;
      const auto [low, high] =
          std::minmax({first_of_chain(earlier, met->second), first_of_chain(earlier, i)});
      earlier[high] = low;
    }
  }
  std::map<std::size_t, SystemParts> by_first;
  for (std::size_t i = 0; i < routes.size(); ++i) {
    if (!is_air(routes[i].route->system)) continue;
    SystemParts& system = by_first[first_of_chain(earlier, i)];
    if (!system.first) system.first = &routes[i];
    system.kind = routes[i].route->system;
    system.nodes.insert({routes[i].from, routes[i].to});
  }
  std::vector<SystemParts> systems;
  for (auto& [first, system] : by_first) systems.push_back(std::move(system));
  return systems;
}

/// A judgement about a system, placed at the start of its first route; verdict still unknown.
Judgement of_system(const RuleContext& context, const SystemParts& system) {
  Judgement judgement = context.at(*system.first, 0);
  judgement.location = system.first->route->where;
  return judgement;
}

Judgement count_in_system(const RuleContext& context, const SystemParts& system,
                          const LimitRow& row, std::size_t count, const std::string& have,
                          const std::string& lacks, const std::string& mend) {
  Judgement judgement = of_system(context, system);
  const bool enough = holds(judgement, static_cast<double>(count), {row});
  const std::string name = "system '" + system.first->route->system_name + "' ";
  judgement.message = name + (enough ? have : lacks);
  if (!enough) judgement.mend = mend;
  return judgement;
}

/// Ports to the left and to the right of the centre line, so that what a sideslip adds on one side
/// it takes off on the other.
Judgement judge_port_sides(const RuleContext& context, const SystemParts& system,
                           std::size_t ports) {
  const auto any_port = [&system](auto&& wanted) {
    return std::any_of(system.nodes.begin(), system.nodes.end(), [&](const Node* node) {
      return node->kind == NodeKind::static_port && wanted(node->at.y);
    });
  };
  const bool both =
      any_port([](double bl) { return bl < 0; }) && any_port([](double bl) { return bl > 0; });
  const std::size_t sides = both ? 2 : 1;
  return count_in_system(
      context, system, two_ports, sides, "has a static port on each side",
      ports == 1 ? "has a single static port" : "has its static ports on one side only",
      "add a port on the other side and join the two");
}

void judge_system(const RuleContext& context, const SystemParts& system,
                  std::vector<Judgement>& judgements) {
  if (system.kind == SystemKind::vent || system.is_unfinished()) return;
  const bool still = system.kind == SystemKind::static_air;
  const std::size_t ports = system.count(still ? NodeKind::static_port : NodeKind::pitot_probe);
  judgements.push_back(
      count_in_system(context, system, reached, ports, "reaches the air outside",
                      still ? "reaches no static port" : "reaches no probe",
                      still ? "join it to a static port" : "join it to its probe"));
  if (still && ports > 0) judgements.push_back(judge_port_sides(context, system, ports));
  judgements.push_back(count_in_system(context, system, feeds, system.count(NodeKind::instrument),
                                       "feeds an instrument", "feeds no instrument",
                                       "lead it to an instrument"));
  judgements.push_back(count_in_system(
      context, system, drained, system.count(NodeKind::drain), "has a drain", "has no drain",
      "put a drain at each low point; where drainage finds none, waive this with that reason"));
}

/// The wrong kind of opening in a system: a probe on static lines, a static port on pitot lines.
void judge_wrong_openings(const RuleContext& context, const SystemParts& system,
                          std::vector<Judgement>& judgements) {
  const bool still = system.kind == SystemKind::static_air;
  if (!still && system.kind != SystemKind::pitot) return;
  const NodeKind wrong = still ? NodeKind::pitot_probe : NodeKind::static_port;
  Judgement judgement = of_system(context, system);
  if (holds(judgement, static_cast<double>(system.count(wrong)), {joined})) return;
  judgement.message =
      still ? "a static system ends at a pitot probe" : "a pitot system ends at a static port";
  judgement.mend = "lead the line to its own kind of opening";
  judgements.push_back(judgement);
}

std::vector<Judgement> judge_nodes(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const Node& node : context.prepared.project->nodes) {
    const Routes all = context.prepared.routes_at(node);
    if (takes_cable(node.kind) && !any_control(all)) judgements.push_back(unreached(context, node));
    if (all.empty()) {
      if (carries_air(node.kind)) judgements.push_back(unreached(context, node));
      continue;
    }
    const Routes air = air_among(all);
    if (air.empty()) continue;
    judgements.push_back(judge_joint(context, node, air));
    if (const auto open = judge_openings(context, node, air)) judgements.push_back(*open);
  }
  return judgements;
}

std::vector<Judgement> judge_systems(const RuleContext& context) {
  const auto systems = connected_systems(context.prepared);
  return side_by_side(systems.size(), [&](std::size_t i) {
    std::vector<Judgement> judgements;
    judge_system(context, systems[i], judgements);
    judge_wrong_openings(context, systems[i], judgements);
    return judgements;
  });
}

std::vector<Judgement> judge_network(const RuleContext& context) {
  std::vector<std::vector<Judgement>> found;
  found.push_back(judge_nodes(context));
  found.push_back(judge_systems(context));
  return in_one_list(std::move(found));
}

}  // namespace

const Rule& network_rule() {
  static const Rule rule{
      .name = "network",
      .purpose = "air lines are joined soundly: no loose end, no mixed pressures, ports and drains",
      .explanation =
          R"(Routes that share a node are joined there, but at a cap, a bare end, a horn or a pedal:
no air goes through those, and an air line that ends at a bare end, horn or pedal is not closed. No
opening of a pressure line may be left open; a union joins two lines and a tee three, or as many as
its stated ports; a valve within one system is taken to be open; lines of different systems must not meet at a node (an instrument with two
connections has a port or a node for each), but for two of one pressure at a valve, such as an alternate
static source, which are judged as with the valve shut; a port, probe, instrument, drain or tee
that no route ends at, and a horn or pedal that no cable ends at, is asked about; each static system reaches a static port, better one on each
side, and each pitot or alpha system its probe; each system feeds an instrument and has a
drain. Vents end in the open and are judged only for being joined to a pressure.)",
      .mend = "Join, cap or move the line that the message names.",
      .limits = network_limits,
      .catalogue_limits = "",
      .judge = judge_network};
  return rule;
}

}  // namespace linewright
