#pragma once
// The points of routes as the text of a project file, to paste.

#include <functional>
#include <string>
#include <vector>

#include "model/network.hpp"

namespace linewright {

/// A length as it is written in a file whose bare lengths are millimetres, or inches.
using WrittenLength = std::function<std::string(double length_in, bool in_millimetres)>;

/// `routes:` with the name and the whole `points:` of each, lengths as `written` has them. It reads
/// back as the same points, as far as `written` does.
std::string route_points_text(const std::vector<Route>& routes, const WrittenLength& written);

}  // namespace linewright
