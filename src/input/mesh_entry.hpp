#pragma once
// One mesh of a project file's `structure`. Its file is looked for here, and read by
// input/mesh/read_mesh_file.hpp.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Adds a mesh of a `meshes` list.
void read_mesh(const YamlNode& node, ReadContext& context);

/// Says what was taken for what meshes do not state.
void add_mesh_assumptions(ProjectDraft& draft);

}  // namespace linewright
