#pragma once
// Sizes of things that are fitted in one another, written in different places of a project.

#include "input/project_draft.hpp"

namespace linewright {

/// An error for every fairlead, grommet or bushing whose bore is not smaller than the round hole it
/// is fitted in: it would leave the edge bare.
void check_fairleads_in_holes(ProjectDraft& draft);

/// An error for every end that grips more cable than the piece it is on can have: measured from
/// corner to corner of its route, which no arc makes longer.
void check_grips_in_pieces(ProjectDraft& draft);

/// An error for every attachment that is thinner than its line or lies where another one does, for
/// every sleeve on another that it cannot go over, and for every pulley narrower than its cable.
void check_fitted_on_lines(ProjectDraft& draft);

}  // namespace linewright
