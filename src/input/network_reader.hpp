#pragma once
// Nodes and waivers of a project file.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Adds one item of a `nodes` section.
void read_node(const YamlNode& item, ReadContext& context);

/// Adds one item of a `waivers` section. Whether its rule exists is for the rules to say.
void read_waiver(const YamlNode& item, ReadContext& context);

}  // namespace linewright
