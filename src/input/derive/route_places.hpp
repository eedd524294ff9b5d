#pragma once
// The points of a route that say by reference where they are.

#include "input/derive/derivation.hpp"

namespace linewright {

/// Gives each point of the route its `at`, and puts points in the place of those that are `spaced`.
/// A point without a place that can be worked out is reported.
void place_points(ProjectItem& route, Derivation& derivation);

/// Where the route meets the plane of the frame, by the straight lines between its ends and points.
/// Nothing, after an error at `where`, unless there is one such place.
std::optional<Vec3> where_route_meets(ProjectItem& route, const ProjectItem& frame,
                                      const SourceLocation& where, Derivation& derivation);

/// True where a key besides `through` says by reference where a point, or a node, is.
bool is_placed_by_reference(const YamlNode& point);

/// Takes away the keys that have said where a point, or a node, is.
void remove_references(YamlNode& point);

}  // namespace linewright
