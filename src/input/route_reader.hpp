#pragma once
// Routes: one line between two nodes, its points, and what is fixed to it.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Adds one item of a `routes` section.
void read_route(const YamlNode& node, ReadContext& context);

}  // namespace linewright
