#pragma once
// Limits of one rule that others hold against as well.

#include "rules/limit.hpp"

namespace linewright {

/// Of `frame-crossing`; `sleeve-cover` takes a bare edge nearer than this as one to guard.
inline constexpr LimitRow cable_to_hole_edge{
    .name = "cable-to-hole-edge",
    .subject = "control cable or rod to an unguarded hole edge",
    .value = 0.5,
    .source = "where either can move",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

/// Of `attachment-travel`, which holds the ends of cables against it, too.
inline constexpr LimitRow jam_limit{
    .name = "jam",
    .subject = "attachment or end short of what it would jam on, at full travel",
    .value = 0,
    .source = "AC 43.13-1B para 7-147 a: nothing can jam at any point of travel, loaded or slack",
    .mark = Mark::verified};

/// Of `attachment-travel`; `sleeve-cover` says where a clamp about a sleeve keeps it.
inline constexpr LimitRow attachment_to_guide{
    .name = "attachment-to-guide",
    .subject = "other attachment to a fairlead or pulley, any to a clamp or frame",
    .value = 2,
    .source = "borrowed from the splice rule of AC 43.13-1B para 7-147 a",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

/// Of `cable-tension`; `resonance` asks for no rigging beyond it.
inline constexpr LimitRow proved_share{
    .name = "proved-share",
    .subject = "tension at the hottest",
    .value = 0.6,
    .unit = Unit::pound_force,
    .sense = LimitSense::at_most,
    .source = "AC 43.13-1B: the load that swaged ends are proved to",
    .mark = Mark::verified_secondary,
    .broken = Verdict::fail,
    .times = "breaking strength"};

}  // namespace linewright
