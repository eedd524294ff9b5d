#pragma once
// The cables of one control against each other: they move together, and pull against each other.

#include <vector>

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow control_moves{.name = "control-moves",
                                        .subject = "travel of a cable that works a control",
                                        .value = 1,
                                        .unit = Unit::none,
                                        .source = "a cable that works a control moves with it",
                                        .mark = Mark::common_practice,
                                        .broken = Verdict::warn};
inline constexpr LimitRow travels_apart{
    .name = "travels-of-a-pair",
    .subject = "turn that one cable's travel gives their shaft, over that of the other's",
    .value = 1.25,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = "two cables on one shaft turn it alike",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow tensions_apart{
    .name = "tensions-of-a-pair",
    .subject = "moment of one cable's rigged tension about their shaft, over that of the other's",
    .value = 1.25,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = "two cables on one shaft hold it still between them",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

inline constexpr LimitRow pulled_back{
    .name = "pulled-back",
    .subject = "cables of a control that pull its shaft the other way than one of them",
    .value = 1,
    .unit = Unit::none,
    .source = "geometry: a cable only pulls",
    .mark = Mark::calculated};
inline constexpr LimitRow turned_alike{
    .name = "turned-alike",
    .subject = "lines between the same two shafts that turn them alike",
    .value = 1,
    .unit = Unit::none,
    .source = "geometry: what turns one shaft two ways locks it",
    .mark = Mark::calculated};

/// Of `control-feel`: lines that work a control, or end on a horn or pedal, whose travel is stated
/// as none; pairs of cables that pull their shaft one way, and rods that would turn theirs two
/// ways; and pairs with arms on
/// one shaft whose travels or tensions do not fit each other; of two horns on one shaft the way
/// that each goes, too, which is unknown where they do not fit. Nothing is said of a pair whose
/// arms are not stated.
std::vector<Judgement> judge_control_pairs(const RuleContext& context);

}  // namespace linewright
