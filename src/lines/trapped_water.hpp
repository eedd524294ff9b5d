#pragma once
// Water trapped in an air network, by attitude, and what would let it out.

#include <string>
#include <vector>

#include "lines/air_network.hpp"
#include "model/project.hpp"

namespace linewright {

/// A place on a line; at a joint, on the first of the lines that meet there.
struct WaterPlace {
  const PreparedRoute* route = nullptr;
  double distance_in = 0;
  const Node* node = nullptr;  ///< set at an end of the route
};

/// Part of a line that is under water.
struct WetStretch {
  const PreparedRoute* route = nullptr;
  double from_in = 0;
  double to_in = 0;
};

/// One pool in one attitude.
struct WaterTrap {
  const Attitude* attitude = nullptr;
  WaterPlace lowest;
  WaterPlace crest;  ///< over which it spills; no route where no way leads out
  double depth_in = 0;
  double volume_in3 = 0;
  double bore_in = 0;
  bool closes_bore = false;
  std::vector<WetStretch> wet;

  bool has_way_out() const { return crest.route != nullptr; }
};

/// A drawn point or a node that lies too low for water to leave.
struct LowPoint {
  WaterPlace place;
  Vec3 at;                      ///< as drawn
  double raise_in = 0;          ///< straight up in the attitude, until water leaves
  double raised_height_in = 0;  ///< its height in the attitude when so raised
};

/// True for a node at which water can run out: static ports, probes and drains. Nothing leaves
/// through an instrument, and a loose end is not counted on.
bool lets_water_out(const Node& node);

/// Every pool of a network in one attitude.
std::vector<WaterTrap> water_traps(const AirNetwork& network, const Attitude& attitude);

/// The points and nodes to raise so that the trap drains in its attitude, most to be raised first.
/// With all of them raised, every leg from them falls or lies level toward the crest; bends then do
/// so too, since an arc turns from one leg's slope to the other's.
std::vector<LowPoint> points_to_raise(const AirNetwork& network, const WaterTrap& trap);

/// The same trap in several attitudes: the worst pool, and the names of the other attitudes.
struct TrapInAttitudes {
  WaterTrap worst;
  std::vector<std::string> also_in;
  double deepest_in = 0;  ///< the deepest of its pools, which need not be the worst
};

/// The traps of a network in all attitudes, each told once. Pools are one trap where the lowest
/// place of one lies under the water of the other; two pools of one attitude never are. Worse is
/// what closes the bore, then what holds more, then what comes first.
std::vector<TrapInAttitudes> distinct_traps(const AirNetwork& network,
                                            const std::vector<Attitude>& attitudes);

}  // namespace linewright
