#include "input/derive/end_ports.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "input/derive/quiet_values.hpp"
#include "input/fitting_entry.hpp"
#include "input/node_ports.hpp"
#include "input/port_choice.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

std::vector<Port> stated_ports(const YamlNode& ports, BareLength bare) {
  std::vector<Port> all;
  for (const YamlEntry& entry : ports.entries) {
    const auto at = quiet_place(entry.value.find("at"), bare);
    const auto direction = quiet_direction(entry.value.find("direction"));
    if (!at || !direction || norm(*direction) == 0) return {};
    Port port;
    port.name = entry.key;
    port.at = *at;
    port.direction = unit(*direction);
    all.push_back(port);
  }
  return all;
}

/// Ports of the node that routes take by name.
std::vector<std::string_view> ports_named(const ProjectItem& node, Derivation& derivation) {
  std::vector<std::string_view> names;
  for (const ProjectItem& item : derivation.items()) {
    if (item.kind != Named::route) continue;
    for (const std::string_view end : {"from", "to"}) {
      if (quiet_text(*item.node, end) != node.name) continue;
      names.push_back(quiet_text(*item.node, end == "from" ? "from_port" : "to_port"));
    }
  }
  return names;
}

}  // namespace

std::vector<Port> ports_of_node(ProjectItem& node, Derivation& derivation) {
  if (!derivation.work_out(node) || node.node->kind != YamlNode::Kind::map) return {};
  if (const YamlNode* ports = node.node->find("ports")) return stated_ports(*ports, node.bare);
  const std::string_view name = quiet_text(*node.node, "fitting");
  const auto at = quiet_place(node.node->find("at"), node.bare);
  const auto direction = quiet_direction(node.node->find("direction"));
  if (name.empty() || !at || !direction || norm(*direction) == 0) return {};
  const auto fitting = derivation.fitting(name);
  if (!fitting) return {};
  auto branch = quiet_direction(node.node->find("branch"));
  if (branch && norm(*branch) == 0) branch.reset();
  return ports_of_fitting(*fitting, *at, *direction, branch);
}

std::optional<Vec3> end_of_route(const ProjectItem& route, std::string_view end, Vec3 next,
                                 Derivation& derivation) {
  const std::string_view name = quiet_text(*route.node, end);
  const auto middle = derivation.node_at(name);
  ProjectItem* node = derivation.find(Named::node, name);
  if (!middle || node == nullptr) return middle;
  const std::vector<Port> ports = ports_of_node(*node, derivation);
  if (ports.empty()) return middle;
  const std::string_view wanted = quiet_text(*route.node, end == "from" ? "from_port" : "to_port");
  std::vector<Vec3> found;
  const std::vector<std::string_view> taken =
      wanted.empty() ? ports_named(*node, derivation) : std::vector<std::string_view>();
  for (const Port& port : ports) {
    const Vec3 way = next - port.at;
    const bool leaves =
        norm(way) <= 0 ||
        angle_between_rad(way, port.direction) * degrees_per_radian <= leaves_by_deg;
    const bool free = std::find(taken.begin(), taken.end(), port.name) == taken.end();
    if (wanted.empty() ? leaves && free : port.name == wanted) found.push_back(port.at);
  }
  return found.size() == 1 ? std::optional(found.front()) : middle;
}

std::string ports_in_words(const std::vector<Port>& ports) {
  // A millionth of an inch is noise of a sine.
  const auto shown = [](double length_in) { return std::round(length_in * 1e6) / 1e6 + 0.0; };
  std::string words = "ports in inches:";
  for (const Port& port : ports)
    words += fmt::format("{} {} at [{}, {}, {}]", &port == &ports.front() ? "" : ",", port.name,
                         shown(port.at.x), shown(port.at.y), shown(port.at.z));
  return words;
}

}  // namespace linewright
