#pragma once
// Fittings of real size, as bodies that lines and structure can meet.

#include <optional>
#include <vector>

#include "geometry/structure/obstacles.hpp"
#include "model/project.hpp"

namespace linewright {

struct PreparedRoute;

/// So far past where its fitting's body ends a line cannot have turned back to it yet: what it
/// comes near to there is the joint itself [common practice, no source].
inline constexpr double past_own_fitting_in = 2.0;

/// A node whose fitting's size is known.
struct NodeFitting {
  const Node* node = nullptr;
  FittingBody body;
  std::vector<Segment3> legs;  ///< from the node to each port's face and to the end of its nut
};

/// Every node with ports and a body, in the project's order.
std::vector<NodeFitting> fittings_of(const Project& project);

/// The fitting's primitives as a part: "fitting at tee-1".
FittingSolid solid_of(const NodeFitting& fitting);

/// Where the line begins or ends at the node: its port's face, or the node itself.
Vec3 end_place(const Node& node, const Port* port);

/// How far along a route from its end at the node the node's fitting does not count for it: to
/// where the body ends, and the line's own radius and `past_own_fitting_in` past that. Nothing
/// where no body is known.
std::optional<double> own_fitting_in(const PreparedRoute& route, const Node& node);

/// True where `along_in` of a route lies so near to a fitting that the route ends at.
bool is_own_fitting(const NodeFitting& fitting, const PreparedRoute& route, double along_in);

/// Between two ports of a node, through its fitting; nothing where either has no port.
double through_fitting_in(const Node& node, const Port* in, const Port* out);

}  // namespace linewright
