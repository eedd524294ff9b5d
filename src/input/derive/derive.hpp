#pragma once
// From what a project's files say by reference to what the readers read: places, twins and rows of
// tables, put into the trees.

#include <vector>

#include "input/parsed_file.hpp"
#include "input/project_draft.hpp"

namespace linewright {

/// Puts into the trees of a project's files all that follows from what is there: the rows of tables
/// that they name, places given by reference, and the mirror images of what has a `mirror`. Each
/// such value has a note on what it came from. Faults are errors of the draft. Returns the tables
/// that were read, for the lines that errors in them show.
std::vector<ParsedFile> derive(std::vector<ParsedFile>& files, ProjectDraft& draft);

/// After all is read: a value that could not be worked out although nothing was found wrong is an
/// error, so that it is never taken for a number.
void refuse_unread(const std::vector<ParsedFile>& files, ProjectDraft& draft);

}  // namespace linewright
