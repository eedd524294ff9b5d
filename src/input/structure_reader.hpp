#pragma once
// The structure section of a project file.

#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Thickness of a panel that states none; the project's assumptions say so.
inline constexpr double usual_panel_thickness_in = 0.025;

/// Adds the frames, channels, panels, solids, movers and meshes of a `structure` section.
void read_structure(const YamlNode& node, ReadContext& context);

}  // namespace linewright
