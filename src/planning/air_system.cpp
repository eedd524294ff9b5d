#include "planning/air_system.hpp"

#include <algorithm>
#include <numeric>
#include <stdexcept>

#include "planning/cutlist.hpp"

namespace linewright {

namespace {

std::string_view kind_part(std::string_view name) {
  return name.substr(0, name.find(':'));
}

/// "alternate" of "static: alternate"; empty where there is none.
std::string_view name_part(std::string_view name) {
  const std::size_t colon = name.find(": ");
  return colon == std::string_view::npos ? std::string_view() : name.substr(colon + 2);
}

template <typename Accept>
std::vector<std::string> filtered(const std::vector<std::string>& names, const Accept& accept) {
  std::vector<std::string> kept;
  std::copy_if(names.begin(), names.end(), std::back_inserter(kept), accept);
  return kept;
}

void add_volumes(AirSystem& system, const CutList& cuts) {
  for (const AirLink& link : system.network.links) {
    const auto cut = std::find_if(cuts.routes.begin(), cuts.routes.end(), [&](const RouteCut& one) {
      return one.name == link.route->route->name;
    });
    system.link_volume_in3.push_back(cut->volume_in3);
  }
  for (const Node* node : system.network.nodes) {
    system.node_volume_in3.push_back(node->volume_in3.value_or(0));
    const bool hollow = node->kind == NodeKind::instrument || node->kind == NodeKind::tee ||
                        node->kind == NodeKind::valve;
    if (hollow && !node->volume_in3) system.nodes_without_volume.push_back(node->name);
  }
}

void add_joined_systems(AirSystem& system, const PreparedProject& prepared) {
  for (const Node* node : system.network.nodes)
    for (const PreparedRoute& other : prepared.routes) {
      const bool meets = other.from == node || other.to == node;
      if (!meets || !is_air(other.route->system) || other.route->system_name == system.name)
        continue;
      const std::string words = other.route->system_name + " at " + node->name;
      std::vector<std::string>& known = system.joined_systems;
      if (std::find(known.begin(), known.end(), words) == known.end()) known.push_back(words);
    }
}

}  // namespace

double AirSystem::volume_in3() const {
  const double bores_in3 = std::accumulate(link_volume_in3.begin(), link_volume_in3.end(), 0.0);
  return std::accumulate(node_volume_in3.begin(), node_volume_in3.end(), bores_in3);
}

std::vector<std::string> system_names(const Project& project) {
  std::vector<std::string> names;
  for (const Route& route : project.routes)
    if (std::find(names.begin(), names.end(), route.system_name) == names.end())
      names.push_back(route.system_name);
  return names;
}

std::vector<std::string> systems_meant(const Project& project, std::string_view wanted) {
  const std::vector<std::string> names = system_names(project);
  for (const auto& meant :
       {filtered(names, [&](const std::string& name) { return name == wanted; }),
        filtered(names, [&](const std::string& name) { return name_part(name) == wanted; })})
    if (!meant.empty() && !wanted.empty()) return meant;
  return filtered(names, [&](const std::string& name) { return kind_part(name) == wanted; });
}

SystemKind kind_of_system(const Project& project, std::string_view name) {
  for (const Route& route : project.routes)
    if (route.system_name == name) return route.system;
  throw std::logic_error("no route is of the system");
}

std::vector<AirSystem> air_systems(const PreparedProject& prepared, std::string_view name) {
  std::vector<AirSystem> systems;
  const CutList cuts = cut_list(prepared);
  for (AirNetwork& network : air_networks(prepared)) {
    if (network.links.front().route->route->system_name != name) continue;
    AirSystem system;
    system.name = name;
    system.kind = network.kind;
    system.network = std::move(network);
    add_volumes(system, cuts);
    add_joined_systems(system, prepared);
    systems.push_back(std::move(system));
  }
  return systems;
}

}  // namespace linewright
