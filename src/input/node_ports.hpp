#pragma once
// Where the ports of a node's fitting are.

#include <optional>
#include <vector>

#include "input/project_draft.hpp"
#include "model/fitting.hpp"
#include "model/vector.hpp"

namespace linewright {

/// Gives every node that states a `fitting` its ports, its body and, where it states none, the
/// volume of the fitting's bores. What a fitting lacks to be turned one way only is an error.
void give_nodes_their_ports(ProjectDraft& draft);

/// No tube goes into ports that are stated one by one so far that it meets the one at another.
void check_insertions(ProjectDraft& draft);

/// The ports of a fitting whose axes meet at `at`, turned that way; none where it is not turned one
/// way only. Directions are of any length, but not zero.
std::vector<Port> ports_of_fitting(const Fitting& fitting, Vec3 at, Vec3 direction,
                                   std::optional<Vec3> branch);

}  // namespace linewright
