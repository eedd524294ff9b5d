#pragma once
// Outlines that are the same on both sides of BL 0, of which a project states the right half.

#include "input/parsed_file.hpp"
#include "input/project_draft.hpp"

namespace linewright {

/// Completes each outline of the file's frames, and of their holes, that says `half: true`: after
/// its corners come their mirror images, the last first, so that those written keep their numbers.
/// What leaves BL 0 is joined straight across to its image. A corner left of BL 0, and half of what
/// BL 0 does not halve, is an error of the draft.
void complete_half_outlines(ParsedFile& file, ProjectDraft& draft);

}  // namespace linewright
