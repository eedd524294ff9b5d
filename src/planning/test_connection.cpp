#include "planning/test_connection.hpp"

#include <algorithm>
#include <array>

#include "planning/leak_test_plan.hpp"

namespace linewright {

namespace {

/// How many lines a node has to join so that none of its openings is open.
std::size_t openings_of(NodeKind kind) {
  switch (kind) {
    case NodeKind::tee:
      return 3;
    case NodeKind::union_fitting:
    case NodeKind::bulkhead:
    case NodeKind::end:
      return 2;
    default:
      return 0;
  }
}

std::size_t lines_at(const AirNetwork& network, int node) {
  return static_cast<std::size_t>(
      std::count_if(network.links.begin(), network.links.end(),
                    [node](const AirLink& link) { return link.from == node || link.to == node; }));
}

struct Preference {
  NodeKind kind;
  std::string_view why;
};

constexpr std::array static_preferences{
    Preference{NodeKind::static_port, "a static port, where AC 43.13-1B para 12-58 would have it"},
    Preference{NodeKind::drain, "a drain, with the ports sealed, as AC 43.13-1B para 12-58 allows"},
    Preference{NodeKind::end, "an open end of the line"},
    Preference{NodeKind::tee, "a tee, with the ports sealed, as AC 43.13-1B para 12-58 allows"},
};
constexpr std::array pitot_preferences{
    Preference{NodeKind::pitot_probe, "the probe, so that its own joints are tested too"},
    Preference{NodeKind::drain, "a drain: the system has no probe"},
    Preference{NodeKind::end, "an open end of the line: the system has no probe"},
    Preference{NodeKind::tee, "a tee: the system has no probe"},
};

void choose_node(TestConnection& connection, const AirSystem& system) {
  const std::vector<const Node*>& nodes = system.network.nodes;
  const auto& preferences =
      system.kind == SystemKind::pitot ? pitot_preferences : static_preferences;
  for (const Preference& preference : preferences) {
    const auto found = std::find_if(nodes.begin(), nodes.end(), [&](const Node* node) {
      return node->kind == preference.kind;
    });
    if (found == nodes.end()) continue;
    connection.node = static_cast<int>(found - nodes.begin());
    connection.at = (*found)->name;
    connection.why = preference.why;
    return;
  }
  connection.at = nodes.front()->name;
  connection.why = "for want of a port, drain or tee";
}

/// Seals what is open. Caps on the ends of lines are shut.
void seal_nodes(TestConnection& connection, const AirNetwork& network,
                const std::vector<bool>& is_cap) {
  for (std::size_t i = 0; i < network.nodes.size(); ++i) {
    if (!is_cap.empty() && is_cap[i]) continue;
    const Node& node = *network.nodes[i];
    if (node.kind == NodeKind::instrument) connection.instruments.push_back(node.name);
    if (static_cast<int>(i) == connection.node) continue;
    if (node.kind == NodeKind::static_port || node.kind == NodeKind::pitot_probe || node.loose)
      connection.cap.push_back(node.name);
    if (node.kind == NodeKind::drain || node.kind == NodeKind::cap)
      connection.close.push_back(node.name);
    if (!node.loose && lines_at(network, static_cast<int>(i)) < openings_of(node.kind))
      connection.mend.push_back(node.name);
  }
}

}  // namespace

TestConnection test_connection(const AirSystem& system) {
  TestConnection connection;
  choose_node(connection, system);
  seal_nodes(connection, system.network, {});
  return connection;
}

TestConnection part_connection(const AirPart& part) {
  TestConnection connection;
  connection.node = part.connected;
  connection.at = part.system.network.nodes[static_cast<std::size_t>(part.connected)]->name;
  connection.why = "as asked for";
  seal_nodes(connection, part.system.network, part.is_cap);
  return connection;
}

}  // namespace linewright
