#pragma once
// Closures say which others come before them; none may come before itself.

#include "input/project_draft.hpp"

namespace linewright {

/// Adds an error for each ring of closures that wait for each other, at the word that closes it.
void check_closure_cycles(ProjectDraft& draft);

}  // namespace linewright
