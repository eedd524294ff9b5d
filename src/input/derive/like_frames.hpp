#pragma once
// Frames of the shape of another, of which a project states the shape once.

#include <vector>

#include "input/parsed_file.hpp"
#include "input/project_draft.hpp"

namespace linewright {

/// Gives each frame that says `like: NAME` the outline, the thickness and the holes of the frame of
/// that name, where it has none of its own, moved in its plane as `moved` says. A hole's name
/// begins with its frame's, and the copy's with the copy's. Half outlines are complete by then. A
/// name that is no frame's, a ring of frames, one drawn in other coordinates and a hole whose copy
/// has no name are errors of the draft.
void complete_like_frames(std::vector<ParsedFile>& files, ProjectDraft& draft);

}  // namespace linewright
