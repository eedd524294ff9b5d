#pragma once
// What two lines are held to keep between them, by kind.

#include <string_view>
#include <vector>

#include "lines/near/nearest_lines.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// The rows of `separation`.
namespace separation_rows {

inline constexpr std::string_view borrowed_from_tube = "borrowed from the figure for metal tube";

inline constexpr LimitRow overlap{.name = "overlap",
                                  .subject = "any two lines",
                                  .value = 0,
                                  .source = "geometry: no two things in one place",
                                  .mark = Mark::calculated};
inline constexpr LimitRow parting{
    .name = "parting",
    .subject = "two lines from one node, farther from it than 1/4 in and twice the diameter",
    .value = 0,
    .source = "geometry: no two things in one place; the fitting explains no more",
    .mark = Mark::calculated};
inline constexpr LimitRow metal_tube{.name = "metal-tube",
                                     .subject = "metal tube to another tube or hose",
                                     .value = 0.25,
                                     .source = "SAE ARP994 / MIL-H-5440: adjacent lines",
                                     .mark = Mark::from_memory};
inline constexpr LimitRow soft_tube{.name = "soft-tube",
                                    .subject = "plastic tube or hose to the like",
                                    .value = 0.25,
                                    .source = borrowed_from_tube,
                                    .mark = Mark::common_practice,
                                    .broken = Verdict::warn};
inline constexpr LimitRow tube_to_cable_at_support{
    .name = "tube-to-cable-at-support",
    .subject = "instrument line to control cable, within 1 in of the line's support",
    .value = 0.5,
    .source = "through full travel",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow tube_to_cable{.name = "tube-to-cable",
                                        .subject = "instrument line to control cable, elsewhere",
                                        .value = 1.0,
                                        .source = "where the line is unsupported",
                                        .mark = Mark::common_practice,
                                        .broken = Verdict::warn};
inline constexpr LimitRow wire_to_cable{
    .name = "wire-to-cable",
    .subject = "wire bundle to control cable without a guard",
    .value = 3.0,
    .source = "FAA-H-8083-31, wiring chapter: else a mechanical guard",
    .mark = Mark::from_memory};
inline constexpr LimitRow wire_to_sleeved_cable{
    .name = "wire-to-sleeved-cable",
    .subject = "wire bundle to control cable in a sleeve",
    .value = 0.5,
    .source = "AC 43.13-1B para 11-125",
    .mark = Mark::from_memory};
inline constexpr LimitRow vent_least{
    .name = "wire-to-vent-least",
    .subject = "wire bundle to vent line (flammable vapour), in any case",
    .value = 2.0,
    .source =
        "AC 43.13-1B CHG 1 para 11-96 w: 2 in, closely clamped and tied, so that a broken wire "
        "with a tie or clamp missing does not touch",
    .mark = Mark::verified};
inline constexpr LimitRow wire_to_tube{.name = "wire-to-tube",
                                       .subject = "wire bundle to instrument line",
                                       .value = 0.25,
                                       .source = borrowed_from_tube,
                                       .mark = Mark::common_practice,
                                       .broken = Verdict::warn};
inline constexpr LimitRow cable_to_cable{.name = "cable-to-cable",
                                         .subject = "control cable to control cable",
                                         .value = 0.5,
                                         .source = "where either can move",
                                         .mark = Mark::common_practice,
                                         .broken = Verdict::warn};
inline constexpr LimitRow wire_to_rod{.name = "wire-to-rod",
                                      .subject = "wire bundle to pushrod",
                                      .value = 0.5,
                                      .source = "AC 43.13-1B para 11-125",
                                      .mark = Mark::from_memory};
inline constexpr LimitRow line_to_rod{.name = "line-to-rod",
                                      .subject = "any other line to pushrod",
                                      .value = 0.5,
                                      .source = "where either can move",
                                      .mark = Mark::common_practice,
                                      .broken = Verdict::warn};
inline constexpr LimitRow line_to_casing{.name = "line-to-casing",
                                         .subject = "any line but a moving control to a casing",
                                         .value = 0.25,
                                         .source = borrowed_from_tube,
                                         .mark = Mark::common_practice,
                                         .broken = Verdict::warn};
inline constexpr LimitRow wire_to_run_out{.name = "wire-to-run-out",
                                          .subject = "wire bundle to what comes out of a casing",
                                          .value = 0.5,
                                          .source = "AC 43.13-1B para 11-125",
                                          .mark = Mark::from_memory};
inline constexpr LimitRow line_to_run_out{.name = "line-to-run-out",
                                          .subject = "any other line to what comes out of a casing",
                                          .value = 0.5,
                                          .source = "where either can move",
                                          .mark = Mark::common_practice,
                                          .broken = Verdict::warn};
inline constexpr LimitRow vent_wanted{.name = "wire-to-vent",
                                      .subject = "wire bundle to vent line (flammable vapour)",
                                      .value = 6.0,
                                      .source = "AC 43.13-1B CHG 1 para 11-96",
                                      .mark = Mark::verified,
                                      .broken = Verdict::warn};

}  // namespace separation_rows

/// A limit and where along the two lines it holds; besides it that of overlap, and the least one
/// where there is one.
struct SeparationZone {
  const LimitRow* row;
  CountsPair counts;
  const LimitRow* least = &separation_rows::overlap;
};

/// Those that hold between two lines; none where they may be tied together.
std::vector<SeparationZone> separation_zones(const RuleContext& context, const PreparedRoute& first,
                                             const PreparedRoute& second);

/// Added to the largest limit of a pair: lines farther apart are no neighbours and are not listed.
inline constexpr double beyond_limit_in = 1.0;

}  // namespace linewright
