#pragma once
// A control cable along its run: what it passes on its way, how far it moves along itself, and what
// could take its place.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "geometry/cable_travel.hpp"
#include "geometry/prepared.hpp"

namespace linewright {

/// True for a cable that a primary flight control hangs on.
bool is_primary_control(const Route& route);

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

/// How far the route's line moves along itself. Nothing where a cable's travel is not stated.
std::optional<Movement> movement(const PreparedRoute& route);

/// How far what is fixed to the line moves along it at the most: its movement, and for a cable its
/// stretch under the limit load.
struct AttachedReach {
  double toward_from_in = 0;
  double toward_to_in = 0;
  std::string missing;  ///< what is not known and so left out; empty for nothing
  bool bounded = true;  ///< false where what is missing could be anything
  double bound_in = 0;  ///< else it adds no more than this either way
};

/// For something fixed `at_in` along the route. Which end holds fast under the load cannot be told,
/// so the longer part stretches.
AttachedReach attached_reach(const PreparedRoute& route, double at_in);

/// " such as cable-7x19-1/8-steel": the smallest cable of the same metal that serves, of the same
/// construction where there is one; empty where the catalogue has none.
std::string such_as(const Catalogue& catalogue, const Line& like,
                    const std::function<bool(const Line&)>& serves);

}  // namespace linewright
