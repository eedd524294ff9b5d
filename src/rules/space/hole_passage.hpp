#pragma once
// How a line goes through the hole of a frame: clear of its edge, or guarded from it.

#include "rules/rule.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

inline constexpr LimitRow free_of_sheet{.name = "free-of-sheet",
                                        .subject = "line in a hole, free of the sheet",
                                        .value = 0,
                                        .source = "geometry",
                                        .mark = Mark::calculated};
inline constexpr LimitRow wire_to_hole_edge{
    .name = "wire-to-hole-edge",
    .subject = "wire bundle to an unguarded hole edge, bare, rolled or flanged",
    .value = 0.375,
    .source = "AC 43.13-1B CHG 1 para 11-115: grommet unless 3/8 in clear",
    .mark = Mark::verified};
inline constexpr LimitRow tube_to_hole_edge{
    .name = "tube-to-hole-edge",
    .subject = "tube, hose or casing to an unguarded hole edge",
    .value = 0.375,
    .source = "borrowed from the wire rule of AC 43.13-1B para 11-115",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow tube_to_turned_edge{
    .name = "line-to-rolled-edge",
    .subject =
        "tube, hose or casing to a rolled or flanged hole edge: it cuts nothing, but is hard metal",
    .value = 0.375,
    .source = "borrowed from the wire rule of AC 43.13-1B para 11-115",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow cable_to_turned_edge{
    .name = "cable-to-rolled-edge",
    .subject = "control cable to a rolled or flanged hole edge: it cuts nothing, but is hard metal",
    .value = 0.5,
    .source = "where either can move",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow guard_preload{
    .name = "preload",
    .subject = "line pressed into a grommet's wall",
    .value = 0,
    .source = "AC 43.13-1B CHG 1 para 11-115: no preload on strip or grommet",
    .mark = Mark::verified,
    .broken = Verdict::warn};
inline constexpr LimitRow grommet_wall{
    .name = "grommet-wall",
    .subject = "hole over the largest line in its grommet, bore not stated (1/16 on each side)",
    .value = 0.125,
    .source = "MS35489: holes at least 1/8 in over the bore",
    .mark = Mark::from_memory,
    .broken = Verdict::warn};
inline constexpr LimitRow guard_wall{
    .name = "guard-wall",
    .subject = "hole over a stated bore, or over the largest line in trim, bushing or fairlead",
    .value = 0.0625,
    .source = "no such thing has less than 1/32 in of wall",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

/// The line's surface, less the build tolerance, against the edge of the hole that it goes through,
/// or against the guard there. Precondition: `crossing.hole`.
Judgement judge_hole_passage(const RuleContext& context, const PreparedRoute& route,
                             const Crossing& crossing);

/// The same of a gap to the hole's edge that was measured, its tolerance taken off; into a
/// judgement that has the measure.
void judge_measured_passage(const RuleContext& context, const PreparedRoute& route,
                            const Crossing& crossing, double free_in, Judgement& judgement);

}  // namespace linewright
