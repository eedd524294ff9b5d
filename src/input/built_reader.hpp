#pragma once
// What was measured on the aeroplane.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Adds one item of a `built` section.
void read_measurement(const YamlNode& node, ReadContext& context);

/// Finds the support that each measure is of, and what its gap is to, when all files are in.
void find_measured(ProjectDraft& draft);

}  // namespace linewright
