#pragma once
// Bulkhead unions in the sheets that hold them.

#include <optional>

#include "model/sheet.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Of `support-mount`.
inline constexpr LimitRow bulkhead_hole{
    .name = "bulkhead-hole",
    .subject = "bulkhead union from a hole in the sheet that it stands in",
    .value = 0,
    .sense = LimitSense::at_most,
    .source = "geometry: what is fitted through a sheet needs its hole there",
    .mark = Mark::calculated};
inline constexpr LimitRow bulkhead_room{
    .name = "bulkhead-room",
    .subject = "edge of a bulkhead union's hole from the line that goes on in it",
    .value = 0,
    .source = "geometry: the line goes on in the union, and the union through the hole",
    .mark = Mark::calculated};
inline constexpr LimitRow bulkhead_thread{
    .name = "bulkhead-thread",
    .subject = "hole of a bulkhead union over the thread that goes through it",
    .value = -0.005,
    .source = "geometry: the thread goes through the hole; sizes of both are rounded so far",
    .mark = Mark::calculated};
inline constexpr LimitRow bulkhead_thread_taken{
    .name = "bulkhead-thread-taken",
    .subject = "thread of a bulkhead union that states none, over its tube",
    .value = usual_thread_over_tube_in,
    .source = "a table of AN sizes: threads are 3/16 in to 1/4 in wider than their tube",
    .mark = Mark::verified_secondary};
inline constexpr LimitRow bulkhead_held{
    .name = "bulkhead-held",
    .subject = "what a bulkhead union covers of its hole's edge, where that is least",
    .value = 0,
    .source = "geometry: what does not cover the edge of its hole is not held by it",
    .mark = Mark::calculated};
inline constexpr LimitRow bulkhead_cover{
    .name = "bulkhead-cover",
    .subject = "what a bulkhead union covers of its hole's edge, where that is least",
    .value = 0.0625,
    .source = "its body is measured across the corners of its nut, whose flats are nearer",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow bulkhead_hole_width{
    .name = "bulkhead-hole-width",
    .subject = "hole of a bulkhead union of no stated size",
    .value = 4,
    .sense = LimitSense::at_most,
    .source = "nuts of such unions are two to four times as wide as their tube",
    .mark = Mark::common_practice,
    .broken = Verdict::warn,
    .times = "outside diameter of its line"};
inline constexpr LimitRow bulkhead_square{
    .name = "bulkhead-square",
    .subject = "bulkhead union from square to its sheet",
    .value = 10,
    .unit = Unit::degree,
    .sense = LimitSense::at_most,
    .source = "its nut lies flat on the sheet; a drawing may be so rough",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow bulkhead_aslant{
    .name = "bulkhead-aslant",
    .subject = "bulkhead union from square to its sheet, at the most",
    .value = 20,
    .unit = Unit::degree,
    .sense = LimitSense::at_most,
    .source = "geometry: a nut 5/8 in wide stands 0.2 in off the sheet at one side",
    .mark = Mark::calculated};

/// Whether each bulkhead union of an air line is held by the edge of a hole: that there is one
/// where it stands, that its thread goes through it, that its nut covers the edge all round, and
/// that it is square to the sheet. A hole that may be narrower than a thread of no stated size is
/// unknown.
/// One in a part with no hole described is unknown. One with no structure near it is left out, and
/// so is one in a mesh, and what is drawn as a mere place, without a size, where no hole is.
void judge_bulkheads(const RuleContext& context, std::vector<Judgement>& judgements);

}  // namespace linewright
