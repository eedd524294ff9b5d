// Lag in networks. Values marked calc come from the formulas of NASA RP-1046 [from memory]; no
// published worked example could be found.

#include "physics/lag_network.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "oracles/random_path.hpp"
#include "physics/atmosphere.hpp"
#include "physics/tube_flow.hpp"

namespace linewright {
namespace {

constexpr double cm3_per_in3 = 2.54 * 2.54 * 2.54;
constexpr double five_metres_in = 5 / 0.0254;
constexpr double instrument_in3 = 300 / cm3_per_in3;

double sea_level_viscosity_pa_s() {
  return air_viscosity_pa_s(sea_level_temperature_k).value();
}

std::vector<double> sea_level_lag_s(const LagNetwork& network) {
  return network_lag_s(network, sea_level_viscosity_pa_s(), sea_level_pressure_pa).value();
}

double resistance(double length_in, double bore_in) {
  return laminar_resistance_pa_s_per_in3(length_in, bore_in, sea_level_viscosity_pa_s()).value();
}

/// One tube from an opening (node 0) to a volume (node 1).
LagNetwork one_tube(double length_in, double bore_in, double volume_in3) {
  return {{0, volume_in3}, {{0, 1, length_in, bore_in}}, {0}};
}

TEST(NetworkLag, OneTubeGivesTheWorkedLagConstants) {
  // 5 m and 300 cm3 behind bores of 0.180, 0.170 and 0.1315 in, half the tube's volume included
  // (calc, to the digits given).
  EXPECT_NEAR(sea_level_lag_s(one_tube(five_metres_in, 0.180, instrument_in3))[1], 0.0281, 5e-5);
  EXPECT_NEAR(sea_level_lag_s(one_tube(five_metres_in, 0.170, instrument_in3))[1], 0.0348, 5e-5);
  EXPECT_NEAR(sea_level_lag_s(one_tube(five_metres_in, 0.1315, instrument_in3))[1], 0.0930, 5e-5);
  // A bore of 1 mm for the whole 5 m (calc).
  EXPECT_NEAR(sea_level_lag_s(one_tube(five_metres_in, 1 / 25.4, instrument_in3))[1], 10.86, 5e-3);
}

TEST(NetworkLag, APinchAddsItsOwnLag) {
  // 10 mm of 1 mm bore alone: 0.0216 s (calc); its own volume, 0.008 cm3, is too small to tell.
  EXPECT_NEAR(sea_level_lag_s(one_tube(10 / 25.4, 1 / 25.4, instrument_in3))[1], 0.0216, 5e-5);
}

TEST(NetworkLag, TubesInSeriesSumResistanceTimesVolumeBehind) {
  // Opening - 40 in of 0.18 - 30 in of 0.12 - volume of 5 in3, with 2 in3 at the joint.
  const LagNetwork network{{0, 2, 5}, {{0, 1, 40, 0.18}, {1, 2, 30, 0.12}}, {0}};
  const double near = tube_volume_in3(40, 0.18).value();
  const double far = tube_volume_in3(30, 0.12).value();
  const double joint_s = resistance(40, 0.18) * (near / 2 + 2 + far + 5) / sea_level_pressure_pa;
  const double end_s = joint_s + resistance(30, 0.12) * (far / 2 + 5) / sea_level_pressure_pa;
  const std::vector<double> lag_s = sea_level_lag_s(network);
  EXPECT_NEAR(lag_s[1], joint_s, joint_s * 1e-12);
  EXPECT_NEAR(lag_s[2], end_s, end_s * 1e-12);
}

TEST(NetworkLag, TwoPortsHalveTheResistanceOfOne) {
  const LagNetwork single{{0, 5}, {{0, 1, 40, 0.18}}, {0}};
  const LagNetwork both{{0, 5, 0}, {{0, 1, 40, 0.18}, {2, 1, 40, 0.18}}, {0, 2}};
  const double tube = tube_volume_in3(40, 0.18).value();
  EXPECT_NEAR(sea_level_lag_s(both)[1],
              resistance(40, 0.18) / 2 * (5 + tube) / sea_level_pressure_pa, 1e-15);
  EXPECT_LT(sea_level_lag_s(both)[1], sea_level_lag_s(single)[1]);
}

TEST(NetworkLag, ALoopIsSolvedAsABridge) {
  // Four equal tubes in a ring from the opening; the far corner is fed by both sides alike, so that
  // it is behind two tubes in series, halved.
  LagNetwork ring{{0, 1, 4, 1}, {}, {0}};
  ring.tubes = {{0, 1, 20, 0.18}, {1, 2, 20, 0.18}, {2, 3, 20, 0.18}, {3, 0, 20, 0.18}};
  const double tube = tube_volume_in3(20, 0.18).value();
  const double r = resistance(20, 0.18) / sea_level_pressure_pa;
  const double side_s = r * (1 + tube + (4 + tube) / 2);
  const double far_s = side_s + r * (4 + tube) / 2;
  const std::vector<double> lag_s = sea_level_lag_s(ring);
  EXPECT_NEAR(lag_s[1], side_s, side_s * 1e-12);
  EXPECT_NEAR(lag_s[3], side_s, side_s * 1e-12);
  EXPECT_NEAR(lag_s[2], far_s, far_s * 1e-12);
}

TEST(NetworkLag, APartWithoutAnOpeningHasNoAnswer) {
  EXPECT_FALSE(network_lag_s({{1, 1}, {{0, 1, 10, 0.18}}, {}}, 1.8e-5, 1e5).has_value());
  EXPECT_FALSE(network_lag_s({{0, 1, 1}, {{0, 1, 10, 0.18}}, {0}}, 1.8e-5, 1e5).has_value());
}

TEST(NetworkLag, ArgumentsOutOfRangeHaveNoAnswer) {
  EXPECT_FALSE(network_lag_s(one_tube(10, 0, 5), 1.8e-5, 1e5).has_value());
  EXPECT_FALSE(network_lag_s(one_tube(-10, 0.18, 5), 1.8e-5, 1e5).has_value());
  EXPECT_FALSE(network_lag_s(one_tube(10, 0.18, -5), 1.8e-5, 1e5).has_value());
  EXPECT_FALSE(network_lag_s(one_tube(10, 0.18, 5), 1.8e-5, 0).has_value());
  EXPECT_FALSE(network_lag_s(one_tube(10, 0.18, 5), std::nan(""), 1e5).has_value());
}

TEST(TubeFlows, GiveTheWorkedReynoldsNumber) {
  // Bore 0.180 in, 5 m, 300 cm3, 1,000 ft/min at sea level: 3.4 (calc, with the instrument's flow
  // alone; what the tube itself breathes adds 27 % at the opening, 82.1 of 300 cm3).
  const LagNetwork network = one_tube(five_metres_in, 0.180, instrument_in3);
  const double rate = standard_pressure_gradient_pa_per_ft(0).value() * 1'000 / 60;
  const double viscosity = sea_level_viscosity_pa_s();
  const auto flows = tube_flows_in3_per_s(network, sea_level_lag_s(network), viscosity,
                                          sea_level_pressure_pa, rate);
  ASSERT_TRUE(flows.has_value());
  const double density =
      air_density_kg_per_m3(sea_level_pressure_pa, sea_level_temperature_k).value();
  const double reynolds = tube_reynolds_number(flows->at(0), 0.180, density, viscosity).value();
  EXPECT_NEAR(reynolds / (1 + 82.1 / 300), 3.4, 0.05);
}

/// Gauss and Seidel: each node in turn to the balance of its own tubes until nothing moves.
std::vector<double> relaxed_lag_s(const LagNetwork& network) {
  std::vector<double> lag_s(network.volume_in3.size(), 0);
  std::vector<bool> open(lag_s.size(), false);
  for (const int node : network.openings) open[static_cast<std::size_t>(node)] = true;
  for (int sweep = 0; sweep < 20'000; ++sweep) {
    double moved = 0;
    for (std::size_t node = 0; node < lag_s.size(); ++node) {
      if (open[node]) continue;
      double drawn = network.volume_in3[node] / sea_level_pressure_pa;
      double conductance = 0;
      for (const LagTube& tube : network.tubes)
        for (const auto& [here, there] : {std::pair{tube.from, tube.to}, {tube.to, tube.from}}) {
          if (static_cast<std::size_t>(here) != node) continue;
          drawn +=
              tube_volume_in3(tube.length_in, tube.bore_in).value() / 2 / sea_level_pressure_pa;
          if (here == there) continue;
          const double g = 1 / resistance(tube.length_in, tube.bore_in);
          conductance += g;
          drawn += g * lag_s[static_cast<std::size_t>(there)];
        }
      moved = std::max(moved, std::abs(drawn / conductance - lag_s[node]));
      lag_s[node] = drawn / conductance;
    }
    if (moved < 1e-16) break;
  }
  return lag_s;
}

TEST(NetworkLagProperty, MatchesRelaxationOnRandomNetworksWithLoops) {
  oracles::Random random(4'711);
  for (int trial = 0; trial < 200; ++trial) {
    SCOPED_TRACE(trial);
    LagNetwork network;
    const int nodes = random.whole(2, 8);
    for (int i = 0; i < nodes; ++i) {
      network.volume_in3.push_back(random.whole(0, 1) * random.between(0, 10));
      if (i > 0)
        network.tubes.push_back(
            {random.whole(0, i - 1), i, random.between(5, 50), random.between(0.1, 0.2)});
    }
    for (int loops = random.whole(0, 3); loops > 0; --loops)
      network.tubes.push_back({random.whole(0, nodes - 1), random.whole(0, nodes - 1),
                               random.between(5, 50), random.between(0.1, 0.2)});
    network.openings = {random.whole(0, nodes - 1), random.whole(0, nodes - 1)};
    const std::vector<double> lag_s = sea_level_lag_s(network);
    const std::vector<double> relaxed = relaxed_lag_s(network);
    for (std::size_t i = 0; i < lag_s.size(); ++i)
      EXPECT_NEAR(lag_s[i], relaxed[i], 1e-9 * (relaxed[i] + 1e-3)) << "node " << i;
  }
}

}  // namespace
}  // namespace linewright
