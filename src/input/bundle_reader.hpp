#pragma once
// Reads the `bundles` of a project file.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Adds one bundle to the draft; whether its routes are there is checked once all files are in.
void read_bundle(const YamlNode& node, ReadContext& context);

}  // namespace linewright
