#pragma once
// What can be judged only when all files of a project are read: names that are given twice or not
// at all, closures that wait for each other, routes whose ends or line do not fit.

#include "input/project_draft.hpp"

namespace linewright {

/// Adds what is wrong to the draft's errors. `built_in` is the catalogue before the project's own
/// lines joined it.
void cross_check(ProjectDraft& draft, const Catalogue& built_in);

}  // namespace linewright
