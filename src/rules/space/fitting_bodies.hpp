#pragma once
// The bodies of fittings against structure, each other and lines.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Of `clearance`.
inline constexpr LimitRow fitting_overlap{
    .name = "fitting-overlap",
    .subject = "a fitting's body to what it is not mounted on",
    .value = 0,
    .source = "geometry: no two things in one place",
    .mark = Mark::calculated};

/// Whether the bodies of fittings stand free, less the build tolerance, of all structure but the
/// parts that a node held by structure stands on, and of each other: a judgement for each thing
/// that one can be in, else one for the nearest.
std::vector<Judgement> judge_fitting_bodies(const RuleContext& context);

/// True for the fitting of a line: `separation` judges what comes near it.
bool is_of_a_line(const PreparedProject& prepared, const Obstacle& obstacle);

/// The first route that ends at the node, or nullptr.
const PreparedRoute* route_at(const PreparedProject& prepared, const Node& node);

}  // namespace linewright
