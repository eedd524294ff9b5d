#pragma once
// How far what was changed of some lines can make itself felt.

#include <cstddef>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// Of each route 1 where it is one of those that changed, by their index, or joined to one, one
/// through another: by a node, a system of air, a control or ties. `before` is of the same routes
/// as `now`. What one line's supports leave it free to do depends on no others than these.
std::vector<char> joined_routes(const Project& before, const Project& now,
                                const std::vector<std::size_t>& changed);

/// True where a change of some routes can change no gaps but of their own, and of those joined to
/// them: none of these is at a fitting that has a body, and those that changed have no pulley, lie
/// in the guides that they lay in and end where they ended. Nor does the project have what is
/// judged by all lines about it: gaps that were measured, and sleeves whose outside is not known.
bool changes_own_gaps_alone(const Project& before, const Project& now,
                            const std::vector<std::size_t>& changed,
                            const std::vector<char>& joined);

}  // namespace linewright
