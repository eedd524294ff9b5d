#include "physics/lag_network.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>

#include "physics/tube_flow.hpp"

namespace linewright {

namespace {

std::size_t index(int node) {
  return static_cast<std::size_t>(node);
}

/// A balance of flows for each node: `conductance` to each neighbour and to the openings, and the
/// flow that the node draws. Solved by taking out one node after the other, the ones with fewest
/// neighbours first, so that a branching network without loops costs no more than its length.
class FlowBalance {
 public:
  explicit FlowBalance(std::size_t nodes) : to_(nodes), to_opening_(nodes, 0), drawn_(nodes, 0) {}

  void join(int a, int b, double conductance) {
    if (a == b) return;
    to_[index(a)][b] += conductance;
    to_[index(b)][a] += conductance;
  }
  void join_to_opening(int node, double conductance) { to_opening_[index(node)] += conductance; }
  void draw(int node, double flow) { drawn_[index(node)] += flow; }

  /// The level of each node of `nodes`, or nothing where one has no way to an opening.
  std::optional<std::vector<double>> solve(std::vector<int> nodes) {
    std::vector<int> order;
    while (!nodes.empty()) {
      const auto next = std::min_element(nodes.begin(), nodes.end(), [this](int a, int b) {
        return to_[index(a)].size() < to_[index(b)].size();
      });
      order.push_back(*next);
      take_out(*next);
      nodes.erase(next);
    }
    std::vector<double> level(to_.size(), 0);
    for (auto node = order.rbegin(); node != order.rend(); ++node) {
      double flow = drawn_[index(*node)];
      for (const auto& [neighbour, conductance] : to_[index(*node)])
        flow += conductance * level[index(neighbour)];
      level[index(*node)] = flow / total(*node);
      if (!std::isfinite(level[index(*node)])) return std::nullopt;
    }
    return level;
  }

 private:
  double total(int node) const {
    double sum = to_opening_[index(node)];
    for (const auto& [neighbour, conductance] : to_[index(node)]) sum += conductance;
    return sum;
  }

  /// Joins a node's neighbours to one another and to the opening as the paths through it did, and
  /// shares what it draws among them.
  void take_out(int node) {
    const double sum = total(node);
    const std::map<int, double>& star = to_[index(node)];
    for (const auto& [neighbour, conductance] : star) {
      const double share = conductance / sum;
      to_[index(neighbour)].erase(node);
      drawn_[index(neighbour)] += share * drawn_[index(node)];
      to_opening_[index(neighbour)] += share * to_opening_[index(node)];
      for (const auto& [other, other_conductance] : star)
        if (other != neighbour) to_[index(neighbour)][other] += share * other_conductance;
    }
  }

  std::vector<std::map<int, double>> to_;
  std::vector<double> to_opening_;
  std::vector<double> drawn_;
};

bool is_opening(const LagNetwork& network, int node) {
  return std::find(network.openings.begin(), network.openings.end(), node) !=
         network.openings.end();
}

}  // namespace

std::optional<std::vector<double>> network_lag_s(const LagNetwork& network, double viscosity_pa_s,
                                                 double pressure_pa) {
  FlowBalance balance(network.volume_in3.size());
  std::vector<int> inside;
  for (std::size_t i = 0; i < network.volume_in3.size(); ++i) {
    const int node = static_cast<int>(i);
    const auto drawn = breathing_flow_in3_per_s(network.volume_in3[i], 1, pressure_pa);
    if (!drawn) return std::nullopt;
    balance.draw(node, *drawn);
    if (!is_opening(network, node)) inside.push_back(node);
  }
  for (const LagTube& tube : network.tubes) {
    const auto resistance =
        laminar_resistance_pa_s_per_in3(tube.length_in, tube.bore_in, viscosity_pa_s);
    const auto volume = tube_volume_in3(tube.length_in, tube.bore_in);
    if (!resistance || !volume || !(*resistance > 0)) return std::nullopt;
    const double half_drawn = *volume / 2 / pressure_pa;
    balance.draw(tube.from, half_drawn);
    balance.draw(tube.to, half_drawn);
    const bool from_open = is_opening(network, tube.from);
    const bool to_open = is_opening(network, tube.to);
    if (!from_open && !to_open) balance.join(tube.from, tube.to, 1 / *resistance);
    if (from_open && !to_open) balance.join_to_opening(tube.to, 1 / *resistance);
    if (!from_open && to_open) balance.join_to_opening(tube.from, 1 / *resistance);
  }
  return balance.solve(std::move(inside));
}

std::optional<std::vector<double>> tube_flows_in3_per_s(const LagNetwork& network,
                                                        const std::vector<double>& lag_s,
                                                        double viscosity_pa_s, double pressure_pa,
                                                        double pressure_rate_pa_per_s) {
  std::vector<double> flows;
  for (const LagTube& tube : network.tubes) {
    const auto resistance =
        laminar_resistance_pa_s_per_in3(tube.length_in, tube.bore_in, viscosity_pa_s);
    const auto volume = tube_volume_in3(tube.length_in, tube.bore_in);
    if (!resistance || !volume || !(*resistance > 0)) return std::nullopt;
    const double middle = std::abs(lag_s.at(index(tube.from)) - lag_s.at(index(tube.to))) /
                          *resistance * std::abs(pressure_rate_pa_per_s);
    const auto own =
        breathing_flow_in3_per_s(*volume / 2, std::abs(pressure_rate_pa_per_s), pressure_pa);
    if (!own) return std::nullopt;
    flows.push_back(middle + *own);
  }
  return flows;
}

}  // namespace linewright
