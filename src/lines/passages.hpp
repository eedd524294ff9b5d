#pragma once
// What a line passes on its way.

#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// Something the line passes: a support, a frame's hole, or a support in a frame's hole. Distances
/// are along the route.
struct Passage {
  double start_in = 0;  ///< a pulley: where the line meets it; a frame: its nearer face
  double end_in = 0;
  std::string name;                    ///< of the hole or part; empty for none
  std::string words;                   ///< "fairlead in F4-b", "hole F4-b", "frame F4"
  const RoutePoint* point = nullptr;   ///< supports only
  const Crossing* crossing = nullptr;  ///< frames only
  bool leads = false;                  ///< fairlead, grommet, bushing or pulley: it guides the line
  double middle_in() const { return (start_in + end_in) / 2; }
};

/// Everything the route passes between its two nodes, in order along it.
std::vector<Passage> passages(const PreparedRoute& route);

}  // namespace linewright
