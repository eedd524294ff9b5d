#pragma once
// Which port of a node each route takes.

#include "input/project_draft.hpp"

namespace linewright {

/// A line that names no port takes the one free port that it could leave by: within this angle of
/// the way to its next point, so that of ports at right angles never two are near.
inline constexpr double leaves_by_deg = 45;

/// Gives every end of a route at a node with ports its port: the one that it names, else the last
/// that is free where no other route is left, else the only free one that points the line's way.
/// Errors name the ports there are. Tubes that do not fit a fitting are errors, too.
void choose_ports(ProjectDraft& draft);

}  // namespace linewright
