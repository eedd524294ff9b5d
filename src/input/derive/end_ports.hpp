#pragma once
// The ports at which a route's ends begin, worked out before nodes and fittings are read.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "input/derive/derivation.hpp"
#include "model/fitting.hpp"
#include "model/vector.hpp"

namespace linewright {

/// The ports that a node states or that follow from its `fitting`; none where it has none, or where
/// they cannot be told, of which the readers say why.
std::vector<Port> ports_of_node(ProjectItem& node, Derivation& derivation);

/// Where the route's end under `end` ("from" or "to") is: at the face of its port, where that can
/// be told by `next`, the next place along the line, or by name; else at its node's middle. Nothing
/// where the node's place is not known.
std::optional<Vec3> end_of_route(const ProjectItem& route, std::string_view end, Vec3 next,
                                 Derivation& derivation);

/// "ports: a at [214, 0.89, 20], b at [214, -0.89, 20]", in inches.
std::string ports_in_words(const std::vector<Port>& ports);

}  // namespace linewright
