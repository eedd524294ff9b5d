#pragma once
// Lines that do not leave a fitting the way its port points.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// Of `bend-fit`.
inline constexpr LimitRow port_angle{.name = "port-angle",
                                     .subject = "angle at which a line leaves its port",
                                     .value = 3,
                                     .unit = Unit::degree,
                                     .sense = LimitSense::at_most,
                                     .source = "a nut does not draw a tube round to its fitting",
                                     .mark = Mark::common_practice,
                                     .broken = Verdict::warn};
inline constexpr LimitRow tube_bend_in_port{
    .name = "tube-bend-in-port",
    .subject = "how far into its fitting a tube's bend would reach",
    .value = 1,
    .sense = LimitSense::at_most,
    .source = "an arc takes up R tan(θ/2) on both sides of its corner",
    .mark = Mark::calculated,
    .times = "build tolerance"};
inline constexpr LimitRow hose_bend_in_port{
    .name = "hose-bend-in-port",
    .subject = "how far into its fitting a hose's bend would reach",
    .value = 1,
    .sense = LimitSense::at_most,
    .source = "an arc takes up R tan(θ/2) on both sides of its corner",
    .mark = Mark::calculated,
    .times = "outside diameter"};

/// A judgement for each end of the route at a port: at what angle its first leg stands to the way
/// the port points, less what the build tolerance makes of it.
void judge_port_angles(const RuleContext& context, const PreparedRoute& route,
                       std::vector<Judgement>& judgements);

}  // namespace linewright
