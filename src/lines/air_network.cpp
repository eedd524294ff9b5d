#include "lines/air_network.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <utility>

#include "model/angle.hpp"

namespace linewright {

namespace {

using std::numbers::pi;

/// Adds a route to a network, its nodes too where they are new: `known` has the index of each.
void add_link(AirNetwork& network, std::map<const Node*, int>& known, const PreparedRoute& route) {
  const auto index_of = [&](const Node* node) {
    const auto [found, is_new] = known.emplace(node, static_cast<int>(network.nodes.size()));
    if (is_new) network.nodes.push_back(node);
    return found->second;
  };
  const int from = index_of(route.from);
  network.links.push_back({&route, from, index_of(route.to)});
}

/// The first of a chain of routes known to hang together, halving the chain on the way.
std::size_t first_of(std::vector<std::size_t>& parent, std::size_t route) {
  while (parent[route] != route) route = parent[route] = parent[parent[route]];
  return route;
}

/// Angles along an arc at which it turns from rising to falling or back.
std::vector<double> turning_angles(const PathPiece& arc, Vec3 up) {
  const double at_start = dot(arc.from - arc.centre, up);
  const double quarter_on = dot(arc.direction, up) * arc.radius_in;
  const double sweep_rad = arc.length_in / arc.radius_in;
  std::vector<double> angles;
  // Height is at_start cos a + quarter_on sin a: one extreme here, the other half a turn away.
  const double extreme_rad = std::atan2(quarter_on, at_start);
  for (const double turn : {-pi, 0.0, pi})
    if (extreme_rad + turn > 0 && extreme_rad + turn < sweep_rad)
      angles.push_back(extreme_rad + turn);
  return angles;
}

}  // namespace

std::vector<AirNetwork> air_networks(const PreparedProject& prepared) {
  std::vector<std::size_t> parent(prepared.routes.size());
  std::map<std::pair<const Node*, std::string>, std::size_t> first_at_node;
  const auto judged = [](const PreparedRoute& route) {
    return is_air(route.route->system) && route.route->system != SystemKind::vent;
  };
  for (std::size_t i = 0; i < parent.size(); ++i) {
    parent[i] = i;
    const PreparedRoute& route = prepared.routes[i];
    if (!judged(route)) continue;
    for (const Node* node : {route.from, route.to}) {
      if (!joins_air(node->kind)) continue;
      const auto [met, is_new] = first_at_node.insert({{node, route.route->system_name}, i});
      if (is_new) continue;
      const auto [low, high] = std::minmax({first_of(parent, met->second), first_of(parent, i)});
      parent[high] = low;
    }
  }
  std::map<std::size_t, AirNetwork> by_first_route;
  std::map<std::size_t, std::map<const Node*, int>> known_nodes;
  for (std::size_t i = 0; i < parent.size(); ++i) {
    if (!judged(prepared.routes[i])) continue;
    const std::size_t first = first_of(parent, i);
    AirNetwork& network = by_first_route[first];
    if (network.links.empty()) network.kind = prepared.routes[i].route->system;
    add_link(network, known_nodes[first], prepared.routes[i]);
  }
  std::vector<AirNetwork> networks;
  for (auto& [first, network] : by_first_route) networks.push_back(std::move(network));
  return networks;
}

Vec3 up_in_attitude(double pitch_deg, double roll_deg) {
  const double pitch_rad = radians_of(pitch_deg);
  const double roll_rad = radians_of(roll_deg);
  return {-std::sin(pitch_rad), -std::sin(roll_rad) * std::cos(pitch_rad),
          std::cos(roll_rad) * std::cos(pitch_rad)};
}

std::vector<HeightSample> height_profile(const Centreline& centreline, Vec3 up) {
  std::vector<double> distances{0};
  for (const PathChord& chord : centreline.chords(0, centreline.length_in()))
    distances.push_back(chord.end_in);
  for (const PathPiece& piece : centreline.pieces())
    if (piece.is_arc)
      for (const double angle_rad : turning_angles(piece, up))
        distances.push_back(piece.start_in + angle_rad * piece.radius_in);
  std::sort(distances.begin(), distances.end());
  distances.erase(std::unique(distances.begin(), distances.end()), distances.end());

  std::vector<HeightSample> profile;
  profile.reserve(distances.size());
  for (const double distance_in : distances)
    profile.push_back({distance_in, dot(centreline.at(distance_in), up)});
  return profile;
}

std::vector<HeightSample> drawn_height_profile(const Centreline& centreline, Vec3 up) {
  std::vector<HeightSample> profile;
  for (std::size_t i = 0; i < centreline.corners().size(); ++i)
    profile.push_back(
        {centreline.corner_distance_in(static_cast<int>(i)), dot(centreline.corners()[i].at, up)});
  return profile;
}

}  // namespace linewright
