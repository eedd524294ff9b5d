#pragma once
// Makes a project ready to judge.

#include "lines/prepared.hpp"

namespace linewright {

/// Sideways play of a line in a cushion clamp [common practice, no source].
inline constexpr double clamp_play_in = 0.02;
/// Play in a guide whose bore is not stated [common practice, no source]: half of the usual
/// 1/16 in between the bore and the largest line.
inline constexpr double guide_play_in = 1.0 / 32;

/// The bore of what usually guards so large a round hole with a grommet or a bushing; nothing for
/// any other hole.
std::optional<double> usual_bore_in(const Hole& hole);

/// Largest bore, as a multiple of the line's outside diameter, in which a guide still counts as a
/// support [common practice, no source].
inline constexpr double holding_bore_ratio = 2.0;

/// Radius to centreline that a corner of a route is drawn with: the point's own bend, a pulley's
/// groove radius, the line's usual radius, or zero for a cable elsewhere.
double drawn_radius_in(const RoutePoint& point, const Line& line);

/// A route's centreline, by its points and nodes as they stand in the project, whose names must all
/// resolve.
Centreline drawn_centreline(const Project& project, const Route& route);

/// Works everything out. `project` must outlive the result, and its names must all resolve (the
/// loader sees to both). `meshes` are those of the project, read from their files; where they are
/// not given, nothing is known about them.
PreparedProject prepare(const Project& project, const MeshFields& meshes = {});
/// The same where `structure` was made of the project's already: for those who move lines in it
/// again and again.
PreparedProject prepare_in(Obstacles structure, const Project& project);

}  // namespace linewright
