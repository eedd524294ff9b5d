#pragma once
// What of a project became another from one save to the next, where that is no more than some of
// its routes.

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// Projects `before` and `now` of the same routes, by name and order, that say the same but for
/// these routes, and for where in the files all the rest stands.
struct RouteChange {
  std::vector<std::size_t> routes;  ///< by their index, in order
  /// Where what stayed the same was and is; empty where nothing of it moved.
  std::vector<std::pair<SourceLocation, SourceLocation>> moved;

  /// Where what stood there before stands now; nothing for a place of what changed.
  std::optional<SourceLocation> now_at(const SourceLocation& before) const;
};

/// Nothing where anything but routes changed. What was taken for what the files do not say is not
/// looked at: it follows from the rest.
std::optional<RouteChange> change_of_routes(const Project& before, const Project& now);

}  // namespace linewright
