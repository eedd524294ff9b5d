#pragma once
// Panels that are stretched over frames: between each two of them from two corners of one outline
// to the same two of the next.

#include "input/keys/structure_keys.hpp"
#include "input/map_reader.hpp"
#include "input/project_draft.hpp"

namespace linewright {

/// Reads `over` and `corners` of the panel that is about to be added to the project.
void note_stretched(MapReader<panel_map>& fields, ReadContext& context);

/// Gives each such panel its bays. A name that is no frame's, a corner that an outline has not, and
/// a bay that is no panel are errors.
void stretch_panels(ProjectDraft& draft);

}  // namespace linewright
