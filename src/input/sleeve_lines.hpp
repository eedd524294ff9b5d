#pragma once
// Sleeves that are cut from a line of the catalogue.

#include "input/project_draft.hpp"

namespace linewright {

/// Gives every sleeve that names a line the bore, outside diameter and least bend radius of it. A
/// sleeve cut from what has no bore is an error. Names that are nowhere given are left alone.
void take_sleeve_lines(ProjectDraft& draft);

}  // namespace linewright
