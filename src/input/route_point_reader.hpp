#pragma once
// The points of a route: corners, supports and fairleads passed free.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Reads one point and adds it to the route: among its points, or among the fairleads that it
/// passes free.
void read_route_point(const YamlNode& node, Route& route, ReadContext& context);

}  // namespace linewright
