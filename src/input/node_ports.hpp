#pragma once
// Where the ports of a node's fitting are.

#include "input/project_draft.hpp"

namespace linewright {

/// Gives every node that states a `fitting` its ports, its body and, where it states none, the
/// volume of the fitting's bores. What a fitting lacks to be turned one way only is an error.
void give_nodes_their_ports(ProjectDraft& draft);

}  // namespace linewright
