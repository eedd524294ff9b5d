#pragma once
// What keeps a cable off everything that only its slack lets it reach.

#include <string>

#include "rules/rule.hpp"

namespace linewright {

/// "rig rudder-left and rudder-right 12 lbf tighter, …" for a cable that goes slack in the cold, or
/// while another one of its control is pulled; empty for any other line, and where it is not known
/// by how much.
std::string slack_mend(const RuleContext& context, const PreparedRoute& route);

}  // namespace linewright
