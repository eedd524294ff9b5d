#pragma once
// Pressure lag in a network of small tubes: any joining of tubes, loops and several openings
// included. While the pressure outside changes at a steady rate, the pressure inside trails it by
// the rate times a lag constant that differs from place to place. Units as in tube_flow.hpp.

#include <optional>
#include <vector>

namespace linewright {

/// A tube between two nodes of a network.
struct LagTube {
  int from = 0;
  int to = 0;
  double length_in = 0;
  double bore_in = 0;
};

struct LagNetwork {
  std::vector<double> volume_in3;  ///< of each node, tubes not counted; zero is allowed
  std::vector<LagTube> tubes;
  std::vector<int> openings;  ///< nodes at the pressure outside
};

/// Lag constant of each node, seconds: the solution of
///   sum over tubes at a node of (lag there - lag at the other end) / R = C / p,
/// zero at the openings, with R the laminar resistance of a tube and C the node's volume and half
/// of each of its tubes' [from memory: derivation]. Halving is exact, not an approximation: along a
/// uniform tube the lag is a parabola. Without loops this is the sum, over the tubes to an opening,
/// of R x (volume behind + half its own) / p.
/// Nothing where a node has no way to an opening or an argument is outside its range.
std::optional<std::vector<double>> network_lag_s(const LagNetwork& network, double viscosity_pa_s,
                                                 double pressure_pa);

/// The largest volume flow in each tube, at the end where it is largest, while the pressure outside
/// changes at a rate; of no sign. `lag_s` is the network's own.
std::optional<std::vector<double>> tube_flows_in3_per_s(const LagNetwork& network,
                                                        const std::vector<double>& lag_s,
                                                        double viscosity_pa_s, double pressure_pa,
                                                        double pressure_rate_pa_per_s);

}  // namespace linewright
