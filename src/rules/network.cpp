#include "rules/network.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace linewright {

namespace {

constexpr std::string_view static_source = "14 CFR 23.1325";

constexpr std::array<LimitRow, 8> limits{{
    {"openings of a line left open", 0, "", static_source, Mark::verified, Verdict::fail},
    {"two pressures joined at a node", 0, "", "14 CFR 23.1323 and 23.1325", Mark::verified,
     Verdict::fail},
    {"ports or probes that a system reaches, least", 1, "", "14 CFR 23.1323 and 23.1325",
     Mark::verified, Verdict::fail},
    {"sides that have a static port, least", 2, "", "one on each side, so that a sideslip cancels",
     Mark::common_practice, Verdict::warn},
    {"drains in a system, least", 1, "",
     "a drain at each low point; positive drainage itself is 14 "
     "CFR 23.1325(b)(1)(i)",
     Mark::common_practice, Verdict::warn},
    {"instruments that a system reaches, least", 1, "", "a line that feeds nothing",
     Mark::common_practice, Verdict::warn},
    {"lines at a tee, least", 3, "", static_source, Mark::verified, Verdict::fail},
    {"routes that end at each port, probe, instrument, drain and tee, least", 1, "",
     "what is described is meant to be connected", Mark::common_practice, Verdict::warn},
}};
constexpr const LimitRow& never_reached = limits[7];
constexpr const LimitRow& loose_end = limits[0];
constexpr const LimitRow& joined = limits[1];
constexpr const LimitRow& reached = limits[2];
constexpr const LimitRow& two_ports = limits[3];
constexpr const LimitRow& drained = limits[4];
constexpr const LimitRow& feeds = limits[5];
constexpr const LimitRow& tee_lines = limits[6];

using Routes = std::vector<const PreparedRoute*>;

/// A judgement about a node, placed on the first of its routes.
Judgement at_node(const LimitRow& row, const PreparedRoute& route, const Node& node) {
  const bool start = route.from == &node;
  Judgement judgement = judgement_at(network_rule(), route, start ? 0 : route.length_in());
  judgement.with = node.name;
  judgement.unit = Unit::none;
  judgement.location = start ? route.route->from_where : route.route->to_where;
  judgement.source = cite(row);
  judgement.verdict = row.broken;
  return judgement;
}

std::map<const Node*, Routes> routes_by_node(const PreparedProject& prepared) {
  std::map<const Node*, Routes> by_node;
  for (const PreparedRoute& route : prepared.routes) {
    by_node[route.from].push_back(&route);
    by_node[route.to].push_back(&route);
  }
  return by_node;
}

bool any_air(const Routes& routes) {
  return std::any_of(routes.begin(), routes.end(),
                     [](const PreparedRoute* route) { return is_air(route->route->system); });
}

bool carries_air(NodeKind kind) {
  switch (kind) {
    case NodeKind::static_port:
    case NodeKind::pitot_probe:
    case NodeKind::instrument:
    case NodeKind::drain:
    case NodeKind::tee:
      return true;
    default:
      return false;
  }
}

/// A port, instrument or drain in the files that no line was drawn to.
Judgement unreached(const Node& node) {
  Judgement judgement;
  judgement.rule = network_rule().name;
  judgement.with = node.name;
  judgement.at = node.at;
  judgement.location = node.where;
  judgement.source = cite(never_reached);
  judgement.verdict = never_reached.broken;
  judgement.message = "no route ends at " + node.name;
  judgement.mend = "draw the route to it, or remove the node";
  return judgement;
}

/// How many lines a fitting needs so that none of its openings is left open.
std::size_t lines_needed(const Node& node) {
  switch (node.kind) {
    case NodeKind::tee:
      return static_cast<std::size_t>(tee_lines.value);
    case NodeKind::union_fitting:
    case NodeKind::bulkhead:
    case NodeKind::end:
      return 2;
    default:
      return 1;
  }
}

std::optional<Judgement> judge_openings(const Node& node, const Routes& routes) {
  // A vent ends in the open: that is what it is for.
  const bool vent = std::all_of(routes.begin(), routes.end(), [](const PreparedRoute* route) {
    return route->route->system == SystemKind::vent;
  });
  if (vent) return std::nullopt;
  const std::size_t needed = lines_needed(node);
  Judgement judgement =
      at_node(node.kind == NodeKind::tee ? tee_lines : loose_end, *routes.front(), node);
  judgement.value = static_cast<double>(routes.size());
  judgement.limit = static_cast<double>(needed);
  if (routes.size() >= needed) {
    judgement.verdict = Verdict::pass;
    judgement.message = "no opening of " + node.name + " is left open";
    return judgement;
  }
  judgement.message = node.kind == NodeKind::tee
                          ? "tee " + node.name + " joins " + std::to_string(routes.size()) +
                                (routes.size() == 1 ? " line" : " lines") +
                                ": an opening is left open"
                          : "the line ends open at " + node.name;
  judgement.mend = node.kind == NodeKind::tee ? "join the third line, or use a union"
                                              : "lead the line to a port, instrument, drain or cap";
  return judgement;
}

Judgement judge_joint(const Node& node, const Routes& routes) {
  Judgement judgement = at_node(joined, *routes.front(), node);
  const PreparedRoute* other = nullptr;
  for (const PreparedRoute* route : routes)
    if (route->route->system_name != routes.front()->route->system_name) other = route;
  if (!other) {
    judgement.verdict = Verdict::pass;
    judgement.message = "one system meets at " + node.name;
    return judgement;
  }
  judgement.message = "system '" + routes.front()->route->system_name + "' is joined to system '" +
                      other->route->system_name + "' at " + node.name;
  judgement.mend = node.kind == NodeKind::instrument
                       ? "give the instrument one node for each of its connections"
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
};

/// The air routes that hang together, by network, in file order of their first route.
std::vector<SystemParts> connected_systems(const PreparedProject& prepared) {
  std::vector<SystemParts> systems;
  for (const PreparedRoute& route : prepared.routes) {
    if (!is_air(route.route->system)) continue;
    SystemParts merged{&route, route.route->system, {route.from, route.to}};
    for (auto each = systems.begin(); each != systems.end();) {
      const bool meets = each->nodes.contains(route.from) || each->nodes.contains(route.to);
      const bool same = each->first->route->system_name == route.route->system_name;
      if (meets && same) {
        if (each->first < merged.first) merged.first = each->first;
        merged.nodes.insert(each->nodes.begin(), each->nodes.end());
        each = systems.erase(each);
      } else {
        ++each;
      }
    }
    systems.push_back(merged);
  }
  std::sort(systems.begin(), systems.end(),
            [](const SystemParts& a, const SystemParts& b) { return a.first < b.first; });
  return systems;
}

Judgement count_in_system(const SystemParts& system, const LimitRow& row, std::size_t count,
                          const std::string& have, const std::string& lacks,
                          const std::string& mend) {
  Judgement judgement = judgement_at(network_rule(), *system.first, 0);
  judgement.unit = Unit::none;
  judgement.location = system.first->route->where;
  judgement.source = cite(row);
  judgement.value = static_cast<double>(count);
  judgement.limit = row.value;
  const bool enough = *judgement.value >= row.value;
  judgement.verdict = enough ? Verdict::pass : row.broken;
  const std::string name = "system '" + system.first->route->system_name + "' ";
  judgement.message = name + (enough ? have : lacks);
  if (!enough) judgement.mend = mend;
  return judgement;
}

/// Ports to the left and to the right of the centre line, so that what a sideslip adds on one side
/// it takes off on the other.
Judgement judge_port_sides(const SystemParts& system, std::size_t ports) {
  const auto any_port = [&system](auto&& wanted) {
    return std::any_of(system.nodes.begin(), system.nodes.end(), [&](const Node* node) {
      return node->kind == NodeKind::static_port && wanted(node->at.y);
    });
  };
  const bool both =
      any_port([](double bl) { return bl < 0; }) && any_port([](double bl) { return bl > 0; });
  const std::size_t sides = both ? 2 : 1;
  return count_in_system(
      system, two_ports, sides, "has a static port on each side",
      ports == 1 ? "has a single static port" : "has its static ports on one side only",
      "add a port on the other side and join the two");
}

void judge_system(const SystemParts& system, std::vector<Judgement>& judgements) {
  if (system.kind == SystemKind::vent) return;
  const bool still = system.kind == SystemKind::static_air;
  const std::size_t ports = system.count(still ? NodeKind::static_port : NodeKind::pitot_probe);
  judgements.push_back(
      count_in_system(system, reached, ports, "reaches the air outside",
                      still ? "reaches no static port" : "reaches no probe",
                      still ? "join it to a static port" : "join it to its probe"));
  if (still && ports > 0) judgements.push_back(judge_port_sides(system, ports));
  judgements.push_back(count_in_system(system, feeds, system.count(NodeKind::instrument),
                                       "feeds an instrument", "feeds no instrument",
                                       "lead it to an instrument"));
  judgements.push_back(count_in_system(
      system, drained, system.count(NodeKind::drain), "has a drain", "has no drain",
      "put a drain at each low point; where drainage finds none, waive this with that reason"));
}

/// The wrong kind of opening in a system: a probe on static lines, a static port on pitot lines.
void judge_wrong_openings(const SystemParts& system, std::vector<Judgement>& judgements) {
  const bool still = system.kind == SystemKind::static_air;
  if (!still && system.kind != SystemKind::pitot) return;
  const NodeKind wrong = still ? NodeKind::pitot_probe : NodeKind::static_port;
  if (system.count(wrong) == 0) return;
  Judgement judgement = count_in_system(system, joined, system.count(wrong), "", "", "");
  judgement.verdict = joined.broken;
  judgement.sense = LimitSense::at_most;
  judgement.message =
      still ? "a static system ends at a pitot probe" : "a pitot system ends at a static port";
  judgement.mend = "lead the line to its own kind of opening";
  judgements.push_back(judgement);
}

std::vector<Judgement> judge_network(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const std::map<const Node*, Routes> by_node = routes_by_node(context.prepared);
  for (const Node& node : context.prepared.project->nodes) {
    const auto found = by_node.find(&node);
    if (found == by_node.end()) {
      if (carries_air(node.kind)) judgements.push_back(unreached(node));
      continue;
    }
    if (!any_air(found->second)) continue;
    judgements.push_back(judge_joint(node, found->second));
    if (const auto open = judge_openings(node, found->second)) judgements.push_back(*open);
  }
  for (const SystemParts& system : connected_systems(context.prepared)) {
    judge_system(system, judgements);
    judge_wrong_openings(system, judgements);
  }
  return judgements;
}

}  // namespace

const Rule& network_rule() {
  static const Rule rule{
      .name = "network",
      .purpose = "air lines are joined soundly: no loose end, no mixed pressures, ports and drains",
      .explanation =
          "Routes that share a node are joined there. No opening of a pressure line may be left "
          "open; "
          "lines of different systems must not meet at a node (an instrument with two connections "
          "has "
          "a node for each); each static system reaches a static port, better one on each side, "
          "and "
          "each pitot or alpha system its probe; each system feeds an instrument and has a drain. "
          "Vents end in the open and are judged only for being joined to a pressure.",
      .mend = "Join, cap or move the line that the message names.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_network};
  return rule;
}

}  // namespace linewright
