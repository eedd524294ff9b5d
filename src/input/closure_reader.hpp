#pragma once
// Closures: what ends access when it is fitted, and what is left to reach through. Tasks: work at
// one place.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Adds one item of a `closures` section.
void read_closure(const YamlNode& node, ReadContext& context);
/// Adds one item of a `tasks` section.
void read_task(const YamlNode& node, ReadContext& context);

}  // namespace linewright
