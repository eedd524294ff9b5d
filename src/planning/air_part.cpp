#include "planning/air_part.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace linewright {

namespace {

std::size_t index(int value) {
  return static_cast<std::size_t>(value);
}

std::optional<int> find_node(const AirNetwork& network, const std::string& name) {
  for (std::size_t i = 0; i < network.nodes.size(); ++i)
    if (network.nodes[i]->name == name) return static_cast<int>(i);
  return std::nullopt;
}

std::string no_node_words(const AirSystem& system, const std::string& name) {
  std::string known;
  for (const Node* node : system.network.nodes) known += (known.empty() ? "" : ", ") + node->name;
  return fmt::format("system '{}' has no node '{}' (there are: {})", system.name, name, known);
}

/// What is sealed from outside, and holds air itself up to there.
bool is_opening(NodeKind kind) {
  return kind == NodeKind::static_port || kind == NodeKind::pitot_probe || kind == NodeKind::drain;
}

/// Which nodes and links the test set reaches.
struct AirReach {
  std::vector<bool> nodes;
  std::vector<bool> links;
};

AirReach reach_from(const AirNetwork& network, int at, const std::vector<bool>& stops) {
  AirReach reach{std::vector<bool>(network.nodes.size()), std::vector<bool>(network.links.size())};
  std::vector<int> waiting{at};
  reach.nodes[index(at)] = true;
  while (!waiting.empty()) {
    const int node = waiting.back();
    waiting.pop_back();
    if (stops[index(node)]) continue;
    for (std::size_t i = 0; i < network.links.size(); ++i) {
      const AirLink& link = network.links[i];
      if (link.from != node && link.to != node) continue;
      reach.links[i] = true;
      const int other = link.from == node ? link.to : link.from;
      if (reach.nodes[index(other)]) continue;
      reach.nodes[index(other)] = true;
      waiting.push_back(other);
    }
  }
  return reach;
}

/// Takes over what is reached. Where lines are capped at a node each gets a cap of its own there,
/// which holds no air and joins them to nothing.
class PartBuilder {
 public:
  PartBuilder(const AirSystem& whole, const AirReach& reach, const std::vector<bool>& stops)
      : whole_(whole), reach_(reach), stops_(stops), moved_(whole.network.nodes.size(), -1) {}

  AirPart build(int at) {
    AirSystem& system = part_.system;
    system.name = whole_.name;
    system.kind = whole_.kind;
    system.network.kind = whole_.network.kind;
    part_.whole_in3 = whole_.volume_in3();
    part_.whole_without_volume = whole_.nodes_without_volume;
    for (std::size_t i = 0; i < whole_.network.nodes.size(); ++i)
      if (reach_.nodes[i] && !stops_[i]) take_node(i);
    for (std::size_t i = 0; i < whole_.network.links.size(); ++i) {
      if (!reach_.links[i]) continue;
      AirLink link = whole_.network.links[i];
      link.from = end_of(link, link.from);
      link.to = end_of(link, link.to);
      system.network.links.push_back(link);
      system.link_volume_in3.push_back(whole_.link_volume_in3[i]);
    }
    part_.connected = moved_[index(at)];
    return std::move(part_);
  }

 private:
  int add_node(const Node* node, double volume_in3, bool is_cap) {
    part_.system.network.nodes.push_back(node);
    part_.system.node_volume_in3.push_back(volume_in3);
    part_.is_cap.push_back(is_cap);
    return static_cast<int>(part_.is_cap.size()) - 1;
  }

  void take_node(std::size_t i) {
    const Node* node = whole_.network.nodes[i];
    moved_[i] = add_node(node, whole_.node_volume_in3[i], false);
    const std::vector<std::string>& unstated = whole_.nodes_without_volume;
    if (std::find(unstated.begin(), unstated.end(), node->name) != unstated.end())
      part_.system.nodes_without_volume.push_back(node->name);
    for (const std::string& joined : whole_.joined_systems)
      if (joined.ends_with(" at " + node->name)) part_.system.joined_systems.push_back(joined);
  }

  int end_of(const AirLink& link, int node) {
    if (!stops_[index(node)]) return moved_[index(node)];
    const Node* end = whole_.network.nodes[index(node)];
    part_.caps.push_back(link.route->route->name + " at " + end->name);
    return add_node(end, 0, true);
  }

  const AirSystem& whole_;
  const AirReach& reach_;
  const std::vector<bool>& stops_;
  std::vector<int> moved_;
  AirPart part_;
};

}  // namespace

std::variant<AirPart, std::string> part_of_system(const AirSystem& whole, const std::string& at,
                                                  const std::vector<std::string>& caps) {
  const AirNetwork& network = whole.network;
  const auto connected = find_node(network, at);
  if (!connected) return no_node_words(whole, at);
  std::vector<bool> stops(network.nodes.size());
  std::vector<int> capped;
  for (const std::string& name : caps) {
    const auto node = find_node(network, name);
    if (!node) return no_node_words(whole, name);
    if (*node == *connected)
      return fmt::format("'{}' cannot be capped: the test set is connected there", name);
    capped.push_back(*node);
    stops[index(*node)] = !is_opening(network.nodes[index(*node)]->kind);
  }
  const AirReach reach = reach_from(network, *connected, stops);
  for (const int node : capped)
    if (!reach.nodes[index(node)])
      return fmt::format(
          "'{}' is not reached from '{}': other caps part them already; leave it out",
          network.nodes[index(node)]->name, at);
  AirPart part = PartBuilder(whole, reach, stops).build(*connected);
  for (const int node : capped)
    if (!stops[index(node)]) part.sealed.push_back(network.nodes[index(node)]->name);
  return part;
}

}  // namespace linewright
