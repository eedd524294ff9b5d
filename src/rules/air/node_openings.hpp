#pragma once
// The lines at a node of an air system, held against its openings.

#include <optional>
#include <string_view>
#include <vector>

#include "lines/air_network.hpp"
#include "rules/rule.hpp"

namespace linewright {

using Routes = std::vector<const PreparedRoute*>;

inline constexpr std::string_view static_source = "14 CFR 23.1325";

inline constexpr LimitRow lines_through{.name = "lines-at-union",
                                        .subject = "lines at a union or bulkhead fitting",
                                        .value = 2,
                                        .unit = Unit::none,
                                        .source = static_source,
                                        .mark = Mark::verified};
inline constexpr LimitRow line_end{.name = "lines-at-other-node",
                                   .subject = "lines at a port, probe, instrument, drain or cap",
                                   .value = 1,
                                   .unit = Unit::none,
                                   .source = static_source,
                                   .mark = Mark::verified};
inline constexpr LimitRow joins_none{
    .name = "lines-at-bare-end",
    .subject = "pressure lines at a bare end, air lines at a horn or pedal: neither closes one",
    .value = 0,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = static_source,
    .mark = Mark::verified};
inline constexpr LimitRow most_at_cap{.name = "most-lines-at-cap",
                                      .subject = "lines at a cap, which closes one and joins none",
                                      .value = 1,
                                      .unit = Unit::none,
                                      .sense = LimitSense::at_most,
                                      .source = static_source,
                                      .mark = Mark::verified};
inline constexpr LimitRow most_at_union{
    .name = "most-lines-at-union",
    .subject = "lines at a union or bulkhead fitting: as many as it has openings",
    .value = 2,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = static_source,
    .mark = Mark::verified};
inline constexpr LimitRow most_at_tee{.name = "most-lines-at-tee",
                                      .subject = "lines at a tee: as many as it has openings",
                                      .value = 3,
                                      .unit = Unit::none,
                                      .sense = LimitSense::at_most,
                                      .source = static_source,
                                      .mark = Mark::verified};
inline constexpr LimitRow most_at_other{
    .name = "most-lines-at-other-node",
    .subject = "lines at a port, probe or instrument that states no ports",
    .value = 1,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = "one connection takes one line: a tee before it, or its ports stated",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow tee_lines{.name = "lines-at-tee",
                                    .subject = "lines at a tee",
                                    .value = 3,
                                    .unit = Unit::none,
                                    .source = static_source,
                                    .mark = Mark::verified};
/// A judgement by `row` about a node, placed on `route`, one of its routes; verdict still unknown.
Judgement at_node(const RuleContext& context, const LimitRow& row, const PreparedRoute& route,
                  const Node& node);

/// Whether the air routes that end at `node`, one at least, are as many as it has openings; nothing
/// where that is no question: at the open end of a vent, and at ends that are tied up for now.
std::optional<Judgement> judge_openings(const RuleContext& context, const Node& node,
                                        const Routes& routes);

}  // namespace linewright
