#pragma once
// Which closure covers a place first.

#include <optional>
#include <string>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// The closures in an order that respects what comes before what, through tasks too, in file order
/// where that leaves it open.
std::vector<std::string> closures_in_order(const Project& project);

/// True for a part that the closure covers, and a panel that names it.
bool goes_on_with(const Project& project, const std::string& part, const Closure& closure);

/// The first of `closures` of which a panel lies over the place: seen square to the panel, the
/// place is within its corners, on whichever side and however far off. Nothing where none does.
std::optional<std::string> first_closure_over(const Project& project,
                                              const std::vector<std::string>& closures, Vec3 at);

}  // namespace linewright
